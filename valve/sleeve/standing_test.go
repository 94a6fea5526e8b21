package sleeve

import (
	"testing"

	"completion.example/valve"
	"github.com/stretchr/testify/require"
)

// A force that is just the least resistance may move a sleeve, either way, and one that is just the greatest starts it for
// certain, so that a blocked line stops it on the way.
func TestForcesOnTheLimits(t *testing.T) {
	for force, want := range map[float64]Motion{99: Stays, 100: MayOpen, 150: MayOpen, 200: Opens} {
		p := piston{ao: 1, ac: 1, stroke: 1, least: 100, most: 200, low: force, high: force}
		require.Equal(t, want, p.effect(Closed, &closeLine{}).Motion, "%v", force)
	}
	closes := map[Motion]Motion{Stays: Stays, MayOpen: MayClose, Opens: Closes}
	for force, want := range map[float64]Motion{99: Stays, 100: MayOpen, 150: MayOpen, 200: Opens} {
		p := piston{ao: 1, ac: 1, stroke: 1, least: 100, most: 200}
		c := closeLine{startLow: force, startHigh: force, low: force, high: force, empty: force, full: force}
		require.Equal(t, closes[want], p.effect(Open, &c).Motion, "%v", force)
	}
	for force, want := range map[float64]Motion{199: MayOpen, 200: PartlyOpens} {
		p := piston{ao: 1, ac: 1, stroke: 1, least: 100, most: 200, low: force, high: force, gives: 1e6}
		require.Equal(t, want, p.effect(Closed, &closeLine{}).Motion, "%v", force)
	}
	for force, want := range map[float64]Motion{199: MayClose, 200: PartlyCloses} {
		p := piston{ao: 1, ac: 1, stroke: 1, least: 100, most: 200, gives: 1e6}
		c := closeLine{startLow: force, startHigh: force, low: force, high: force, empty: force, full: force}
		require.Equal(t, want, p.effect(Open, &c).Motion, "%v", force)
	}
}

// A sleeve that may be closed, with the wider piston on the open side, is opened before it is held: what the window allows
// ends, in the panel's own steps, with it open and the other closed.
func TestHeldSleeveThatMayBeClosed(t *testing.T) {
	s := well(2)
	s.Sleeves[1].OpenArea *= 1.5
	before, a := []Position{Open, Unknown}, Action{Move: []int{0}, Hold: []int{1}, Close: true}
	w, err := s.PanelWindow(before, a, valve.SurfaceRange{Greatest: surface.Greatest})
	require.NoError(t, err)
	opens, err := s.Shifting(1)
	require.NoError(t, err)
	require.GreaterOrEqual(t, w.Floor.Surface, opens.Open.Greatest)
	require.Equal(t, surface.Greatest, w.Ceiling.Surface)
	for _, start := range []Position{Unknown, Closed, Open} {
		_, after, err := s.Run([]Position{Open, start}, a.Operations(w.Floor.Surface+1), []Position{Closed, Open})
		require.NoError(t, err)
		require.Equal(t, []Position{Closed, Open}, after)
	}
}
