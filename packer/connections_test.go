package packer_test

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// Two ways: closed form and node by node agree where both hold, for every way
// of joining string and packer.
func TestConnectionsTwoWays(t *testing.T) {
	seat := packer.Seat{Casing: 6.094 * unit.Inch, Bore: 3.25 * unit.Inch}
	v := packerExample()
	v.Warming = 0
	v.Seals, v.SlackOff = packer.Restraint(seat.Bore, 0), 20*unit.Kilopound
	below := v.Final.Inside(10000 * unit.Foot)
	closed, err := seat.Connections(packer.Case{Name: "squeeze", String: v, Below: below})
	require.NoError(t, err)
	require.Len(t, closed, 3)

	path, err := hydrostatics.Vertical(10000 * unit.Foot)
	require.NoError(t, err)
	state := func(c movement.WellFluids) movement.WellProfiles {
		return movement.WellProfiles{Inside: c.Inside, Outside: c.Outside}
	}
	nodes, err := seat.ConnectionsAlong(packer.PathCase{
		Name:      "squeeze",
		String:    movement.String{Sections: v.Sections, Path: path, Seals: v.Seals, Spacing: 2 * unit.Metre},
		Reference: state(v.Initial), SlackOff: v.SlackOff, State: state(v.Final), Below: below,
	})
	require.NoError(t, err)
	require.Len(t, nodes, 3)
	for i := range closed {
		require.Equal(t, closed[i].Restraint, nodes[i].Restraint)
		require.InDelta(t, closed[i].Movement.In(unit.Inch), nodes[i].Movement.In(unit.Inch), 0.01)
		require.InDelta(t, closed[i].Bearing.Tubing.In(unit.PoundForce), nodes[i].Bearing.Tubing.In(unit.PoundForce), 10)
		require.InDelta(t, closed[i].Bearing.Casing.In(unit.PoundForce), nodes[i].Bearing.Casing.In(unit.PoundForce), 10)
		require.InDelta(t, closed[i].Force.In(unit.PoundForce), nodes[i].Force.In(unit.PoundForce), 10)
	}
	_, err = seat.ConnectionsAlong(packer.PathCase{})
	for _, want := range []string{"Sections: is empty", "Path: is missing", "State.Outside: is missing"} {
		require.ErrorContains(t, err, want)
	}
}
