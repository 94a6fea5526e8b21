package sequence

import (
	"context"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Follower walks a plan step by step with its nominal values, for whoever holds
// what instruments at surface show against it (package record). It judges nothing.
type Follower struct {
	k *checker
	q *proof.Problem
}

// Situation is the well between two steps of a Follower. It never changes.
type Situation struct{ world *walk.World }

// Seen is what a step shows at surface.
type Seen struct {
	Legs   []Leg   `json:"legs"`
	Events []Event `json:"events"`
}

// Leg is a stretch of a step between two places where it stands still: its start,
// a ramp, a squeeze or a pull.
type Leg struct {
	Label     string     `json:"label"`
	From      []Reading  `json:"from"`
	To        []Reading  `json:"to"`     // at surface; of what is shut in, what its gauge shows
	Weight    unit.Force `json:"weight"` // on a pull at its end; what the indicator shows
	Stretches []Stretch  `json:"stretches"`
}

// Stretch is a part of a leg in which no port moves.
type Stretch struct {
	After string    `json:"after"` // the action that begins it; empty: the leg does
	At    []Reading `json:"at"`    // at surface where it begins
	Takes []Take    `json:"takes"`
}

// Take is what a compartment that is open at surface takes in a stretch.
type Take struct {
	Compartment string `json:"compartment"`
	// PerPSI is the volume that compresses the fluid of all that is joined to it by
	// one psi, at mid-depth of each; of the compartment alone where Meets isn't empty.
	PerPSI unit.Volume `json:"per_psi"`
	// Counted says that the plan gives a capacity and a compressibility of all of it:
	// else PerPSI is too little.
	Counted bool `json:"counted"`
	// AtOnce goes in (negative: comes back) as the stretch begins, into what is
	// joined to it there.
	AtOnce unit.Volume `json:"at_once"`
	// References names what else fixes the pressure of the same body: a formation or
	// another surface. What flows then, nobody knows beforehand.
	References []OtherReference `json:"references"`
}

// OtherReference is another reference of a body.
type OtherReference struct {
	Name  string        `json:"name"`
	Flow  Flow          `json:"flow"`  // what it would cause at the end of the leg; empty where nothing drives it
	Drive unit.Pressure `json:"drive"` // that drives it
	Out   bool          `json:"out"`   // the compartment loses fluid to it; else it gains
}

// Follow puts a plan together for walking it step by step.
func Follow(p *Plan) (*Follower, error) {
	if p == nil {
		return nil, errNoPlan
	}
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	k := &checker{compiled: c, standstills: make([][]standstill, len(c.Steps)), ends: make([]*walk.World, len(c.Steps))}
	return &Follower{k, k.At(k.Nominal())}, nil
}

// Step walks step i (from 0) from a situation; nil is the beginning of the first.
// Actions in still don't move in it, whatever they feel. The error says what keeps
// the step from being walked.
func (f *Follower) Step(ctx context.Context, from *Situation, i int, still []string) (*Seen, *Situation, error) {
	if i < 0 || i >= len(f.k.Steps) {
		return nil, nil, fmt.Errorf("sequence: step is %d; must be from 0 to %d", i, len(f.k.Steps)-1)
	}
	k := *f.k
	k.standstills, k.ends = make([][]standstill, len(k.Steps)), make([]*walk.World, len(k.Steps))
	o := proof.Options{PastUnintended: true, Stops: true, Quiet: true, From: i, To: i + 1}
	o.Standstills = func(w *walk.World, p walk.Place, number int) error {
		if number >= len(k.standstills[i]) { // else another order of what is due at once
			k.standstills[i] = append(k.standstills[i], standstill{p.Label, w.Clone(), p})
		}
		return nil
	}
	var before *walk.World
	if from != nil {
		before = from.world
	} else {
		first, err := f.q.Walk(ctx, affine.Box(0, nil), proof.Options{PastUnintended: true, Quiet: true, To: 1})
		if err != nil {
			return nil, nil, err
		}
		before = first.Before[0][0]
	}
	before = before.Clone()
	var armed []int
	for _, name := range still {
		n, ok := k.by.action[name]
		if !ok {
			return nil, nil, fmt.Errorf("sequence: the plan has no action %q", name)
		}
		if before.State.Armed[n] {
			armed = append(armed, n)
			before.State.Armed[n] = false
		}
	}
	o.Begin = []*walk.World{before}
	run, err := f.q.Walk(ctx, affine.Box(0, nil), o)
	if err != nil {
		return nil, nil, err
	}
	if run.Open != nil {
		return nil, nil, fmt.Errorf("step %q: %w", k.plan.Steps[i].Name, run.Open)
	}
	if len(run.Last) == 0 {
		return nil, nil, fmt.Errorf("step %q comes to no end", k.plan.Steps[i].Name)
	}
	end := run.Last[0].Clone()
	for _, n := range armed {
		end.State.Armed[n] = true
	}
	k.ends[i] = end
	seen, err := k.seen(i, before)
	return seen, &Situation{end}, err
}

// seen puts together what a step shows.
func (k *checker) seen(i int, before *walk.World) (*Seen, error) {
	all := events(k.ends[i], i)
	x := &Seen{}
	for _, e := range all {
		if e.Action >= 0 { // else by hand, and nothing of the plan's devices
			x.Events = append(x.Events, k.event(e))
		}
	}
	from := &standstill{"start", before, walk.Place{Step: i, Drive: -1, Action: -1}}
	for n := range k.standstills[i] {
		to := &k.standstills[i][n]
		l := Leg{Label: to.label, From: k.shown(from.world.State), To: k.shown(to.world.State)}
		if to.place.Drive < 0 {
			l.Label = "start"
		}
		if k.String != nil && k.pulling(to) != nil {
			x, outer, err := k.stringAt(to)
			if err != nil {
				return nil, err
			}
			if k.plan.Steps[to.place.Step].On == OnOuterString {
				x = outer
			}
			l.Weight = x.Reading
		}
		k.stretches(&l, from, to, all, n-1)
		x.Legs = append(x.Legs, l)
		from = to
	}
	return x, nil
}

// stretches parts a leg where ports move.
func (k *checker) stretches(l *Leg, from, to *standstill, all []walk.Event, drive int) {
	s := from.world.Clone().State
	copy(s.Surface, to.world.State.Surface)
	l.Stretches = []Stretch{{At: l.From, Takes: k.takes(s, from, to, nil)}}
	for _, e := range all {
		if e.Action < 0 {
			continue
		}
		a := &k.Network.Actions[e.Action]
		if e.Drive != drive || !e.Complete || len(a.Opens)+len(a.Closes) == 0 {
			continue
		}
		s.Happens(e.Action, s.Open, s.Armed)
		l.Stretches = append(l.Stretches, Stretch{a.Name, k.readings(func(i int) float64 { return e.Applied[i].C }, nil), k.takes(s, from, to, &e)})
	}
}

// takes are what compartments at surface take while the ports stand as in s. at is
// what has just happened, or nil.
func (k *checker) takes(s *well.State, from, to *standstill, at *walk.Event) []Take {
	var all []Take
	end := to.world.State
	for i, c := range k.plan.Compartments {
		if !c.Surface || !end.Surface[i] {
			continue
		}
		t := Take{Compartment: c.Name, Counted: true}
		body := s.Body(i)
		for _, m := range body {
			if t2, ok := k.otherReference(from.world.State, end, i, m); ok {
				t.References = append(t.References, t2)
			}
		}
		for _, m := range body {
			if len(t.References) == 0 || m == i {
				t.Counted = t.Counted && k.volumeOf(m) > 0 && squeezable(end, m)
				t.PerPSI += unit.Volume(k.volumeOf(m) * k.compression(end, m) * float64(unit.PSI))
			}
		}
		if at != nil && len(t.References) == 0 {
			t.AtOnce = k.atOnce(end, body, i, at)
		}
		all = append(all, t)
	}
	return all
}

// squeezable tells whether the plan gives a compressibility of all that stands in a
// compartment.
func squeezable(s *well.State, m int) bool {
	for _, l := range s.Layers(m) {
		if s.Fluids[l.Fluid].Compression <= 0 {
			return false
		}
	}
	return true
}

func (k *checker) volumeOf(m int) float64 {
	p := &k.plan.Compartments[m]
	return float64(p.Capacity) * float64(p.BottomMD-p.TopMD)
}

// Ports are how the ports stand in a situation.
func (f *Follower) Ports(at *Situation) []PortState {
	var all []PortState
	for n, p := range f.k.plan.Ports {
		all = append(all, PortState{p.Name, at.world.State.Open[n]})
	}
	return all
}

// Happened is how often each action has happened up to a situation.
func (f *Follower) Happened(at *Situation) map[string]int {
	all := map[string]int{}
	for n, a := range f.k.Network.Actions {
		if at.world.Times[n] > 0 {
			all[a.Name] = at.world.Times[n]
		}
	}
	return all
}
