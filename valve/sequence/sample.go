package sequence

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"

	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/proof"
	"gonum.org/v1/gonum/stat/distuv"
)

// Uncertainty says how values are drawn. Every band of the plan is drawn from: from
// a normal distribution of which the band is two standard deviations to either
// side of nominal, cut off at the ends, or, where Even is set, from anywhere in
// the band alike.
type Uncertainty struct {
	Samples int    `json:"samples"`
	Seed    uint64 `json:"seed"`
	Even    bool   `json:"even"`
	Workers int    `json:"workers"` // zero: all cores; the answer doesn't depend on it
	// Progress, where not nil, is told how far the work has come: from 0, never back, to
	// 1 at its end. It is called from one goroutine at a time, not always the same.
	Progress func(share float64, doing string) `json:"-"`
}

// maxSamples bounds time and memory.
const maxSamples = 1_000_000

// Risk is how often a plan goes wrong.
type Risk struct {
	Samples int         `json:"samples"`
	Seed    uint64      `json:"seed"`
	Fails   Share       `json:"fails"`  // the first thing that goes wrong is counted
	Events  []EventRisk `json:"events"` // every kind of failure that the verdict knows
	Inputs  []Influence `json:"inputs"` // what matters most first; what can't be told from chance is left out
	// Unwalked are draws that can't be walked at all; they count as failures.
	Unwalked int `json:"unwalked,omitempty"`
}

// Share is how often something happened, with its 95 % interval by Wilson
// (1927).
type Share struct {
	Value    float64 `json:"share"`
	Least    float64 `json:"least"`
	Greatest float64 `json:"greatest"`
}

// EventRisk is something that goes wrong.
type EventRisk struct {
	Step   string `json:"step"`
	Device string `json:"device"`
	Kind   Kind   `json:"kind"`
	Says   string `json:"says"`
	Count  int    `json:"count"`
	Share
}

// chunk is how many samples share a random stream: the answer then depends on
// the seed and not on how the chunks are dealt out.
const chunk = 64

// Sample draws values for all bands of a plan and counts what goes wrong first in
// each draw, by the judge that Check uses.
//
//	share = failures/draws, with its interval
//
// Errors: those of Read and Check for a plan; faults of u; ctx's when it is
// cancelled.
//
// Source: binomial proportion, as Share says.
func Sample(ctx context.Context, p *Plan, u Uncertainty) (*Risk, error) {
	if p == nil {
		return nil, errNoPlan
	}
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	if err := u.validate(); err != nil {
		return nil, err
	}
	k := &checker{compiled: c, ctx: ctx, progress: &progress{told: u.Progress}}
	k.Producing = k.rates
	k.progress.tell(0, "walking the plan")
	if err := k.walkNominal(); err != nil {
		return nil, err
	}
	k.peaks()
	d, err := k.Drawer(ctx)
	if err != nil {
		return nil, err
	}
	draws := make([]proof.Drawn, u.Samples)
	inputs := make([][]float64, u.Samples)
	done := 0
	chunks := (u.Samples + chunk - 1) / chunk
	atOnce(chunks, u.Workers, func(n int) {
		random := rand.New(rand.NewPCG(u.Seed, uint64(n)))
		for i := n * chunk; i < min((n+1)*chunk, u.Samples) && ctx.Err() == nil; i++ {
			inputs[i] = k.draw(random, u)
			draws[i] = d.Judge(inputs[i])
		}
		k.progress.done(&done, chunks, 0, 0.95, "drawing")
	})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	risk := k.risk(draws, inputs, u)
	k.progress.tell(1, "done")
	return risk, nil
}

func (u Uncertainty) validate() error {
	var faults []error
	if u.Samples < 1 || u.Samples > maxSamples {
		faults = append(faults, fmt.Errorf("sequence: samples is %d; must be from 1 to %d", u.Samples, maxSamples))
	}
	if u.Workers < 0 {
		faults = append(faults, fmt.Errorf("sequence: workers is %d; must not be negative", u.Workers))
	}
	return errors.Join(faults...)
}

// draw draws a choice of all inputs.
func (k *checker) draw(random *rand.Rand, u Uncertainty) []float64 {
	normal := distuv.Normal{Sigma: 0.5, Src: random}
	e := make([]float64, len(k.Network.Symbols))
	for i, s := range k.Network.Symbols {
		if u.Even || isShare(s.Path) {
			e[i] = 2*random.Float64() - 1
			continue
		}
		z := normal.Rand()
		for z < -1 || z > 1 {
			z = normal.Rand()
		}
		// Nominal needn't be in the middle: each side of it has its own width.
		if z < 0 {
			e[i] = s.Nominal + z*(s.Nominal+1)
		} else {
			e[i] = s.Nominal + z*(1-s.Nominal)
		}
	}
	return e
}

// risk counts.
func (k *checker) risk(draws []proof.Drawn, inputs [][]float64, u Uncertainty) *Risk {
	r := &Risk{Samples: len(draws), Seed: u.Seed, Events: []EventRisk{}, Inputs: []Influence{}}
	counts := map[judge.Key]int{}
	wrong := 0
	for _, d := range draws {
		switch {
		case d.Unwalked:
			r.Unwalked++
			wrong++
		case d.Fails:
			counts[d.First]++
			wrong++
		}
	}
	r.Fails = wilson(wrong, len(draws))
	for key, n := range counts {
		m := &judge.Margin{Key: key, Least: -1, Action: -1}
		var f Finding
		k.kindOf(&f, m)
		r.Events = append(r.Events, EventRisk{k.plan.Steps[key.Step].Name, f.Device, f.Kind, k.edge(m), n, wilson(n, len(draws))})
	}
	slices.SortStableFunc(r.Events, func(a, b EventRisk) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Step, b.Step), cmp.Compare(a.Device, b.Device), cmp.Compare(a.Says, b.Says))
	})
	if wrong == 0 || wrong == len(draws) {
		return r
	}
	for i, s := range k.Network.Symbols {
		if x, ok := influence(draws, inputs, i); ok {
			x.Input = s.Name
			r.Inputs = append(r.Inputs, x)
		}
	}
	slices.SortStableFunc(r.Inputs, func(a, b Influence) int { return cmp.Compare(b.Share, a.Share) })
	return r
}

// kindOf is what a limit is of, without numbers.
func (k *checker) kindOf(f *Finding, m *judge.Margin) {
	f.Device = k.nameOf(m)
	switch m.Kind {
	case judge.Event:
		f.Kind = Unintended
	case judge.Omission:
		f.Kind = Missing
	case judge.Inside, judge.Outside:
		f.Kind = RatingCross
	case judge.ByHand:
		f.Kind = ByHand
	case judge.Fracture:
		f.Kind = Fracture
	case judge.Inflow, judge.Loss, judge.Circulation:
		f.Kind = FlowOff
	case judge.Vacuum:
		f.Kind = ColumnFalls
	case judge.Barriers:
		f.Kind = BarrierLack
	case judge.TestLow, judge.TestHigh, judge.Held:
		f.Kind, f.Device = TestOff, k.plan.Steps[m.Step].Tests[m.Index].Barrier
	case judge.BalanceLow, judge.BalanceHigh:
		f.Kind, f.Device = BalanceOff, k.plan.Steps[m.Step].Balance[m.Index].Formation
	case judge.String:
		own, _ := k.plan.whose(m.Index)
		f.Kind, f.Device = StringLoad, own.title
	case judge.SealUp, judge.SealDown:
		own, index := k.plan.whose(m.Index)
		f.Kind, f.Device = SealTravel, own.seals()[index].name(index)
	case judge.Holding:
		f.Kind, f.Device = HoldingOff, "packer"
	case judge.Lift:
		own, _ := k.plan.whose(m.Index)
		f.Kind, f.Device = HangerLift, "hanger"+own.ofOuter()
	case judge.PullFree:
		own, _ := k.plan.whose(m.Index)
		f.Kind, f.Device = PullOff, own.title
	case judge.Rig:
		_, index := k.plan.whose(m.Index)
		f.Kind, f.Device = PullOff, lifts[index]
	default:
		f.Kind = RateOff
	}
}
