package walk

import (
	"fmt"
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// rig is a well without weight: compartment 0 is at surface and driven, 1 is at surface
// and stays at nothing, the others are pockets. All pressures are those applied or
// trapped, so that events can be worked out in the head.
type rig struct {
	n     *well.Network
	step  *Step
	seen  recorder
	astra bool
}

func newRig(pockets int) *rig {
	r := &rig{n: &well.Network{Fluids: []well.Fluid{{Name: "nothing"}}}, step: &Step{Name: "step", Temperature: -1}}
	for i := range pockets + 2 {
		r.n.Compartments = append(r.n.Compartments, well.Compartment{Name: fmt.Sprint("c", i), Formation: -1, Volume: 1, Surface: i < 2,
			Depths: []well.Depth{{}, {MD: 1}}, Layers: []well.Layer{{Bottom: well.Depth{MD: 1}}}})
	}
	return r
}

// band gives a level a symbol.
func (r *rig) band(least, greatest float64) affine.Form {
	if least == greatest {
		return affine.Const(least)
	}
	k := len(r.n.Symbols)
	r.n.Symbols = append(r.n.Symbols, well.Symbol{Name: fmt.Sprint(k), Middle: (least + greatest) / 2, Half: (greatest - least) / 2})
	return affine.Form{C: (least + greatest) / 2, T: []affine.Term{{Symbol: k, C: (greatest - least) / 2}}}
}

func (r *rig) port(a, b int, open bool) int {
	r.n.Ports = append(r.n.Ports, well.Port{Name: fmt.Sprint("p", len(r.n.Ports)), A: a, B: b, Open: open})
	return len(r.n.Ports) - 1
}

// device is one with one action that feels inside less compartment 1.
func (r *rig) device(inside int, row ...well.Trigger) *well.Action {
	for i := range row {
		row[i].Count = max(row[i].Count, 1)
	}
	r.n.Actions = append(r.n.Actions, well.Action{Name: fmt.Sprint("a", len(r.n.Actions)), Device: r.n.Devices, Inside: inside, Outside: 1, Row: row})
	r.n.Devices++
	return &r.n.Actions[len(r.n.Actions)-1]
}

func (r *rig) ramp(to ...float64) {
	for _, x := range to {
		r.step.Ramps = append(r.step.Ramps, []Move{{0, affine.Const(x)}})
	}
}

// walk walks the step, with everything expected once unless the rig says otherwise.
func (r *rig) walk(t testing.TB, n *well.Network, region *affine.Region) ([]*World, *Walker, error) {
	t.Helper()
	n.Prepare()
	if r.step.Expect == nil {
		r.step.Expect = make([][]int, n.Devices)
	}
	w, err := Start(n, region)
	require.NoError(t, err)
	r.seen = recorder{see: r.seen.see}
	k := New(n, &r.seen, nil, nil, nil)
	k.PastUnintended = r.astra
	out, err := k.Step([]*World{w}, r.step, 0)
	return out, k, err
}

func (r *rig) all(t testing.TB) ([]*World, *Walker) {
	t.Helper()
	e := make([]float64, len(r.n.Symbols))
	out, k, err := r.walk(t, r.n, affine.Box(len(e), e))
	require.NoError(t, err)
	return out, k
}

// expect puts an action on the list of what its device has to do.
func (r *rig) expect(actions ...int) {
	if r.step.Expect == nil {
		r.step.Expect = make([][]int, r.n.Devices)
	}
	for _, a := range actions {
		d := r.n.Actions[a].Device
		r.step.Expect[d] = append(r.step.Expect[d], a)
	}
}

// recorder is an observer that keeps what it is told.
type recorder struct {
	came, unintended, missing []int
	hands                     [][2]int // act and hindrance
	stuck                     int
	stands                    []int
	moments                   int
	see                       func(*World) // what a test looks at of each moment
	tried                     *recorder    // as it was before
}

func (o *recorder) Try() {
	was := *o
	o.tried = &was
}

func (o *recorder) Tried(keep bool) {
	if was := *o.tried; !keep {
		*o = was
	}
	o.tried = nil
}

func (o *recorder) Moment(w *World, _ Place) error {
	if o.moments++; o.see != nil {
		o.see(w)
	}
	return nil
}
func (o *recorder) Sensed(*World, Place, int, Progress, affine.Form, affine.Form) {
}
func (o *recorder) Reached(*World, Place, int, Progress, affine.Form) {}
func (o *recorder) Came(_ *World, action int, _ Place)                { o.came = append(o.came, action) }
func (o *recorder) Unintended(_ *World, action int, _ Place, _ affine.Form) {
	o.unintended = append(o.unintended, action)
}
func (o *recorder) Missing(_ *World, action int, _ Place) { o.missing = append(o.missing, action) }
func (o *recorder) Hand(_ *World, _ Place, act int, why Hindrance, _ int, _ []affine.Form) {
	o.hands = append(o.hands, [2]int{act, int(why)})
}
func (o *recorder) Stuck(*World, Place) { o.stuck++ }
func (o *recorder) Standstill(_ *World, _ Place, n int) error {
	o.stands = append(o.stands, n)
	return nil
}

// order is what happened in a world, first to last.
func order(w *World) []int {
	var all []int
	for t := w.Trail; t != nil; t = t.Before {
		if t.Complete {
			all = append([]int{t.Action}, all...)
		}
	}
	return all
}

func up(level affine.Form) well.Trigger   { return well.Trigger{Level: level} }
func down(level affine.Form) well.Trigger { return well.Trigger{Level: level, Falling: true} }
