package production

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// Two ways: all pressures at once, and one pressure inside a bracket.
func TestNewtonAgainstSearch(t *testing.T) {
	tight := choke.Table{{Name: "one", Coefficient: 2 * unit.Cv}}
	w := Well{Outflow: Tubing{Surface: 100 * unit.PSI, Height: 8000 * unit.Foot, Density: 800, Loss: Loss{At: 5000 * unit.BarrelPerDay, Turbulent: 200 * unit.PSI}}}
	for i := range 6 {
		w.Zones = append(w.Zones, Zone{Name: string(rune('a' + i)), TVD: unit.Length(9000-100*i) * unit.Foot, Density: 850, Chokes: tight,
			Inflow: inflow.LiquidDeliverability{Reservoir: unit.Pressure(3600+(i*37)%300) * unit.PSI, Index: 3 * unit.BarrelPerDayPSI, Bubble: unit.Pressure(900*i) * unit.PSI},
			Above:  Interval{Density: 800, Loss: Loss{At: 5000 * unit.BarrelPerDay, Turbulent: 30 * unit.PSI}}})
	}
	for n := 1; n <= len(w.Zones); n++ {
		part := w
		part.Zones = w.Zones[:n]
		net, err := part.Prepare()
		require.NoError(t, err)
		positions := net.Open()
		var f, g Flow
		require.NoError(t, net.Solve(positions, &f))
		g.Zones, g.cells = make([]ZoneFlow, n), make([]cell, n)
		p, s, err := net.guarded(net.outflow.pressure+net.lift, positions, &g)
		require.NoError(t, err)
		require.NoError(t, net.report(p, s, positions, &g))
		for i := range f.Zones {
			require.InEpsilon(t, float64(g.Zones[i].Rate), float64(f.Zones[i].Rate), 1e-12, "zone %d of %d", i+1, n)
			require.InEpsilon(t, float64(g.Zones[i].Tubing), float64(f.Zones[i].Tubing), 1e-13)
		}
	}
}

// An inflow with steps has no useful slope: the bracket finds its answer.
type stairs struct{}

func (stairs) Validate() error       { return nil }
func (stairs) Static() unit.Pressure { return 1e7 }
func (stairs) At(p float64) (q, slope float64) {
	x := (1e7 - p) / 1e6
	return 0.001 * (math.Floor(x) + math.Pow(x-math.Floor(x), 9)), -9e-9 * math.Pow(x-math.Floor(x), 8)
}

func TestGuardOnStairs(t *testing.T) {
	w := Well{Zones: []Zone{{Name: "stairs", Inflow: stairs{}, Density: 800, Chokes: choke.Table{{Name: "one", Coefficient: unit.Cv}}}}}
	for p := 0.5e6; p < 1.5e7; p += 0.37e6 {
		w.Outflow = Tubing{Surface: unit.Pressure(p), Loss: Loss{At: 0.001, Turbulent: 1e5}}
		f, err := w.Flow()
		if p > 1e7 {
			require.ErrorIs(t, err, ErrNoFlow)
			continue
		}
		require.NoError(t, err)
		q, _ := stairs{}.At(float64(f.Zones[0].Sandface))
		require.InDelta(t, q, float64(f.Rate), 1e-9)
		require.InEpsilon(t, p+1e5*float64(f.Rate*f.Rate)/1e-6, float64(f.Pressure), 1e-9)
	}
}
