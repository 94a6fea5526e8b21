package sequence_test

import (
	"context"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// lifted is a well of two zones, of 7 and 8.2 lb/gal, in 2.992 in tubing to 6,000 ft and
// 2.441 in below it, whose oil has 2 cP.
func lifted() *sequence.Plan {
	p := producer()
	x := p.Steps[0].Produce
	x.Loss, x.Rate, x.Density, x.Chokes, x.Viscosity = 0, 0, 0, nil, 2*unit.Centipoise
	p.Compartments[0].Bores = []sequence.Bore{{To: 6000 * foot, Outer: 2.992 * unit.Inch}, {To: 8600 * foot, Outer: 2.441 * unit.Inch}}
	upper := sequence.Formation{Name: "upper sand", MD: 8000 * foot, Inflow: &sequence.Inflow{Index: 2 * unit.BarrelPerDayPSI, Density: 8.2 * ppg}}
	setPore(&upper, 3900)
	p.Formations = append(p.Formations, upper)
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "upper screen", TopMD: 7800 * foot, BottomMD: 8200 * foot, Fluid: "oil", Formation: "upper sand"})
	addPort(p, "upper sleeve", "tubing", "upper screen", true)
	p.Ports[1].MD = 8000 * foot
	return p
}

// By hand, zone by zone: with a pressure where the lower zone comes in, its rate, the
// weight and friction up to the upper one, that one's rate, the mean density by rate and the
// friction of both bores up to the wellhead; the pressure is that with which 400 psi are left
// there, found by halving. It is another way than by turns, with fluid/flow's own friction.
func TestOutflowSectionBySection(t *testing.T) {
	p := lifted()
	loss := func(density, q, from, to float64, bore float64) float64 { // psi, of lb/gal and bbl/d over feet
		x, err := flow.Stream{Conduit: flow.Conduit{Outer: unit.Length(bore) * unit.Inch}, Rheology: flow.Newtonian(2 * unit.Centipoise), Density: unit.Density(density) * ppg,
			Rate: unit.FlowRate(q) * unit.BarrelPerDay}.Friction()
		require.NoError(t, err)
		return float64(x.Gradient) * float64(foot) * (to - from) / float64(psi)
	}
	var q1, q2 float64
	head := func(bottom float64) float64 { // at the wellhead
		q1 = 3 * (4300 - bottom)
		up := bottom - 7*psiPerFootPpg*900 - loss(7, q1, 8000, 8900, 2.441)
		q2 = 2 * (3900 - up)
		mean := (7*q1 + 8.2*q2) / (q1 + q2)
		return up - mean*psiPerFootPpg*8000 - loss(mean, q1+q2, 6000, 8000, 2.441) - loss(mean, q1+q2, 0, 6000, 2.992)
	}
	low, high := 3600.0, 4299.0
	for range 200 {
		if mid := (low + high) / 2; head(mid) > 400 {
			high = mid
		} else {
			low = mid
		}
	}
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	rates := map[string]float64{}
	for _, z := range r.Steps[0].Zones {
		rates[z.Formation] = z.Rate.In(unit.BarrelPerDay)
	}
	require.Greater(t, q1, 300.0)
	require.Greater(t, q2, 100.0)
	require.InEpsilon(t, q1, rates["sand"], 1e-7)
	require.InEpsilon(t, q2, rates["upper sand"], 1e-7)
	// At 8,550 ft the gauge stands 350 ft over where the lower zone comes in.
	at := flowedAt(t, p, "tubing")
	require.InDelta(t, low-350*7*psiPerFootPpg-loss(7, q1, 8550, 8900, 2.441), at, 0.01)
}

// Where the bores change between two zones the pressure isn't straight: at 5,000 ft it is
// what weight and friction make of the wellhead's, within what encloses it; and choices of
// the formations' pressures lie in what encloses all of them.
func TestOutflowBySectionsIsEnclosed(t *testing.T) {
	p := lifted()
	p.Devices[0].MD = 5000 * foot
	p.Devices[0].Actions[0].Inside = "tubing"
	for i := range p.Formations {
		f := &p.Formations[i]
		f.Pressure = unit.Within(f.Pressure.Nominal, 0.01)
	}
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	f := r.Steps[0].Triggers[0]
	least, _ := f.Least.Pressure()
	most, _ := f.Greatest.Pressure()
	random := newRandom(1, 9)
	for range 20 {
		q := p.Clone()
		for i := range q.Formations {
			b := q.Formations[i].Pressure
			q.Formations[i].Pressure = unit.Exactly(b.Least + (b.Greatest-b.Least)*pressure(random.Float64()))
		}
		at := flowedAt(t, q, "tubing") - 9*psiPerFootPpg*5000
		require.GreaterOrEqual(t, at, least.In(psi)-1e-6)
		require.LessOrEqual(t, at, most.In(psi)+1e-6)
	}
}

// Cuts weigh in the column: 30 % water of 9 lb/gal and 70 % oil of 6 make 6.9, of which a
// tenth is gas: 6.21 lb/gal, as if that were the density.
func TestCutsWeighInTheColumn(t *testing.T) {
	cut, plain := lifted(), lifted()
	*cut.Formations[0].Inflow = sequence.Inflow{Index: 3 * unit.BarrelPerDayPSI, Density: 6 * ppg, WaterCut: 0.3, WaterDensity: 9 * ppg, GasCut: 0.1}
	*plain.Formations[0].Inflow = sequence.Inflow{Index: 3 * unit.BarrelPerDayPSI, Density: 6.21 * ppg, WaterCut: 0.3}
	at := flowedAt(t, plain, "tubing")
	require.InDelta(t, at, flowedAt(t, cut, "tubing"), 1e-6)
	require.Less(t, at, flowedAt(t, lifted(), "tubing")-20, "lighter than 7 lb/gal")
}

// What can't be worked out is refused with a line that says what to write.
func TestOutflowBySectionsThatIsRefused(t *testing.T) {
	for says, edit := range map[string]func(p *sequence.Plan, x *sequence.Produce){
		"those follow from it":              func(_ *sequence.Plan, x *sequence.Produce) { x.Density = 7 * ppg },
		`wants the bores of "tubing"`:       func(p *sequence.Plan, _ *sequence.Produce) { p.Compartments[0].Bores = nil },
		"what flows has a weight":           func(p *sequence.Plan, _ *sequence.Produce) { p.Formations[1].Inflow.Density = 0 },
		"must be from 0 to below 1":         func(p *sequence.Plan, _ *sequence.Produce) { p.Formations[0].Inflow.GasCut = 1 },
		"water_density without a water_cut": func(p *sequence.Plan, _ *sequence.Produce) { p.Formations[0].Inflow.WaterDensity = 9 * ppg },
		"produce.density: is 0 lb/gal":      func(_ *sequence.Plan, x *sequence.Produce) { x.Viscosity = 0 },
	} {
		p := lifted()
		edit(p, p.Steps[0].Produce)
		_, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.ErrorContains(t, err, says)
	}
}
