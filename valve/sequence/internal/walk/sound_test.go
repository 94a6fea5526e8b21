package walk

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// random makes a well of up to four pockets whose devices shut, open and count, in
// overlapping bands, and a step of three ramps.
func random(r *rand.Rand) *rig {
	pockets := 1 + r.IntN(4)
	g := newRig(pockets)
	g.astra = true
	level := func() affine.Form {
		x := 40 + 10*float64(r.IntN(8))
		return g.band(x, x+float64(10*r.IntN(4)))
	}
	for i := range pockets {
		from := 0
		if i > 0 && r.IntN(2) == 0 {
			from = i + 1
		}
		g.port(from, i+2, r.IntN(3) > 0)
		g.n.Compartments[i+2].Trapped = g.band(20, 20+float64(20*r.IntN(2)))
		g.n.Compartments[i+2].Volume = float64(1 + r.IntN(3))
	}
	for range 1 + r.IntN(4) {
		inside := r.IntN(pockets + 2)
		if inside == 1 {
			inside = 0
		}
		row := []well.Trigger{up(level())}
		if r.IntN(3) == 0 {
			row = append(row, down(g.band(10, 30)))
		}
		if r.IntN(4) == 0 {
			row[0].Count, row[0].Rearm = 2, g.band(20, 40)
		}
		a := g.device(inside, row...)
		p := r.IntN(len(g.n.Ports))
		switch r.IntN(3) {
		case 0:
			a.Closes = []int{p}
		case 1:
			a.Opens = []int{p}
		}
	}
	if len(g.n.Actions) > 1 && r.IntN(3) == 0 { // two actions of one device that arm each other
		a, b := &g.n.Actions[0], &g.n.Actions[1]
		b.Device, b.Disarmed, a.Arms = a.Device, true, []int{1}
		for i := 2; i < len(g.n.Actions); i++ {
			g.n.Actions[i].Device = i - 1
		}
		g.n.Devices--
	}
	g.ramp(float64(60+10*r.IntN(8)), float64(10*r.IntN(4)), float64(60+10*r.IntN(8)))
	return g
}

// Whatever values the inputs have, a walk of plain numbers ends in a state that one of
// the worlds has there: ports, what has happened and how often, and every pressure.
// Worlds that were made one, clusters walked apart and rows kept as alternatives have
// lost none of them.
func TestWorldsHoldEveryChoice(t *testing.T) {
	source := rand.New(rand.NewPCG(23, 29))
	walked, several, happened := 0, 0, 0
	for trial := range 400 {
		g := random(source)
		n := len(g.n.Symbols)
		first := make([]float64, n)
		worlds, _, err := g.walk(t, g.n, affine.Box(n, first))
		if err != nil {
			require.True(t, errors.Is(err, ErrUnsettled) || errors.Is(err, ErrBudget) || errors.Is(err, ErrEnclosed), "trial %d: %v", trial, err)
			continue
		}
		if g.seen.stuck > 0 {
			continue // left where devices keep moving each other
		}
		if len(worlds) > 1 {
			several++
		}
		for range 20 {
			e := make([]float64, n)
			for k := range e {
				e[k] = 2*source.Float64() - 1
				if source.IntN(3) == 0 {
					e[k] = math.Copysign(1, e[k])
				}
			}
			sharp := g.n.Narrow(func(k int) (float64, float64, bool) { return e[k], 0, true })
			plain, _, err := g.walk(t, sharp, affine.Box(0, nil))
			require.NoError(t, err, "trial %d", trial)
			for _, p := range plain {
				walked++
				for _, times := range p.Times {
					happened += times
				}
				ok := slices.ContainsFunc(worlds, func(w *World) bool { return w.Region.Holds(e) && holds(w, p, e) })
				require.True(t, ok, "trial %d: at %v none of the %d worlds stands as the walk of numbers does: %v %v", trial, e, len(worlds), p.State.Open, p.Times)
			}
		}
	}
	require.Greater(t, walked, 5000)
	require.Greater(t, several, 100)
	require.Greater(t, happened, 3000)
}

// holds tells whether a world stands at a choice as one of plain numbers does. That a
// silent action has happened may be a matter of its row.
func holds(w, p *World, e []float64) bool {
	if !slices.Equal(w.State.Open, p.State.Open) {
		return false
	}
	for i := range w.State.Top {
		f := w.State.Top[i].F
		if math.Abs(f.At(e)-p.State.Top[i].F.C) > f.R+p.State.Top[i].F.R+1e-2 {
			return false
		}
	}
	silent := silents(w.State.Network)
	for i, all := range w.Rows {
		if silent[i] {
			done := p.Times[i] > 0 || p.Rows[i][0].Done
			if len(p.Rows[i]) == 1 && !slices.ContainsFunc(all, func(x Progress) bool {
				region := w.Region.And(x.Rows)
				return region != nil && region.Holds(e) && (x.Done || w.Times[i] > 0) == done
			}) {
				return false
			}
			continue
		}
		if w.State.Armed[i] != p.State.Armed[i] || w.Times[i] != p.Times[i] {
			return false
		}
		if len(p.Rows[i]) == 1 && !slices.ContainsFunc(all, func(x Progress) bool {
			region := w.Region.And(x.Rows)
			return x.is(p.Rows[i][0]) && region != nil && region.Holds(e)
		}) {
			return false
		}
	}
	return true
}
