package production_test

import (
	"fmt"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// twoZones is an invented well: a wet lower zone and a dry upper one, each
// through a choke of five positions.
func twoZones() production.Well {
	chokes := choke.Table{{Name: "shut"}, {Name: "1", Travel: 0.25, Coefficient: 1.5 * unit.Cv}, {Name: "2", Travel: 0.5, Coefficient: 4 * unit.Cv},
		{Name: "3", Travel: 0.75, Coefficient: 9 * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 30 * unit.Cv}}
	return production.Well{
		Zones: []production.Zone{
			{Name: "lower", TVD: 9400 * unit.Foot, Inflow: inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 5 * pi}, WaterCut: 0.6,
				Chokes: chokes, Density: 7.8 * ppg, VolumeFactor: 1.1,
				Above: production.Interval{Density: 7.4 * ppg, Loss: production.Loss{At: 5000 * bpd, Turbulent: 12 * psi}}},
			{Name: "upper", TVD: 9000 * unit.Foot, Inflow: inflow.LiquidDeliverability{Reservoir: 3700 * psi, Index: 4 * pi, Bubble: 2200 * psi}, WaterCut: 0.05,
				Chokes: chokes, Density: 6.9 * ppg, VolumeFactor: 1.25},
		},
		Outflow: production.Tubing{Surface: 250 * psi, Height: 9000 * unit.Foot, Density: 5.8 * ppg, Loss: production.Loss{At: 5000 * bpd, Turbulent: 260 * psi}},
	}
}

func ExampleNetwork_LimitWater() {
	n, err := twoZones().Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := n.LimitWater(0.25, production.Limits{NoCrossflow: true})
	fmt.Println(n.Names(c.Positions), "oil", c.Flow.Oil().Rounded(4), "water cut", fmt.Sprintf("%.3f", c.Flow.WaterCut), err)
	_, err = n.LimitWater(0.01, production.Limits{})
	fmt.Println(err)
	// Output:
	// [1 open] oil 2734 bbl/d water cut 0.224 <nil>
	// production: no choke setting does it: 24 tried, 24 flow; the least water cut of all is 0.05, 0.01 is allowed
}

func ExampleNetwork_MatchSplit() {
	n, err := twoZones().Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := n.MatchSplit([]float64{1, 1}, production.Limits{})
	fmt.Printf("%v: shares %.3f and %.3f, %d settings tried, %v\n", n.Names(c.Positions), c.Flow.Share(0), c.Flow.Share(1), c.Tried, err)
	// Output:
	// [2 open]: shares 0.494 and 0.506, 24 settings tried, <nil>
}

func ExampleEquivalent() {
	j, p := production.Equivalent(
		production.Straight{Index: 5 * unit.BarrelPerDayPSI, Static: 4000 * unit.PSI},
		production.Straight{Index: 10 * unit.BarrelPerDayPSI, Static: 3500 * unit.PSI})
	fmt.Println(j.Rounded(4), "at", p.Rounded(5))
	// Output: 15 bbl/d/psi at 3666.7 psi
}

// The choice is the best of all, found again by plain enumeration here.
func TestChoiceIsBest(t *testing.T) {
	w := twoZones()
	n, err := w.Prepare()
	require.NoError(t, err)
	oil, split, any := 0.0, 1.0, 0
	for a := range 5 {
		for b := range 5 {
			f, err := w.Flow(a, b)
			if err != nil {
				require.ErrorIs(t, err, production.ErrShut)
				continue
			}
			any++
			if f.WaterCut <= 0.4 {
				oil = max(oil, float64(f.Oil()))
			}
			if f.Rate > 0 {
				split = min(split, max(f.Share(0)-0.3, 0.3-f.Share(0)))
			}
		}
	}
	require.Equal(t, 24, any)
	c, err := n.LimitWater(0.4, production.Limits{})
	require.NoError(t, err)
	require.InEpsilon(t, oil, float64(c.Flow.Oil()), 1e-14)
	require.LessOrEqual(t, c.Flow.WaterCut, 0.4)
	c, err = n.MatchSplit([]float64{3, 7}, production.Limits{})
	require.NoError(t, err)
	require.InDelta(t, split, c.Deviation, 1e-14)
	c, err = n.MostRate(production.Limits{})
	require.NoError(t, err)
	require.Equal(t, []int{4, 4}, c.Positions)
	workingtest.Check(t, n.Steps(&c.Flow))
	require.Len(t, n.Steps(&c.Flow), 4)
}

func TestChoiceFaults(t *testing.T) {
	n, err := twoZones().Prepare()
	require.NoError(t, err)
	_, err = n.MatchSplit([]float64{1}, production.Limits{})
	require.ErrorContains(t, err, "targets: has 1 for 2 zones")
	_, err = n.MatchSplit([]float64{-1, 1}, production.Limits{})
	require.ErrorContains(t, err, "targets[0]: is -1")
	_, err = n.MatchSplit([]float64{0, 0}, production.Limits{})
	require.ErrorContains(t, err, "above 0")
	_, err = n.LimitWater(2, production.Limits{})
	require.ErrorContains(t, err, "must be from 0 to 1")
	_, err = n.MostRate(production.Limits{Most: 10})
	require.ErrorIs(t, err, production.ErrTooMany)
	require.ErrorContains(t, err, "25 combinations; 10 may be tried")
	w := twoZones()
	w.Outflow = production.Tubing{Surface: 4000 * psi, Height: 9000 * unit.Foot, Density: 8 * ppg}
	n, err = w.Prepare()
	require.NoError(t, err)
	_, err = n.MostRate(production.Limits{})
	require.ErrorIs(t, err, production.ErrNoSetting)
	require.ErrorIs(t, err, production.ErrNoFlow)
}

const outflowCSV = `# invented: gas-lifted tubing, unstable at first
rate,pressure
500 bbl/d,3400 psi
1500 bbl/d,3000 psi
3000 bbl/d,3100 psi
8000 bbl/d,3600 psi
`

func ExampleReadOutflowTable() {
	table, err := production.ReadOutflowTable(strings.NewReader(outflowCSV))
	w := twoLayers(table)
	f, err2 := w.Flow()
	fmt.Println(f.Rate.Rounded(4), "at", f.Pressure.Rounded(4), err, err2)
	w.Zones[1].Inflow = inflow.LiquidDeliverability{Reservoir: 9000 * psi, Index: 10 * pi}
	_, err = w.Flow()
	fmt.Println(err)
	w = twoLayers(table)
	for i := range w.Zones {
		w.Zones[i].Inflow = inflow.LiquidDeliverability{Reservoir: 3010 * psi, Index: pi}
	}
	_, err = w.Flow()
	fmt.Println(err)
	// Output:
	// 5381 bbl/d at 3308 psi <nil> <nil>
	// production: outside the outflow table: the zones give more than its greatest rate of 8000 bbl/d
	// production: the network has no flow in this direction: at 3000 psi, the least that the table asks for, the zones give 20 bbl/d; its stable branch begins at 1500 bbl/d
}

// At the tabulated rates the table is met to the last digits.
func TestOutflowTable(t *testing.T) {
	table, err := production.ReadOutflowTable(strings.NewReader(outflowCSV))
	require.NoError(t, err)
	for _, p := range table[1:] {
		// One zone whose line passes just through this point.
		j := 3 * pi
		w := production.Well{Zones: []production.Zone{{Name: "only", Inflow: inflow.LiquidDeliverability{Reservoir: p.Pressure + unit.Pressure(float64(p.Rate)/float64(j)), Index: j}}}, Outflow: table}
		f, err := w.Flow()
		require.NoError(t, err)
		require.InEpsilon(t, float64(p.Rate), float64(f.Rate), 1e-9)
		require.InEpsilon(t, float64(p.Pressure), float64(f.Pressure), 1e-12)
	}
	for text, want := range map[string]string{
		"":                                    "line 1: is not rate,pressure",
		"rate,pressure\n1 bbl/d,5 psi\n":      "must have two or more",
		"rate,pressure\n1,5 psi\n2 bbl/d,5\n": "row 2",
		"rate,pressure\n2 bbl/d,5 psi\n1 bbl/d,6 psi\n":                "must be above the 2 bbl/d before it",
		"rate,pressure\n1 bbl/d,5 psi\n2 bbl/d,4 psi\n":                "only falls",
		"rate,pressure\n1 bbl/d,5 psi\n2 bbl/d,6 psi\n3 bbl/d,4 psi\n": "must be at least the 6 psi before it",
		"rate,pressure\n1 bbl/d,-5000 psi\n2 bbl/d,6 psi\n":            "must be at least -14.6959 psi",
	} {
		_, err := production.ReadOutflowTable(strings.NewReader(text))
		require.ErrorContains(t, err, want, "%q", text)
	}
}

func TestWellFaults(t *testing.T) {
	_, err := production.Well{}.Flow()
	require.ErrorContains(t, err, "Zones: is empty")
	require.ErrorContains(t, err, "Outflow: is missing")
	w := twoZones()
	w.Zones[0].Name, w.Zones[0].WaterCut, w.Zones[0].Density, w.Zones[0].Inflow = "upper", 2, 0, nil
	w.Zones[1].TVD, w.Zones[1].VolumeFactor = 9900*unit.Foot, -1
	w.Zones[0].Above.Density, w.Zones[0].Above.Loss = -1, production.Loss{Laminar: -1}
	w.Outflow = production.Tubing{Surface: -100 * psi, Height: -1, Density: -1, Loss: production.Loss{Turbulent: 5}}
	_, err = w.Flow()
	for _, text := range []string{`Zones[1].Name: is "upper" like another`, "Zones[0].WaterCut: is 2", "Zones[0].Density: is 0", "Zones[0].Inflow: is missing", "stand from the bottom up", "Zones[1].VolumeFactor: is -1",
		"Zones[0].Above.Density", "Above.Loss.Laminar", "Outflow.Surface", "Outflow.Height", "Outflow.Density", "Outflow.Loss.At: is 0 bbl/d"} {
		require.ErrorContains(t, err, text)
	}
	w = twoZones()
	w.Zones[0].Gas = &production.GasAtChoke{}
	_, err = w.Flow()
	for _, text := range []string{"1 of 2 that give gas", "must be 0 for gas", "Gas.Standard: is", "Gas.Z: is"} {
		require.ErrorContains(t, err, text)
	}
	for _, positions := range [][]int{{1}, {1, 9}, {-1, 0}} {
		_, err = twoZones().Flow(positions...)
		require.ErrorIs(t, err, production.ErrPosition)
	}
	_, err = twoZones().Flow(0, 0)
	require.ErrorIs(t, err, production.ErrShut)
}

// More than the zones can give is an answer, too.
func TestRateBeyondReach(t *testing.T) {
	w := twoLayers(production.FixedRate{Rate: 100000 * bpd})
	_, err := w.Flow()
	require.ErrorIs(t, err, production.ErrNoFlow)
	require.ErrorContains(t, err, "the zones give 55000 bbl/d") // 5·4000 + 10·3500
	w.Outflow = production.FixedRate{Rate: 54999 * bpd}
	f, err := w.Flow()
	require.NoError(t, err)
	require.InDelta(t, 1.0/15, f.Pressure.In(psi), 1e-9)
	w.Outflow = production.FixedRate{Rate: -3000 * bpd}
	f, err = w.Flow()
	require.NoError(t, err, "putting fluid in")
	require.InDelta(t, 3666.666667+200, f.Pressure.In(psi), 1e-5)
	require.Equal(t, 1.0, f.WaterCut, "what comes from surface counts as water")
}
