package movement_test

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// nestedPair is 2-7/8 in in 4-1/2 in pipe, both without room to buckle, the inner one hung where it is told, with seals.
func nestedPair(t *testing.T, hung unit.Length, seals []movement.Seal, holds []movement.Hold, change func(outer *movement.Assembly)) (*movement.Concentric, *movement.MadeUp, *movement.MadeUp) {
	path, err := hydrostatics.Vertical(endAt + 1000*unit.Foot)
	require.NoError(t, err)
	small := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	outer := movement.Assembly{Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: handPipe.OD}}, Path: path}
	inner := movement.Assembly{Sections: []movement.StringSection{{Pipe: small, BottomMD: 9500 * unit.Foot, Hole: small.OD}}, Path: path, Hanger: hung, Seals: seals, Holds: holds, Block: 5000 * unit.PoundForce}
	if change != nil {
		change(&outer)
	}
	o, i := made(t, outer.Carrying(inner)), made(t, inner)
	both, err := movement.Nest(o, i)
	require.NoError(t, err)
	return both, o, i
}

func seal(md unit.Length) movement.Seal {
	return movement.Seal{MD: md, Bore: 3 * unit.Inch, Up: 30 * unit.Foot, Down: 30 * unit.Foot, Friction: 800 * unit.PoundForce}
}

func land(t *testing.T, both *movement.Concentric, o *movement.MadeUp, oc, ic movement.Conditions) movement.Nested {
	s, err := o.Land(warm(100))
	require.NoError(t, err)
	n, err := both.Land(s, oc, ic)
	require.NoError(t, err)
	return n
}

// An inner string that touches at its hanger alone hangs on the outer one with all its weight; one that is hung where
// the outer one is, in the wellhead, doesn't; one place at the outer one's very end is a place of it.
func TestWhereTheInnerStringMeetsTheOuter(t *testing.T) {
	both, o, _ := nestedPair(t, 6000*unit.Foot, nil, nil, nil)
	alone, err := o.Land(warm(100))
	require.NoError(t, err)
	empty, err := o.Load(alone, warm(100))
	require.NoError(t, err)
	l, err := both.Load(land(t, both, o, warm(100), warm(100)), warm(100), warm(100))
	require.NoError(t, err)
	require.Len(t, l.Puts, 1)
	require.Greater(t, lbf(l.Puts[0]), 15000.0)
	require.InDelta(t, lbf(empty.HangerLoad+l.Inner.HangerLoad), lbf(l.Outer.HangerLoad), 1e-6)

	both, o, _ = nestedPair(t, 0, []movement.Seal{seal(endAt), seal(9200 * unit.Foot)}, nil, nil)
	l, err = both.Load(land(t, both, o, warm(100), warm(100)), warm(100), warm(100))
	require.NoError(t, err)
	require.Len(t, l.Puts, 1, "the seal at the outer string's end, not the hanger beside its own, nor the seal below it")
	require.Len(t, movement.Assembly{}.Carrying(movement.Assembly{Hanger: 5}).Hung, 0)
}

// Where the outer string's bore is closed by the inner one's seal, at its lower end or at a plug, the outer one doesn't
// bear the step of pressure on the seal's area: the inner one does, by hand (pb - pa)·Ap. Elsewhere a free seal puts
// nothing on it but its friction.
func TestSealsThatCloseTheOuterBore(t *testing.T) {
	plug, mid := 8000*unit.Foot, 7000*unit.Foot
	both, o, i := nestedPair(t, 6000*unit.Foot, []movement.Seal{seal(mid), seal(plug), seal(endAt), seal(9300 * unit.Foot)}, nil, func(outer *movement.Assembly) {
		outer.Plugs = []unit.Length{plug, 8500 * unit.Foot}
	})
	ic := warm(100)
	still := ic.Outside
	steps := [...]unit.Pressure{0, 100 * unit.PSI, 400 * unit.PSI, 1000 * unit.PSI, 1700 * unit.PSI}
	ic.Outside = func(part int, d unit.Length) unit.Pressure { return still(0, d) + steps[part] }
	l, err := both.Load(land(t, both, o, warm(100), ic), warm(100), ic)
	require.NoError(t, err)
	require.Len(t, l.Puts, 4)
	require.InDelta(t, 0, lbf(l.Puts[1]), 1e-6, "no step of the outer string's")
	require.InDelta(t, 300*inch2(3*unit.Inch), lbf(l.Puts[2]), 1e-3)
	require.InDelta(t, 600*inch2(3*unit.Inch), lbf(l.Puts[3]), 1e-3)

	// sliding: each seal in the outer string pulls it along by its friction
	for sliding, want := range map[movement.Sliding]float64{movement.SlidingUp: -800, movement.SlidingDown: 800} {
		c := ic
		c.Top, c.Sliding = movement.OnHookOpen, sliding
		l, err := both.Load(land(t, both, o, warm(100), ic), warm(100), c)
		require.NoError(t, err)
		require.InDelta(t, want, lbf(l.Puts[1]), 1e-6)
		require.InDelta(t, want+300*inch2(3*unit.Inch), lbf(l.Puts[2]), 1e-3)
		require.Zero(t, l.Puts[0], "on the hook it hangs there")
	}
	require.Equal(t, 5, len(i.OutsideParts()))

	// a seal below what holds an inner string that is pulled doesn't slide; one above does
	both, o, _ = nestedPair(t, 6000*unit.Foot, []movement.Seal{seal(mid), seal(8000 * unit.Foot)}, []movement.Hold{{MD: 7500 * unit.Foot}}, nil)
	n := land(t, both, o, warm(100), warm(100))
	n, err = both.TakeHold(n, 0, warm(100), warm(100))
	require.NoError(t, err)
	c := warm(100)
	c.Top, c.Sliding, c.Reading = movement.OnHookOpen, movement.SlidingUp, 40000*unit.PoundForce
	l, err = both.Load(n, warm(100), c)
	require.NoError(t, err)
	require.InDelta(t, -800, lbf(l.Puts[2]), 1e-6)
	require.InDelta(t, 0, lbf(l.Puts[3]), 1e-6)
	// and at the hanger all of them do
	c.Top, c.Reading = movement.AtHanger, 0
	l, err = both.Load(n, warm(100), c)
	require.NoError(t, err)
	require.InDelta(t, -800, lbf(l.Puts[2]), 1e-6)
	require.InDelta(t, -800, lbf(l.Puts[3]), 1e-6)
}

// Landed in an outer string that has grown since it landed itself, the inner one counts from there: nothing has moved
// yet. And what a parted joint of the outer one has let go bears nothing at its plug.
func TestLandedInAStringThatHasMoved(t *testing.T) {
	both, o, _ := nestedPair(t, 6000*unit.Foot, []movement.Seal{seal(8000 * unit.Foot)}, nil, nil)
	n := land(t, both, o, warm(180), warm(100))
	l, err := both.Load(n, warm(180), warm(100))
	require.NoError(t, err)
	require.NotZero(t, l.Outer.EndMoved)
	require.InDelta(t, 0, float64(l.Inner.Seals[0].Travel), 1e-9)
	require.InDelta(t, 0, float64(l.Inner.TopMoved), 1e-9)
	l, err = both.Load(n, warm(230), warm(150))
	require.NoError(t, err)
	require.InDelta(t, 6.9e-6*50*6000*12, l.Inner.TopMoved.In(unit.Inch), 1e-6)
	require.InDelta(t, 0, l.Inner.Seals[0].Travel.In(unit.Inch), 1e-6, "both grow alike")

	plug := 8000 * unit.Foot
	for _, joint := range []unit.Length{7000 * unit.Foot, plug, 8500 * unit.Foot} {
		both, o, _ = nestedPair(t, 6000*unit.Foot, []movement.Seal{seal(plug)}, nil, func(outer *movement.Assembly) {
			outer.Plugs = []unit.Length{plug}
			outer.Joints = []movement.Joint{{MD: joint, Seal: 4.5 * unit.Inch}}
		})
		ic := warm(100)
		still := ic.Outside
		ic.Outside = func(part int, d unit.Length) unit.Pressure { return still(0, d) + 1000*unit.PSI*unit.Pressure(part) }
		n = land(t, both, o, warm(100), ic)
		n.Outer, err = o.Part(n.Outer, 0)
		require.NoError(t, err)
		l, err = both.Load(n, warm(100), ic)
		require.NoError(t, err)
		want := 0.0
		if joint > plug {
			want = 1000 * inch2(3*unit.Inch)
		}
		require.InDelta(t, want, lbf(l.Puts[1]), 1e-3, "parted at %v", joint)
	}
}

// Heated, an inner string stands on its locator in the outer one, and that bears what the locator gives.
func TestLocatorInTheOuterString(t *testing.T) {
	on := seal(8000 * unit.Foot)
	on.Locator, on.Down = true, 0
	both, o, _ := nestedPair(t, 6000*unit.Foot, []movement.Seal{on}, nil, nil)
	n := land(t, both, o, warm(100), warm(100))
	l, err := both.Load(n, warm(100), warm(200))
	require.NoError(t, err)
	require.True(t, l.Inner.Seals[0].Stands)
	require.Less(t, lbf(l.Inner.Seals[0].Load), -1000.0)
	require.InDelta(t, -lbf(l.Inner.Seals[0].Load), lbf(l.Puts[1]), 1e-4)
}

// Two strings that buckle in each other take several of Newton's steps, and are in balance after them: the outer one
// bears what the inner one puts, and what holds the inner one has moved with it.
func TestTwoStringsThatBuckle(t *testing.T) {
	path, err := hydrostatics.Vertical(endAt)
	require.NoError(t, err)
	small := tubular.Pipe{OD: 2.375 * unit.Inch, ID: 1.995 * unit.Inch, Weight: 4.7 * unit.PoundPerFoot, Material: tubular.Steel()}
	outer := movement.Assembly{Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: 8.5 * unit.Inch}}, Path: path, Holds: []movement.Hold{{MD: 8900 * unit.Foot}}}
	inner := movement.Assembly{Sections: []movement.StringSection{{Pipe: small, BottomMD: 8500 * unit.Foot, Hole: handPipe.ID}}, Path: path, Hanger: 4000 * unit.Foot,
		Holds: []movement.Hold{{MD: 6000 * unit.Foot}, {MD: 8400 * unit.Foot}}}
	o, i := made(t, outer.Carrying(inner)), made(t, inner)
	both, err := movement.Nest(o, i)
	require.NoError(t, err)
	n := land(t, both, o, warm(100), warm(100))
	for place := range 2 {
		n, err = both.TakeHold(n, place, warm(100), warm(100))
		require.NoError(t, err)
	}
	n, err = both.TakeHoldOuter(n, 0, warm(100), warm(100))
	require.NoError(t, err)
	var offset []float64 // of what has moved before the inner string landed or was held
	for _, f := range []float64{60, 160, 260, 330} {
		l, err := both.Load(n, warm(140), warm(f))
		require.NoError(t, err)
		// what the hung places feel is what the inner string gives
		require.InDelta(t, lbf(l.Inner.HangerLoad), lbf(l.Puts[0]), 1e-4)
		require.InDelta(t, -lbf(l.Inner.Holds[0].Load), lbf(l.Puts[1]), 1e-4)
		require.InDelta(t, -lbf(l.Inner.Holds[1].Load), lbf(l.Puts[2]), 1e-4)
		c := warm(140)
		c.Hung = l.Puts
		again, err := o.Load(n.Outer, c)
		require.NoError(t, err)
		for k, moved := range []unit.Length{l.Inner.TopMoved, l.Inner.Holds[0].Moved, l.Inner.Holds[1].Moved} {
			if len(offset) == k {
				offset = append(offset, float64(again.HungMoved[k]-moved))
			}
			require.InDelta(t, offset[k], float64(again.HungMoved[k]-moved), 1e-9)
		}
	}
}
