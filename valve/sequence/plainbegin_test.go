package sequence_test

import (
	"context"
	"maps"
	"slices"
	"sync/atomic"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// beginWith brings a well that was run as its lists say to a stated beginning. What
// may have happened is a choice of the script.
func (w *plainWalk) beginWith(b *sequence.Begin) {
	s := w.s
	for _, name := range b.Happened {
		w.effects(w.action(name))
	}
	for _, name := range b.Open {
		s.open[w.port(name)] = true
	}
	for _, name := range b.Shut {
		s.open[w.port(name)] = false
	}
	for _, name := range slices.Sorted(maps.Keys(b.Progress)) {
		i, rows := w.action(name), b.Progress[name]
		r := rows[w.pick(len(rows))]
		s.links[i], s.counted[i], s.waiting[i] = r.Met, r.Counted, r.Rearms
	}
	for _, name := range b.May {
		if w.pick(2) == 1 {
			w.effects(w.action(name))
		}
	}
	for _, name := range b.ShutIn {
		s.surface[w.comp(name)] = false
	}
	for name, p := range b.Applied {
		if s.applied[w.comp(name)] = p.In(psi); p > 0 {
			s.applied[w.comp(name)] += w.gauge
		}
	}
	for name, layers := range b.Layers {
		i, top := w.comp(name), w.comps[w.comp(name)].top
		s.layers[i] = nil
		for _, l := range layers {
			s.layers[i] = append(s.layers[i], plainLayer{top: top, bottom: l.ToMD.In(foot), gradient: w.fluids[l.Fluid], name: l.Fluid})
			top = l.ToMD.In(foot)
		}
	}
	for name, x := range b.Standing {
		s.applied[w.comp(name)] = x.Pressure.Nominal.In(psi)
	}
	for name, x := range b.Levels {
		i := w.comp(name)
		s.fallen[i] = true
		if x.Lacks != nil {
			s.applied[i] = -x.Lacks.Pressure.Nominal.In(psi)
		} else {
			s.applied[i] = -s.layers[i][0].gradient * (x.Depth.Nominal.In(foot) - w.comps[i].top)
		}
	}
	for _, name := range b.Flowed {
		s.flowed[w.form(name)] = true
	}
	stated := map[int]bool{}
	for i, c := range w.comps {
		if x, ok := b.Trapped[c.name]; ok {
			s.top[i], stated[i] = x.Pressure.Nominal.In(psi), true
		} else if c.trapped != 0 {
			stated[i] = true
		}
	}
	// One that is stated alone is the whole body's.
	for i := range stated {
		clear(w.solver.seen)
		if w.solver.body(s, i) != nil {
			continue
		}
		members := slices.Clone(w.solver.members)
		if !slices.ContainsFunc(members, func(m int) bool { return m != i && stated[m] }) {
			for _, m := range members {
				s.top[m] = s.top[i] + w.solver.offset[m]
			}
		}
	}
	copy(w.own, s.top)
}

// pick is a choice that the script makes.
func (w *plainWalk) pick(n int) int {
	k := 0
	if at := len(w.r.choices); at < len(w.script) {
		k = min(w.script[at], n-1)
	}
	w.r.choices = append(w.r.choices, n)
	return k
}

// begins gives a random plan a beginning of its own.
func (m *plainMaker) begins() {
	p := m.plan
	b := &sequence.Begin{Progress: map[string][]sequence.RowAt{}, Applied: map[string]pressure{}, Trapped: map[string]*sequence.Stated{}, Layers: map[string][]sequence.Layer{}}
	for _, d := range p.Devices {
		switch name := d.Name + ": " + d.Actions[0].Name; {
		case m.chance(0.2):
			b.Happened = append(b.Happened, name)
		case m.chance(0.2) && len(b.May) < 3:
			b.May = append(b.May, name)
		}
	}
	for _, x := range p.Ports {
		switch {
		case m.chance(0.1):
			b.Open = append(b.Open, x.Name)
		case m.chance(0.1):
			b.Shut = append(b.Shut, x.Name)
		}
	}
	for _, c := range p.Compartments[:2] {
		if m.chance(0.4) {
			b.Applied[c.Name] = pounds(m.round(m.between(100, 2500)))
		} else if m.chance(0.2) {
			b.ShutIn = append(b.ShutIn, c.Name)
		}
		if m.chance(0.3) {
			b.Layers[c.Name] = []sequence.Layer{{Fluid: m.fluid(), ToMD: c.BottomMD}}
		}
	}
	for i := range p.Compartments {
		setTrapped(&p.Compartments[i], 0)
	}
	p.Begin = b
	well := newPlainWell(p)
	w := &plainWalk{plainWell: well, s: well.start(), solver: newPlainSolver(well), r: &plainResult{}, own: make([]float64, len(well.comps))}
	w.beginWith(b)
	done := map[int]bool{}
	for i, c := range well.comps {
		if done[i] || w.solver.fixed(w.s, i) {
			continue
		}
		for _, k := range w.solver.members {
			done[k] = true
		}
		b.Trapped[c.name] = &sequence.Stated{Pressure: exactly(m.round(m.between(0, 4000)))}
	}
}

// beginProgress lets some rows have come on before, once they have levels.
func (m *plainMaker) beginProgress() {
	for _, d := range m.plan.Devices {
		for _, a := range d.Actions {
			if !m.chance(0.2) {
				continue
			}
			var all []sequence.RowAt
			for range 1 + m.random.IntN(2) {
				r := sequence.RowAt{Met: m.random.IntN(len(a.Triggers))}
				if n := a.Triggers[r.Met].Count; n > 1 {
					r.Counted = m.random.IntN(n)
					r.Rearms = r.Counted > 0 && m.chance(0.5)
				}
				if !slices.ContainsFunc(all, func(x sequence.RowAt) bool { return x.Met == r.Met && x.Counted == r.Counted && x.Rearms == r.Rearms }) {
					all = append(all, r)
				}
			}
			m.plan.Begin.Progress[d.Name+": "+a.Name] = all
		}
	}
}

// What a rest is called holds against walks of the whole plan: where the steps before
// the cut do what is intended, the steps after it do, if the rest is proved.
func TestRestsHoldAgainstThePlainWalker(t *testing.T) {
	restsHold(t, 100, func(n uint64) *sequence.Plan { return plainPlan(815, n) })
}

// With levels that fall, too.
func TestRestsWithLevelsHoldAgainstThePlainWalker(t *testing.T) {
	restsHold(t, 10, func(n uint64) *sequence.Plan { return plainPlanWith(815, n, features["levels"]) })
}

// With gas, too.
func TestRestsWithGasHoldAgainstThePlainWalker(t *testing.T) {
	long.Skip(t, "gas")
	restsHold(t, 3, func(n uint64) *sequence.Plan {
		return plainPlanOf(newRandom(815, n), "815 gas", n, plainGases, nil)
	})
}

// And with devices that move with a delay.
func TestRestsWithDelaysHoldAgainstThePlainWalker(t *testing.T) {
	restsHold(t, 10, func(n uint64) *sequence.Plan { return plainPlanWith(815, n, features["slower"]) })
}

// And past branches.
func TestRestsPastBranchesHoldAgainstThePlainWalker(t *testing.T) {
	restsHold(t, 20, func(n uint64) *sequence.Plan { return plainPlanWith(815, n, features["branches"]) })
}

func restsHold(t *testing.T, plans int, plan func(n uint64) *sequence.Plan) {
	plans = long.Size(max(plans/8, 3), plans)
	var proved, refused, wrong, rests atomic.Int64
	from, to := plansWanted(t, plans)
	eachPlan(from, to, func(n uint64) {
		p := plan(n)
		whole, err := verdictOf(p)
		if err != nil {
			return
		}
		for i := range p.Steps[:len(p.Steps)-1] {
			rest, err := p.Rest(context.Background(), p.Steps[i].Name)
			if err != nil {
				refused.Add(1)
				continue
			}
			rests.Add(1)
			v, err := verdictOf(rest)
			if err != nil {
				refused.Add(1)
				continue
			}
			if whole.proved && v.refuted && len(rest.Begin.May) == 0 && rest.Begin.Progress == nil && sharpStated(rest.Begin) {
				t.Errorf("plan %d, cut after %d: %s", n, i, v.says)
			}
			if !v.proved {
				continue
			}
			proved.Add(1)
			random := newRandom(n, 77)
			for k := range 60 {
				d := drawValues(p, random, k)
				r := plainOrdersUntil(d, 4, 12, func(r *plainResult) bool { return r.failsAfter(p, i) })
				if r.failsAfter(p, i) && !r.close {
					wrong.Add(1)
					keepPlan(t, "rest-whole", p)
					keepPlan(t, "rest", rest)
					t.Errorf("plan %d: the rest after step %d is called proved; a draw fails: %v", n, i, r.failures)
					break
				}
			}
		}
	})
	t.Logf("%d rests, %d proved, %d not written or walked, %d wrong", rests.Load(), proved.Load(), refused.Load(), wrong.Load())
	require.Zero(t, wrong.Load())
	require.Greater(t, proved.Load(), int64(to-from)/8)
}

func sharpStated(b *sequence.Begin) bool {
	for _, s := range b.Trapped {
		if !s.Pressure.Exact() {
			return false
		}
	}
	return true
}

// failsAfter tells whether a walk that comes through a step does what is intended up to
// it, and not after.
func (r *plainResult) failsAfter(p *sequence.Plan, i int) bool {
	if !slices.Contains(r.walked, p.Steps[i].Name) {
		return false
	}
	after := false
	for _, f := range r.failures {
		k := slices.IndexFunc(p.Steps, func(s sequence.Step) bool { return s.Name == f.Step })
		if k <= i {
			return false
		}
		after = true
	}
	return after
}
