package sleeve

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/controlline"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func TestJunctions(t *testing.T) {
	s := well(2)
	js, err := s.Junctions([]Position{Open, Closed}, []Position{Closed, Unknown})
	require.NoError(t, err)
	want := []Junction{{"sleeve 1", "tubing", "zone 1", false, false}, {"sleeve 2", "tubing", "zone 2", true, true}}
	require.Empty(t, cmp.Diff(want, js))
	_, err = s.Junctions(nil, nil)
	require.Error(t, err)

	// Two sleeves between the same compartments, and a chain.
	s = well(3)
	s.Sleeves[1].Inside, s.Sleeves[1].Outside = "zone 3", "zone 1"
	s.Sleeves[2].Inside, s.Sleeves[2].Outside = "zone 3", "tubing"
	certain, _, err := s.Joined([]Position{Open, Open, Open})
	require.NoError(t, err)
	require.Equal(t, [][]string{{"tubing", "zone 1", "zone 3"}}, certain)
}

// Swept volumes by hand: 2 in² × 15 in is 30 in³, 0.4916 L.
func TestSignaturesBalance(t *testing.T) {
	s := well(3)
	all := []Position{Open, Open, Open}
	g, err := s.Signatures(all, Action{Close: true, Move: []int{0, 2}, Hold: []int{1}}, 3000*unit.PSI)
	require.NoError(t, err)
	require.Len(t, g, 4)
	total := unit.Volume(0)
	for _, x := range g {
		total += x.Swept
	}
	require.InDelta(t, 0, float64(total), 1e-18, "equal areas give what they take")
	require.InEpsilon(t, 2*30*float64(unit.CubicInch), float64(g[0].Swept), 1e-12)
	require.Zero(t, g[2].Swept)
	require.Positive(t, g[2].Storage)
	require.Zero(t, g[1].Storage, "vented")
}

func TestShiftTakesTheSleevesVolumes(t *testing.T) {
	s := well(2)
	s.Sleeves[1].CloseArea = 1.9 * unit.SquareInch
	for _, closing := range []bool{false, true} {
		shift, err := s.Shift(1, closing, 3000*unit.PSI)
		require.NoError(t, err)
		plan, err := shift.Plan()
		require.NoError(t, err)
		a := Action{Close: closing, Move: []int{1}}
		g, err := s.Signatures([]Position{Closed, Position(map[bool]Position{true: Open}[closing])}, a, 3000*unit.PSI)
		require.NoError(t, err)
		feed, vent := g[1], g[0]
		if closing {
			feed, vent = vent, feed
		}
		require.InEpsilon(t, float64(feed.Pumped()), float64(plan.Pumped), 1e-12)
		require.InEpsilon(t, -float64(vent.Pumped()), float64(plan.Returned), 1e-12)
		x, err := s.Shifting(1)
		require.NoError(t, err)
		want := x.Open.Greatest
		if closing {
			want = x.Close.Greatest
		}
		require.Equal(t, want, shift.Move)
		shift.Pump = want * (1 - 1e-9)
		_, err = shift.Plan()
		require.ErrorIs(t, err, controlline.ErrNoShift)
	}
}
