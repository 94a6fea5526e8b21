package proof

import (
	"testing"

	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// A part of a range has the hope of the whole where the value that is right lies in it, its ends included.
func TestPartsOfARangeKeepItsHope(t *testing.T) {
	whole := task{span{0, 10}, some, 4}
	for _, x := range []struct {
		part span
		has  bool
	}{{span{0, 4}, true}, {span{4, 10}, true}, {span{1, 9}, true}, {span{4.5, 10}, false}, {span{0, 3.5}, false}} {
		want := task{span: x.part}
		if x.has {
			want = task{x.part, some, 4}
		}
		require.Equal(t, want, whole.part(x.part), "%v", x.part)
	}
	require.Equal(t, task{span: span{3, 5}}, task{span{0, 10}, none, 4}.part(span{3, 5}))
}

// Pressures of plain numbers are exact, but where something is pumped or flows, a level is let fall, a device is metered
// or the string moves one.
func TestWhatIsOnlyEnclosed(t *testing.T) {
	steps := func(s walk.Step) *Problem { return &Problem{Network: &well.Network{}, Steps: []walk.Step{{}, s}} }
	action := func(a well.Action) *Problem { return &Problem{Network: &well.Network{Actions: []well.Action{{}, a}}} }
	require.False(t, steps(walk.Step{Acts: []walk.Act{{Drain: -1}}}).enclosed())
	require.True(t, steps(walk.Step{Acts: []walk.Act{{Drain: -1}, {Drain: 0}}}).enclosed())
	require.True(t, steps(walk.Step{Pumps: make([]well.Pump, 1)}).enclosed())
	require.True(t, steps(walk.Step{Flow: func(*well.State) (*well.Flowed, error) { return nil, nil }}).enclosed())
	require.False(t, action(well.Action{}).enclosed())
	require.True(t, action(well.Action{Slow: true}).enclosed())
	require.True(t, action(well.Action{Axial: true}).enclosed())
}
