package proof

import (
	"math"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
)

// mostParts is how many parts of a box are tried before a plan is given up as not
// decided.
const (
	mostParts = 96
	fewParts  = 8
)

// box is a part of the box of all inputs: by symbol, its middle and half.
type box struct{ middle, half []float64 }

// part decides failures that have no witness by parting the box, widest input that
// matters first: a limit that is kept in all parts is kept.
func (p *Problem) part(w *witnesses, out *Outcome, o Options, most int) error {
	n := len(p.Network.Symbols)
	open := map[judge.Key]bool{} // not decided yet
	for _, f := range out.Failures {
		if f.Witness == nil {
			open[f.Key] = true
		}
	}
	if out.Open != nil || n == 0 {
		return nil
	}
	still := map[judge.Key]bool{} // passed in a part that can't be parted further
	shown := map[judge.Key]Failure{}
	whole := box{make([]float64, n), make([]float64, n)}
	for k := range n {
		whole.half[k] = 1
	}
	work := []box{}
	split := func(b box, run *judge.Judge) {
		k := p.widest(b, run, open, len(work))
		for side := -0.5; side <= 0.5; side++ {
			c := box{append([]float64(nil), b.middle...), append([]float64(nil), b.half...)}
			c.middle[k] += side * b.half[k]
			c.half[k] /= 2
			work = append(work, c)
		}
	}
	split(whole, out.Judge)
	for tried := 0; len(work) > 0; tried++ {
		b := work[0]
		work = work[1:]
		if tried >= most || len(work) > most {
			for key := range open {
				still[key] = true
			}
			break
		}
		run, err := p.narrow(b.part).Walk(w.ctx, affine.Box(n, b.inside(p.Nominal())), Options{Budget: o.Budget, Quiet: true})
		if err != nil {
			return err
		}
		undecided := run.Open != nil
		for _, m := range run.Judge.Passed() {
			if !open[m.Key] {
				continue
			}
			q := *m
			q.Points = nil
			for _, e := range m.Points {
				q.Points = append(q.Points, b.outside(e))
			}
			q.Regions = nil
			f := Failure{Margin: m}
			if err = w.find(&f, &q); err != nil {
				return err
			}
			if f.Witness == nil {
				undecided = true
				continue
			}
			shown[m.Key] = f
			delete(open, m.Key)
		}
		if undecided && len(open) > 0 {
			split(b, run.Judge)
		}
	}
	var kept []Failure
	for _, f := range out.Failures {
		if g, ok := shown[f.Key]; ok {
			f.Witness, f.Shown, f.follows = g.Witness, g.Shown, g.follows
		} else if f.Witness == nil && !still[f.Key] {
			// Kept in every part: the margin that the whole box seemed to lack is
			// only the enclosure's.
			f.Margin.Points, f.Margin.Regions, f.Margin.Least = nil, nil, 0
			continue
		}
		kept = append(kept, f)
	}
	out.Failures = kept
	out.first(p)
	return nil
}

// widest is the symbol to part a box at: of those that the undecided limits and
// their conditions depend on, the one with the greatest effect.
func (p *Problem) widest(b box, j *judge.Judge, open map[judge.Key]bool, turn int) int {
	weight := make([]float64, len(b.half))
	for _, m := range j.Passed() {
		if !open[m.Key] {
			continue
		}
		add := func(f affine.Form) {
			for _, t := range f.T {
				weight[t.Symbol] = math.Max(weight[t.Symbol], math.Abs(t.C))
			}
		}
		add(m.Form)
		for _, r := range m.Regions {
			for _, row := range r.Region.Rows() {
				add(row)
			}
		}
	}
	best := turn % len(b.half)
	for k, x := range weight {
		if x > weight[best] {
			best = k
		}
	}
	// What has been halved often gives way to the others.
	for k, x := range weight {
		if x > 0 && b.half[k] > 4*b.half[best] {
			best = k
		}
	}
	return best
}

func (b box) part(k int) (middle, half float64, ok bool) { return b.middle[k], b.half[k], true }

// inside is a point of the whole box as one of the part, at its edge where it lies
// beyond.
func (b box) inside(e []float64) []float64 {
	p := make([]float64, len(e))
	for k := range e {
		if b.half[k] > 0 {
			p[k] = math.Min(math.Max((e[k]-b.middle[k])/b.half[k], -1), 1)
		}
	}
	return p
}

func (b box) outside(e []float64) []float64 {
	p := make([]float64, len(e))
	for k := range e {
		p[k] = b.middle[k] + b.half[k]*e[k]
	}
	return p
}
