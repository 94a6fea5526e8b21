package walk

import (
	"math"
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// One shutter at 90 to 110 of a ramp to 200: the pocket keeps just what the shutter
// says, as a form.
func TestAnEventStandsAtItsLevel(t *testing.T) {
	r := newRig(1)
	p := r.port(0, 2, true)
	r.device(0, up(r.band(90, 110))).Closes = []int{p}
	r.ramp(200)
	r.expect(0)
	out, _ := r.all(t)
	require.Len(t, out, 1)
	top := out[0].State.Top[2].F
	require.InDelta(t, 100, top.C, 1e-9)
	require.InDelta(t, 10, top.T[0].C, 1e-9)
	require.InDelta(t, 200, out[0].State.Top[0].F.C, 1e-9)
	require.Equal(t, []int{0}, order(out[0]))
	require.Equal(t, []int{0, 1}, r.seen.stands)
}

// A peak of 100 in a band of 90 to 110: where the level is above, it is missing; where
// it is at most that, it came. Both are told.
func TestAPeakInABandParts(t *testing.T) {
	r := newRig(1)
	p := r.port(0, 2, true)
	r.device(0, up(r.band(90, 110))).Closes = []int{p}
	r.ramp(100)
	r.expect(0)
	out, _ := r.all(t)
	require.Len(t, out, 1, "only what did as intended goes on")
	require.Equal(t, []int{0}, r.seen.missing)
	require.LessOrEqual(t, out[0].Region.Greatest(affine.Form{T: []affine.Term{{Symbol: 0, C: 1}}}), 1e-3)
	r.step.Ramps[0][0].To = affine.Const(89.99)
	out, _ = r.all(t)
	require.Empty(t, out)
	r.step.Ramps[0][0].To = affine.Const(110)
	_, _ = r.all(t)
	require.Empty(t, r.seen.missing, "reaching the late end is meeting it")
}

// Two that share a pocket may come in either order, and each order stands where its
// conditions say; a third that comes later for certain makes no more of them.
func TestEitherOrder(t *testing.T) {
	r := newRig(1)
	p, q := r.port(0, 2, true), r.port(1, 2, false)
	r.device(0, up(r.band(90, 110))).Closes = []int{p}
	r.device(0, up(r.band(95, 105))).Opens = []int{q}
	r.n.Actions[1].Inside = 2 // it feels the pocket: none of its business once that is shut
	r.ramp(200)
	r.astra = true
	out, _ := r.all(t)
	alone := map[int]bool{}
	for _, w := range out {
		if o := order(w); len(o) == 1 {
			alone[o[0]] = true
		}
		apart := affine.Form{T: []affine.Term{{Symbol: 0, C: 10}, {Symbol: 1, C: -5}}} // t0 - t1
		if len(w.Times) > 0 && w.Times[1] == 0 {
			require.LessOrEqual(t, w.Region.Greatest(apart), 1e-2, "shut in below its level, the other never feels it")
		}
		if w.Times[0] == 0 {
			least, _ := w.Region.Least(apart)
			require.GreaterOrEqual(t, least, -1e-2, "vented, the first feels no more")
		}
	}
	require.True(t, alone[0])
}

// What is due at one pressure comes in either order and ends in one world, whichever
// stands first in the file.
func TestTies(t *testing.T) {
	for _, swapped := range []bool{false, true} {
		r := newRig(2)
		p, q := r.port(0, 2, true), r.port(0, 3, true)
		if swapped {
			p, q = q, p
		}
		r.device(0, up(affine.Const(100))).Closes = []int{p}
		r.device(0, up(affine.Const(100))).Closes = []int{q}
		r.ramp(200)
		r.expect(0, 1)
		out, _ := r.all(t)
		require.Len(t, out, 1)
		require.InDelta(t, 100, out[0].State.Top[2].F.C, 1e-9)
		require.InDelta(t, 100, out[0].State.Top[3].F.C, 1e-9)
		require.Empty(t, r.seen.missing)
		require.Empty(t, r.seen.unintended)
	}
	// Where the order matters both are walked: the one shuts the pocket off, the other
	// would vent it at the same pressure.
	r := newRig(1)
	p, q := r.port(0, 2, true), r.port(1, 2, false)
	r.device(0, up(affine.Const(100))).Closes = []int{p}
	r.device(2, up(affine.Const(100))).Opens = []int{q}
	r.ramp(200)
	r.astra = true
	out, _ := r.all(t)
	ends := map[bool]bool{}
	for _, w := range out {
		ends[order(w)[0] == 0] = true
	}
	require.NotEmpty(t, out)
	require.Len(t, ends, 2, "%d worlds", len(out))
}

// One shuts at 100 and, armed by that, opens again at once. Another one, whose band has
// 100 in its middle, may come just between the two: then two pockets share what the one
// holds.
func TestATieInTheMiddleOfACascade(t *testing.T) {
	r := newRig(2)
	p, q := r.port(0, 2, true), r.port(2, 3, false)
	a := r.device(0, up(affine.Const(100)))
	a.Closes, a.Arms = []int{p}, []int{1}
	b := r.device(0, up(affine.Const(50)))
	b.Opens, b.Disarmed = []int{p}, true
	r.n.Actions[1].Device, r.n.Devices = 0, 1
	r.device(0, up(r.band(90, 110))).Opens = []int{q}
	r.ramp(200)
	r.expect(0, 1, 2)
	shared := false
	r.seen.see = func(w *World) { shared = shared || math.Abs(w.State.Top[3].F.C-50) < 1e-3 }
	out, _ := r.all(t)
	require.NotEmpty(t, out)
	require.Empty(t, r.seen.unintended)
	require.True(t, shared)
}

// The first lets its pressure through to a pocket that the second feels, which lets it
// through to the next: all at the pressure of the first.
func TestACascade(t *testing.T) {
	r := newRig(3)
	for i := range 3 {
		from := 0
		if i > 0 {
			from = i + 1
		}
		p := r.port(from, i+2, false)
		r.device(from, up(affine.Const(float64(100-20*i)))).Opens = []int{p}
	}
	r.ramp(99, 150)
	r.expect(0, 1, 2)
	out, _ := r.all(t)
	require.Len(t, out, 1)
	require.Equal(t, []int{0, 1, 2}, order(out[0]))
	for tr := out[0].Trail; tr != nil; tr = tr.Before {
		require.InDelta(t, 100, tr.Applied[0].C, 1e-9)
		require.Equal(t, 1, tr.Drive)
	}
	require.InDelta(t, 150, out[0].State.Top[4].F.C, 1e-9)
}

// One that opens a port and, armed by that, shuts it again at the same pressure, and so
// on: told, not walked for ever.
func TestWhatNeverSettles(t *testing.T) {
	r := newRig(1)
	p := r.port(0, 2, true)
	a := r.device(0, up(affine.Const(50)))
	a.Closes, a.Arms = []int{p}, []int{1}
	b := r.device(0, up(affine.Const(40)))
	b.Opens, b.Arms, b.Disarmed = []int{p}, []int{0}, true
	r.n.Actions[1].Device = 0
	r.n.Devices = 1
	r.ramp(100)
	r.astra = true
	r.all(t)
	require.Positive(t, r.seen.stuck)
}

// What can't feel each other isn't ordered: the work grows with the number of chambers,
// not with the number of their orders.
func TestClustersCommute(t *testing.T) {
	spent := func(n int) int {
		r := newRig(n)
		for i := range n {
			p := r.port(0, i+2, true)
			r.device(0, up(r.band(90, 110))).Closes = []int{p}
		}
		r.ramp(200)
		for i := range n {
			r.expect(i)
		}
		out, k := r.all(t)
		require.Len(t, out, 1)
		require.Empty(t, r.seen.missing)
		return k.spent
	}
	require.LessOrEqual(t, spent(6), 72)
	require.LessOrEqual(t, spent(24), 720)
}

// A counter met in doubt has two alternatives of its progress and no more worlds.
func TestACounterInDoubtIsNoWorld(t *testing.T) {
	r := newRig(0)
	for range 10 {
		r.device(0, well.Trigger{Level: r.band(90, 110), Count: 3, Rearm: affine.Const(20)})
	}
	r.ramp(100, 0, 100, 0)
	out, _ := r.all(t)
	require.Len(t, out, 1)
	for _, p := range out[0].Rows {
		require.LessOrEqual(t, len(p), 3, "not at all, twice, and once where it is just touched")
		for _, x := range p {
			if x.Count == 1 {
				region := affine.Box(10, make([]float64, 10)).And(x.Rows)
				require.NotNil(t, region)
				k := x.Rows[0].T[0].Symbol
				require.LessOrEqual(t, region.Greatest(affine.Form{T: []affine.Term{{Symbol: k, C: 1}}}), 1e-3)
			}
		}
	}
}
