package sequence_test

import (
	"context"
	"testing"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// closedAnnulus is an annulus between 9-5/8 in casing of 8.535 in bore and 4.5 in tubing
// of 3.958 in bore, closed at both ends from 5,000 to 9,000 ft, which is warmed by 60
// degF at its top and by 20 at its bottom.
func closedAnnulus() *sequence.Plan {
	p := gaugeWell()
	p.Well.MD = 9000 * foot
	p.Fluids[0].Compression, p.Fluids[0].Expansion = 3e-6*unit.PerPSI, 2.5e-4*unit.PerFahrenheit
	for i := range p.Compartments {
		p.Compartments[i].BottomMD = 9000 * foot
	}
	closed := sequence.Compartment{Name: "annulus A", TopMD: 5000 * foot, BottomMD: 9000 * foot, Fluid: "brine", Bores: []sequence.Bore{{To: 9000 * foot,
		Outer: 8.535 * unit.Inch, OuterWall: 0.545 * unit.Inch, Inner: 4.5 * unit.Inch, InnerWall: 0.271 * unit.Inch}}}
	setTrapped(&closed, 2000)
	p.Compartments = append(p.Compartments, closed)
	at := func(depth, t float64) sequence.MarkedTVD {
		return sequence.MarkedTVD{TVD: feet(depth), Temperature: unit.Fahrenheit(t)}
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{
		sequence.Undisturbed: {at(0, 60), at(5000, 120), at(9000, 168)},
		"producing":          {at(0, 160), at(5000, 180), at(9000, 188)},
	}
	addAction(p, "far", "tubing", "", rising(9000*psi, 9000*psi))
	p.Steps = []sequence.Step{{Name: "closed"}, {Name: "produce", Temperature: "producing"}, {Name: "cool", Temperature: sequence.Undisturbed}}
	return p
}

func topOf(t *testing.T, r *sequence.Programme, step int, name string) float64 {
	points := r.Steps[step].Points
	profile, err := points[len(points)-1].Profile()
	require.NoError(t, err)
	for _, x := range profile {
		if x.Compartment == name {
			return x.Pressure.In(psi)
		}
	}
	require.Fail(t, name)
	return 0
}

// The rise is that of confined.Trapped for the same annulus, whose fluid conserves its
// mass, warmed by the mean of 40 degF: to what that makes of the square of a relative
// change of volume, a thousandth or so. Cooled again it is what it was.
func TestHeatRaisesWhatIsTrappedBetweenWalls(t *testing.T) {
	p := closedAnnulus()
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	steel := tubular.Steel()
	tube := func(od, id float64) confined.Tube {
		return confined.Tube{OD: unit.Length(od) * unit.Inch, ID: unit.Length(id) * unit.Inch, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}
	}
	inner := tube(4.5, 3.958)
	warming := 40.0 / 1.8 * unit.KelvinDifference
	from := unit.Fahrenheit(144)
	trapped := confined.Trapped{Space: confined.Space{Outer: tube(9.625, 8.535), Inner: &inner},
		Fills: []confined.Fill{{Name: "brine", Volume: 200 * unit.Barrel, From: from, To: unit.Fahrenheit(184),
			Fluid: confined.LinearLiquid{Reference: 9 * ppg, Temperature: from, Compressibility: 3e-6 * unit.PerPSI, Expansivity: 2.5e-4 * unit.PerFahrenheit}}},
		Pressure: 3000 * psi, HeatOuter: warming, HeatInner: warming}
	o, err := trapped.Solve()
	require.NoError(t, err)
	rise := topOf(t, r, 1, "annulus A") - 2000
	require.InEpsilon(t, o.Rise.In(psi), rise, 0.002)
	require.Greater(t, rise, 2000.0)
	require.InDelta(t, 2000, topOf(t, r, 2, "annulus A"), 1e-6)
}

// A rating that holds cold is passed by heat alone; 30 degF of error of the temperature
// count in it; a plan without walls keeps what it meant, and says what it leaves out.
func TestTrappedHeatIsAFinding(t *testing.T) {
	check := func(edit func(p *sequence.Plan)) *sequence.Programme {
		p := closedAnnulus()
		p.Ratings = []sequence.Rating{{Name: "casing", Inside: "annulus A", Background: "brine", FromMD: 5000 * foot, ToMD: 9000 * foot, Burst: exactly(2000)}}
		edit(p)
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		return r
	}
	r := check(func(*sequence.Plan) {})
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, "produce", r.Findings[0].Step)
	require.Equal(t, sequence.RatingCross, r.Findings[0].Kind)
	// 2,000 psi less 9·12/231·5,000 ft at its top, and some 2,600 psi of heat.
	require.True(t, check(func(p *sequence.Plan) { p.Ratings[0].Burst = exactly(2400) }).OK())
	require.False(t, check(func(p *sequence.Plan) {
		p.Ratings[0].Burst = exactly(2400)
		p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{"producing": {Least: -20 * unit.KelvinDifference, Greatest: 20 * unit.KelvinDifference}}
	}).OK())
	old := check(func(p *sequence.Plan) {
		p.Compartments[2].Bores[0].OuterWall, p.Compartments[2].Bores[0].InnerWall = 0, 0
	})
	require.True(t, old.OK())
	require.Contains(t, old.Unchecked, `compartment "annulus A": heat doesn't change its trapped pressure, as the walls of its bores aren't given; "walls": true in an assembly takes them from the tally`)
}

// By hand: 0.5 bbl pressed into what gives, fluid and walls, as fluid/confined says: dp =
// V / Σ V·(c + C). A stroke of as much does the same at once.
func TestStrokesAndBleedsBetweenWalls(t *testing.T) {
	p := closedAnnulus()
	p.Steps = []sequence.Step{{Name: "bleed", VolumeChange: map[string]unit.Volume{"annulus A": -0.5 * unit.Barrel}}, {Name: "move", Ramps: tubingTo(500), Expect: []string{"piston: moves"}}}
	a := addAction(p, "piston", "tubing", "", rising(400*psi, 400*psi))
	a.Strokes = map[string]unit.Volume{"annulus A": 0.5 * unit.Barrel}
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	require.True(t, r.OK(), r.Findings)
	steel := tubular.Steel()
	inner := confined.Tube{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Young: steel.Young, Poisson: steel.Poisson}
	space := confined.Space{Outer: confined.Tube{OD: 9.625 * unit.Inch, ID: 8.535 * unit.Inch, Young: steel.Young, Poisson: steel.Poisson}, Inner: &inner}
	volume := float64(space.Area()) * float64(4000*foot)
	fall := float64(0.5*unit.Barrel) / (volume * (float64(3e-6*unit.PerPSI) + float64(space.Compliance()))) / float64(psi)
	require.InDelta(t, 2000-fall, topOf(t, r, 0, "annulus A"), 1e-6)
	require.Greater(t, fall, 500.0)
	require.InDelta(t, 2000, topOf(t, r, 1, "annulus A"), 1e-6)
}

// What isn't known is refused with a line that says what to add.
func TestWallsThatAreRefused(t *testing.T) {
	for _, x := range []struct {
		edit func(p *sequence.Plan)
		says string
	}{
		{func(p *sequence.Plan) { p.Fluids[0].Expansion = 0 }, "wants its thermal expansion"},
		{func(p *sequence.Plan) { p.Fluids[0].Compression = 0 }, "wants a compressibility"},
		{func(p *sequence.Plan) { p.Compartments[2].Bores[0].InnerWall = 0 }, "the wall of the pipe within"},
		{func(p *sequence.Plan) {
			p.Steps[0].VolumeChange = map[string]unit.Volume{"annulus": unit.Barrel}
		}, "aren't known"},
	} {
		p := closedAnnulus()
		x.edit(p)
		_, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.ErrorContains(t, err, x.says)
	}
}

// By hand: closed from 5,000 to 9,000 ft the annulus cools by 1 to 3 degF while its test
// is held. It loses dp = (α-β)·ΔT/(c+C), by fluid/confined, of which 1 % of the 2,000 psi
// that are held may be lost; what is held outside may rise as well.
func TestATestThatCoolsWhileItIsHeld(t *testing.T) {
	p := closedAnnulus()
	space := p.Compartments[2].Bores[0]
	steel := tubular.Steel()
	inner := confined.Tube{OD: space.Inner, ID: space.Inner - 2*space.InnerWall, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}
	s := confined.Space{Outer: confined.Tube{OD: space.Outer + 2*space.OuterWall, ID: space.Outer, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}, Inner: &inner}
	per := confined.PressurePerDegree(2.5e-4*unit.PerFahrenheit, unit.Expansivity(s.Expansion(1, 1)), 3e-6*unit.PerPSI, s.Compliance()) / 1.8 / float64(psi) // psi/degF
	p.Formations = []sequence.Formation{{Name: "sand", MD: 8000 * foot, Pressure: exactly(4000)}}
	p.Barriers = []sequence.Barrier{{Name: "packer", Formation: "sand"}}
	degF := unit.TemperatureDifference(1 / 1.8)
	d := 2000 - 5000*9*psiPerFootPpg // against the annulus outside
	p.Steps = []sequence.Step{{Name: "test", Tests: []sequence.Test{{Barrier: "packer", Side: "below", Inside: "annulus A", Outside: "annulus", MD: 6000 * foot, Moment: sequence.AtEnd,
		Differential: band(d, 50), Hold: "30m", Warms: map[string]unit.Band[unit.TemperatureDifference]{"annulus A": {Least: -3 * degF, Nominal: -2 * degF, Greatest: -1 * degF}}}}}}
	require.Less(t, d, 0.0) // the annulus outside has more: cooling widens the differential
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	require.True(t, r.OK(), r.Findings)
	require.InDelta(t, -2*per, r.Steps[0].Tests[0].Warming.In(psi), 1e-6)

	x := &p.Steps[0].Tests[0]
	setTrapped(&p.Compartments[2], 6000)
	d = 6000 - 5000*9*psiPerFootPpg
	x.Differential = band(d, 50)
	for _, loss := range []float64{3.001, 2.999} {
		x.Decline = loss * per / d
		r, err = sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		require.Equal(t, loss > 3, r.OK(), "%v: %v", loss, r.Findings)
	}
	require.Equal(t, sequence.TestOff, r.Findings[0].Kind)
	require.NotEmpty(t, r.Findings[0].Witness)
	q, err := p.At(r.Findings[0].Witness)
	require.NoError(t, err)
	require.Equal(t, -3*degF, q.Steps[0].Tests[0].Warms["annulus A"].Nominal)
	// A leak that takes as much in half an hour: c·V·Δp/t.
	volume := float64(s.Area()) * float64(4000*foot)
	c := float64(3e-6*unit.PerPSI) + float64(s.Compliance())
	require.InEpsilon(t, volume*c*2.999*per*float64(psi)/1800, float64(r.Steps[0].Tests[0].Leak), 1e-9)
}

// Fresh water is known up to 100 MPa, 14,504 psi. Trapped at 12,500 psi between walls that give way as little as
// steel does it is at 14,230 psi at its lower end; 40 degF more would make some thousands of psi more (the same at 8,000 psi
// says how many), and so the plan is refused. That it ended at 14,504 psi, where the water is known no further, would be wrong.
func TestTrappedWaterIsNotHeatedBeyondWhatIsKnown(t *testing.T) {
	trapped := func(at float64) *sequence.Plan {
		p := closedAnnulus()
		p.Fluids = append(p.Fluids, sequence.Fluid{Name: "water", Kind: sequence.FreshWater})
		p.Compartments[len(p.Compartments)-1].Fluid = "water"
		setTrapped(&p.Compartments[len(p.Compartments)-1], at)
		p.Steps = p.Steps[:2]
		return p
	}
	r := verdicted(t, trapped(8000))
	require.Greater(t, topOf(t, r, 1, "annulus A"), 8000+1000.0)
	_, err := sequence.Check(t.Context(), trapped(12500), sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `trapped "annulus A": heated between known walls`)
}
