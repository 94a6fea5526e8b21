package proof

import (
	"context"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
)

// Drawn is what was found of one choice of the inputs.
type Drawn struct {
	Fails bool
	First judge.Key // what fails first
	// Unwalked says that it couldn't be walked: a failure of its own kind.
	Unwalked bool
}

// Drawer judges single choices by what a walk in all of them has shown: a choice
// that lies in no part of the box in which a limit may be passed keeps all of them,
// and one that lies in such a part for certain passes it. What is neither is walked
// with plain numbers.
type Drawer struct {
	*Problem
	ctx   context.Context
	parts []part
	all   bool // nothing is known: walk every choice
	known bool // no choice fails
}

type part struct {
	judge.Part
	key     judge.Key
	certain bool
}

// Drawer walks the problem in all choices once.
func (p *Problem) Drawer(ctx context.Context) (*Drawer, error) {
	d := &Drawer{Problem: p, ctx: ctx}
	run, err := p.Walk(ctx, affine.Box(len(p.Network.Symbols), p.Nominal()), Options{Quiet: true, Parts: true})
	if err != nil && ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil || run.Open != nil {
		d.all = true
		return d, nil
	}
	for _, m := range run.Judge.Passed() {
		for _, x := range m.Regions {
			certain := !x.Region.Wide() && !x.Region.Enclosed() && x.By.R == 0
			d.parts = append(d.parts, part{x, m.Key, certain})
		}
	}
	d.known = len(d.parts) == 0
	return d, nil
}

// Judge judges one choice.
func (d *Drawer) Judge(e []float64) Drawn {
	if d.known {
		return Drawn{}
	}
	walked := d.all
	var first *judge.Key
	for i := range d.parts {
		p := &d.parts[i]
		by := p.By.At(e)
		if by-p.By.R >= -walk.Reach || !p.Region.Holds(e) {
			continue
		}
		if !p.certain || by > -10*walk.Reach && !p.key.Kind.Events() {
			walked = true
			break
		}
		if first == nil || before(p.key, *first) {
			first = &p.key
		}
	}
	if walked {
		return d.walk(e)
	}
	if first == nil {
		return Drawn{}
	}
	return Drawn{Fails: true, First: *first}
}

func before(a, b judge.Key) bool {
	if a.Step != b.Step {
		return a.Step < b.Step
	}
	return a.Kind < b.Kind || a.Kind == b.Kind && a.Index < b.Index
}

func (d *Drawer) walk(e []float64) Drawn {
	var all []*judge.Margin
	for _, fine := range [2]int{1, Finer} {
		run, err := d.At(e).Walk(d.ctx, affine.Box(0, nil), Options{Quiet: true, Fine: fine})
		if err != nil || run.Open != nil {
			return Drawn{Fails: true, Unwalked: true}
		}
		all = run.Judge.Passed()
		if len(all) == 0 || slices.ContainsFunc(all, (*judge.Margin).Certain) || !d.enclosed() {
			break
		}
	}
	if len(all) == 0 {
		return Drawn{}
	}
	return Drawn{Fails: true, First: all[0].Key}
}
