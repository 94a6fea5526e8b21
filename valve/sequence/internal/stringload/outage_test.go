package stringload

import (
	"errors"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

var errOut = errors.New("out of its table")

// asked is a liquid of 9.5 lb/gal that answers so often.
type asked struct{ left *int }

func (f asked) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	if *f.left--; *f.left < 0 {
		return 0, errOut
	}
	return 9.5 * unit.PoundPerGallon, nil
}

func (f asked) UniformDensity() (unit.Density, bool) {
	*f.left--
	return 9.5 * unit.PoundPerGallon, *f.left >= 0
}

// onTheHook are what the walk asks of a string.
var onTheHook = map[string]func(r *Room, w *walk.World) error{
	"land":   (*Room).Land,
	"hold":   func(r *Room, w *walk.World) error { return r.Move(w, 0, affine.Form{}, pulled(90000)) },
	"part":   func(r *Room, w *walk.World) error { return r.Move(w, 1, affine.Form{}, pulled(90000)) },
	"weight": func(r *Room, w *walk.World) error { _, err := r.Weight(w); return err },
	"axial": func(r *Room, w *walk.World) error {
		w.State.Span = 1000 * lbf
		_, err := r.Axial(w, []int{1}, &affine.Line{F: affine.Const(90000 * lbf), S: 1})
		return err
	},
	"load": func(r *Room, w *walk.World) error {
		return r.Load(new(movement.NestedLoading), w, affine.Form{}, pulled(90000), make([]float64, symbols))
	},
	"turn and slack off": func(r *Room, w *walk.World) error {
		from := affine.Const(90000 * lbf)
		if err := r.Turn(w, true, false, from); err != nil {
			return err
		}
		if _, _, err := r.Cut(w, from, -1, affine.Const(30000*lbf)); err != nil {
			return err
		}
		return r.Slides(w, from)
	},
	"cut": func(r *Room, w *walk.World) error {
		_, _, err := r.Cut(w, affine.Const(90000*lbf), 1, affine.Const(30000*lbf))
		return err
	},
	"judge": func(r *Room, w *walk.World) error {
		j, _ := judge.New(r.Network, &judge.Limits{Steps: []judge.Goals{{}}}, r.Ties())
		r.Envelope, r.BelowAt, r.AboveAt = new(packer.Envelope), 1, 1
		w.State.Applied[0], w.State.Span = affine.Line{S: 1}, 100*psi
		if err := w.State.Solve(affine.Form{}); err != nil {
			return err
		}
		return r.Judge(j, w, walk.Place{Action: -1, X: affine.Const(50 * psi), Between: &[2]affine.Form{{}, affine.Const(100 * psi)}})
	},
}

func pulled(reading float64) *affine.Line { return &affine.Line{F: affine.Const(reading * lbf)} }

// Whatever is asked of the string, with the hook going up or down, drag a number or along the path: what a fluid doesn't
// know of its density is the answer, however often it did know it.
func TestNoDensityNoLoad(t *testing.T) {
	for name, ask := range onTheHook {
		for _, along := range []bool{false, true} {
			handed := 0
			for left := 0; ; left++ {
				answers := math.MaxInt
				r, w := rigIn(t, func(n *well.Network) {
					col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: asked{&answers}, BottomTVD: 9000 * foot}}, n.Temperatures[0], hydrostatics.Reference{})
					require.NoError(t, err)
					n.Fluids[0].Columns, n.Fluids[0].Scale = []*hydrostatics.Column{col}, affine.Const(1)
				})
				if along {
					rubs(t, r)
				}
				r.Memory = nil
				if name == "judge" {
					require.NoError(t, r.Move(w, 0, affine.Form{}, nil))
				}
				answers = left
				err := ask(r, w)
				if err == nil {
					break
				}
				require.ErrorIs(t, err, errOut, "%s after %d answers", name, left)
				handed++
			}
			require.Equal(t, name != "cut" || along, handed > 0, name) // a number needs no cut on the way up
		}
	}
}

// Friction factors above one are refused by package drag. Wherever the string is on the hook in the plan, in its middle,
// at the end of one band or where two come together, that is the answer.
func TestMoreFrictionThanThereIs(t *testing.T) {
	const rough = "factors[0]: is 1.2"
	for name, ask := range onTheHook {
		r, w := rigIn(t, nil)
		rubs(t, r)
		r.Factors = []affine.Form{affine.Const(1.2)}
		switch err := ask(r, w); name {
		case "land", "weight", "judge", "part", "turn and slack off": // at the hanger nothing rubs, nor where a joint is only parted; a turn shows at its cut
			if name == "turn and slack off" {
				require.ErrorContains(t, err, rough)
			} else {
				require.NoError(t, err, name)
			}
		default:
			require.ErrorContains(t, err, rough, name)
		}
	}
	// 0.7 ± 0.5 by one input.
	r, w := rigIn(t, nil)
	rubs(t, r)
	for _, side := range []float64{-1, 1} {
		r.Factors = []affine.Form{{C: 0.7, T: []affine.Term{{Symbol: frictionOfHole, C: 0.5 * side}}}}
		_, err := r.enclose(w, affine.Form{}, pulled(90000))
		require.ErrorContains(t, err, rough)
	}
	// 0.7 ± 0.25 by each of two: at both ends together.
	r.Factors = []affine.Form{{C: 0.7, T: []affine.Term{{Symbol: frictionOfHole, C: 0.25}, {Symbol: frictionOfSeal, C: 0.25}}}}
	_, err := r.enclose(w, affine.Form{}, pulled(90000))
	require.ErrorContains(t, err, rough)
	r.Factors[0].T = r.Factors[0].T[:1]
	_, err = r.enclose(w, affine.Form{}, pulled(90000))
	require.NoError(t, err)

	// Held on the hook with a factor that is too great, it can't be asked how it stands after that.
	r.Factors = []affine.Form{affine.Const(0.2)}
	require.NoError(t, r.Move(w, 0, affine.Form{}, pulled(90000)))
	r.Factors = []affine.Form{affine.Const(1.2)}
	w.State.String.(*standing).known = nil
	for name, ask := range onTheHook {
		if name != "land" { // which begins anew
			require.ErrorContains(t, ask(r, w.Clone()), rough, name)
		}
	}
}

// Before it has landed, whatever is asked of a string on the hook says so.
func TestNothingIsAskedBeforeItLands(t *testing.T) {
	r, w := rigIn(t, nil)
	w.State.String = nil
	require.ErrorIs(t, r.Turn(w, true, false, affine.Form{}), errNotLanded)
	require.ErrorIs(t, r.Slides(w, affine.Form{}), errNotLanded)
	_, _, err := r.Cut(w, affine.Form{}, 1, affine.Form{})
	require.ErrorIs(t, err, errNotLanded)
	_, err = r.Weight(w)
	require.ErrorIs(t, err, errNotLanded)
	require.ErrorContains(t, err, "the string hasn't landed")
}

// Along a path the way down from a pull is as with a number, the drag of the straight hole by hand: μ·w·L·sin I. The hook goes up to
// 120,000 lbf; of the first 2·D that it goes down nothing arrives where it is held, and what it goes up again is taken once more.
func TestTheHookTurnsAlongThePath(t *testing.T) {
	r, w := rigIn(t, nil)
	rubs(t, r)
	r.Factors = []affine.Form{affine.Const(0.2)}
	press(t, w, affine.Const(0))
	require.NoError(t, r.Move(w, 0, affine.Form{}, nil)) // held at 8,990 ft
	load := func(reading float64) movement.Loading {
		var l movement.NestedLoading
		require.NoError(t, r.Load(&l, w, affine.Form{}, pulled(reading), make([]float64, symbols)))
		return l.Inner
	}
	drag := func(l movement.Loading) float64 { return float64(r.Up.Terms(&l).Drag) / lbf }
	buoyed := 9.3 + 12.0/231*(9.5*math.Pi/4*2.992*2.992-9.2*math.Pi/4*3.5*3.5)
	side := 0.2 * buoyed * 9000 * math.Sin(math.Pi/6) // lbf, if it rubs down to its end
	top := load(120000)
	require.InDelta(t, side, drag(top), 0.005*side)

	from := affine.Const(120000 * lbf)
	require.NoError(t, r.Turn(w, true, false, from))
	cut, bends, err := r.Cut(w, from, -1, affine.Const(60000*lbf))
	require.NoError(t, err)
	require.True(t, bends)
	require.InDelta(t, 2*side, cut.C/lbf, 0.01*side)
	for share, want := range map[float64]float64{0: side, 0.25: side / 2, 0.5: 0, 1: -side} {
		l := load(120000 - share*2*side)
		require.InDelta(t, want, drag(l), 0.01*side, "drag after %v of the way", share)
		require.InDelta(t, float64(top.Holds[0].Load)/lbf, float64(l.Holds[0].Load)/lbf, 0.01*side, "nothing arrives, share %v", share)
	}
	further := load(120000 - 2*side - 10000)
	require.InDelta(t, -side, drag(further), 0.01*side)
	require.InDelta(t, float64(top.Holds[0].Load)/lbf-10000, float64(further.Holds[0].Load)/lbf, 0.01*side)

	// From the hanger there is nothing to give back: once the drag.
	require.NoError(t, r.Turn(w, false, false, affine.Const(90000*lbf)))
	require.NoError(t, r.Turn(w, true, true, from))
	cut, _, err = r.Cut(w, from, -1, affine.Const(60000*lbf))
	require.NoError(t, err)
	require.InDelta(t, side, cut.C/lbf, 0.01*side)
	require.InDelta(t, 0, drag(load(120000)), 1e-3*side)
	require.InDelta(t, -side/2, drag(load(120000-side/2)), 0.01*side)
}
