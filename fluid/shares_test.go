package fluid

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// What isn't hydrocarbon may take up so much of a gas and no more, and never less than nothing; a point of a control
// fluid may lie at a kelvin and no colder.
func TestSharesOnTheirLimits(t *testing.T) {
	gas := func(nitrogen, dioxide, sulphide float64) Gas {
		dry := 1 - nitrogen - dioxide - sulphide
		return Gas{Nitrogen: nitrogen, CarbonDioxide: dioxide, HydrogenSulphide: sulphide, // with hydrocarbons of 0.7
			Gravity: 0.7*dry + (nitrogen*pureNitrogen.molarMass+dioxide*pureCarbonDioxid.molarMass+sulphide*pureHydrogenSulf.molarMass)/airMolarMass}
	}
	for _, x := range []struct {
		nitrogen, dioxide, sulphide float64
		ok                          bool
	}{{0, 0, 0, true}, {0, -3e-7, 0, false}, {0.25, 0.5, 0.05 - 2e-7, true}, {0.25, 0.5, 0.05 + 3e-7, false}, {0.25 + 3e-7, 0, 0, false}} {
		pc, err := gas(x.nitrogen, x.dioxide, x.sulphide).PseudoCritical()
		if x.ok {
			require.NoError(t, err, "%v", x)
			require.Greater(t, pc.Pressure, 20e5*unit.Pascal, "and an answer with it")
		} else {
			require.Error(t, err, "%v", x)
		}
	}
	p := ControlPoint{Temperature: unit.Kelvin(1), Density: 1000, Viscosity: 0.01}
	require.True(t, p.sound())
	p.Temperature = unit.Kelvin(1 - 1e-9)
	require.False(t, p.sound())
}

// What is corrected for sour gases may be from 1 Pa to 1,000 MPa and from 50 to 1,000 K, all of them included.
func TestSourCorrectionOnItsLimits(t *testing.T) {
	for _, x := range []struct {
		p, t float64
		ok   bool
	}{{1, 200, true}, {1 - 3e-7, 200, false}, {1e9, 200, true}, {1e9 * (1 + 3e-7), 200, false},
		{4e6, 50, true}, {4e6, 50 * (1 - 3e-7), false}, {4e6, 1000, true}, {4e6, 1000 * (1 + 3e-7), false}} {
		_, err := PseudoCritical{Pressure: unit.Pressure(x.p), Temperature: unit.Kelvin(x.t)}.WichertAziz(0, 0)
		if x.ok {
			require.NoError(t, err, "%v", x)
		} else {
			require.Error(t, err, "%v", x)
		}
	}
}
