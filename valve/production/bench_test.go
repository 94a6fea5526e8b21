package production_test

import (
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// many is a well of n like zones through chokes, with tubing loss between them
// and to surface. A bubble point above zero makes their inflow Vogel's below it.
func many(n int, bubble unit.Pressure) production.Well {
	w := production.Well{}
	for i := range n {
		depth := 10000*unit.Foot - unit.Length(25*i)*unit.Foot
		w.Zones = append(w.Zones, production.Zone{
			Name: fmt.Sprint("zone ", i+1), TVD: depth,
			Inflow:  inflow.LiquidDeliverability{Reservoir: 4400*psi - unit.Pressure(9*i)*psi, Index: unit.ProductivityIndex(4+i%3) * pi, Bubble: bubble},
			Density: 7 * ppg, VolumeFactor: 1.2, WaterCut: 0.1 * float64(i%5),
			Chokes: choke.Table{{Name: "shut"}, {Name: "half", Travel: 0.5, Coefficient: 3 * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 12 * unit.Cv}},
			Above:  production.Interval{Density: 7 * ppg, Loss: production.Loss{At: 10000 * bpd, Turbulent: 15 * psi}},
		})
	}
	w.Outflow = production.Tubing{Surface: 200 * psi, Height: 9000 * unit.Foot, Density: 6.5 * ppg, Loss: production.Loss{At: 10000 * bpd, Turbulent: 400 * psi}}
	return w
}

func benchmark(b *testing.B, w production.Well) {
	n, err := w.Prepare()
	require.NoError(b, err)
	positions := n.Open()
	var f production.Flow
	require.NoError(b, n.Solve(positions, &f))
	defer func() { b.ReportMetric(float64(f.Passes), "passes") }()
	b.ReportAllocs()
	for b.Loop() {
		if err := n.Solve(positions, &f); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolve(b *testing.B) {
	for _, zones := range []int{1, 2, 5, 10, 20, 40} {
		b.Run(fmt.Sprintf("straight/zones=%d", zones), func(b *testing.B) { benchmark(b, many(zones, 0)) })
		b.Run(fmt.Sprintf("vogel/zones=%d", zones), func(b *testing.B) { benchmark(b, many(zones, 4500*psi)) })
	}
}

// BenchmarkSolveTable has a table to surface instead of a column.
func BenchmarkSolveTable(b *testing.B) {
	w := many(2, 0)
	w.Outflow = production.OutflowTable{{1000 * bpd, 3400 * psi}, {3000 * bpd, 3300 * psi}, {8000 * bpd, 3600 * psi}, {20000 * bpd, 4300 * psi}}
	benchmark(b, w)
}

func TestSolveDoesNotAllocate(t *testing.T) {
	for _, bubble := range []unit.Pressure{0, 4500 * psi} {
		n, err := many(10, bubble).Prepare()
		require.NoError(t, err)
		positions := n.Open()
		var f production.Flow
		require.NoError(t, n.Solve(positions, &f))
		require.Zero(t, testing.AllocsPerRun(100, func() {
			if err := n.Solve(positions, &f); err != nil {
				t.Fatal(err)
			}
		}))
	}
}
