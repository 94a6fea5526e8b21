package stringload

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

// pressed is a profile of one compartment of two depths at a pressure.
func pressed(p float64) *profile {
	return &profile{of: []int{0}, corners: [][]int{{0, 1}}, forms: [][]affine.Form{{affine.Const(p), affine.Const(p + 1)}}, depths: [][]float64{{0, 100}}}
}

// Two strings stand the same way where everything that was done to them was the same, in the same
// conditions: a difference in one thing alone, or in how it stood before, is a difference.
func TestStringsThatStandTheSameWay(t *testing.T) {
	made := func() *standing {
		first := &standing{act: landed, p: pressed(10)}
		return &standing{before: first, act: held, of: 0, place: 1, p: pressed(20), pull: &reading{Form: affine.Const(5)}}
	}
	require.True(t, made().Same(made()))
	for name, change := range map[string]func(s *standing){
		"what was done":        func(s *standing) { s.act = letGo },
		"to which string":      func(s *standing) { s.of = 1 },
		"where":                func(s *standing) { s.place = 2 },
		"not on the hook":      func(s *standing) { s.pull = nil },
		"another reading":      func(s *standing) { s.pull = &reading{Form: affine.Const(6)} },
		"another pressure":     func(s *standing) { s.p = pressed(21) },
		"another temperature":  func(s *standing) { s.p.temperature = 1 },
		"slips that bit early": func(s *standing) { s.p.from = pressed(20) },
		"how it landed":        func(s *standing) { s.before.p = pressed(11) },
		"nothing before":       func(s *standing) { s.before = nil },
		"more before":          func(s *standing) { s.before.before = &standing{act: landed, p: pressed(1)} },
	} {
		s := made()
		change(s)
		require.False(t, made().Same(s), name)
		require.False(t, s.Same(made()), name)
	}
}

// A step has freed a string where it parted it or let it go, and no other string, step or act counts.
func TestWhatHasFreedAString(t *testing.T) {
	for _, x := range []struct {
		s     *standing
		freed bool
	}{
		{&standing{act: parted, step: 2, of: 1}, true}, {&standing{act: letGo, step: 2, of: 1}, true},
		{&standing{act: held, step: 2, of: 1}, false}, {&standing{act: parted, step: 1, of: 1}, false}, {&standing{act: parted, step: 2}, false},
	} {
		require.Equal(t, x.freed, x.s.freedIn(2, 1), "%+v", x.s.act)
		require.Equal(t, x.freed, (&standing{before: x.s, act: marked, step: 2, of: 1}).freedIn(2, 1), "%+v", x.s.act)
	}
}

// Between depths a pressure is straight, beyond the outer ones as between the last two; where two depths
// are one it is the upper one's. In a hole that rises the first stretch that holds the depth counts.
func TestPressuresBetweenDepths(t *testing.T) {
	s := &sharp{depths: [][]float64{{100, 200, 200, 400}, {100, 300, 200}}, p: [][]float64{{10, 20, 25, 35}, {10, 30, 25}}}
	for tvd, want := range map[float64]float64{100: 10, 150: 15, 200: 20, 300: 30, 400: 35, 500: 40, 50: 5} {
		require.InDelta(t, want, s.at(0, tvd), 1e-12, "%v", tvd)
	}
	for tvd, want := range map[float64]float64{250: 25, 300: 30, 50: 5, 400: 35} {
		require.InDelta(t, want, s.at(1, tvd), 1e-12, "%v", tvd)
	}
	level := &sharp{depths: [][]float64{{200, 200, 300}, {200}}, p: [][]float64{{10, 15, 25}, {7}}}
	require.InDelta(t, 10, level.at(0, 200), 1e-12)
	require.InDelta(t, 20, level.at(0, 250), 1e-12)
	require.InDelta(t, 7, level.at(1, 250), 1e-12, "one depth, one pressure")
}

// Between nodes force and weight are straight, beyond them those of the outer ones.
func TestAlongsideTheNodes(t *testing.T) {
	nodes := []movement.Node{{MD: 10, Effective: 100, Weight: 7}, {MD: 20, Effective: 60, Weight: 9}, {MD: 20, Effective: 50, Weight: 8}, {MD: 30, Effective: 40, Weight: 6}}
	for md, want := range map[unit.Length][2]float64{5: {100, 7}, 10: {100, 7}, 15: {80, 8}, 20: {60, 9}, 25: {45, 7}, 30: {40, 6}, 99: {40, 6}} {
		f, w := alongside(nodes, md)
		require.InDelta(t, want[0], float64(f), 1e-12, "%v", md)
		require.InDelta(t, want[1], float64(w), 1e-12, "%v", md)
	}
	f, w := alongside(nil, 5)
	require.Zero(t, f)
	require.Zero(t, w)
}
