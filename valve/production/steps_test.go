package production_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// A zone of gas shows its inflow; its choke has no line, and a zone that takes
// none at all.
func TestStepsOfGas(t *testing.T) {
	zone := func(name string, depth unit.Length, pr unit.Pressure) production.Zone {
		return production.Zone{Name: name, TVD: depth,
			Inflow: inflow.GasDeliverability{Reservoir: pr, OpenFlow: 20000 * unit.ThousandCubicFeetPerDay, Exponent: 0.8},
			Chokes: choke.Table{{Name: "open", Coefficient: 10 * unit.Cv}},
			Gas:    &production.GasAtChoke{Density: 0.8, Standard: unit.Fahrenheit(60), Temperature: unit.Fahrenheit(200), Z: 0.9, HeatRatio: 1.28, Ratio: 0.7}}
	}
	for _, c := range []struct {
		outflow production.Outflow
		steps   int
	}{{production.FixedPressure{Pressure: 1500 * psi}, 2}, {production.FixedRate{}, 1}} {
		w := production.Well{Zones: []production.Zone{zone("lower", 9400*unit.Foot, 3000*psi), zone("upper", 9000*unit.Foot, 2500*psi)}, Outflow: c.outflow}
		n, err := w.Prepare()
		require.NoError(t, err)
		var f production.Flow
		require.NoError(t, n.Solve(n.Open(), &f))
		steps := n.Steps(&f)
		require.Len(t, steps, c.steps)
		workingtest.Check(t, steps)
	}
}
