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

// thin is an ideal gas of 0.018 kg/mol.
type thin struct{ even }

func (thin) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return unit.Density((float64(p) + 101325) * 0.018 / (8.314 * t.Kelvin())), nil
}

// The march is the classical rule of Kutta, sixty steps of it over a section, either way: typed from its table
// (0, 1/2, 1/2, 1; 1/6, 1/3, 1/3, 1/6).
//
// Source: Kutta, Z. Math. Phys. 46 (1901) 435; from memory.
func TestMarchIsKuttasRule(t *testing.T) {
	m := stretch{t: Tubing{Gas: thin{}}, temperature: [2]float64{300, 400}, d: 0.06, length: 4000, slope: 0.9, deep: 3600, flux: 900, roughness: 1e-4}
	nodes, weights := [4]float64{0, 0.5, 0.5, 1}, [4]float64{1. / 6, 1. / 3, 1. / 3, 1. / 6}
	for _, up := range []bool{true, false} {
		p, s, h := 2e7, 0.0, 4000.0/60
		if up {
			s, h = 4000, -h
		}
		want := p
		for range 60 {
			var k [4]float64
			sum := 0.0
			for i, c := range nodes {
				var err error
				k[i], err = m.slopeAt(s+c*h, want+c*h*k[max(i-1, 0)])
				require.NoError(t, err)
				sum += weights[i] * k[i]
			}
			want += h * sum
			s += h
		}
		got, err := m.across(p, up)
		require.NoError(t, err)
		require.InEpsilon(t, want, got, 1e-13, "%v", up)
	}
}
