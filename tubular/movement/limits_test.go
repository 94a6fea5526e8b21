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

// What may be given, on its limits and beside them.
func TestAssembliesOnTheirLimits(t *testing.T) {
	derated := func(rate, from float64) *tubular.Derating {
		return &tubular.Derating{Rate: unit.Expansivity(rate), From: unit.Kelvin(from)}
	}
	for _, x := range []struct {
		change func(*movement.Assembly)
		fault  string
	}{
		{func(a *movement.Assembly) { a.Holds[0].Bore, a.Holds[0].Casing = 8*unit.Inch, 8*unit.Inch }, ""},
		{func(a *movement.Assembly) { a.Holds[0].Bore, a.Holds[0].Casing = 8*unit.Inch, 7.99*unit.Inch }, "Holds[0].Casing: is "},
		{func(a *movement.Assembly) { a.HangerSeal = handPipe.OD }, ""},
		{func(a *movement.Assembly) { a.HangerSeal = 4.49 * unit.Inch }, "HangerSeal: is "},
		{func(a *movement.Assembly) { a.HangerSeal, a.Sections = 5*unit.Inch, nil }, "Sections: "},
		{func(a *movement.Assembly) { a.Derating = derated(0, 300) }, ""},
		{func(a *movement.Assembly) { a.Derating = derated(5e-4, 1e-9) }, ""},
		{func(a *movement.Assembly) { a.Derating = derated(-1e-9, 300) }, "Derating: is "},
		{func(a *movement.Assembly) { a.Derating = derated(math.Inf(1), 300) }, "Derating: is "},
		{func(a *movement.Assembly) { a.Derating = derated(1e-4, 0) }, "Derating: is "},
		{func(a *movement.Assembly) { a.Sections[0].Derating = derated(math.NaN(), 300) }, "Sections[0].Derating: is "},
	} {
		a := handAssembly(t)
		x.change(&a)
		_, err := a.MakeUp()
		if x.fault == "" {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, x.fault)
		}
	}
	// without a seal in the wellhead the annulus doesn't lift the hanger
	bare := made(t, handAssembly(t))
	s, err := bare.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	l, err := bare.Load(s, water(0, 3000*unit.PSI, 0, 0))
	require.NoError(t, err)
	require.Equal(t, -l.HangerLoad, l.Lift)
	// one unknown rating is named; where all are known none is
	a := handAssembly(t)
	a.Sections[0].Connection = tubular.Connection{Tension: 1e6, Compression: 1e6, Inside: 1e8, Outside: 1e8}
	require.Equal(t, []string{"section 1 to " + endAt.Rounded(6) + ": the connection in triaxial share"}, made(t, a).NotChecked())
	a.Sections[0].Connection.Triaxial = 1
	require.Empty(t, made(t, a).NotChecked())
	a.Sections[0].Connection.Inside, a.Sections[0].Connection.Outside, a.Sections[0].Connection.Tension = 0, 0, 0
	require.Contains(t, made(t, a).NotChecked()[0], "the connection in tension, internal pressure and external pressure")
}

// Friction outside is checked as that inside; nothing hangs where nothing is said to; heat that leaves no strength, or
// forces without bound, are errors of the load, not of what follows.
func TestConditionsThatCannotBe(t *testing.T) {
	a := handAssembly(t)
	a.Hung = []unit.Length{4000 * unit.Foot}
	a.Derating = &tubular.Derating{Rate: 5e-4, From: unit.Kelvin(300)}
	m := made(t, a)
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	c := warm(100)
	c.OutsideFriction = []unit.Gradient{1, 2}
	_, err = m.Load(s, c)
	require.ErrorContains(t, err, "OutsideFriction: has 2 gradients")
	l, err := m.Load(s, warm(100))
	require.NoError(t, err)
	workingtest.Check(t, m.Steps(&l))
	require.Zero(t, m.Terms(&l).Hung)
	_, err = m.Load(s, warm(700))
	require.ErrorContains(t, err, "temperature: is 700 degF; must be above absolute zero and at most 300 degC")

	// an edited loading whose pipe is hotter than any rating holds limits no pull
	held, err := m.TakeHold(s, 0, warm(100))
	require.NoError(t, err)
	hook := warm(100)
	hook.Top, hook.Reading = movement.OnHookOpen, 120000*unit.PoundForce
	l, err = m.Load(held, hook)
	require.NoError(t, err)
	_, err = m.MostReading(&l, movement.PullLimits{})
	require.NoError(t, err)
	l.Nodes[0].Temperature = unit.Fahrenheit(700)
	_, err = m.MostReading(&l, movement.PullLimits{})
	require.ErrorContains(t, err, "temperature: is 700 degF")

	wells := vertical(t)
	landed, err := wells.Land(brine(0, 0), 0)
	require.NoError(t, err)
	bad := brine(0, 0)
	bad.OutsideFriction = []unit.Gradient{1, 2}
	_, err = landed.Load(bad)
	require.ErrorContains(t, err, "OutsideFriction: has 2 gradients")
	_, err = movement.String{Seals: movement.SealBore{Bore: 0.1}}.Land(brine(0, 0), 0)
	require.ErrorContains(t, err, "Sections: ")
	wells.Seals.Bore = unit.Length(math.NaN())
	_, err = wells.Land(brine(0, 0), 0)
	require.ErrorContains(t, err, "Seals.Bore: is NaN")
	require.NotContains(t, err.Error(), "Seals[0]", "told once")
}

// Weight can be set down where nothing lets the seals go down, a pull where nothing lets them come up.
func TestWhereWeightMayStand(t *testing.T) {
	for _, x := range []struct {
		seals movement.SealBore
		force unit.Force
		fault string
	}{
		{movement.SealBore{Restraint: movement.Anchored}, 5, ""},
		{movement.SealBore{Restraint: movement.Anchored}, -5, ""},
		{movement.SealBore{Restraint: movement.Limited, Up: 3}, 5, ""},
		{movement.SealBore{Restraint: movement.Limited, Up: 3}, -5, "can move up"},
		{movement.SealBore{Restraint: movement.Limited, Down: 3}, 5, "can move down"},
		{movement.SealBore{Restraint: movement.Limited, Down: 3}, -5, ""},
		{movement.SealBore{Restraint: movement.Limited, Down: 3, Up: 3}, 0, ""},
		{movement.SealBore{Restraint: movement.Free}, 5, "can move down"},
		{movement.SealBore{Restraint: movement.Free}, -5, "can move up"},
		{movement.SealBore{Restraint: movement.Free}, 0, ""},
	} {
		s := vertical(t)
		x.seals.Bore, s.Seals = s.Seals.Bore, x.seals
		s.Seals.Bore = x.seals.Bore
		_, err := s.Land(brine(0, 0), x.force*unit.Kilopound)
		if x.fault == "" {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, x.fault)
		}
	}
}

// Weight is set down through free seals, not through what holds, stands or has parted above; a joint is latched to
// again where something below it is held, and not where only something above is.
func TestWhatStandsBetweenHangerAndPlace(t *testing.T) {
	a := handAssembly(t)
	a.Holds = []movement.Hold{{MD: 8500 * unit.Foot}, {MD: 8600 * unit.Foot}}
	a.Joints = []movement.Joint{{MD: 8550 * unit.Foot, Seal: jointBore}}
	a.Seals = []movement.Seal{{MD: 8700 * unit.Foot, Bore: sealBore}, {MD: 3000 * unit.Foot, Bore: sealBore, Up: unit.Foot, Down: unit.Foot}}
	c := movement.Conditions{Inside: warm(100).Inside, Outside: warm(100).Outside}
	m := made(t, a)
	s, err := m.Land(c)
	require.NoError(t, err)
	low, err := m.SetDown(s, 1, c, 5000*unit.PoundForce)
	require.NoError(t, err)
	l, err := m.Load(low, c)
	require.NoError(t, err)
	require.InDelta(t, -5000, lbf(l.Holds[1].Load), 1e-2)
	first, err := m.TakeHold(s, 0, c)
	require.NoError(t, err)
	_, err = m.SetDown(first, 1, c, 5000*unit.PoundForce)
	require.ErrorContains(t, err, "place: is 1; must be one with nothing parted or holding above it")
	high, err := m.SetDown(low, 0, c, 500*unit.PoundForce)
	require.NoError(t, err, "what holds below is no hindrance")
	parted, err := m.Part(high, 0)
	require.NoError(t, err)
	next, err := m.LetGo(parted, 1)
	require.NoError(t, err)
	_, err = m.SetDown(parted, 1, c, 1)
	require.Error(t, err)
	_, err = m.Join(next, 0)
	require.ErrorIs(t, err, movement.ErrLost, "the upper place holds, and nothing below")
	_, err = m.Join(parted, 0)
	require.NoError(t, err)
	_, err = m.SetDown(next, 1, c, 1)
	require.Error(t, err, "it is gone")

	a.Seals[1].Locator, a.Seals[1].Down = true, 0
	m = made(t, a)
	s, err = m.Land(c)
	require.NoError(t, err)
	warmed := c
	warmed.Inside = func(_ int, d unit.Length) unit.Pressure { return c.Inside(0, d) + 3000*unit.PSI }
	l, err = m.Load(s, warmed)
	require.NoError(t, err)
	require.True(t, l.Seals[1].Stands)
	_, err = m.SetDown(s, 0, warmed, 5000*unit.PoundForce)
	require.ErrorContains(t, err, "nothing parted or holding above it")
}

// A string without room can't buckle; in a straight vertical hole all is buckled below the neutral point.
func TestBuckledBelowTheNeutralPoint(t *testing.T) {
	for _, hole := range []unit.Length{8.5 * unit.Inch, handPipe.OD} {
		a := handAssembly(t)
		a.Sections[0].Hole, a.Joints, a.Holds, a.Seals = hole, nil, []movement.Hold{{MD: endAt}}, nil
		m := made(t, a)
		s, err := m.Land(warm(100))
		require.NoError(t, err)
		s, err = m.SetDown(s, 0, warm(100), 30000*unit.PoundForce)
		require.NoError(t, err)
		l, err := m.Load(s, warm(100))
		require.NoError(t, err)
		if hole == handPipe.OD {
			require.Zero(t, l.BuckledLength)
			require.Zero(t, l.BuckledShortening)
			continue
		}
		require.InDelta(t, 30000/buoyed(), (endAt - l.Neutral).In(unit.Foot), 1e-3)
		require.InDelta(t, float64(endAt-l.Neutral), float64(l.BuckledLength), 1e-6)
		require.InDelta(t, float64(l.BuckledLength), float64(l.HelicalLength), 1e-6)
	}
}

// Set down on a string that pressure has buckled already, a weight shortens it by what buckling it adds, no more; a
// plugged tail feels the pressure below it, whatever flow has lost outside.
func TestSetDownOnABuckledString(t *testing.T) {
	s := vertical(t)
	s.Seals = movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Limited, Up: 5 * unit.Foot}
	reference := brine(4000*unit.PSI, 0)
	free := s
	free.Seals.Restraint, free.Seals.Up = movement.Free, 0
	alone, err := free.Land(reference, 0)
	require.NoError(t, err)
	require.Less(t, float64(alone.AsSet().BuckledShortening), -0.01)
	l, err := s.Land(reference, 10*unit.Kilopound)
	require.NoError(t, err)
	set := l.AsSet()
	require.InDelta(t, -10, set.PackerForce.In(unit.Kilopound), 1e-6)
	require.InDelta(t, float64(set.BuckledShortening-alone.AsSet().BuckledShortening), float64(set.SlackOff.Buckling), 1e-9)

	plugged := reference
	plugged.Tail, plugged.Below = movement.Plugged, 3000*unit.PSI
	plugged.OutsideFriction = []unit.Gradient{0.05 * unit.PSIPerFoot}
	c, err := alone.Load(plugged)
	require.NoError(t, err)
	n := c.Nodes[len(c.Nodes)-1]
	area := func(d unit.Length) float64 { return math.Pi / 4 * float64(d) * float64(d) }
	pipe := s.Sections[0].Pipe
	require.InDelta(t, float64(n.Inside)*area(pipe.ID)-float64(n.Outside)*area(pipe.OD)-float64(plugged.Below-n.Outside)*area(s.Seals.Bore), float64(c.EndForce), 1e-3)
}

// A case of one node says where it is; the string is told of at its very ends.
func TestCaseOfOneNode(t *testing.T) {
	c := movement.Case{Nodes: []movement.Node{{MD: 100}}}
	_, err := c.At(99)
	require.ErrorContains(t, err, "must be from "+unit.Length(100).Rounded(6)+" to "+unit.Length(100).Rounded(6))
	n, err := c.At(100)
	require.NoError(t, err)
	require.Equal(t, unit.Length(100), n.MD)
}

// A pipe that its fluids lift lies against the high side: the hole that builds for one drops for the other.
func TestLiftedPipeInABend(t *testing.T) {
	c := movement.Confined{Pipe: tubular.Pipe{OD: 0.073, ID: 0.062, Weight: 95, Material: tubular.Steel()}, Hole: 0.1524, Weight: 81, Inclination: 0.7, Build: 2e-4}
	for _, build := range []unit.Curvature{-3e-4, -1e-5, 1e-5, 3e-4} {
		c.Build = build
		up := c
		up.Weight, up.Build = -c.Weight, -build
		require.InEpsilon(t, float64(c.Sinusoidal()), float64(up.Sinusoidal()), 1e-12)
		f := c.Sinusoidal()
		require.InEpsilon(t, float64(f), math.Sqrt(4*float64(c.Pipe.Material.Young)*float64(c.Pipe.SecondMoment())*float64(c.Contact(-f))/float64(c.Clearance())), 1e-9)
		workingtest.Check(t, c.Steps())
		workingtest.Check(t, up.Steps())
	}
	c.Build, c.Turn = 0, 3e-4
	workingtest.Check(t, c.Steps())
	require.Equal(t, "contact at the sinusoidal load", c.Steps()[0].Name)
	c.Turn = 0
	require.Equal(t, "sinusoidal load", c.Steps()[0].Name)
	c.Inclination = 0
	require.Equal(t, "vertical hole: bends", c.Steps()[0].Name)

	path, err := hydrostatics.Vertical(1000)
	require.NoError(t, err)
	for ν, ok := range map[float64]bool{-1: true, 1: true, math.Nextafter(1, 2): false, math.Nextafter(-1, -2): false} {
		c.Pipe.Material.Poisson = ν
		_, err := c.At(path, 500)
		if ok {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, "Pipe.Material.Poisson: is ")
		}
	}
}

// A name is only for what there is; a node of no section of the string, or beyond its nodes, lets no tool pass.
func TestNumbersWithoutName(t *testing.T) {
	require.Equal(t, "Restraint(3)", movement.Restraint(3).String())
	require.Equal(t, "Tail(3)", movement.Tail(3).String())
	m := made(t, handAssembly(t))
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	l, err := m.Load(s, warm(100))
	require.NoError(t, err)
	l.Nodes[2].Section = 1
	length, at, limited := m.LongestTool(&l, unit.Inch)
	require.True(t, limited)
	require.Zero(t, length)
	require.Equal(t, l.Nodes[2].MD, at)
	l.Nodes[2].Section = 0
	l.Nodes = append(l.Nodes, l.Nodes[0])
	length, _, limited = m.LongestTool(&l, unit.Inch)
	require.True(t, limited)
	require.Zero(t, length)
	// nothing passes what isn't there
	var nobody *movement.Landed
	_, _, limited = nobody.LongestTool(&movement.Case{}, unit.Inch)
	require.True(t, limited)
	landed, err := vertical(t).Land(brine(0, 0), 0)
	require.NoError(t, err)
	_, _, limited = landed.LongestTool(nil, unit.Inch)
	require.True(t, limited)
	// as wide as the bore
	_, _, limited = m.LongestTool(&movement.Loading{Nodes: []movement.Node{{}}}, handPipe.ID)
	require.False(t, limited)
}

// The place that the pull just reaches counts: hot, it is the first that yields.
func TestPullLimitedWhereItEnds(t *testing.T) {
	a := handAssembly(t)
	hold := 1000 * unit.Foot
	a.Holds, a.Joints, a.Seals = []movement.Hold{{MD: hold}}, nil, nil
	a.Derating = &tubular.Derating{Rate: 5e-4, From: unit.Kelvin(300)}
	m := made(t, a)
	c := warm(100)
	c.Temperature = func(d unit.Length) unit.Temperature {
		if d >= hold-unit.Millimetre {
			return unit.Fahrenheit(560)
		}
		return unit.Fahrenheit(80)
	}
	s, err := m.Land(c)
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, c)
	require.NoError(t, err)
	c.Top, c.Reading = movement.OnHookOpen, 150000*unit.PoundForce
	l, err := m.Load(s, c)
	require.NoError(t, err)
	f, ok := m.WallAt(&l, hold)
	require.True(t, ok)
	require.Equal(t, l.Holds[0].WallAbove, f)
	most, err := m.MostReading(&l, movement.PullLimits{})
	require.NoError(t, err)
	require.Equal(t, hold, most.MD)
	c.Reading = most.Reading
	l, err = m.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, 1, l.Limits.Governing().Usage, 1e-6)
}

// A short section that is buckled all along has the working of its whole length.
func TestBuckledAllAlong(t *testing.T) {
	v := packerExample()
	v.Sections[0].BottomMD = 500 * unit.Foot
	a, err := v.Analyse()
	require.NoError(t, err)
	workingtest.Check(t, a.Steps())
	whole := false
	for _, s := range a.Steps() {
		whole = whole || strings.HasSuffix(s.Name, ": whole length")
	}
	require.True(t, whole)
}
