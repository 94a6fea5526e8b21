package movement_test

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// TestInnerStringPushesOnTheOuter: 2-7/8 in hung in 4-1/2 in at 6,000 ft and
// anchored in it at 8,000 ft; the outer string hangs free. The inner one alone
// warms by 50 degF. It wants α·ΔT·L = 6.9e-6 × 50 × 24,000 in = 8.28 in; both
// strings share it as springs in a row, k = E·As/L:
//
//	f = 8.28 in/(L/(E·Ai) + L/(E·Ao)) = 30e6·8.28/24,000/(1/1.812 + 1/3.600) = 12,476 lbf
//
// which the anchor bears downwards and the inner hanger is relieved of.
func TestInnerStringPushesOnTheOuter(t *testing.T) {
	path, err := hydrostatics.Vertical(endAt)
	require.NoError(t, err)
	small := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	outer := movement.Assembly{Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: handPipe.OD}}, Path: path}
	inner := movement.Assembly{Sections: []movement.StringSection{{Pipe: small, BottomMD: 8500 * unit.Foot, Hole: small.OD}}, Path: path, Hanger: 6000 * unit.Foot,
		Holds: []movement.Hold{{MD: 8000 * unit.Foot}}, Seals: []movement.Seal{{MD: 8400 * unit.Foot, Bore: small.OD, Up: unit.Foot, Down: unit.Foot}}}
	o, i := made(t, outer.Carrying(inner)), made(t, inner)
	both, err := movement.Nest(o, i)
	require.NoError(t, err)

	s, err := o.Land(warm(100))
	require.NoError(t, err)
	n, err := both.Land(s, warm(100), warm(100))
	require.NoError(t, err)
	landed, err := both.Load(n, warm(100), warm(100))
	require.NoError(t, err)
	require.InDelta(t, lbf(landed.Inner.HangerLoad), lbf(landed.Puts[0]), 1e-6)
	require.InDelta(t, 0, float64(landed.Inner.Seals[0].Travel), 1e-12, "movements count from landing")
	hangs := lbf(landed.Inner.HangerLoad)

	n, err = both.TakeHold(n, 0, warm(100), warm(100))
	require.NoError(t, err)
	l, err := both.Load(n, warm(100), warm(150))
	require.NoError(t, err)
	ai, ao := inch2(small.OD)-inch2(small.ID), inch2(handPipe.OD)-inch2(handPipe.ID)
	force := 30e6 * 8.28 / 24000 / (1/ai + 1/ao)
	require.InDelta(t, 12476, force, 5)
	require.InDelta(t, -force, lbf(l.Inner.Holds[0].Load), 1e-3)
	require.InDelta(t, hangs-force, lbf(l.Inner.HangerLoad), 1e-3)
	require.InDelta(t, force, lbf(l.Puts[1]), 1e-3)
	require.InDelta(t, lbf(landed.Outer.HangerLoad), lbf(l.Outer.HangerLoad), 1e-3, "between them alone")
	// The anchor is where it was in the outer string, the seal below it has moved in
	// its bore by the heat of 400 ft.
	require.InDelta(t, 6.9e-6*50*400*12, l.Inner.Seals[0].Travel.In(unit.Inch), 1e-6)

	// The whole outer string warms: nothing between the two but what the inner one
	// has of its own.
	l, err = both.Load(n, warm(150), warm(150))
	require.NoError(t, err)
	require.InDelta(t, 0, lbf(l.Inner.Holds[0].Load), 1e-3)

	_, err = movement.Nest(made(t, outer), i)
	require.ErrorContains(t, err, "where the inner string meets it; must be of a string made up Carrying it")
}
