package movement_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// The wall force at a depth that a pull reaches is that of the node there, between two on the line between
// them; the neutral point is where the effective force of what hangs from the top goes through nothing.
func TestWallForceAndNeutralPointFromTheNodes(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 2))
	neutrals := 0
	for range 150 {
		x := randomScene(t, r)
		nodes := x.loading.Nodes
		top, ok := x.made.WallAt(&x.loading, nodes[0].MD)
		require.True(t, ok)
		require.Equal(t, nodes[0].True, top)
		above, _ := x.made.WallAt(&x.loading, nodes[0].MD-10)
		require.Equal(t, nodes[0].True, above)
		for i := 1; i < len(nodes); i++ {
			u, v := nodes[i-1], nodes[i]
			if v.MD == u.MD {
				continue
			}
			got, ok := x.made.WallAt(&x.loading, u.MD+(v.MD-u.MD)/4)
			if !ok {
				break // beyond where the pull reaches
			}
			require.InDelta(t, float64(u.True)*0.75+float64(v.True)*0.25, float64(got), 1e-6)
			if got, ok := x.made.WallAt(&x.loading, v.MD); ok {
				require.Equal(t, v.True, got)
			}
		}
		held := false
		for i := range x.assembly.Holds {
			held = held || x.standing.Holds(i)
		}
		for i := range x.assembly.Joints {
			held = held || x.standing.Parted(i)
		}
		if held {
			continue
		}
		neutrals++
		want := nodes[len(nodes)-1].MD
		compressed := false
		for i := len(nodes) - 1; i >= 0; i-- {
			f := float64(nodes[i].Effective)
			if f < 0 {
				compressed = true
				want = nodes[0].MD // unless something above pulls
			} else if compressed {
				g := float64(nodes[i+1].Effective)
				want = nodes[i].MD + (nodes[i+1].MD-nodes[i].MD)*unit.Length(f/(f-g))
				break
			}
		}
		require.InDelta(t, float64(want), float64(x.loading.Neutral), 1e-6)
	}
	require.Greater(t, neutrals, 10)
}

// Places and joints are numbered from nought; what has no number is none.
func TestNumbersOfPlacesAndJoints(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 3))
	a := randomAssembly(t, r)
	m := made(t, a)
	c := randomConditions(r, m, a)
	s, err := m.Land(c)
	require.NoError(t, err)
	for _, i := range []int{-1, len(a.Holds)} {
		require.False(t, s.Holds(i))
		_, err := m.TakeHold(s, i, c)
		require.ErrorContains(t, err, "place: is ")
		require.ErrorContains(t, err, "must be ")
	}
	for _, i := range []int{-1, len(a.Joints)} {
		require.False(t, s.Parted(i))
		_, err := m.Part(s, i)
		require.ErrorContains(t, err, "joint: is ")
	}
	_, err = m.Part(s, len(a.Joints)-1)
	require.NoError(t, err)
	require.Equal(t, "Restraint(-1)", movement.Restraint(-1).String())
	require.NotContains(t, movement.Restraint(0).String(), "(")
	require.NotContains(t, movement.Tail(0).String(), "(")
	require.Contains(t, movement.Tail(-1).String(), "-1")
}

// What seals take to slide in these conditions stands in place of what they usually take.
func TestFrictionOfSealsOfTheseConditions(t *testing.T) {
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(13, 4))
	a := movement.Assembly{Sections: randomSections(r), Path: path}
	end := a.Sections[len(a.Sections)-1].BottomMD
	a.Seals = []movement.Seal{{MD: end / 2, Bore: 4 * unit.Inch, Up: 10, Down: 10, Friction: 500 * unit.PoundForce}}
	a.Path, err = hydrostatics.Vertical(end)
	require.NoError(t, err)
	m := made(t, a)
	c := randomConditions(r, m, a)
	s, err := m.Land(c)
	require.NoError(t, err)
	hook := func(friction []unit.Force, way movement.Sliding) float64 {
		c := c
		c.Top, c.Sliding, c.SealFriction = movement.OnHookOpen, way, friction
		l, err := m.Load(s, c)
		require.NoError(t, err)
		return l.HangerLoad.In(unit.PoundForce)
	}
	still := hook(nil, movement.NotSliding)
	require.InDelta(t, 500, hook(nil, movement.SlidingUp)-still, 1e-6)
	require.InDelta(t, -500, hook(nil, movement.SlidingDown)-still, 1e-6)
	require.InDelta(t, 80, hook([]unit.Force{80 * unit.PoundForce}, movement.SlidingUp)-still, 1e-6)
	require.InDelta(t, 0, hook([]unit.Force{0}, movement.SlidingUp)-still, 1e-6)
}

// Sections are numbered from one in the working where there are several.
func TestSectionsNamedInTheWorking(t *testing.T) {
	names := func(n int) string {
		a := movement.Analysis{Sections: make([]movement.SectionMovement, n)}
		var all []string
		for _, s := range a.Steps() {
			all = append(all, s.Name)
		}
		return strings.Join(all, "\n")
	}
	require.NotContains(t, names(1), "section")
	require.Contains(t, names(2), ", section 1")
	require.Contains(t, names(2), ", section 2")
	require.NotContains(t, names(2), ", section 0")
	require.NotContains(t, names(2), ", section 3")
}

// A path that ends above the string is a fault of the section that is too deep.
func TestStringBeyondItsPath(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 5))
	sections := randomSections(r)
	end := sections[len(sections)-1].BottomMD
	for length, ok := range map[unit.Length]bool{end: true, end - 1: false} {
		path, err := hydrostatics.Vertical(length)
		require.NoError(t, err)
		_, err = movement.String{Sections: sections, Path: path, Seals: movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Anchored}}.Land(randomState(r), 0)
		if ok {
			require.NoError(t, err)
			continue
		}
		require.ErrorContains(t, err, "must be at most the path's end")
	}
	_, err := movement.String{}.Land(movement.WellProfiles{}, 0)
	require.ErrorContains(t, err, "Sections")
	require.False(t, math.IsNaN(float64(end)))
}
