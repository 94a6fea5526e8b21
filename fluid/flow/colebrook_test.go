package flow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"github.com/stretchr/testify/require"
)

var roughnesses = []float64{0, 1e-6, 1e-5, 1e-4, 1e-3, 0.01, 0.05}

// The law itself, put together again from the answer, and a bisection of it.
func TestColebrookTo1em12(t *testing.T) {
	for _, e := range roughnesses {
		for re := 1000.0; re <= 1e9; re *= 1.07 {
			lo, hi := 1.0, 100.0
			for range 200 {
				x := (lo + hi) / 2
				if x+2*math.Log10(e/3.7+2.51/re*x) > 0 {
					hi = x
				} else {
					lo = x
				}
			}
			tolerance := 2e-13
			if re < 4000 {
				tolerance = 1e-10
			}
			near(t, 1/(lo*lo), float64(flow.Colebrook(re, e)), tolerance, re, e)
		}
	}
}

// Fully rough flow, von Kármán: 1/√f = -2 log10(ε/D/3.7) as Re grows.
func TestColebrookFullyRough(t *testing.T) {
	x := -2 * math.Log10(0.01/3.7)
	near(t, 1/(x*x), float64(flow.Colebrook(1e15, 0.01)), 1e-10)
}

func TestColebrookOutside(t *testing.T) {
	for _, c := range [][2]float64{{100, 0}, {0, 0}, {-1, 0}, {1e5, -1e-9}, {math.NaN(), 0}, {1e5, math.NaN()}} {
		require.True(t, math.IsNaN(float64(flow.Colebrook(c[0], c[1]))), "%v", c)
		require.True(t, math.IsNaN(float64(flow.Turbulent(1, c[0], c[1]))), "%v", c)
	}
	require.True(t, math.IsNaN(float64(flow.Turbulent(0.05, 1e4, 0))))
	require.True(t, math.IsNaN(float64(flow.Turbulent(0.7, 1e13, 0))))
}

// A factor has no meaning at rest, against the flow, or in a pipe rougher than wide.
func TestExplicitFormulasOutside(t *testing.T) {
	type law func(re, e float64) flow.DarcyFactor
	for name, f := range map[string]law{"Churchill": flow.Churchill, "Haaland": flow.Haaland, "SwameeJain": flow.SwameeJain, "Chen": flow.Chen} {
		for _, c := range [][2]float64{{0, 0}, {0, 0.01}, {-1, 0}, {math.Inf(1), 0}, {1e5, -1e-9}, {1e5, 1.1}, {math.NaN(), 0}, {1e5, math.NaN()}} {
			require.True(t, math.IsNaN(float64(f(c[0], c[1]))), "%s %v", name, c)
		}
	}
	// Churchill's is laminar however slow the flow is: Hagen and Poiseuille's 64/Re.
	for _, re := range []float64{1e-300, 1e-30, 1, 100} {
		near(t, 64/re, float64(flow.Churchill(re, 0.01)), 1e-12, re)
	}
	require.False(t, math.IsInf(float64(flow.Churchill(1e20, 0)), 0))
	for _, c := range [][2]float64{{0, 1}, {-1, 1}, {1e4, 0}, {1e4, -1}, {1e4, 1e-4}, {1e4, 3}, {math.NaN(), 1}, {1e4, math.NaN()}} {
		require.True(t, math.IsNaN(float64(flow.Blasius(c[0], c[1]))), "%v", c)
	}
}

// The two factors of one friction: at Re 1e5 and ε/D 1e-4 Moody's chart has
// 0.0185, Fanning's count a quarter of it. By definition: 64/Re and 16/Re.
func TestTheTwoFactors(t *testing.T) {
	require.InDelta(t, 0.0185, float64(flow.Colebrook(1e5, 1e-4)), 5e-5)
	require.InDelta(t, 0.0185/4, float64(flow.Turbulent(1, 1e5, 1e-4)), 2e-5)
	f, err := stream(flow.Conduit{Outer: 0.1}, water, 0.01).Friction()
	require.NoError(t, err)
	near(t, 16/f.Reynolds, float64(f.Factor), 1e-12)
	near(t, 64/f.Reynolds, float64(f.Factor.Darcy()), 1e-12)
	require.Equal(t, f.Factor, f.Darcy().Fanning())
	require.Equal(t, "0.0185", flow.DarcyFactor(0.018513).Rounded(3))
	require.Equal(t, "0.00463", flow.FanningFactor(0.004628).Rounded(3))
}

// The accuracies that the docs state against Colebrook's law.
func TestExplicitFormulasKeepTheirDistance(t *testing.T) {
	worst := func(f func(re, e float64) flow.DarcyFactor, from, to, least float64) float64 {
		w := 0.0
		for _, e := range roughnesses {
			if e < least {
				continue
			}
			for re := from; re <= to; re *= 1.1 {
				w = max(w, math.Abs(float64(f(re, e)/flow.Colebrook(re, e))-1))
			}
		}
		return w
	}
	for _, c := range []struct {
		name            string
		f               func(re, e float64) flow.DarcyFactor
		from, to, least float64
		limit           float64
	}{
		{"Churchill from 1e4", flow.Churchill, 1e4, 1e8, 0, 0.022},
		{"Churchill from 4e3", flow.Churchill, 4e3, 1e8, 0, 0.034},
		{"Haaland", flow.Haaland, 4e3, 1e8, 0, 0.02},
		{"Swamee and Jain", flow.SwameeJain, 5e3, 1e8, 1e-6, 0.03},
		{"Chen", flow.Chen, 4e3, 1e8, 1e-6, 0.005},
	} {
		w := worst(c.f, c.from, c.to, c.least)
		require.Less(t, w, c.limit, c.name)
		require.Greater(t, w, c.limit/4, "%s: the doc is too modest", c.name)
	}
}

// Turbulent for a power law against Dodge and Metzner's own equation for smooth
// pipe, 1/√f = 4/n^0.75 log10[Re f^(1-n/2)] - 0.4/n^1.2, whose constant is rounded.
func TestTurbulentMeetsDodgeMetzner(t *testing.T) {
	for _, n := range []float64{0.36, 0.5, 0.7, 0.9, 1} {
		for _, re := range []float64{3e3, 1e4, 36e3} {
			f := float64(flow.Turbulent(n, re, 0))
			right := 4/math.Pow(n, 0.75)*math.Log10(re*math.Pow(f, 1-n/2)) - 0.4/math.Pow(n, 1.2)
			near(t, 1/math.Sqrt(f), right, 0.004, n, re)
		}
	}
	// The two ways meet at n = 1.
	for _, e := range roughnesses {
		near(t, float64(flow.Turbulent(1, 1e5, e)), float64(flow.Turbulent(1-1e-9, 1e5, e)), 1e-7, e)
	}
}

// Blasius's own smooth-pipe form is 0.0791/Re^0.25; the power form comes to
// 0.0786/Re^0.25 for n = 1.
func TestPowerForm(t *testing.T) {
	near(t, 0.0786/math.Pow(1e4, 0.25), float64(flow.Blasius(1e4, 1)), 1e-12)
	for _, n := range []float64{0.4, 0.6, 0.8, 1} {
		for _, re := range []float64{4e3, 1e4, 3e4} {
			near(t, float64(flow.Turbulent(n, re, 0)), float64(flow.Blasius(re, n)), 0.06, n, re)
		}
	}
}

func BenchmarkColebrook(b *testing.B) {
	b.ReportAllocs()
	re := 4e3
	for b.Loop() {
		_ = flow.Colebrook(re, 1e-4)
		if re *= 1.01; re > 1e8 {
			re = 4e3
		}
	}
}

func BenchmarkTurbulent(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_ = flow.Turbulent(0.7, 2e4, 1e-4)
	}
}

func ExampleColebrook() {
	// White, Fluid Mechanics; the same case prints 0.018513866 in the
	// documentation of the Python library fluids.
	fmt.Printf("%.9f\n", flow.Colebrook(1e5, 1e-4))
	// Output: 0.018513866
}
