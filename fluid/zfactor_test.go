package fluid

import (
	"math"
	"testing"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"

	"completion.example/internal/root"
)

// The root is unique because r rises with ρ on every isotherm of the range, and
// the bracket holds every state.
func TestZFactorHasOneRoot(t *testing.T) {
	most := long.Size(60, 400)
	for i := range most {
		tpr := zTLeast + (zTGreatest-zTLeast)*float64(i)/float64(most-1)
		s := newIsotherm(tpr)
		for j := range 3001 {
			_, slope, _ := s.ideal(float64(j) / 1000)
			require.Greater(t, slope, 0.05, "tpr %g", tpr)
		}
		r, _, _ := s.ideal(3)
		require.Greater(t, r, zCritical*zPGreatest/tpr)
	}
}

// Against the project's own bracketed root finder, to 1e-12; and the number of
// steps.
func TestZFactorConverges(t *testing.T) {
	for i := range 80 {
		tpr := zTLeast + (zTGreatest-zTLeast)*math.Pow(float64(i)/79, 2)
		s := newIsotherm(tpr)
		for j := range 100 {
			ppr := zPGreatest * math.Pow(float64(j+1)/100, 2)
			r := zCritical * ppr / tpr
			rho, err := root.Find(func(rho float64) float64 { f, _, _ := s.ideal(rho); return f - r }, 0, 3, 0)
			require.NoError(t, err)
			z, err := ZFactor(ppr, tpr)
			require.NoError(t, err)
			require.InEpsilon(t, r/rho, z, 1e-12, "ppr %g tpr %g", ppr, tpr)
		}
	}
}

// Limits: ideal gas at no pressure, with the slope of the second virial
// coefficient.
func TestZFactorThinGas(t *testing.T) {
	z, err := ZFactor(0, 1.5)
	require.NoError(t, err)
	require.Equal(t, 1.0, z)
	z, err = ZFactor(1e-6, 1.5)
	require.NoError(t, err)
	s := newIsotherm(1.5)
	require.InDelta(t, 1+s.c1*zCritical*1e-6/1.5, z, 1e-12)
}

func TestZFactorDerivatives(t *testing.T) {
	s := newIsotherm(1.2)
	for _, rho := range []float64{0.01, 0.5, 1, 2} {
		const h = 1e-5
		up, upSlope, _ := s.ideal(rho + h)
		down, downSlope, _ := s.ideal(rho - h)
		_, slope, bend := s.ideal(rho)
		require.InDelta(t, (up-down)/(2*h), slope, 1e-8)
		require.InDelta(t, (upSlope-downSlope)/(2*h), bend, 1e-7)
	}
}

func TestZFactorRange(t *testing.T) {
	for _, c := range []struct {
		p, t float64
		ok   bool
	}{
		{1, 1.05, true}, {1, 1.0499, false}, {1, 3, true}, {1, 3.0001, false},
		{30, 2, true}, {30.001, 2, false}, {-0.001, 2, false}, {math.NaN(), math.NaN(), false}, {math.Inf(1), 2, false},
	} {
		z, err := ZFactor(c.p, c.t)
		if c.ok {
			require.NoError(t, err)
			require.Positive(t, z)
		} else {
			require.ErrorIs(t, err, ErrOutsideRange)
		}
	}
}

func FuzzZFactor(f *testing.F) {
	f.Add(1.0, 1.05)
	f.Add(30.0, 3.0)
	f.Add(1e-300, 1.2)
	f.Add(1.13, 1.0501)
	f.Fuzz(func(t *testing.T, ppr, tpr float64) {
		z, err := ZFactor(ppr, tpr)
		if err != nil {
			return
		}
		require.True(t, z > 0.2 && z < 4, "Z = %g at ppr %g, tpr %g", z, ppr, tpr)
		s := newIsotherm(tpr)
		r := zCritical * ppr / tpr
		if r > 1e-300 {
			back, _, _ := s.ideal(r / z)
			require.InEpsilon(t, r, back, 1e-12)
		}
	})
}

func BenchmarkZFactor(b *testing.B) {
	var s float64
	for b.Loop() {
		for _, tpr := range [...]float64{1.05, 1.2, 1.5, 2, 3} {
			for _, ppr := range [...]float64{0.2, 1, 3, 7, 15} {
				z, _ := ZFactor(ppr, tpr)
				s += z
			}
		}
	}
	_ = s
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/25, "ns/Z")
}
