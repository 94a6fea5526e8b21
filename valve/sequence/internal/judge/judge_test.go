package judge

import (
	"math"
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// one is a well of one compartment at surface, with one symbol.
func one(t *testing.T) (*Judge, *walk.World) {
	t.Helper()
	n := &well.Network{Fluids: []well.Fluid{{Name: "nothing"}}, Symbols: []well.Symbol{{Name: "x", Half: 1}},
		Compartments: []well.Compartment{{Name: "a", Formation: -1, Surface: true, Depths: []well.Depth{{}, {MD: 1}}, Layers: []well.Layer{{Bottom: well.Depth{MD: 1}}}}}}
	n.Prepare()
	j, _ := New(n, &Limits{Steps: []Goals{{}}}, nil)
	w, err := walk.Start(n, affine.Box(1, []float64{0}))
	require.NoError(t, err)
	return j, w
}

func form(c, x float64) affine.Form { return affine.Form{C: c, T: []affine.Term{{Symbol: 0, C: x}}} }

// Of all that is noted of a limit the least stays, with where it was seen and the choice
// that attains it.
func TestTheLeastIsKept(t *testing.T) {
	j, w := one(t)
	j.Note(w, walk.Place{Label: "ramp 1", Action: -1}, Inside, 3, form(100, 10), 7)
	j.Note(w, walk.Place{Label: "ramp 2", Action: -1}, Inside, 3, form(95, -3), 8)
	j.Note(w, walk.Place{Label: "ramp 3", Action: -1}, Inside, 3, form(91, 0.5), 9)
	m := j.Margins[Key{0, Inside, 3}]
	require.InDelta(t, 90, m.Least, 1e-9)
	require.Equal(t, "ramp 1", m.Label)
	require.Equal(t, 7, m.Depth)
	require.Equal(t, []float64{-1}, m.Point())
	require.Empty(t, j.Passed())
	require.Zero(t, j.broken)
}

// Less than nothing by more than what counts is passed; on it, or by less, isn't.
func TestWhatIsPassed(t *testing.T) {
	for by, passed := range map[float64]bool{0: false, -walk.Reach / 2: false, -2 * walk.Reach: true, -5: true, math.NaN(): true, math.Inf(-1): true} {
		j, w := one(t)
		j.Note(w, walk.Place{Action: -1}, Fracture, 0, affine.Const(by), 0)
		require.Equal(t, passed, len(j.Passed()) == 1, "%v", by)
		require.Equal(t, passed, j.broken == 1, "%v", by)
	}
}

// A margin in a part of the box is the least of that part.
func TestTheLeastOfAPart(t *testing.T) {
	j, w := one(t)
	w.Region = w.Region.With(form(-0.25, 1)) // e >= 0.25
	require.NotNil(t, w.Region)
	j.Note(w, walk.Place{Action: -1}, Outside, 0, form(0, 40), 0)
	m := j.Margins[Key{0, Outside, 0}]
	require.InDelta(t, 10, m.Least, 1e-6)
	require.InDelta(t, 0.25, m.Point()[0], 1e-9)
}

// Quiet keeps nothing that is kept; parts keeps where it isn't.
func TestQuietAndParts(t *testing.T) {
	j, w := one(t)
	j.Quiet, j.Parts = true, true
	j.Note(w, walk.Place{Action: -1}, Inside, 0, form(100, 10), 0)
	require.Empty(t, j.Margins)
	j.Note(w, walk.Place{Action: -1}, Inside, 0, form(-1, 3), 0)
	j.Note(w, walk.Place{Action: -1}, Inside, 0, form(-0.5, 1), 0)
	require.Len(t, j.Passed()[0].Regions, 2)
}

// What is passed comes step by step, then kind by kind.
func TestPassedInOrder(t *testing.T) {
	j, w := one(t)
	for _, k := range []Key{{2, Event, 0}, {0, Fracture, 1}, {0, Inside, 1}, {0, Inside, 0}} {
		j.Note(w, walk.Place{Step: k.Step, Action: -1}, k.Kind, k.Index, affine.Const(-1e3), 0)
	}
	var all []Key
	for _, m := range j.Passed() {
		all = append(all, m.Key)
	}
	require.Equal(t, []Key{{0, Inside, 0}, {0, Inside, 1}, {0, Fracture, 1}, {2, Event, 0}}, all)
}

// A test that may be held at the best of several places is short where all of them are: by the best of them. What other tests of the step lack
// doesn't count, and where one place is short another need not be.
func TestTheBestPlaceOfATest(t *testing.T) {
	for name, x := range map[string]struct {
		seen  []walk.Seen
		least float64
	}{
		"the first is best":       {[]walk.Seen{{Index: 0, F: form(-500, 0)}, {Index: 0, F: form(-900, 0)}}, -500},
		"the last is best":        {[]walk.Seen{{Index: 0, F: form(-900, 0)}, {Index: 0, F: form(-500, 0)}}, -500},
		"another test is held":    {[]walk.Seen{{Index: 1, F: form(700, 0)}, {Index: 0, F: form(-500, 0)}, {Index: 1, F: form(800, 0)}}, -500},
		"another test is short":   {[]walk.Seen{{Index: 1, F: form(-700, 0)}, {Index: 0, F: form(300, 0)}}, 300},
		"one or the other":        {[]walk.Seen{{Index: 0, F: form(0, 600)}, {Index: 0, F: form(0, -600)}}, 0},
		"neither, in a part":      {[]walk.Seen{{Index: 0, F: form(-100, 600)}, {Index: 0, F: form(-100, -600)}}, -200},
		"neither, by one of them": {[]walk.Seen{{Index: 0, F: form(-100, 0)}, {Index: 0, F: form(-500, 1000)}}, -100},
	} {
		j, w := one(t)
		for i := range x.seen {
			x.seen[i].State, x.seen[i].Place = w.State, nowhere
		}
		w.Seen = x.seen
		j.furthest(w, 0, &Test{Least: 10, Greatest: 20})
		m := j.Margins[Key{0, TestLow, 0}]
		require.NotNil(t, m, name)
		require.InDelta(t, x.least, m.Least, 1e-6, name)
		require.Equal(t, x.least < -walk.Reach, m.Fails(), name)
	}
}

// A column that is open at surface falls where nothing happens; just at what happens it lies between what it was and what it will be, whichever action that is.
func TestColumnsFallBetweenActions(t *testing.T) {
	for action, falls := range map[int]bool{-1: true, 0: false, 1: false} {
		j, w := two(t, &Limits{})
		applied(t, w, -2e5, 100)
		p := j.all()
		p.Action = action
		require.NoError(t, j.Moment(w, p))
		m := j.Margins[Key{0, Vacuum, 0}]
		require.Equal(t, falls, m != nil && m.Fails(), "action %d", action)
	}
}
