package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// Above a joint that has parted hangs nothing: the wall force at its end is what the
// pressures do to the pin's ring and bore, by hand. With 3,000 psi inside over the
// annulus at the joint the bore of 5 in is pushed down on, and the wall carries the
// pressures inside and outside on its own areas.
func TestForceAboveAPartedJointUnderPressure(t *testing.T) {
	m := made(t, handAssembly(t))
	c := water(0, 0, 0, 0)
	s, err := m.Land(c)
	require.NoError(t, err)
	s, err = m.Part(s, 0)
	require.NoError(t, err)
	for _, inside := range []unit.Pressure{0, 3000 * unit.PSI} {
		l, err := m.Load(s, water(inside, 0, 0, 0))
		require.NoError(t, err)
		at := 0
		for i, n := range l.Nodes {
			if n.MD == jointAt {
				at = i
				break
			}
		}
		n := l.Nodes[at]
		ring := -inch2(jointBore) * inside.In(unit.PSI)
		require.InDelta(t, ring, lbf(n.Effective), 1e-3, "what is inside, less what is outside, on the joint's seal")
		require.InDelta(t, float64(n.Effective)+float64(n.Inside)*math.Pi/4*math.Pow(float64(handPipe.ID), 2)-float64(n.Outside)*math.Pi/4*math.Pow(float64(handPipe.OD), 2), float64(n.True), 1e-3)
	}
}

// Latched to again what a joint has left, a string is what it was before, to the last
// bit; by how much its reading is less than it hangs with stands on that.
func TestJoinedIsAsBefore(t *testing.T) {
	m := made(t, handAssembly(t))
	c := water(0, 0, 0, 0)
	landed, err := m.Land(c)
	require.NoError(t, err)
	held, err := m.TakeHold(landed, 0, water(2000*unit.PSI, 0, 0, 0))
	require.NoError(t, err)
	parted, err := m.Part(held, 0)
	require.NoError(t, err)
	hook := c
	hook.Top = movement.OnHookOpen
	free, err := m.Load(parted, hook)
	require.NoError(t, err)
	require.True(t, free.Free)
	hook.Reading = free.Reading - 10000*unit.PoundForce
	l, err := m.Load(parted, hook)
	require.NoError(t, err)
	require.InDelta(t, -10000, lbf(l.Joints[0].OnRest), 1e-6)
	workingtest.Check(t, m.Steps(&l))
	joined, err := m.Join(parted, 0)
	require.NoError(t, err)
	for _, c := range []movement.Conditions{c, water(3000*unit.PSI, 500*unit.PSI, 0, 0)} {
		before, err := m.Load(held, c)
		require.NoError(t, err)
		after, err := m.Load(joined, c)
		require.NoError(t, err)
		require.Equal(t, before.Nodes, after.Nodes)
		require.Equal(t, before.Holds, after.Holds)
	}
	// What stood on the rest goes through the joint.
	l, err = m.Load(joined, hook)
	require.NoError(t, err)
	require.InDelta(t, -10000, lbf(l.Joints[0].Effective-free.Joints[0].Effective), 1e-3)

	_, err = m.Join(held, 0)
	require.ErrorIs(t, err, movement.ErrLost)
	_, err = m.Join(parted, 7)
	require.Error(t, err)
	gone, err := m.Part(landed, 0)
	require.NoError(t, err)
	_, err = m.Join(gone, 0)
	require.ErrorIs(t, err, movement.ErrLost)
	l, err = m.Load(gone, hook)
	require.NoError(t, err)
	require.Zero(t, l.Joints[0].OnRest, "there is nothing to stand on")
}
