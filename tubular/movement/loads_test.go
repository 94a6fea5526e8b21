package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

func TestLoadAllIsLoadOneByOne(t *testing.T) {
	l, states := thousand(t, movement.Anchored, 5000*unit.PoundForce)
	all, err := l.LoadAll(states)
	require.NoError(t, err)
	for i, s := range states {
		one, err := l.Load(s)
		require.NoError(t, err)
		require.Equal(t, one, all[i], "state %d", i)
	}
	states[3].Inside, states[7].Outside = nil, nil
	_, err = l.LoadAll(states)
	require.ErrorContains(t, err, "state 3: movement: Inside: is missing")
	require.ErrorContains(t, err, "state 7: movement: Outside: is missing")
	none, err := l.LoadAll(nil)
	require.NoError(t, err)
	require.Empty(t, none)
}

func TestLongestToolThroughTheString(t *testing.T) {
	v := packerExample()
	l, c := landed(t, v, 0)
	got, at, limited := l.LongestTool(&c, 2*unit.Inch)
	require.True(t, limited)
	require.Equal(t, v.Sections[0].BottomMD, at, "the helix is tightest at the packer")
	want, _ := movement.Helix{Pipe: v.Sections[0].Pipe, Hole: v.Sections[0].Hole, Compression: -c.EffectiveForce}.LongestTool(2 * unit.Inch)
	require.InDelta(t, float64(want), float64(got), 1e-9)

	_, at, limited = l.LongestTool(&c, 2.45*unit.Inch)
	require.True(t, limited)
	require.Zero(t, at, "too wide from the top on")

	calm := l.AsSet()
	_, _, limited = l.LongestTool(&calm, 2*unit.Inch)
	require.False(t, limited, "straight and vertical")

	// Unbuckled on a bend of 2.5°/100 ft: the chord of the hole's own arc.
	s := deviated(t, 0)
	bent, err := s.Land(brine(0, 0), 0)
	require.NoError(t, err)
	still := bent.AsSet()
	got, at, limited = bent.LongestTool(&still, 2*unit.Inch)
	require.True(t, limited)
	κ, play := 0.0, 0.0
	for _, n := range still.Nodes {
		if n.MD == at {
			κ = float64(n.Curvature)
			play = float64(s.Sections[n.Section].Pipe.ID - 2*unit.Inch)
		}
	}
	require.InDelta(t, math.Sqrt(8*play/κ), float64(got), 1e-9)
}

func BenchmarkTenLoadCasesOnAllCores(b *testing.B) {
	l, states := thousand(b, movement.Anchored, 5000*unit.PoundForce)
	for b.Loop() {
		if _, err := l.LoadAll(states); err != nil {
			b.Fatal(err)
		}
	}
}
