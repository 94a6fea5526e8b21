package movement_test

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// Faults of two strings are told with the string's name.
func TestFaultsOfTwoStringsAreToldByName(t *testing.T) {
	path, err := hydrostatics.Vertical(endAt)
	require.NoError(t, err)
	small := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	outer := movement.Assembly{Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: handPipe.OD}}, Path: path}
	inner := movement.Assembly{Sections: []movement.StringSection{{Pipe: small, BottomMD: 8500 * unit.Foot, Hole: small.OD}}, Path: path, Hanger: 6000 * unit.Foot,
		Holds: []movement.Hold{{MD: 8000 * unit.Foot}, {MD: 8000.5 * unit.Foot}}}
	twice := inner
	twice.Holds = inner.Holds[:1]
	twice.Seals = []movement.Seal{{MD: 8000 * unit.Foot, Bore: small.OD}}
	require.Len(t, outer.Carrying(twice).Hung, 2, "one place for what meets at one depth")
	nan := inner
	nan.Hanger = unit.Length(math.NaN())
	_, err = outer.Carrying(nan).MakeUp()
	require.ErrorContains(t, err, "Hung[0]: is NaN")

	o, i := made(t, outer.Carrying(inner)), made(t, inner)
	both, err := movement.Nest(o, i)
	require.NoError(t, err)
	c := warm(100)
	s, err := o.Land(c)
	require.NoError(t, err)
	n, err := both.Land(s, c, c)
	require.NoError(t, err)
	bad := c
	bad.Temperature = func(unit.Length) unit.Temperature { return unit.Kelvin(math.NaN()) }
	_, err = both.Land(s, c, bad)
	require.ErrorContains(t, err, "inner string: movement: ")
	_, err = both.Land(s, bad, c)
	require.ErrorContains(t, err, "outer string: movement: ")
	_, err = both.Load(n, c, bad)
	require.ErrorContains(t, err, "inner string: movement: ")
	_, err = both.TakeHold(n, 0, bad, c)
	require.ErrorContains(t, err, "outer string: movement: ")
	_, err = both.Load(movement.Nested{Outer: n.Outer, Inner: n.Inner}, c, c)
	require.ErrorContains(t, err, "the string hasn't landed, or the standing is another string's")
	// Nothing meets where the inner string lies deeper than the outer one goes.
	deep := inner
	deep.Holds = nil
	short := outer
	short.Sections = []movement.StringSection{{Pipe: handPipe, BottomMD: 5000 * unit.Foot, Hole: handPipe.OD}}
	apart, err := movement.Nest(made(t, short.Carrying(deep)), made(t, deep))
	require.NoError(t, err)
	s, err = apart.Outer.Land(c)
	require.NoError(t, err)
	n, err = apart.Land(s, c, c)
	require.NoError(t, err)
	l, err := apart.Load(n, c, c)
	require.NoError(t, err)
	require.Empty(t, l.Puts)
}

// Seals that may not move have no way; a weight has to stand on something, and a pull
// to hold on to something.
func TestRestraintsThatContradict(t *testing.T) {
	s := vertical(t)
	s.Seals = movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Free, Up: unit.Foot}
	_, err := s.Land(brine(0, 0), 0)
	require.ErrorContains(t, err, "Seals.Up: is 1 ft, and Seals.Down 0 ft; must be 0 where seals are ")
	s.Seals = movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Free}
	_, err = s.Land(brine(0, 0), -5*unit.Kilopound)
	require.ErrorContains(t, err, "SlackOff: is ")
	_, err = s.Land(brine(0, 0), unit.Force(math.NaN()))
	require.ErrorContains(t, err, "SlackOff: is NaN")
	s.Seals = movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Limited, Up: unit.Foot}
	_, err = s.Land(brine(0, 0), -5*unit.Kilopound)
	require.ErrorContains(t, err, "must be 0 where seals can move up")
	s.Seals.Up = 0
	l, err := s.Land(brine(0, 0), 0)
	require.NoError(t, err)
	require.Positive(t, l.Size())
	bad := brine(0, 0)
	bad.Below = 5
	_, err = l.Load(bad)
	require.ErrorContains(t, err, "Below: is 5 Pa; must be 0 where the tail isn't plugged")
	bad.Tail, bad.Below = movement.Plugged, unit.Pressure(math.NaN())
	_, err = l.Load(bad)
	require.ErrorContains(t, err, "Below: is NaN")
	bad = brine(0, 0)
	bad.Friction = make([]unit.Gradient, len(s.Sections))
	bad.Friction[0] = unit.Gradient(math.NaN())
	_, err = l.Load(bad)
	require.ErrorContains(t, err, "Friction[0]: is NaN")
	s.Spacing = 1e-9
	_, err = s.Land(brine(0, 0), 0)
	require.ErrorContains(t, err, "movement: Spacing: is 3.9370078740157486e-08 in; must be at least 0.27432 cm (1000000 nodes)")
	_, err = movement.Confined{Hole: unit.Length(math.NaN())}.At(s.Path, 100)
	require.ErrorContains(t, err, "movement: Hole: is NaN")
}

// The load on a sealed joint is its wall force less what the pressures do to its lower
// half: by hand 100,000 N, bore 100 mm at 50 MPa, sealing on 120 mm, below 40 MPa.
func TestLoadOnASealedJoint(t *testing.T) {
	e := movement.End{Bore: 0.12, OD: 0.11, ID: 0.1, Inside: 5e7, Outside: 2e7, Below: 4e7}
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	require.InEpsilon(t, 100000-area(0.1)*5e7+area(0.12)*4e7-(area(0.12)-area(0.11))*2e7, float64(e.Load(100000)), 1e-12)
}

// A string closed at its end stands on its own outside; its buckling may come from the
// top where the fluid outside is the heavier: the working says which.
func TestBucklingFromTheTop(t *testing.T) {
	v := packerExample()
	v.Seals, v.SlackOff, v.Closed = movement.SealBore{}, 0, true
	v.Sections[0].Pipe.Weight = 2 * unit.PoundPerFoot
	v.Final.InsideSurface, v.Final.OutsideDensity, v.Final.InsideDensity = 4000*unit.PSI, 19*unit.PoundPerGallon, 1*unit.PoundPerGallon
	a, err := v.Analyse()
	require.NoError(t, err)
	workingtest.Check(t, a.Steps())
	require.Less(t, a.Sections[0].Final.Top, unit.Force(0))
	require.Zero(t, float64(a.Sections[0].Final.Bottom), "nothing pushes on a closed end")
	named := false
	for _, s := range a.Steps() {
		named = named || strings.HasSuffix(s.Name, ": from the top")
	}
	require.True(t, named)
	v.Sections[0].Pipe.Weight = 1e306
	_, err = v.Analyse()
	require.ErrorIs(t, err, movement.ErrTooLarge)
}

// Below what the top carries there is no wall force to tell of; in between it is
// straight. Where nothing is known of the string nothing limits a pull.
func TestWhatAPullReaches(t *testing.T) {
	a := handAssembly(t)
	a.Sections[0].Pipe.Material.Yield = 0
	m := made(t, a)
	c := water(0, 0, 0, 0)
	s, err := m.Land(c)
	require.NoError(t, err)
	held, err := m.TakeHold(s, 0, c)
	require.NoError(t, err)
	hook := c
	hook.Top, hook.Reading = movement.OnHookOpen, 200000*unit.PoundForce
	l, err := m.Load(held, hook)
	require.NoError(t, err)
	_, ok := m.WallAt(&l, 8500*unit.Foot)
	require.False(t, ok)
	_, ok = m.WallAt(&l, unit.Length(math.NaN()))
	require.False(t, ok)
	upper, ok := m.WallAt(&l, 1000*unit.Foot)
	require.True(t, ok)
	lower, ok := m.WallAt(&l, 1500*unit.Foot)
	require.True(t, ok)
	between, ok := m.WallAt(&l, 1250*unit.Foot)
	require.True(t, ok)
	require.InDelta(t, float64(upper+lower)/2, float64(between), 1e-6)
	most, err := m.MostReading(&l, movement.PullLimits{Rig: 1e6, Parts: []movement.RatedPart{{Name: "none"}}})
	require.NoError(t, err)
	require.Equal(t, "rig", most.By)
	l.Reading = unit.Force(math.NaN())
	_, err = m.MostReading(&l, movement.PullLimits{})
	require.ErrorContains(t, err, "movement: loading.Reading: is NaN")

	parted, err := m.Part(s, 0)
	require.NoError(t, err)
	gone, err := m.Load(parted, c)
	require.NoError(t, err)
	whole, err := m.Load(s, c)
	require.NoError(t, err)
	all, _, _ := m.LongestTool(&whole, 3.9*unit.Inch)
	left, _, _ := m.LongestTool(&gone, 3.9*unit.Inch)
	require.GreaterOrEqual(t, left, all, "what is lost stops nothing")
	clone := gone.Clone()
	require.Equal(t, gone.HangerLoad, clone.HangerLoad)
	_, err = m.ReadingForJoint(&gone, 0, 0)
	require.ErrorIs(t, err, movement.ErrNotReached)
}
