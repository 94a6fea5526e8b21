package flow_test

import (
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// profile solves the annulus by brute force, another way: shoot the velocity
// from the inner wall to the outer one by Simpson's rule over the whole gap and
// bisect the radius of no shear; then integrate the rate from the velocity.
func profile(r flow.Rheology, ri, ro, gradient float64) (rate float64) {
	const n = 2000
	h := (ro - ri) / n
	γ := func(x, c2 float64) float64 { // dv/dr
		τ := gradient / 2 * (c2/x - x)
		return math.Copysign(float64(r.Rate(unit.Pressure(math.Abs(τ)))), τ)
	}
	// Between lo and hi the velocity at the outer wall goes from below zero to above.
	lo, hi := ri*ri, ro*ro
	var v [n + 1]float64
	for range 45 {
		c2 := (lo + hi) / 2
		left := γ(ri, c2)
		for i := range n {
			x := ri + h*float64(i)
			right := γ(x+h, c2)
			v[i+1] = v[i] + h/6*(left+4*γ(x+h/2, c2)+right)
			left = right
		}
		if v[n] > 0 {
			hi = c2
		} else {
			lo = c2
		}
	}
	for i := 0; i < n; i += 2 {
		x := ri + h*float64(i)
		rate += h / 3 * 2 * math.Pi * (x*v[i] + 4*(x+h)*v[i+1] + (x+2*h)*v[i+2])
	}
	return rate
}

func TestAnnulusMeetsBruteForce(t *testing.T) {
	for _, r := range []flow.Rheology{mud, flow.Newtonian(0.02), flow.Bingham(0.03, 10), flow.PowerLaw(1, 0.4), flow.PowerLaw(0.2, 1.3), {Yield: 8, Consistency: 1.5, Index: 0.4}} {
		for _, inner := range []float64{0.02, 0.0889, 0.15} {
			c := flow.Conduit{Outer: 0.2, Inner: unit.Length(inner)}
			const gradient = 3000
			want := profile(r, inner/2, 0.1, gradient)
			got, err := c.LaminarRate(r, gradient)
			require.NoError(t, err)
			near(t, want, float64(got), 5e-6, r, inner)
		}
	}
}

// Forward and inverse.
func TestAnnulusRoundTrip(t *testing.T) {
	for _, n := range []float64{0.1, 0.3, 0.62, 1, 1.4, 2} {
		for _, τ0 := range []unit.Pressure{0, 0.01, 3, 40} {
			for _, ratio := range []float64{0, 0.002, 0.05, 0.4, 0.8, 0.99} {
				c := flow.Conduit{Outer: 0.2, Inner: unit.Length(0.2 * ratio)}
				r := flow.Rheology{Yield: τ0, Consistency: 0.4, Index: n}
				for _, v := range []unit.Velocity{1e-4, 0.01, 0.5, 3} {
					l, err := c.Laminar(r, v)
					require.NoError(t, err)
					q, err := c.LaminarRate(r, l.Gradient(c.HydraulicDiameter()))
					require.NoError(t, err)
					// A rate next to the yield stress hangs on the last digits of it.
					loose := 1e-14 * float64(l.WallStress) / float64(l.WallStress-r.Yield) / n
					near(t, float64(v), float64(c.Velocity(q)), 1e-9+10*loose, n, τ0, ratio, v)
				}
			}
		}
	}
}

// A narrow gap is a slot.
func TestNarrowAnnulusIsASlot(t *testing.T) {
	c := flow.Conduit{Outer: 0.2, Inner: 0.2 * 0.995}
	for _, r := range []flow.Rheology{mud, flow.Newtonian(0.02), flow.PowerLaw(1, 0.4)} {
		l, err := c.Laminar(r, 0.5)
		require.NoError(t, err)
		s, err := r.SlotLaminar(unit.ShearRate(12 * 0.5 / float64(c.HydraulicDiameter())))
		require.NoError(t, err)
		near(t, float64(s.WallStress), float64(l.WallStress), 1e-5)
	}
}

// The doc of SlotLaminar: how far the slot is from the annulus.
func TestSlotKeepsItsDistance(t *testing.T) {
	for _, c := range []struct{ ratio, limit float64 }{{0.5, 0.01}, {0.3, 0.03}} {
		for _, n := range []float64{0.3, 0.5, 1} {
			a := flow.Conduit{Outer: 0.2, Inner: unit.Length(0.2 * c.ratio)}
			r := flow.Rheology{Yield: 3, Consistency: 0.4, Index: n}
			l, err := a.Laminar(r, 1)
			require.NoError(t, err)
			s, err := r.SlotLaminar(unit.ShearRate(12 / float64(a.HydraulicDiameter())))
			require.NoError(t, err)
			high := float64(s.WallStress/l.WallStress) - 1
			require.Greater(t, high, 0.0, "%v %v", c.ratio, n)
			require.Less(t, high, c.limit, "%v %v", c.ratio, n)
		}
	}
}

// What holds the yield stress holds the fluid.
func TestAnnulusAtTheYieldStress(t *testing.T) {
	c := flow.Conduit{Outer: 0.2, Inner: 0.1}
	at := unit.Gradient(4 * 4 / 0.1) // 4 τ0/(D-d)
	q, err := c.LaminarRate(mud, at)
	require.NoError(t, err)
	require.Zero(t, q)
	q, err = c.LaminarRate(mud, at*1.0001)
	require.NoError(t, err)
	require.Positive(t, q)
}

func TestAnnulusErrors(t *testing.T) {
	_, err := flow.Conduit{Outer: 0.2, Inner: 0.2}.Laminar(mud, -1)
	require.ErrorContains(t, err, "Conduit.Inner: is")
	require.ErrorContains(t, err, "velocity: is")
	_, err = flow.Conduit{Outer: 0.2, Inner: 1e-5}.Laminar(mud, 1)
	require.ErrorContains(t, err, "Newtonian")
	_, err = flow.Conduit{Outer: 0.2, Inner: 1e-5}.LaminarRate(mud, 1e5)
	require.ErrorContains(t, err, "Newtonian")
	_, err = flow.Conduit{Outer: 0.2}.LaminarRate(mud, -1)
	require.ErrorContains(t, err, "gradient: is")
}

func BenchmarkAnnulusHerschelBulkley(b *testing.B) {
	b.ReportAllocs()
	c := flow.Conduit{Outer: 0.2, Inner: 0.12}
	for b.Loop() {
		_, _ = c.Laminar(mud, 1)
	}
}
