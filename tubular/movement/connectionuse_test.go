package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// Whichever rating of a connection is used most, the working ends with the line of it,
// and the line is true: cold, and hot with a derating.
func TestTheLineOfTheConnectionThatIsUsedMost(t *testing.T) {
	weak := map[string]struct {
		connection tubular.Connection
		conditions movement.Conditions
	}{
		"in tension":           {tubular.Connection{Tension: 1000 * unit.PoundForce}, water(0, 0, 0, 0)},
		"in compression":       {tubular.Connection{Compression: 100 * unit.PoundForce, Source: "invented"}, water(0, 0, 0, 0)},
		"by internal pressure": {tubular.Connection{Inside: 10 * unit.PSI}, water(3000*unit.PSI, 0, 0, 3000*unit.PSI)},
		"by external pressure": {tubular.Connection{Outside: 10 * unit.PSI}, water(0, 3000*unit.PSI, 0, 0)},
		"triaxial limit":       {tubular.Connection{Triaxial: 0.01}, water(3000*unit.PSI, 0, 0, 3000*unit.PSI)},
	}
	derating := tubular.UsualDerating()
	for want, c := range weak {
		for _, hot := range []bool{false, true} {
			a := snug(t)
			a.Sections[0].Connection = c.connection
			a.Design = tubular.DesignFactors{Burst: 1.1, Collapse: 1.05, Axial: 1.3, Triaxial: 1.25}
			conditions := c.conditions
			added := conditions.Outside
			conditions.Outside = func(part int, d unit.Length) unit.Pressure { return added(min(part, 2), d) }
			if hot {
				a.Derating = &derating
				conditions.Temperature = func(unit.Length) unit.Temperature { return unit.Fahrenheit(370) }
			}
			m := made(t, a)
			s, err := m.Land(conditions)
			require.NoError(t, err)
			l, err := m.Load(s, conditions)
			require.NoError(t, err)
			require.Equal(t, tubular.ConnectionLimit, l.Limits.Governing().Limit, want)
			steps := m.Steps(&l)
			workingtest.Check(t, steps)
			last := steps[len(steps)-1]
			require.Contains(t, last.Name, want)
			if c.connection.Source != "" {
				require.Equal(t, c.connection.Source, last.Source)
			} else {
				require.Equal(t, "rating as given", last.Source)
			}
			require.Equal(t, hot, hasStep(steps, "yield strength left when hot"), "%s", want)
			require.Equal(t, []string{"section 1 to 9000 ft: the connection in " + list(c.connection.Unknown())}, m.NotChecked())
		}
	}
	a := snug(t)
	a.Sections[0].Pipe.Material.Yield = 0
	require.Equal(t, []string{"section 1 to 9000 ft: the body, its yield strength isn't known",
		"section 1 to 9000 ft: the connection, of which nothing is known"}, made(t, a).NotChecked())
}

func hasStep(steps []working.Step, name string) bool {
	for _, s := range steps {
		if len(s.Name) >= len(name) && s.Name[:len(name)] == name {
			return true
		}
	}
	return false
}

func list(words []string) string {
	text := words[0]
	for i, w := range words[1:] {
		if i == len(words)-2 {
			text += " and "
		} else {
			text += ", "
		}
		text += w
	}
	return text
}

// A string that isn't there, or a loading of another one, answers with an error, with
// nothing, or with NaN: never with a number that could be believed.
func TestNothingIsAnsweredForNothing(t *testing.T) {
	const unmade = "movement: the string is not made up: make it with Assembly.MakeUp, or String.Land"
	const unplaced = "movement: there is no Loading or Case to put the answer in"
	var m *movement.MadeUp
	var l *movement.Landed
	c := water(0, 0, 0, 0)
	_, err := m.Land(c)
	require.EqualError(t, err, unmade)
	_, err = m.Load(movement.Standing{}, c)
	require.EqualError(t, err, unmade)
	_, err = m.TakeHold(movement.Standing{}, 0, c)
	require.EqualError(t, err, unmade)
	_, err = m.LetGo(movement.Standing{}, 0)
	require.EqualError(t, err, unmade)
	_, err = m.Part(movement.Standing{}, 0)
	require.EqualError(t, err, unmade)
	_, err = m.HangOff(movement.Standing{}, c)
	require.EqualError(t, err, unmade)
	_, err = m.ReadingForJoint(nil, 0, 0)
	require.ErrorContains(t, err, unmade)
	require.Zero(t, m.Size())
	require.Nil(t, m.NotChecked())
	require.Nil(t, m.InsideParts())
	require.Nil(t, m.Steps(nil))
	require.True(t, math.IsNaN(float64(m.Terms(nil).Top)))
	_, err = l.Load(movement.WellProfiles{})
	require.EqualError(t, err, unmade)
	_, err = l.LoadAll(nil)
	require.EqualError(t, err, unmade)
	require.Zero(t, l.Size())
	require.Zero(t, l.AsSet())
	require.Zero(t, (*movement.Loading)(nil).Clone())
	require.Nil(t, (*movement.Case)(nil).Steps())
	_, err = (*movement.Case)(nil).At(0)
	require.ErrorIs(t, err, movement.ErrOutsideString)
	_, _, limited := l.LongestTool(nil, unit.Inch)
	require.True(t, limited, "nothing passes what isn't there")

	real := made(t, handAssembly(t))
	s, err := real.Land(c)
	require.NoError(t, err)
	require.EqualError(t, real.LoadInto(nil, s, c), unplaced)
	loaded, err := real.Load(s, c)
	require.NoError(t, err)
	loaded.Nodes[3].Section = 7
	_, ok := real.WallAt(&loaded, 100)
	require.False(t, ok)
	require.True(t, math.IsNaN(float64(real.Terms(&loaded).Top)))
	length, _, limited := real.LongestTool(&loaded, unit.Inch)
	require.True(t, limited)
	require.Zero(t, length)

	long := vertical(t)
	landed, err := long.Land(brine(0, 0), 0)
	require.NoError(t, err)
	require.EqualError(t, landed.LoadInto(nil, brine(0, 0)), unplaced)
	state := landed.AsSet()
	state.Nodes[0].True = unit.Force(math.Inf(1))
	_, err = state.At(state.Nodes[0].MD)
	require.ErrorContains(t, err, "something that isn't finite; must be those that Load made")

	_, err = movement.Nest(nil, real)
	require.EqualError(t, err, unmade)
	var nested *movement.Concentric
	const apart = "movement: the strings are not put into each other: do so with Nest"
	_, err = nested.Land(s, c, c)
	require.EqualError(t, err, apart)
	_, err = nested.Load(movement.Nested{}, c, c)
	require.EqualError(t, err, apart)
}

// A use that isn't a number governs: what isn't known is never within its limit.
func TestUseThatIsNoNumberGoverns(t *testing.T) {
	l := movement.Limits{Burst: movement.Governing{Usage: 0.5}, Axial: movement.Governing{Usage: math.NaN(), MD: 7}, Triaxial: movement.Governing{Usage: 0.9}}
	require.True(t, math.IsNaN(l.Governing().Usage))
	require.Equal(t, unit.Length(7), l.Governing().MD)
}

// Acts that can't be are refused by what stands against them.
func TestActsThatCannotBe(t *testing.T) {
	m := made(t, handAssembly(t))
	c := water(0, 0, 0, 0)
	s, err := m.Land(c)
	require.NoError(t, err)
	parted, err := m.Part(s, 0)
	require.NoError(t, err)
	require.True(t, parted.Parted(0))
	require.False(t, parted.Parted(1))
	_, err = m.Part(parted, 0)
	require.EqualError(t, err, "movement: joint 0 has parted already")
	_, err = m.TakeHold(parted, 0, c)
	require.ErrorIs(t, err, movement.ErrLost)
	held, err := m.TakeHold(s, 0, c)
	require.NoError(t, err)
	_, err = m.TakeHold(held, 0, c)
	require.EqualError(t, err, "movement: place 0 holds already")
	hook := c
	hook.Top, hook.Reading = movement.OnHookOpen, 1e5
	_, err = m.SetDown(s, 0, hook, 1)
	require.ErrorContains(t, err, "Top: must be AtHanger when weight is set down; on the hook the Reading says it")
	_, err = m.SetDown(s, 0, c, unit.Force(math.NaN()))
	require.ErrorContains(t, err, "weight: is NaN")
	bad := c
	bad.OutsideFriction = []unit.Gradient{1, 2, 3}
	bad.SealFriction = []unit.Force{1, 2, 3}
	bad.Hung = []unit.Force{1}
	for _, act := range []func() error{
		func() error { _, err := m.Land(bad); return err },
		func() error { _, err := m.TakeHold(s, 0, bad); return err },
		func() error { b := bad; b.Top = movement.OnHookOpen; _, err := m.HangOff(s, b); return err },
	} {
		require.ErrorContains(t, act(), "SealFriction: has 3 forces; must have none or one for each of 1 seals")
	}
	bad = c
	bad.SealFriction = []unit.Force{unit.Force(math.NaN())}
	_, err = m.Land(bad)
	require.ErrorContains(t, err, "SealFriction[0]: is NaN")
	loaded, err := m.Load(held, c)
	require.NoError(t, err)
	_, err = m.ReadingForHold(&loaded, 3, 0)
	require.ErrorContains(t, err, "place: is 3; must be from 0 to 0")
	_, err = m.ReadingForJoint(&loaded, 0, unit.Force(math.NaN()))
	require.ErrorContains(t, err, "balance: is NaN")
	_, err = m.MostReading(&movement.Loading{}, movement.PullLimits{})
	require.ErrorContains(t, err, "loading: is empty or another string's; must be one that Load of the same MadeUp made")
	onHook, err := m.Load(s, hook)
	require.NoError(t, err)
	_, err = m.ReadingForHold(&onHook, 0, 1)
	require.ErrorIs(t, err, movement.ErrNotReached)
}
