package movement_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// TestBuckledLengthCountsTheTail: held at 8,000 ft, 2,000 psi under the seals at
// 8,800 ft over the annulus above them: 35,441 lbf of push against 11.010 lbf/ft, so
// that all 800 ft between packer and seals lie in a helix and nothing else does:
// below the seals the tail hangs, above the packer nothing has changed.
func TestBuckledLengthCountsTheTail(t *testing.T) {
	m := made(t, handAssembly(t))
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
	require.NoError(t, err)
	l, err := m.Load(s, water(0, 0, 0, 2000*unit.PSI))
	require.NoError(t, err)
	require.InDelta(t, 800, l.BuckledLength.In(unit.Foot), 1e-6)
	require.InDelta(t, 800, l.HelicalLength.In(unit.Foot), 1e-6)
	require.InDelta(t, 2000*inch2(sealBore), lbf(l.Holds[0].Load), 1e-3, "the tail pushes the packer up")
}

// TestStepsOfPressureAreNotSmeared: pressures that step by 3,000 psi at the packer
// and at the seal give the same movement whatever the nodes' distance, as every
// part is straight in depth.
func TestStepsOfPressureAreNotSmeared(t *testing.T) {
	travel := func(spacing unit.Length) (seals, free unit.Length) {
		a := handAssembly(t)
		a.Spacing, a.Sections[0].Hole = spacing, handPipe.OD
		m := made(t, a)
		s, err := m.Land(water(0, 0, 0, 0))
		require.NoError(t, err)
		l, err := m.Load(s, water(500*unit.PSI, 1000*unit.PSI, 4000*unit.PSI, 7000*unit.PSI))
		require.NoError(t, err)
		free = l.EndMoved
		s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
		require.NoError(t, err)
		l, err = m.Load(s, water(500*unit.PSI, 1000*unit.PSI, 4000*unit.PSI, 7000*unit.PSI))
		require.NoError(t, err)
		return l.Seals[0].Travel, free
	}
	fineSeals, fineFree := travel(10 * unit.Foot)
	coarseSeals, coarseFree := travel(9000 * unit.Foot)
	require.InDelta(t, float64(fineSeals), float64(coarseSeals), 1e-10)
	require.InDelta(t, float64(fineFree), float64(coarseFree), 1e-10)
	// By hand, from packer to seals, 800 ft: the push of the seal, 3,000 psi × 17.721
	// in², shortens by F·L/(E·As) and the pressures balloon it: -2ν·L/(E·As)·(Ai·500 -
	// Ao·4,000), plus what 500 psi at the end inside and 7,000 outside pull and push.
	ai, ao := inch2(handPipe.ID), inch2(handPipe.OD)
	per := 800 * 12 / (30e6 * (ao - ai))
	wall := 500*ai - 7000*ao - 3000*(inch2(sealBore)-ao)
	want := per * (wall - 0.6*(500*ai-4000*ao))
	require.InDelta(t, want, fineSeals.In(unit.Inch), 1e-6)
}

// TestMostReadingByPartsAndHotPipe: a tool in the string, hot pipe, an overload that
// no pull mends.
func TestMostReadingByPartsAndHotPipe(t *testing.T) {
	a := snug(t)
	usual := tubular.UsualDerating()
	a.Derating = &usual
	m := made(t, a)
	s, err := m.Land(warm(270))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, warm(270))
	require.NoError(t, err)
	c := warm(270)
	c.Top, c.Reading = movement.OnHookClosed, 120000*unit.PoundForce
	l, err := m.Load(s, c)
	require.NoError(t, err)
	most, err := m.MostReading(&l, movement.PullLimits{})
	require.NoError(t, err)
	steel := inch2(handPipe.OD) - inch2(handPipe.ID)
	require.InDelta(t, 0.94*80000*steel+15000, lbf(most.Reading), 1)
	require.Equal(t, unit.Length(0), most.MD)
	at, ok := m.WallAt(&l, 2000*unit.Foot)
	require.True(t, ok)
	most, fault := m.MostReading(&l, movement.PullLimits{Parts: []movement.RatedPart{{Name: "valve", MD: 2000 * unit.Foot, Rating: at + 1000*unit.PoundForce}, {Name: "hanger tool", MD: 0, Rating: 400000 * unit.PoundForce}}})
	require.NoError(t, fault)
	require.Equal(t, "valve", most.By)
	require.InDelta(t, 121000, lbf(most.Reading), 1e-6)

	burst := warm(270)
	still := burst.Inside
	burst.Inside = func(part int, d unit.Length) unit.Pressure { return still(part, d) + 12000*unit.PSI }
	burst.Top, burst.Reading = movement.OnHookClosed, 120000*unit.PoundForce
	l, fault = m.Load(s, burst)
	require.NoError(t, fault)
	_, fault = m.MostReading(&l, movement.PullLimits{})
	require.ErrorIs(t, fault, movement.ErrNoPull)
	require.ErrorContains(t, fault, "burst")
}
