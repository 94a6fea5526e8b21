package flow

import (
	"math"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// A Bingham fluid in a concentric annulus has a closed form once the plug's outer edge λ is known, with κ the ratio of radii
// and t the width of the plug, in outer radii:
//
//	2·λ·(λ − t)·ln[(λ − t)/(λ·κ)] − 1 + (t + κ)² + 2·t·(1 − λ) = 0
//	Q = π·Ro⁴·G/(8·µ)·[1 − κ⁴ − 2·λ·(λ − t)·(1 − κ²) − 4/3·(1 + κ³)·t + 1/3·(2·λ − t)³·t]
//
// Source: Fredrickson and Bird, Ind. Eng. Chem. 50 (1958) 347; from memory, and held by its limits: t = 0 is the Newtonian
// annulus (Lamb), λ = 1 the fluid at rest.
func TestBinghamAnnulusClosedForm(t *testing.T) {
	const ro, μ, τ0, g = 0.1, 0.03, 10, 3000.0
	for _, κ := range []float64{0.002, 0.05, 0.3, 0.6, 0.9} {
		plug := 2 * τ0 / (g * ro)
		miss := func(λ float64) float64 {
			return 2*λ*(λ-plug)*math.Log((λ-plug)/(λ*κ)) - 1 + (plug+κ)*(plug+κ) + 2*plug*(1-λ)
		}
		lo, hi := κ+plug, 1.0
		for range 100 {
			if m := (lo + hi) / 2; miss(m) > 0 == (miss(hi) > 0) {
				hi = m
			} else {
				lo = m
			}
		}
		λ := lo
		want := math.Pi * ro * ro * ro * ro * g / (8 * μ) *
			(1 - κ*κ*κ*κ - 2*λ*(λ-plug)*(1-κ*κ) - 4.0/3*(1+κ*κ*κ)*plug + math.Pow(2*λ-plug, 3)*plug/3)
		q, err := Conduit{Outer: 2 * ro, Inner: unit.Length(2 * ro * κ)}.LaminarRate(Bingham(μ, τ0), g)
		require.NoError(t, err)
		require.InEpsilon(t, want, float64(q), 1e-11, "%v", κ)
	}
}

// The start of the search for a wall's stress is near the answer; the answer fits its equation to the last digits,
// with its slope.
func TestExcessSettles(t *testing.T) {
	const τ0, k = 5.0, 0.7
	for _, s := range []shape{round, slot} {
		for _, n := range []float64{0.1, 0.3, 0.6, 1, 1.4, 2} {
			m := 1 / n
			curve := func(u float64) float64 { // ln of the shear rate
				ξ := math.Exp(u)
				p := ξ/(m+2) + 1/(m+1)
				c, j := 3.0, 2.0
				if s == round {
					p, c, j = ξ*ξ/(m+3)+2*ξ/(m+2)+1/(m+1), 4, 3
				}
				return math.Log(c) + m*math.Log(τ0/k) + (m+1)*u + math.Log(p) - j*math.Log1p(ξ)
			}
			worst := 0.0
			last, c := 1/(m+3), 4.0
			if s == slot {
				last, c = 1/(m+2), 3
			}
			for shear := 1e-6; shear < 1e6; shear *= 1.3 {
				ξ, slope, u := excess(shear, τ0, k, m, s)
				require.InDelta(t, math.Log(shear), curve(math.Log(ξ)), 3e-13*(m+1), "%v %v %v", s, n, shear)
				require.InEpsilon(t, (curve(math.Log(ξ)+1e-4)-curve(math.Log(ξ)-1e-4))/2e-4, slope, 1e-6)
				require.InDelta(t, math.Log(τ0*ξ/k), u, 1e-12)
				start := nearer(math.Log(shear/c)-m*math.Log(τ0/k), m, 1/(m+1), last)
				worst = max(worst, math.Abs(math.Log(ξ)-start))
			}
			require.Less(t, worst, 0.19/m, "%v %v", s, n)
		}
	}
}

// Both sides of the fastest shear that is answered.
func TestFastestShear(t *testing.T) {
	r := Bingham(0.02, 5)
	for _, laminar := range []func(unit.ShearRate) (Laminar, error){r.PipeLaminar, r.SlotLaminar} {
		_, err := laminar(1e8)
		require.NoError(t, err)
		_, err = laminar(unit.ShearRate(math.Nextafter(1e8, math.Inf(1))))
		require.ErrorContains(t, err, "nominal shear rate")
	}
}

// settling is a job in wide sections of one size, so that fronts meet the ends of sections, the exit and the outlet at one
// volume but for rounding.
func settling(stages int) Displacement {
	fluid := func(name string, density unit.Density) PumpedFluid {
		return PumpedFluid{Name: name, Density: density, Rheology: Newtonian(1 * unit.Centipoise)}
	}
	d := Displacement{InPipe: fluid("old", 1000), InAnnulus: fluid("old", 1000)}
	wide := Conduit{Outer: 6.9}
	for i := range 3 {
		d.Well.Pipe = append(d.Well.Pipe, ConduitSection{Name: "pipe", Conduit: wide, Length: 400.1, BottomTVD: unit.Length(i+1) * 400.1})
		d.Well.Annulus = append(d.Well.Annulus, ConduitSection{Name: "annulus", Conduit: Conduit{Outer: unit.Length(math.Sqrt(2) * 6.9), Inner: 6.9}, Length: 400.1, BottomTVD: unit.Length(i+1) * 400.1})
	}
	d.Well.Exit = Orifices{Count: 1, Diameter: 0.05, Discharge: 0.95}
	whole := wide.Volume(6 * 400.1)
	for i := range stages {
		d.Stages = append(d.Stages, Stage{Liquid: fluid(string(rune('a'+i)), unit.Density(1100+50*i)), Volume: whole / unit.Volume(stages), Rate: 0.01})
	}
	return d
}

// Volumes that differ by rounding alone are one; what comes to the exit or the outlet at the very end has come; and the jet's
// pressure is that of one liquid before a front has passed and of the next one after.
func TestFrontsMeetEndsButForRounding(t *testing.T) {
	for stages := 1; stages <= 20; stages++ {
		d := settling(stages)
		s, err := d.Schedule()
		require.NoError(t, err)
		whole := float64(d.Well.PipeVolume() + d.Well.AnnulusVolume())
		for i := range s.Points[1:] {
			gap := math.Abs(float64(s.Points[i+1].Volume - s.Points[i].Volume))
			require.True(t, gap == 0 || gap > 1e-9*whole, "%d stages: %v and %v", stages, s.Points[i].Volume, s.Points[i+1].Volume)
		}
		came := slices.IndexFunc(s.Events, func(e Event) bool { return e.What == "a at the outlet" })
		require.NotEqual(t, -1, came, "%d stages", stages)
		require.InEpsilon(t, whole, float64(s.Events[came].Volume), 1e-12)
		for i, e := range s.Events {
			if e.What[1:] != " at the exit" {
				continue
			}
			jet := func(density unit.Density) float64 { return float64(d.Well.Exit.Loss(density, 0.01)) }
			new := d.Stages[e.What[0]-'a'].Liquid.Density
			old := unit.Density(1000)
			if e.What[0] > 'a' {
				old = d.Stages[e.What[0]-'b'].Liquid.Density
			}
			var at []Point
			for _, p := range s.Points {
				if math.Abs(float64(p.Volume-e.Volume)) < 1e-9*whole {
					at = append(at, p)
				}
			}
			require.GreaterOrEqual(t, len(at), 1, "event %d", i)
			if e.Volume < s.Pumped*(1-1e-9) {
				require.InDelta(t, jet(new)-jet(old), float64(at[len(at)-1].Friction-at[0].Friction), 1e-6*jet(new), "%d stages, %s", stages, e.What)
			}
		}
	}
	short := settling(3)
	short.Stages[2].Volume *= 1 - 3e-7
	s, err := short.Schedule()
	require.NoError(t, err)
	for _, e := range s.Events {
		require.NotEqual(t, "a at the outlet", e.What)
	}
}

// What lies a rounding beyond the way out is held to its end.
func TestKillBeyondTheWayOut(t *testing.T) {
	r := killRun{legs: []leg{{v0: 0, v1: 3, z0: 0, z1: 100}, {v0: 3, v1: 7, z0: 100, z1: 0}}}
	for v, z := range map[float64]float64{0: 0, 1.5: 50, 3: 100, 5: 50, 7: 0, 7.1: 0, -0.1: 0} {
		require.InDelta(t, z, r.z(v), 1e-12, "%v", v)
	}
}

// A straight line through zero has no yield stress, whatever rounding leaves of it, and what is below the least that is told
// apart has none either.
func TestTwoReadingsOnALineThroughZero(t *testing.T) {
	for dial := 0.3; dial < 1000; dial *= 1.37 {
		r, err := TwoPointBingham(Reading{Speed: 600, Dial: 2 * dial}, Reading{Speed: 300, Dial: dial})
		require.NoError(t, err)
		require.Zero(t, r.Yield)
		r, err = TwoPointBingham(Reading{Speed: 700, Dial: 7 * dial}, Reading{Speed: 300, Dial: 3 * dial})
		require.NoError(t, err)
		require.Zero(t, r.Yield, "%v", dial)
	}
	slow := Reading{Speed: 300, Dial: 0.02}
	for share, want := range map[float64]bool{0.5: true, 2: false} {
		fast := slow
		fast.Speed = 600
		fast.Dial = 2*slow.Dial - share*float64(leastYield)/float64(Reading{Speed: 1, Dial: 1}.Stress())
		r, err := TwoPointBingham(fast, slow)
		require.NoError(t, err)
		require.Equal(t, want, r.Yield == 0, "%v: %v", share, r.Yield)
	}
}

// A fluid that isn't Newtonian is taken down to an inner pipe of just a thousandth.
func TestThinnestInnerPipe(t *testing.T) {
	fluid := PowerLaw(1, 0.5)
	for inner, ok := range map[unit.Length]bool{0.001: true, unit.Length(math.Nextafter(0.001, 0)): false} {
		c := Conduit{Outer: 1, Inner: inner}
		_, err := c.LaminarRate(fluid, 100)
		require.Equal(t, ok, err == nil, "%v: %v", float64(inner), err)
		_, err = c.Laminar(fluid, 1)
		require.Equal(t, ok, err == nil, "%v: %v", float64(inner), err)
	}
}
