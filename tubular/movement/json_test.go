package movement_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// What is made from what people write isn't written itself, and says what to write.
func TestWhatIsMadeIsNotWritten(t *testing.T) {
	for write, v := range map[string]any{"write the Assembly": &movement.MadeUp{}, "write the String": &movement.Landed{}, "write what was done to the string": &movement.Standing{}} {
		_, err := json.Marshal(v)
		require.ErrorContains(t, err, write)
		require.ErrorContains(t, json.Unmarshal([]byte("{}"), v), write)
	}
}

// Loads that aren't numbers are named; strings that are nil let nothing pass.
func TestNumbersThatAreNone(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 9))
	a := randomAssembly(t, r)
	for len(a.Hung) == 0 {
		a = randomAssembly(t, r)
	}
	m := made(t, a)
	c := randomConditions(r, m, a)
	c.Hung[0] = unit.Force(math.Inf(1))
	_, err := m.Land(c)
	require.ErrorContains(t, err, "Hung[0]: is")
	var none *movement.MadeUp
	length, _, limited := none.LongestTool(nil, 0.1)
	require.True(t, limited)
	require.Zero(t, length)
	_, _, limited = m.LongestTool(nil, 0.1)
	require.True(t, limited)
	var landed *movement.Landed
	_, _, limited = landed.LongestTool(nil, 0.1)
	require.True(t, limited)
}

// The outer string of two that is taken hold of under the load of the inner one keeps that load: nothing
// has moved, and the hold bears nothing yet.
func TestOuterStringHeldUnderTheInner(t *testing.T) {
	path, err := hydrostatics.Vertical(endAt)
	require.NoError(t, err)
	small := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	outer := movement.Assembly{Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: handPipe.OD}}, Path: path, Holds: []movement.Hold{{MD: 9000 * unit.Foot}}}
	inner := movement.Assembly{Sections: []movement.StringSection{{Pipe: small, BottomMD: 8500 * unit.Foot, Hole: small.OD}}, Path: path, Hanger: 6000 * unit.Foot, Holds: []movement.Hold{{MD: 8000 * unit.Foot}}}
	both, err := movement.Nest(made(t, outer.Carrying(inner)), made(t, inner))
	require.NoError(t, err)
	s, err := both.Outer.Land(warm(100))
	require.NoError(t, err)
	n, err := both.Land(s, warm(100), warm(100))
	require.NoError(t, err)
	n, err = both.TakeHold(n, 0, warm(100), warm(100))
	require.NoError(t, err)
	before, err := both.Load(n, warm(120), warm(150))
	require.NoError(t, err)
	n, err = both.TakeHoldOuter(n, 0, warm(120), warm(150))
	require.NoError(t, err)
	after, err := both.Load(n, warm(120), warm(150))
	require.NoError(t, err)
	require.True(t, after.Outer.Holds[0].Held)
	require.InDelta(t, 0, float64(after.Outer.Holds[0].Load), 0.1)
	require.InDelta(t, float64(before.Outer.HangerLoad), float64(after.Outer.HangerLoad), 0.1)
	require.InDelta(t, float64(before.Inner.Holds[0].Load), float64(after.Inner.Holds[0].Load), 0.1)
	// heated after that, it pushes on the hold with what it can't lengthen: E·As·α·ΔT
	hot, err := both.Load(n, warm(130), warm(160))
	require.NoError(t, err)
	as := inch2(handPipe.OD) - inch2(handPipe.ID)
	require.InDelta(t, -30e6*as*6.9e-6*10, lbf(hot.Outer.Holds[0].Load), 0.35*30e6*as*6.9e-6*10, "less what the inner one takes")
	require.Less(t, float64(hot.Outer.Holds[0].Load), 0.0)
}

// A packer of the inner string in the outer one's bore, which a plug closes there for the outer string
// alone: pressure below it, in the inner bore as well, by a balance of forces on both together. Down on the
// closed end acts dp·Ai of the outer, up dp·(Ai − ao) on the ring and dp·as on the inner's steel: what is left is
// dp·ai, the inner bore.
func TestPressureBelowAPackerBetweenTheTwo(t *testing.T) {
	path, err := hydrostatics.Vertical(endAt)
	require.NoError(t, err)
	small := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	touch := 8000 * unit.Foot
	outer := movement.Assembly{Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: handPipe.OD}}, Path: path, Plugs: []unit.Length{touch}}
	for name, inner := range map[string]movement.Assembly{
		"held":   {Holds: []movement.Hold{{MD: touch, Bore: handPipe.ID}}},
		"seated": {Seals: []movement.Seal{{MD: touch, Bore: handPipe.ID, Up: 1, Down: 0, Locator: true, Latch: true}}},
	} {
		inner.Sections, inner.Path, inner.Hanger = []movement.StringSection{{Pipe: small, BottomMD: 8500 * unit.Foot, Hole: small.OD}}, path, 6000*unit.Foot
		both, err := movement.Nest(made(t, outer.Carrying(inner)), made(t, inner))
		require.NoError(t, err)
		const dp = 1e7
		state := func(p unit.Pressure) (oc, ic movement.Conditions) {
			oc, ic = warm(100), warm(100)
			below := func(part int, _ unit.Length) unit.Pressure {
				if part > 0 {
					return p
				}
				return 0
			}
			none := func(int, unit.Length) unit.Pressure { return 0 }
			oc.Inside, oc.Outside = below, none
			ic.Inside, ic.Outside = func(int, unit.Length) unit.Pressure { return p }, below
			return oc, ic
		}
		oc, ic := state(0)
		s, err := both.Outer.Land(oc)
		require.NoError(t, err)
		n, err := both.Land(s, oc, ic)
		require.NoError(t, err)
		if name == "held" {
			n, err = both.TakeHold(n, 0, oc, ic)
			require.NoError(t, err)
		}
		before, err := both.Load(n, oc, ic)
		require.NoError(t, err)
		oc, ic = state(dp)
		after, err := both.Load(n, oc, ic)
		require.NoError(t, err)
		require.InEpsilon(t, dp*float64(small.InnerArea()), float64(after.Outer.HangerLoad-before.Outer.HangerLoad), 1e-6, name)
	}
}
