package walk

import (
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// Worlds are made one only where they stand alike: pressures to rounding, ports, what is armed, how far
// rows have come, and the temperature. A difference in one of them alone keeps them apart.
func TestWorldsThatStandAlike(t *testing.T) {
	for name, x := range map[string]struct {
		change func(w *World)
		stands bool // alike but for how often things have happened
		alike  bool // to be made one, each alternative of a row with its conditions
	}{
		"nothing":              {func(*World) {}, true, true},
		"a pressure, rounding": {func(w *World) { w.State.Top[2] = w.State.Top[2].Plus(affine.Line{F: affine.Const(equal / 2)}) }, true, true},
		"a pressure":           {func(w *World) { w.State.Top[2] = w.State.Top[2].Plus(affine.Line{F: affine.Const(1)}) }, false, false},
		"how a pressure goes":  {func(w *World) { w.State.Top[2] = w.State.Top[2].Plus(affine.Line{S: 1}) }, false, false},
		"a port":               {func(w *World) { w.State.Open[0] = !w.State.Open[0] }, false, false},
		"what is armed":        {func(w *World) { w.State.Armed[0] = false }, false, false},
		"a row":                {func(w *World) { w.Rows[0] = []Progress{{Count: 1}} }, false, true},
		"another way in a row": {func(w *World) { w.Rows[0] = append(w.Rows[0], Progress{Count: 1}) }, false, true},
	} {
		r := newRig(1)
		r.port(0, 2, false)
		r.device(2, well.Trigger{Level: affine.Const(100), Count: 2})
		r.n.Prepare()
		a, err := Start(r.n, affine.Box(0, nil))
		require.NoError(t, err)
		b := a.Clone()
		x.change(b)
		require.Equal(t, x.stands, standsAlike(a, b), name)
		require.Equal(t, x.stands, standsAlike(b, a), name)
		require.Equal(t, x.alike, alike(a, b), name)
		if ways := len(b.Rows[0]); x.alike {
			one := merge([]*World{a, b})
			require.Len(t, one, 1, name)
			if !x.stands {
				ways = 2
			}
			require.Len(t, one[0].Rows[0], ways, name)
		} else {
			require.Len(t, merge([]*World{a, b}), 2, name)
		}
	}
}

// Two pressures that are changed together from where nobody knows which way they go: walked where they go
// one way or opposite ways together, refused where each may go its own.
func TestRampsOfWhichNobodyKnowsTheWay(t *testing.T) {
	for name, x := range map[string]struct {
		second  func(x, y affine.Form) affine.Form
		refused bool
	}{
		"alike":       {func(x, _ affine.Form) affine.Form { return x }, false},
		"opposite":    {func(x, _ affine.Form) affine.Form { return x.Times(-1) }, false},
		"one stays":   {func(_, _ affine.Form) affine.Form { return affine.Form{} }, false},
		"its own way": {func(_, y affine.Form) affine.Form { return y }, true},
		"further":     {func(x, _ affine.Form) affine.Form { return x.Times(2) }, true},
	} {
		r := newRig(0)
		a, b := r.band(-5, 5), r.band(-4, 4)
		r.step.Ramps = [][]Move{{{0, a}, {1, x.second(a, b)}}}
		e := make([]float64, len(r.n.Symbols))
		_, _, err := r.walk(t, r.n, affine.Box(len(e), e))
		if x.refused {
			require.ErrorIs(t, err, ErrEnclosed, name)
		} else {
			require.NoError(t, err, name)
		}
	}
}
