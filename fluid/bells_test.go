package fluid

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// The sums of one bell, n·δ^d·τ^t·exp(−φ·(δ−1)² − β·(τ−γ)²), Setzmann and Wagner 1991, by differences of the
// bell itself over 1e-20 with 256 bits.
func TestSumsOfABellByDifferences(t *testing.T) {
	h := methane
	h.terms = nil
	for i, b := range methane.bells {
		h.bells = methane.bells[i : i+1]
		for _, at := range [][2]float64{{185, 0.9}, {205, 1.15}} {
			s := h.at(at[0])
			sums := s.sums(at[1])
			const bell = `
				e = 1/100000000000000000000
				a = n*pow(x, d)*pow(y, t)*exp(-f*pow(x - 1, 2) - b*pow(y - g, 2))
				p = n*pow(x + e, d)*pow(y, t)*exp(-f*pow(x + e - 1, 2) - b*pow(y - g, 2))
				m = n*pow(x - e, d)*pow(y, t)*exp(-f*pow(x - e - 1, 2) - b*pow(y - g, 2))
				pp = n*pow(x + e, d)*pow(y + e, t)*exp(-f*pow(x + e - 1, 2) - b*pow(y + e - g, 2))
				pm = n*pow(x + e, d)*pow(y - e, t)*exp(-f*pow(x + e - 1, 2) - b*pow(y - e - g, 2))
				mp = n*pow(x - e, d)*pow(y + e, t)*exp(-f*pow(x - e - 1, 2) - b*pow(y + e - g, 2))
				mm = n*pow(x - e, d)*pow(y - e, t)*exp(-f*pow(x - e - 1, 2) - b*pow(y - e - g, 2))
			`
			of := precise.Values{"n": b.n, "d": float64(b.d), "t": float64(b.t), "f": b.phi, "b": b.beta, "g": b.gamma, "x": at[1], "y": s.tau}
			precise.Within(t, 1e-11, sums.d, bell+"x*(p - m)/(2*e)", of)
			precise.Within(t, 1e-11, sums.dd, bell+"x*x*(p - 2*a + m)/(e*e)", of)
			precise.Within(t, 1e-11, sums.dt, bell+"x*y*(pp - pm - mp + mm)/(4*e*e)", of)
		}
	}
}

// A fault is told for what is wrong alone; a share of contaminants on its end and beyond.
func TestFaultsOfOneThing(t *testing.T) {
	b := Brine{At70F: 1300, Expansion: 5e-4, Compression: 4e-10}
	_, err := b.Density(0, unit.Kelvin(900))
	require.ErrorContains(t, err, "temperature")
	require.NotContains(t, err.Error(), "pressure")
	c := ControlFluid{Points: []ControlPoint{{Temperature: unit.Celsius(0), Density: 1000}, {Temperature: unit.Celsius(100), Density: 950}}}
	_, err = c.Density(0, unit.Celsius(200))
	require.ErrorContains(t, err, "temperature")
	require.NotContains(t, err.Error(), "pressure")
	var salt Salt
	require.NotContains(t, salt.UnmarshalText([]byte("?")).Error(), saltNames[0])
	var system System
	require.NotContains(t, system.UnmarshalText([]byte("?")).Error(), systemNames[0])

	for share, ok := range map[float64]bool{mostContaminants - 1e-9: true, mostContaminants + 1e-9: false} {
		_, err := Gas{Gravity: 1.2527, CarbonDioxide: 0.5, HydrogenSulphide: share - 0.5}.PseudoCritical()
		require.Equal(t, ok, err == nil, "%v: %v", share, err)
	}
	_, err = Gas{Gravity: 0.7, CarbonDioxide: -1e-7}.PseudoCritical()
	require.Error(t, err, "more than all dry")
	m := Measured{Pressures: []unit.Pressure{0, 1e7}, Densities: [][]unit.Density{{1000, 960}, {1004, 965}}}
	for kelvin, ok := range map[float64]bool{1: true, math.Nextafter(1, 0): false} {
		m.Temperatures = []unit.Temperature{unit.Kelvin(kelvin), unit.Kelvin(300)}
		require.Equal(t, ok, m.Validate() == nil, kelvin)
	}
	mu, err := Nitrogen{}.Viscosity(1e7, unit.Kelvin(300))
	require.NoError(t, err)
	rho, err := Nitrogen{}.Density(1e7, unit.Kelvin(300))
	require.NoError(t, err)
	require.InEpsilon(t, nitrogenViscosity(300, float64(rho)/0.02801348), float64(mu), 1e-14)
}
