package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// Cases that need no table: what any right answer must do.

func tubing() tubular.Pipe {
	return tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
}

// vertical is 9,000 ft of 3-1/2 in tubing in 7 in casing.
func vertical(t testing.TB) movement.String {
	t.Helper()
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	require.NoError(t, err)
	return movement.String{
		Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: 9000 * unit.Foot, Hole: 6.184 * unit.Inch}},
		Path:     path, Seals: movement.SealBore{Bore: 4 * unit.Inch},
	}
}

// deviated is a build, a turn and a drop; azimuth is turned by a.
func deviated(t testing.TB, a unit.Angle) movement.String {
	t.Helper()
	at := func(md, inc, az float64) hydrostatics.Station {
		return hydrostatics.Station{MD: unit.Length(md) * unit.Foot, Inclination: unit.Angle(inc) * unit.Degree, Azimuth: unit.Angle(az)*unit.Degree + a}
	}
	path, err := hydrostatics.NewPath([]hydrostatics.Station{
		at(0, 0, 20), at(2000, 0, 20), at(4000, 50, 20), at(6000, 55, 60), at(8000, 30, 70), at(10000, 88, 75), at(12000, 90, 75),
	})
	require.NoError(t, err)
	upper := tubing()
	lower := packerExample().Sections[0].Pipe
	return movement.String{
		Sections: []movement.StringSection{
			{Pipe: upper, BottomMD: 7000 * unit.Foot, Hole: 6.184 * unit.Inch},
			{Pipe: lower, BottomMD: 12000 * unit.Foot, Hole: 6.184 * unit.Inch},
		},
		Path: path, Seals: movement.SealBore{Bore: 4 * unit.Inch},
	}
}

func fluids(inside, outside unit.Density, pi, po unit.Pressure, surface unit.Temperature, gradient float64) movement.WellProfiles {
	return movement.WellProfiles{
		Inside:  func(d unit.Length) unit.Pressure { return pi + hydrostatics.Pressure(inside, d) },
		Outside: func(d unit.Length) unit.Pressure { return po + hydrostatics.Pressure(outside, d) },
		Temperature: func(d unit.Length) unit.Temperature {
			return surface.Add(unit.TemperatureDifference(gradient*d.In(100*unit.Foot)) * unit.FahrenheitDifference)
		},
	}
}

func brine(pi, po unit.Pressure) movement.WellProfiles {
	return fluids(9.2*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, pi, po, unit.Fahrenheit(70), 1.5)
}

func load(t testing.TB, s movement.String, before, after movement.WellProfiles, slackOff unit.Force) movement.Case {
	t.Helper()
	l, err := s.Land(before, slackOff)
	require.NoError(t, err)
	c, err := l.Load(after)
	require.NoError(t, err)
	return c
}

func TestNoChangeGivesNoMovement(t *testing.T) {
	for _, r := range []movement.Restraint{movement.Free, movement.Anchored} {
		s := deviated(t, 0)
		s.Seals.Restraint = r
		c := load(t, s, brine(500*unit.PSI, 0), brine(500*unit.PSI, 0), 0)
		require.Equal(t, movement.Movement{}, c.Movement)
		require.Zero(t, c.SealMovement)
		require.Zero(t, c.PackerForce)
	}
	// With slack-off nothing changes either: the same weight stays on the packer.
	s := vertical(t)
	s.Seals.Restraint = movement.Anchored
	c := load(t, s, brine(0, 0), brine(0, 0), 12000*unit.PoundForce)
	near(t, "packer force", c.PackerForce.In(unit.PoundForce), -12000, 1e-6)
}

func TestPressureInsideAndOutsideShortensAsASolidBar(t *testing.T) {
	s := vertical(t)
	before, after := brine(0, 0), brine(4000*unit.PSI, 4000*unit.PSI)
	before.Tail, after.Tail = movement.Hanging, movement.Hanging
	c := load(t, s, before, after, 0)
	// (1 - 2ν)*p*L/E
	want := -(1 - 2*0.3) * 4000 * 108000 / 30e6
	near(t, "shortening", c.Movement.Total().In(unit.Inch), want, 1e-9)
	require.Zero(t, c.Movement.Buckling, "pressure alike on both sides doesn't buckle a hanging string")
}

func TestWarmingBetweenFixedEnds(t *testing.T) {
	s := vertical(t)
	s.Seals.Restraint = movement.Anchored
	s.Sections[0].Hole = 3.5 * unit.Inch // no room to buckle
	before, after := brine(0, 0), fluids(9.2*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, 0, 0, unit.Fahrenheit(150), 1.5)
	c := load(t, s, before, after, 0)
	// E*α*ΔT*A of compression
	want := -30e6 * 6.9e-6 * 80 * math.Pi / 4 * (3.5*3.5 - 2.992*2.992)
	near(t, "packer force", c.PackerForce.In(unit.PoundForce), want, 1e-6*-want)

	// With room to buckle the string gives way, so it pushes less.
	s.Sections[0].Hole = 6.184 * unit.Inch
	buckled := load(t, s, before, after, 0)
	require.Greater(t, buckled.PackerForce, c.PackerForce)
	require.Less(t, buckled.PackerForce, unit.Force(0))
}

func TestExchangingStatesReversesLinearEffects(t *testing.T) {
	s := deviated(t, 0)
	a := brine(0, 0)
	b := fluids(8*unit.PoundPerGallon, 9.6*unit.PoundPerGallon, 3000*unit.PSI, 500*unit.PSI, unit.Fahrenheit(110), 1.1)
	b.Friction = []unit.Gradient{0.05 * unit.PSIPerFoot, 0.11 * unit.PSIPerFoot}
	there, back := load(t, s, a, b, 0).Movement, load(t, s, b, a, 0).Movement
	for name, pair := range map[string][2]unit.Length{
		"piston": {there.Piston, back.Piston}, "ballooning": {there.Ballooning, back.Ballooning},
		"thermal": {there.Thermal, back.Thermal}, "friction": {there.Friction, back.Friction},
		"buckling of a path without restraint": {there.Buckling, back.Buckling},
	} {
		require.NotZero(t, pair[0], name)
		require.InDelta(t, float64(pair[0]), -float64(pair[1]), 1e-12, name)
	}
}

func TestSplittingASectionChangesNothing(t *testing.T) {
	before, after := brine(0, 0), brine(4500*unit.PSI, 0)
	for _, r := range []movement.Restraint{movement.Free, movement.Anchored} {
		whole := deviated(t, 0)
		whole.Seals.Restraint = r
		whole.Spacing = 100 * unit.Foot
		split := whole
		middle := whole.Sections[1]
		middle.BottomMD = 9100 * unit.Foot // on a node of the whole string
		split.Sections = []movement.StringSection{whole.Sections[0], middle, whole.Sections[1]}
		require.Empty(t, cmp.Diff(load(t, whole, before, after, 0), load(t, split, before, after, 0), approx(1e-11), cmpopts.IgnoreFields(movement.Case{}, "Nodes")))
	}
}

func TestDoublingLengthDoublesLinearEffects(t *testing.T) {
	// Pressures and temperatures alike at every depth, so that length alone counts.
	even := func(pi, po unit.Pressure, f float64) movement.WellProfiles {
		return movement.WellProfiles{
			Inside: func(unit.Length) unit.Pressure { return pi }, Outside: func(unit.Length) unit.Pressure { return po },
			Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(f) },
		}
	}
	once := vertical(t)
	once.Sections[0].BottomMD /= 2
	twice := vertical(t)
	a := load(t, once, even(0, 0, 100), even(2000*unit.PSI, 700*unit.PSI, 160), 0).Movement
	b := load(t, twice, even(0, 0, 100), even(2000*unit.PSI, 700*unit.PSI, 160), 0).Movement
	near(t, "piston", float64(b.Piston), 2*float64(a.Piston), 1e-12)
	near(t, "ballooning", float64(b.Ballooning), 2*float64(a.Ballooning), 1e-12)
	near(t, "thermal", float64(b.Thermal), 2*float64(a.Thermal), 1e-12)
}

func TestTurningThePathChangesNothing(t *testing.T) {
	before, after := brine(0, 0), brine(6000*unit.PSI, 0)
	want := load(t, deviated(t, 0), before, after, 0)
	require.NotZero(t, want.Movement.Buckling)
	for _, a := range []unit.Angle{90 * unit.Degree, 123.4 * unit.Degree, -95 * unit.Degree} {
		got := load(t, deviated(t, a), before, after, 0)
		require.Empty(t, cmp.Diff(want, got, approx(1e-8)))
	}
}

func TestPackerSetAgainstALandedHangerLocksInForce(t *testing.T) {
	// Plugged tubing is pressured up and grows by (1 - 2ν)*p*Ai*L/(E*As); the
	// packer takes hold of it; bled off it can't shrink again.
	s := vertical(t)
	s.Seals.Restraint = movement.Anchored
	set := brine(3500*unit.PSI, 0)
	set.Tail = movement.Hanging
	l, err := s.Land(set, 0)
	require.NoError(t, err)
	bled, err := l.Load(brine(0, 0))
	require.NoError(t, err)
	hung := load(t, s, func() movement.WellProfiles { h := brine(0, 0); h.Tail = movement.Hanging; return h }(), brine(0, 0), 0)

	ai := math.Pi / 4 * 2.992 * 2.992
	near(t, "force locked in above the packer", (bled.TrueForce - hung.TrueForce).In(unit.PoundForce), (1-2*0.3)*3500*ai, 1e-5)
	near(t, "hanger load locked in", (bled.HangerLoad - hung.HangerLoad).In(unit.PoundForce), (1-2*0.3)*3500*ai, 1e-5)
	// 13.68 in of growth while setting: end 34.20 in less ballooning 20.52 in.
	grown := load(t, vertical(t), func() movement.WellProfiles { h := brine(0, 0); h.Tail = movement.Hanging; return h }(), set, 0)
	near(t, "end", grown.Movement.Piston.In(unit.Inch), 34.20, 0.005)
	near(t, "ballooning", grown.Movement.Ballooning.In(unit.Inch), -20.52, 0.005)
	near(t, "net", grown.Movement.Total().In(unit.Inch), 13.68, 0.005)
}

func TestSignsOfEachCause(t *testing.T) {
	s := vertical(t)
	near := load(t, s, brine(0, 0), brine(3000*unit.PSI, 0), 0).Movement
	require.Negative(t, float64(near.Piston), "pressure inside under a bore larger than the pipe pushes up")
	require.Negative(t, float64(near.Ballooning))
	require.Negative(t, float64(near.Buckling))
	annulus := load(t, s, brine(0, 0), brine(0, 3000*unit.PSI), 0).Movement
	require.Positive(t, float64(annulus.Piston), "pressure on the annulus pushes down on the seals")
	require.Positive(t, float64(annulus.Ballooning), "reverse ballooning")
	require.Zero(t, annulus.Buckling)
}

// slant is a straight hole at 30°.
func slant(t testing.TB) movement.String { return straight(t, 30*unit.Degree) }

// level is a straight level hole.
func level(t testing.TB) movement.String { return straight(t, 90*unit.Degree) }

func straight(t testing.TB, inclination unit.Angle) movement.String {
	t.Helper()
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: inclination}, {MD: 9000 * unit.Foot, Inclination: inclination}})
	require.NoError(t, err)
	s := vertical(t)
	s.Path = path
	return s
}
