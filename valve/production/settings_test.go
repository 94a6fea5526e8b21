package production_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// The least water cut that is told is that of all settings that may be taken, found again by trying them.
func TestLeastWaterCutOfAll(t *testing.T) {
	w := twoZones()
	w.Zones[0].WaterCut, w.Zones[1].WaterCut = 0.3, 0.5
	w.Zones[0].Inflow = inflow.LiquidDeliverability{Reservoir: 3160 * psi, Index: 5 * pi}
	w.Zones[1].Inflow = inflow.LiquidDeliverability{Reservoir: 3700 * psi, Index: 4 * pi}
	n, err := w.Prepare()
	require.NoError(t, err)
	least := [2]float64{math.Inf(1), math.Inf(1)} // of all, and of those in which no zone takes
	all := [2]int{}
	for a := range 5 {
		for b := range 5 {
			f, err := w.Flow(a, b)
			if err != nil || f.Rate <= 0 {
				continue
			}
			least[0], all[0] = min(least[0], f.WaterCut), all[0]+1
			if f.Crossflow == 0 {
				least[1], all[1] = min(least[1], f.WaterCut), all[1]+1
			}
		}
	}
	require.Greater(t, all[0], all[1])
	for i, limits := range []production.Limits{{}, {NoCrossflow: true}} {
		_, err := n.LimitWater(0.1, limits)
		require.ErrorIs(t, err, production.ErrNoSetting)
		require.ErrorContains(t, err, fmt.Sprintf("the least water cut of all is %.4g, 0.1 is allowed", least[i]))
		require.NotContains(t, err.Error(), "the last:", "some of them flow")
	}
	// without flow there is no water cut to tell
	w.Outflow = production.FixedRate{}
	n, err = w.Prepare()
	require.NoError(t, err)
	_, err = n.LimitWater(0.1, production.Limits{})
	require.ErrorIs(t, err, production.ErrNoSetting)
	require.NotContains(t, err.Error(), "water cut")
	_, err = n.MostRate(production.Limits{})
	require.ErrorIs(t, err, production.ErrNoSetting, "what gives nothing is no setting")
	_, err = n.MatchSplit([]float64{1, 1}, production.Limits{})
	require.ErrorIs(t, err, production.ErrNoSetting)
	// where no setting has an answer, the last reason is told
	w.Outflow = production.FixedRate{Rate: 1e7 * bpd}
	n, err = w.Prepare()
	require.NoError(t, err)
	_, err = n.MostRate(production.Limits{})
	require.ErrorContains(t, err, "the last: production: the network has no flow")
}

// What is told of a gas well is told at its rate.
func TestGasWellIsToldAtItsRate(t *testing.T) {
	w := gasWell()
	x, err := w.Flow()
	require.NoError(t, err)
	p, err := w.Inflow.Pressure(x.Rate)
	require.NoError(t, err)
	require.Equal(t, p, x.Sandface)
}

// Wanted far beyond what the zones give: told with what the tubing has left, which is nothing where heads alone part
// the zones.
func TestMoreThanTheZonesGive(t *testing.T) {
	w := twoZones()
	for i := range w.Zones {
		w.Zones[i].Above.Loss = production.Loss{}
	}
	w.Outflow = production.FixedRate{Rate: 1e6 * bpd}
	_, err := w.Flow()
	require.ErrorContains(t, err, "with the tubing at the topmost zone down at 0 psi the zones give ")
}

// The water that reaches surface is what the zones give, less what they take.
func TestWaterIsKept(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 40))
	crossing, passes := 0, 0
	for range 300 {
		w, positions := random(r, 1+r.IntN(5), false)
		f, err := w.Flow(positions...)
		if err != nil {
			continue
		}
		passes += f.Passes
		sum, rate := 0.0, 0.0
		for _, z := range f.Zones {
			sum += float64(z.Water)
			rate += float64(z.Rate)
		}
		if f.Rate >= 0 {
			require.InDelta(t, sum, float64(f.Water), 1e-9*(1e-3+math.Abs(rate)))
		}
		if f.Crossflow > 0 {
			crossing++
		}
	}
	require.Greater(t, crossing, 20)
	require.LessOrEqual(t, passes, 1231)
}

// A line for every choke of liquid that is open, and none for gas; a position that is none has none.
func TestLinesOfChokes(t *testing.T) {
	lines := func(w production.Well, positions ...int) (int, production.Flow) {
		n, err := w.Prepare()
		require.NoError(t, err)
		var f production.Flow
		require.NoError(t, n.Solve(positions, &f))
		steps := n.Steps(&f)
		workingtest.Check(t, steps)
		count := 0
		for _, s := range steps {
			if strings.HasPrefix(s.Name, "drop across the choke") {
				count++
			}
		}
		return count, f
	}
	w := twoZones()
	for i := range w.Zones {
		w.Zones[i].Chokes = choke.Table{{Name: "half", Travel: 0.5, Coefficient: 20 * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 30 * unit.Cv}}
	}
	w.Outflow = production.FixedPressure{Pressure: 2000 * psi}
	count, f := lines(w, 0, 0)
	require.Equal(t, 2, count)
	n, err := w.Prepare()
	require.NoError(t, err)
	for _, position := range []int{-1, 2, 5} {
		f.Zones[0].Position = position
		edited := 0
		for _, s := range n.Steps(&f) {
			if strings.HasPrefix(s.Name, "drop across the choke") {
				edited++
			}
		}
		require.Equal(t, 1, edited)
	}
	r := rand.New(rand.NewPCG(4, 41))
	for range 20 {
		gas, positions := random(r, 2, true)
		gas.Outflow = production.FixedPressure{Pressure: 500 * psi}
		for i := range positions {
			positions[i] = max(0, len(gas.Zones[i].Chokes)-1)
		}
		count, _ := lines(gas, positions...)
		require.Zero(t, count)
	}
	mixed := twoZones()
	mixed.Zones = append(mixed.Zones, mixed.Zones[1])
	mixed.Zones[2].Name = "third"
	gas, _ := random(r, 1, true)
	mixed.Zones[2].Gas, mixed.Zones[2].WaterCut = gas.Zones[0].Gas, 0
	_, err = mixed.Prepare()
	require.ErrorContains(t, err, "has 1 of 3 that give gas")
}

// Where every position is shut nothing has been tried, and there is no last reason.
func TestAllShut(t *testing.T) {
	w := twoZones()
	for i := range w.Zones {
		w.Zones[i].Chokes = choke.Table{{Name: "shut"}}
	}
	n, err := w.Prepare()
	require.NoError(t, err)
	_, err = n.MostRate(production.Limits{})
	require.EqualError(t, err, "production: no choke setting does it: 0 tried, 0 flow")
}
