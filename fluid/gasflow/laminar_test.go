package gasflow

import (
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// even is a gas of one density and viscosity.
type even struct{}

func (even) Density(unit.Pressure, unit.Temperature) (unit.Density, error)     { return 40, nil }
func (even) Viscosity(unit.Pressure, unit.Temperature) (unit.Viscosity, error) { return 1.5e-5, nil }

// Up to a Reynolds number of 2,100 flow is laminar, f = 16/Re, and from there on Colebrook's (Re of common practice): in a
// level pipe the pressure falls by friction alone.
func TestWhereLaminarFlowEnds(t *testing.T) {
	gas := even{}
	m := stretch{t: Tubing{Gas: gas}, temperature: [2]float64{330, 330}, d: 0.06, length: 10}
	mu, err := gas.Viscosity(5e6, unit.Kelvin(330))
	require.NoError(t, err)
	rho, err := gas.Density(5e6, unit.Kelvin(330))
	require.NoError(t, err)
	for re, laminar := range map[float64]bool{2000: true, 2099.5: true, 2100.5: false, 2200: false} {
		m.flux = re * float64(mu) / m.d
		v := m.flux / float64(rho)
		f := 16 / re
		if !laminar {
			f = float64(flow.Colebrook(re, 0).Fanning())
		}
		got, err := m.slopeAt(0, 5e6)
		require.NoError(t, err)
		require.InEpsilon(t, 2*f*float64(rho)*v*v/m.d/(1-v*v*float64(rho)/(5e6+101325)), math.Abs(got), 1e-9, "%v", re)
	}
}
