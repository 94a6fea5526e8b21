package sequence_test

import (
	"context"
	"math"
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// cushionWell is tubing whose upper part holds nitrogen, shut in at the top, over
// brine, open to the annulus at the bottom, in a vertical hole of 8,000 ft whose
// temperature rises from 60 to 180 degF.
func cushionWell() *sequence.Plan {
	p := &sequence.Plan{Name: "cushion", Well: sequence.Well{MD: 8000 * foot, Temperatures: map[string][]sequence.MarkedTVD{
		sequence.Undisturbed: {{TVD: 0, Temperature: unit.Fahrenheit(60)}, {TVD: 8000 * foot, Temperature: unit.Fahrenheit(180)}}}},
		Fluids: []sequence.Fluid{{Name: "brine"}, {Name: "nitrogen", Kind: sequence.Nitrogen}}}
	setDensity(&p.Fluids[0], 9)
	p.Compartments = []sequence.Compartment{
		{Name: "tubing", BottomMD: 8000 * foot, Surface: true, Capacity: 0.01 * unit.BarrelPerFoot,
			Layers: []sequence.Layer{{Fluid: "nitrogen", ToMD: 4000 * foot}, {Fluid: "brine", ToMD: 8000 * foot}}},
		{Name: "annulus", BottomMD: 8000 * foot, Fluid: "brine", Surface: true, Capacity: 0.03 * unit.BarrelPerFoot},
	}
	p.Ports = []sequence.Port{{Name: "shoe", Joins: []string{"tubing", "annulus"}, MD: 8000 * foot}}
	return p
}

// gasByHand integrates nitrogen by Runge and Kutta's fourth order in steps of
// 5 m, with its mass for each m²: p in Pa gauge, the temperature of cushionWell.
func gasByHand(t *testing.T, p, from, to float64) (q, mass float64) {
	t.Helper()
	depth := 8000 * foot
	rho := func(z, p float64) float64 {
		d, err := fluid.Nitrogen{}.Density(unit.Pressure(p), unit.Fahrenheit(60).Add(unit.TemperatureDifference(120*5/9.0*z/float64(depth))))
		require.NoError(t, err)
		return float64(d)
	}
	n := max(int(math.Abs(to-from)/5), 1)
	h := (to - from) / float64(n)
	const g = 9.80665
	for i := range n {
		z := from + h*float64(i)
		a := rho(z, p)
		b := rho(z+h/2, p+h/2*g*a)
		c := rho(z+h/2, p+h/2*g*b)
		d := rho(z+h, p+h*g*c)
		m := h / 6 * (a + 2*b + 2*c + d)
		p, mass = p+g*m, mass+m
	}
	return p, mass
}

// Nitrogen at 2,500 psi on 4,000 ft of brine is shut in; the annulus opens the shoe and
// goes on to 3,000 psi and back down to 500 psi. The same by a search for the level at which the mass of the nitrogen
// fits, by another integration: within 1e-6.
func TestClosedCushionAgainstAnotherIntegration(t *testing.T) {
	p := cushionWell()
	p.Compartments[0].Surface = false
	setTrapped(&p.Compartments[0], 2500)
	addAction(p, "shoe", "annulus", "tubing", rising(20*psi, 20*psi)).Opens = []string{"shoe"}
	p.Devices[0].MD = 8000 * foot
	p.Devices = append(p.Devices, sequence.Device{Name: "gauge", MD: 3000 * foot, Actions: []sequence.Action{
		{Name: "reads", Inside: "annulus", Outside: "tubing", Triggers: []sequence.Trigger{rising(19000*psi, 19000*psi)}}}})
	p.Steps = []sequence.Step{
		{Name: "annulus", Ramps: []map[string]pressure{{"annulus": 3000 * psi}}, Expect: []string{"shoe: moves"}},
		{Name: "bleed", Ramps: []map[string]pressure{{"annulus": 500 * psi}}},
	}
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	at := func(step int, device, compartment string) float64 {
		points := r.Steps[step].Points
		for _, x := range points[len(points)-1].Pressures {
			if x.Device == device && x.Compartment == compartment {
				return float64(x.Pressure)
			}
		}
		t.Fatal("no such pressure")
		return 0
	}
	bottom, level := float64(8000*foot), float64(4000*foot)
	_, mass := gasByHand(t, float64(2500*psi), 0, level)
	brine := float64(9*unit.PoundPerGallon) * 9.80665
	annulus := map[int]float64{0: 3000, 1: 500}
	for step, surface := range annulus {
		foot := func(z float64) float64 { return surface*float64(psi) + brine*z }
		lo, hi := 1.0, bottom
		for range 60 {
			mid := (lo + hi) / 2
			top, m := gasByHand(t, foot(mid), mid, 0)
			if _ = top; -m < mass {
				lo = mid
			} else {
				hi = mid
			}
		}
		// Both columns of brine hang together at the bottom: at the level tubing and
		// annulus are alike.
		want, _ := gasByHand(t, foot(lo), lo, float64(3000*unit.Foot))
		if lo < float64(3000*unit.Foot) {
			want = foot(float64(3000 * unit.Foot))
		}
		require.InEpsilon(t, want, at(step, "gauge", "tubing"), 1e-6, "at %v psi", surface)
	}
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
}
