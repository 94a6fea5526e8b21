package sequence

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"completion.example/tubular/catalogue"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Options say how much is asked of a plan.
type Options struct {
	// Only leaves out what isn't wanted; zero asks for everything.
	Only Part `json:"only"`
	// Workers is how many cores may be used; zero: all. The answer doesn't depend
	// on it.
	Workers int `json:"workers"`
	// Progress, where not nil, is told how far the work has come: from 0, never back, to
	// 1 at its end. It is called from one goroutine at a time, not always the same.
	Progress func(share float64, doing string) `json:"-"`
	// Verdict, where not nil, is shown the programme once its verdict is known, before
	// windows are looked for: what VerdictOnly would answer. It is called once at most.
	Verdict func(*Programme) `json:"-"`
	// First is the step, counted from 1, whose windows are looked for before all others;
	// zero: none.
	First int `json:"first"`
	// Windows, where not nil, is told the windows of a step, counted from 1, once all of
	// them are known, but for what opens those that are empty. It is called from one
	// goroutine at a time, not always the same.
	Windows func(step int, of []Window) `json:"-"`
	// Budget is how many events a step may be walked through in all its orders
	// before it is given up as not decided; zero is walk's own.
	Budget int `json:"budget"`
	// Ahead asks for windows in which not only their own step is proved but all steps
	// that follow as well.
	Ahead bool `json:"ahead"`
}

// Part is a part of a programme.
type Part int

// Parts.
const (
	Everything   Part = iota
	VerdictOnly       // the verdict, findings with witnesses and margins; no windows, nor cures that need them
	NoAdvice          // everything but what opens the windows that are empty
	FindingsOnly      // the verdict, and findings with witnesses: no margins, results by step, nor what isn't checked; it costs least
)

// Check walks a plan in all choices of the values inside its bands and reports
// what happens. The error says what keeps it from being walked, or that ctx is
// done; a plan that can be walked but fails is in the findings. Where ctx is done
// while windows are looked for, the programme without them comes beside the error.
func Check(ctx context.Context, p *Plan, o Options) (*Programme, error) {
	if p == nil {
		return nil, errNoPlan
	}
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	k := &checker{compiled: c, ctx: ctx, options: o, given: p, programme: &Programme{Plan: p.Name, Findings: []Finding{}, Margins: []Margin{}}, progress: &progress{told: o.Progress}}
	return k.check()
}

// compiled validates a plan and puts it together.
func (p *Plan) compiled() (*compiled, error) {
	pipes, err := catalogue.Standard()
	if err != nil {
		return nil, err
	}
	return p.compiledOf(pipes)
}

func (p *Plan) compiledOf(pipes catalogue.Catalogue) (*compiled, error) {
	made, err := p.lower(pipes)
	if err != nil {
		return nil, err
	}
	if made, err = made.prepared(pipes); err != nil {
		return nil, p.follows(err)
	}
	c, err := compile(made, pipes)
	if err != nil {
		return nil, err
	}
	c.made, c.devices = c.stringsMade(), c.deviceDepths()
	if p.Begin != nil {
		if err := c.unstated(func(i int) bool { return c.Begin.Stated[i] }, "begin.trapped"); err != nil {
			return nil, err
		}
	}
	return c, c.loops()
}

// prepared is a plan without an assembly, with the models of its devices and all its
// branches written out, and sound.
func (p *Plan) prepared(pipes catalogue.Catalogue) (*Plan, error) {
	if err := p.kinds(); err != nil {
		return nil, err
	}
	if err := p.branches(); err != nil {
		return nil, err
	}
	q, err := p.Expanded().heated()
	if err != nil {
		return nil, err
	}
	return q, q.validate(pipes)
}

// checker puts a programme together.
type checker struct {
	*compiled
	ctx         context.Context
	options     Options
	given       *Plan // as it was, before it was prepared
	progress    *progress
	programme   *Programme
	nominal     *proof.Run
	standstills [][]standstill         // nominal, by step
	stuck       []map[int][]standstill // the same where an action, by which it is kept, is stuck
	ends        []*walk.World
	out         *proof.Outcome

	failsFirst  map[int]int    // by action, the first step that it fails in: not when it should, or when it shouldn't
	pumpResults [][]PumpResult // by step
	flowResults [][]PressureAt // by step
	flowStates  map[int]*well.State
	pumpFault   error
	fine        int                    // into how many times as many pieces the nominal walk cuts what is only enclosed
	loaded      movement.NestedLoading // to work in
}

// standstill is the nominal well where a step stands still.
type standstill struct {
	label string
	world *walk.World
	place walk.Place
}

func (k *checker) check() (*Programme, error) {
	k.Producing = k.rates
	p := k.programme
	if k.options.Only == FindingsOnly {
		if proved, err := k.holds(); err != nil {
			return nil, err
		} else if proved {
			p.Verdict = Proved
			k.progress.tell(1, "done")
			return p, nil
		}
	}
	if err := k.walkAll(); err != nil {
		return nil, err
	}
	p.Inputs, p.Branches = len(k.Network.Symbols), k.out.Worlds
	var stopped error
	light := k.options.Only == VerdictOnly || k.options.Only == FindingsOnly
	if light || k.options.Verdict != nil {
		if err := k.write(); err != nil {
			return nil, err
		}
	}
	if !light {
		k.early()
		if stopped = k.windows(); stopped != nil && (k.ctx.Err() == nil || len(p.Steps) < len(k.plan.Steps)) {
			return nil, stopped
		}
		if stopped == nil && k.options.Only == Everything {
			if stopped = k.advise(); stopped != nil && k.ctx.Err() == nil {
				return nil, stopped
			}
		}
		if stopped == nil {
			if stopped = k.greatestRates(); stopped != nil && k.ctx.Err() == nil {
				return nil, stopped
			}
		}
	}
	k.sum()
	if k.options.Only == FindingsOnly {
		p.Steps, p.Margins, p.Unchecked = nil, []Margin{}, nil
	}
	if stopped == nil {
		k.progress.tell(1, "done")
	}
	return p, stopped
}

// walkAll walks the nominal values and, beside it, the plan in all choices.
func (k *checker) walkAll() error {
	k.progress.tell(0, "walking the plan")
	once, err := k.nominalFirst()
	switch {
	case err != nil:
		return err
	case once:
		err = k.prove()
	default:
		var faults [2]error
		atOnce(2, k.options.Workers, func(i int) { faults[i] = [2]func() error{k.walkNominal, k.prove}[i]() })
		k.peaks()
		err = first(faults[:]...)
	}
	if err == nil && k.strays() {
		k.fine = proof.Finer
		err = k.walkNominal()
		k.peaks()
	}
	return err
}

// strays tells whether the nominal walk shows what the proof, which holds for these values,
// too, doesn't, before anything goes wrong in it: where pressures are only enclosed along
// a leg the proof looks again in finer pieces, and so does then the nominal walk.
func (k *checker) strays() bool {
	shown, left := map[judge.Key]bool{}, len(k.plan.Steps)
	if k.out.Open != nil {
		left = k.out.OpenStep
	}
	for _, f := range k.out.Failures {
		shown[f.Key] = true
		if f.Kind.Leaves() || f.Kind == judge.Unwalkable {
			left = min(left, f.Step)
		}
	}
	return slices.ContainsFunc(k.nominal.Judge.Passed(), func(m *judge.Margin) bool { return m.Step < left && !shown[m.Key] })
}

// nominalFirst walks the nominal values, once, where they say how far a test falls that the
// proof holds; it tells whether they do.
func (k *checker) nominalFirst() (bool, error) {
	if !k.warms() {
		return false, nil
	}
	if k.nominal == nil {
		if err := k.walkNominal(); err != nil {
			return false, err
		}
		k.peaks()
	}
	return true, nil
}

func (k *checker) prove() (err error) {
	k.out, err = k.Prove(k.ctx, proof.Options{Budget: k.options.Budget})
	return err
}

// warms tells whether it depends on the nominal values where a test is held that its
// temperature changes.
func (k *checker) warms() bool {
	return slices.ContainsFunc(k.Limits.Steps, func(g judge.Goals) bool {
		return slices.ContainsFunc(g.Tests, func(t judge.Test) bool { return t.Furthest && t.Warms != nil })
	})
}

// write writes what was walked: results and margins, each by its own.
func (k *checker) write() error {
	var fault error
	atOnce(2, k.options.Workers, func(i int) {
		if i == 0 {
			fault = k.results()
		} else {
			k.programme.Margins = k.margins()
		}
	})
	return fault
}

// sum tells what the programme comes to.
func (k *checker) sum() {
	p := k.programme
	k.timing()
	k.findings()
	p.Unchecked = k.unchecked()
	switch {
	case len(p.Findings) == 0 && k.out.Open == nil:
		p.Verdict = Proved
	case k.out.Open == nil && k.out.Decided(), k.witnessed():
		p.Verdict = Refuted
	default:
		p.Verdict = Undecided
	}
	if k.out.Open != nil {
		p.Open = inStep(k.plan.Steps[k.out.OpenStep].Name, k.out.Open)
	}
}

// inStep is an error with the step that it comes from, which it may say already.
func inStep(name string, err error) string {
	step := fmt.Sprintf("step %q: ", name)
	return step + strings.TrimPrefix(err.Error(), step)
}

// early shows what is known with the verdict, in a programme of its own.
func (k *checker) early() {
	if k.options.Verdict == nil {
		return
	}
	c, p := *k, *k.programme
	p.Steps, p.Findings = slices.Clone(p.Steps), []Finding{}
	c.programme, c.options.Only = &p, VerdictOnly
	c.sum()
	k.options.Verdict(&p)
}

// witnessed tells whether at least one failure was shown by a walk.
func (k *checker) witnessed() bool {
	for _, f := range k.out.Failures {
		if f.Witness != nil {
			return true
		}
	}
	return false
}

// walkNominal walks the nominal values, on and on, whatever goes wrong.
func (k *checker) walkNominal() error {
	k.pumpResults, k.flowResults, k.pumpFault = nil, nil, nil
	k.standstills = make([][]standstill, len(k.Steps))
	k.ends = make([]*walk.World, len(k.Steps))
	k.flowStates = map[int]*well.State{}
	k.stuck = make([]map[int][]standstill, len(k.Steps))
	for i := range k.stuck {
		k.stuck[i] = map[int][]standstill{}
	}
	first := make([]bool, len(k.Steps))
	run, err := k.At(k.Nominal()).Walk(k.ctx, affine.Box(0, nil), proof.Options{
		PastUnintended: true, Stops: true, Fine: k.fine, Pumps: k.pumped, Flows: k.flowed,
		Standstills: func(w *walk.World, p walk.Place, number int) error {
			if a, ok := w.JustStuck(); ok {
				if number == len(k.stuck[p.Step][a]) {
					k.stuck[p.Step][a] = append(k.stuck[p.Step][a], standstill{p.Label, w.Clone(), p})
				}
				return nil
			}
			if number < len(k.standstills[p.Step]) {
				return nil // another order of what is due at once
			}
			if number == 0 {
				first[p.Step] = true
			}
			k.standstills[p.Step] = append(k.standstills[p.Step], standstill{p.Label, w.Clone(), p})
			return nil
		},
	})
	if err != nil {
		return err
	}
	if run.Open != nil {
		return fmt.Errorf("sequence: step %q can't be walked with the nominal values: %w", k.plan.Steps[run.OpenStep].Name, run.Open)
	}
	if len(run.Before) == 0 || len(run.Before[0]) == 0 {
		return errors.New("sequence: the plan's nominal values are not among those with which the well stands as at its beginning (begin.if)")
	}
	k.nominal = run
	run.Judge.Standstills = nil
	for i := range k.ends {
		if i < len(run.After) && len(run.After[i]) > 0 {
			k.ends[i] = run.After[i][0]
		} else if len(run.Last) > 0 {
			k.ends[i] = run.Last[0]
		}
	}
	return k.pumpFault
}

// peaks finds where each test stands in the nominal well: where its differential is
// furthest in the direction that is wanted.
func (k *checker) peaks() {
	for i := range k.Limits.Steps {
		g := &k.Limits.Steps[i]
		for n := range g.Tests {
			t := &g.Tests[n]
			if !t.Furthest {
				continue
			}
			t.Standstill = -1
			sign := 1.0
			if t.Negative() {
				sign = -1
			}
			best := 0.0
			for s := range k.standstills[i] {
				if s == 0 && len(k.standstills[i]) > 1 {
					continue
				}
				d := sign * k.difference(&k.standstills[i][s], t)
				if t.Standstill < 0 || d > best+1 {
					t.Standstill, best = s, d
				}
			}
		}
	}
}

func (k *checker) difference(s *standstill, t *judge.Test) float64 {
	in, e1 := s.world.State.At(t.Inside, t.AtIn)
	out, e2 := s.world.State.At(t.Outside, t.AtOut)
	if e1 != nil || e2 != nil {
		return 0
	}
	return in.F.C - out.F.C
}
