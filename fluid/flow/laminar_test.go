package flow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
)

// Buckingham and Reiner's equation (1921), forward: the rate of a Bingham fluid
// from the wall stress, 8V/D = (τw/μ)(1 - 4φ/3 + φ⁴/3) with φ = τ0/τw.
func TestPipeLaminarMeetsBuckinghamReiner(t *testing.T) {
	const μ, τ0 = 0.03, 10.0
	r := flow.Bingham(μ, τ0)
	for _, τw := range []float64{10.001, 10.1, 11, 15, 30, 100, 1000, 1e5} {
		φ := τ0 / τw
		shear := τw / μ * (1 - 4*φ/3 + φ*φ*φ*φ/3)
		l, err := r.PipeLaminar(unit.ShearRate(shear))
		require.NoError(t, err)
		// Near the yield stress the forward formula loses its digits to
		// cancellation, not the solution.
		near(t, τw, float64(l.WallStress), 1e-9, τw)
		// In a slot: 12V/h' = (τw/μ)(1 - 3φ/2 + φ³/2).
		l, err = r.SlotLaminar(unit.ShearRate(τw / μ * (1 - 1.5*φ + φ*φ*φ/2)))
		require.NoError(t, err)
		near(t, τw, float64(l.WallStress), 1e-9, τw)
	}
}

// Hagen and Poiseuille: τw = μ 8V/D. Metzner and Reed (1955): τw = K [(3n+1)/(4n) 8V/D]ⁿ.
func TestPipeLaminarClosedForms(t *testing.T) {
	l, err := flow.Newtonian(2 * unit.Centipoise).PipeLaminar(500)
	require.NoError(t, err)
	near(t, 1, float64(l.WallStress), 1e-15)
	near(t, 500, float64(l.WallRate), 1e-15)
	require.Equal(t, 1.0, l.Index)
	l, err = flow.PowerLaw(0.5, 0.4).PipeLaminar(500)
	require.NoError(t, err)
	near(t, 0.5*math.Pow(2.2/1.6*500, 0.4), float64(l.WallStress), 1e-14)
	l, err = flow.PowerLaw(0.5, 0.4).SlotLaminar(500)
	require.NoError(t, err)
	near(t, 0.5*math.Pow(1.8/1.2*500, 0.4), float64(l.WallStress), 1e-14)
	// A yield stress too small to matter leads to the same answer by the other way.
	l, err = flow.Rheology{Yield: 1e-9, Consistency: 0.5, Index: 0.4}.PipeLaminar(500)
	require.NoError(t, err)
	near(t, 0.5*math.Pow(2.2/1.6*500, 0.4), float64(l.WallStress), 1e-9)
}

// The Rabinowitsch–Mooney integral itself, by Gauss–Legendre quadrature:
// 8V/D = 4/τw³ ∫ τ² γ(τ) dτ, and in the slot 12V/h' = 3/τw² ∫ τ γ(τ) dτ.
func TestLaminarMeetsTheIntegral(t *testing.T) {
	for _, n := range []float64{0.1, 0.3, 0.5, 0.62, 0.9, 1, 1.5, 2} {
		for _, τ0 := range []float64{0.01, 1, 50} {
			for _, shear := range []float64{1e-3, 1, 50, 1000, 1e5} {
				r := flow.Rheology{Yield: unit.Pressure(τ0), Consistency: 0.4, Index: n}
				for _, power := range []int{2, 1} {
					solve := r.PipeLaminar
					if power == 1 {
						solve = r.SlotLaminar
					}
					l, err := solve(unit.ShearRate(shear))
					require.NoError(t, err)
					τw := float64(l.WallStress)
					// τ = τ0 + (τw-τ0) s³ takes the fractional power out.
					x := τw - τ0
					integral := quad.Fixed(func(s float64) float64 {
						τ := τ0 + x*s*s*s
						return math.Pow(τ, float64(power)) * math.Pow(x*s*s*s/0.4, 1/n) * 3 * s * s * x
					}, 0, 1, 64, nil, 0)
					got := float64(power+2) * integral / math.Pow(τw, float64(power+1))
					// The stress is good to 1e-10 where this is: the rate is
					// steep in x, which has lost digits to the yield stress.
					near(t, shear, got, 1e-9+1e-15*τw/(n*x), n, τ0, shear, power)
				}
			}
		}
	}
}

// n' by its definition, d ln τw/d ln V.
func TestLocalIndex(t *testing.T) {
	for _, shear := range []float64{0.1, 10, 300, 5000} {
		for _, solve := range []func(unit.ShearRate) (flow.Laminar, error){mud.PipeLaminar, mud.SlotLaminar} {
			l, err := solve(unit.ShearRate(shear))
			require.NoError(t, err)
			up, _ := solve(unit.ShearRate(shear * 1.0001))
			down, _ := solve(unit.ShearRate(shear / 1.0001))
			slope := math.Log(float64(up.WallStress/down.WallStress)) / (2 * math.Log(1.0001))
			near(t, slope, l.Index, 1e-5)
			near(t, float64(mud.Rate(l.WallStress)), float64(l.WallRate), 1e-8)
		}
	}
}

func TestLaminarErrors(t *testing.T) {
	_, err := mud.PipeLaminar(-1)
	require.ErrorContains(t, err, "nominal shear rate: is -1 1/s; must be from 0 1/s to 1")
	_, err = flow.Rheology{}.SlotLaminar(unit.ShearRate(math.NaN()))
	require.ErrorContains(t, err, "Rheology.Index")
	require.ErrorContains(t, err, "nominal shear rate: is NaN")
	l, err := mud.PipeLaminar(0)
	require.NoError(t, err)
	require.Equal(t, flow.Laminar{WallStress: 4 * unit.Pascal, Index: 0.62}, l)
}

func FuzzPipeLaminar(f *testing.F) {
	f.Add(4.0, 0.6, 0.62, 300.0)
	f.Add(1e-9, 1e-6, 0.1, 1e8)
	f.Add(1e-300, 1e-6, 0.1, 1e8)
	f.Add(1e4, 1e4, 2.0, 1e-300)
	f.Fuzz(func(t *testing.T, τ0, k, n, shear float64) {
		r := flow.Rheology{Yield: unit.Pressure(τ0), Consistency: unit.Consistency(k), Index: n}
		for _, solve := range []func(unit.ShearRate) (flow.Laminar, error){r.PipeLaminar, r.SlotLaminar} {
			l, err := solve(unit.ShearRate(shear))
			if err != nil {
				continue
			}
			for _, v := range []float64{float64(l.WallStress), float64(l.WallRate), l.Index} {
				if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
					t.Fatalf("%+v at %g: %+v", r, shear, l)
				}
			}
			if l.WallStress < r.Yield {
				t.Fatalf("%+v at %g: wall stress below the yield stress: %+v", r, shear, l)
			}
		}
	})
}

func BenchmarkHerschelBulkleyWallStress(b *testing.B) {
	b.ReportAllocs()
	s := 1.0
	for b.Loop() {
		_, _ = mud.PipeLaminar(unit.ShearRate(s))
		if s *= 1.01; s > 1e4 {
			s = 1
		}
	}
}

func ExampleRheology_PipeLaminar() {
	// 13 lb/gal mud at 300 gal/min in 4.276 in pipe.
	pipe := flow.Conduit{Outer: 4.276 * unit.Inch}
	v := pipe.Velocity(300 * unit.GallonPerMinute)
	r := flow.Bingham(20*unit.Centipoise, 12*unit.PoundForcePer100SquareFeet)
	l, err := r.PipeLaminar(unit.ShearRate(8 * float64(v) / float64(pipe.Outer)))
	fmt.Printf("wall stress %.2f lbf/100ft2, %v\n", l.WallStress.In(unit.PoundForcePer100SquareFeet), err)
	// Output: wall stress 21.60 lbf/100ft2, <nil>
}
