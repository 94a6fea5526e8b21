package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// pressureAt is the equation itself: p at density rho (kg/m³) and t (K).
func pressureAt(h *helmholtz, rho, t float64) float64 {
	s := h.at(t)
	return rho * s.perDensity() * (1 + s.sums(rho/h.rhoCritical).d)
}

// State values published with the equations: at the critical points, and one
// point of nitrogen above it. Span et al. (2000); Setzmann and Wagner (1991).
func TestHelmholtzAgainstPublishedStates(t *testing.T) {
	const m = 0.02801348
	require.InDelta(t, 5255537.623499568, pressureAt(&nitrogen, 10065.511318122559*m, 138.8112), 1e-3)
	require.InDelta(t, 3395800, pressureAt(&nitrogen, 11183.901464580624*m, 126.192), 5)
	require.InDelta(t, 4599200, pressureAt(&methane, 162.66, 190.564), 5)
}

// Lemmon and Jacobsen (2004), Table V; recalled, not read. Densities there are
// mol/dm³.
func TestNitrogenViscosity(t *testing.T) {
	for _, c := range []struct{ t, rho, mu float64 }{
		{100, 0, 6.90349}, {300, 0, 17.8771}, {200, 10, 21.0810}, {300, 5, 20.7430},
	} {
		require.InDelta(t, c.mu, 1e6*nitrogenViscosity(c.t, 1000*c.rho), 6e-5)
	}
}

var referenceGases = map[string]struct {
	slopes
	h *helmholtz
}{"nitrogen": {Nitrogen{}, &nitrogen}, "methane": {Methane{}, &methane}}

// p rises with ρ in the whole range, and the bracket holds every state; so the
// solver can't fail.
func TestHelmholtzHasOneRoot(t *testing.T) {
	for name, g := range referenceGases {
		for i := range 100 {
			T := g.h.limits.tLeast + (g.h.limits.tGreatest-g.h.limits.tLeast)*float64(i)/99
			s := g.h.at(T)
			for j := range 600 {
				a := s.sums(g.h.densest * float64(j) / 599)
				require.Greater(t, 1+2*a.d+a.dd, 0.0, "%s %g K", name, T)
			}
			require.Greater(t, pressureAt(g.h, g.h.densest*g.h.rhoCritical, T), g.h.limits.pGreatest, name)
		}
	}
}

// Density is the inverse of the pressure equation.
func TestHelmholtzInverse(t *testing.T) {
	for name, g := range referenceGases {
		for _, T := range []float64{g.h.limits.tLeast, 288, 400, 600} {
			for _, p := range []float64{1, 1e5, 5e6, 35e6, 100e6, 200e6} {
				rho, _, _, err := g.h.state(p, T)
				require.NoError(t, err)
				require.InEpsilon(t, p, pressureAt(g.h, rho, T), 1e-12, "%s %g Pa %g K", name, p, T)
			}
		}
	}
}

func TestReferenceGasSlopes(t *testing.T) {
	for name, g := range referenceGases {
		t.Run(name, func(t *testing.T) {
			for _, p := range []unit.Pressure{unit.Megapascal, 20 * unit.Megapascal, 150 * unit.Megapascal} {
				for _, c := range []float64{-60, 15, 120, 300} {
					checkSlopes(t, g, p, unit.Celsius(c), 1e-4)
				}
			}
		})
	}
}

// Normal density of nitrogen, 1.2504 kg/m³ (handbooks, recalled).
func TestNitrogenNormalDensity(t *testing.T) {
	rho, err := Nitrogen{}.Density(0, unit.Celsius(0))
	require.NoError(t, err)
	require.InDelta(t, 1.2504, float64(rho), 5e-5)
}

func TestReferenceGasRange(t *testing.T) {
	for name, g := range referenceGases {
		for _, c := range []struct {
			p  unit.Pressure
			t  unit.Temperature
			ok bool
		}{
			{0, unit.Kelvin(g.h.limits.tLeast), true}, {0, unit.Kelvin(g.h.limits.tLeast - 0.01), false},
			{0, unit.Kelvin(600), true}, {0, unit.Kelvin(600.01), false},
			{gauge(200e6), unit.Kelvin(300), true}, {gauge(200.001e6), unit.Kelvin(300), false},
			{-unit.Atmosphere, unit.Kelvin(300), false}, {unit.Pressure(math.NaN()), unit.Kelvin(300), false},
			{0, unit.Kelvin(math.NaN()), false},
		} {
			_, err := g.Density(c.p, c.t)
			_, errK := g.Compressibility(c.p, c.t)
			_, errA := g.Expansivity(c.p, c.t)
			for _, e := range []error{err, errK, errA} {
				if c.ok {
					require.NoError(t, e, name)
				} else {
					require.ErrorIs(t, e, ErrOutsideRange, name)
				}
			}
		}
	}
	_, err := Nitrogen{}.Viscosity(0, unit.Kelvin(700))
	require.ErrorIs(t, err, ErrOutsideRange)
	_, err = Methane{}.Viscosity(0, unit.Fahrenheit(60))
	require.ErrorIs(t, err, ErrOutsideRange)
	_, err = Methane{}.Viscosity(0, unit.Kelvin(700))
	require.ErrorIs(t, err, ErrOutsideRange)
}

func FuzzReferenceGas(f *testing.F) {
	f.Add(1e5, 300.0)
	f.Add(199e6, 150.0)
	f.Add(4.6e6, 200.0)
	f.Fuzz(func(t *testing.T, p, T float64) {
		for name, g := range referenceGases {
			rho, kappa, alpha, err := g.h.state(p, T)
			if err != nil {
				continue
			}
			require.True(t, rho > 0 && kappa > 0 && alpha > 0 && !math.IsInf(alpha, 0), name)
			require.InEpsilon(t, p, pressureAt(g.h, rho, T), 1e-10, name)
		}
	})
}

func BenchmarkNitrogenDensity(b *testing.B) {
	p := 30 * unit.Megapascal
	for b.Loop() {
		_, _ = Nitrogen{}.Density(p, unit.Celsius(60))
	}
}
