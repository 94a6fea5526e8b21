package sequence_test

import (
	"cmp"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// The plain string is the second way of everything that the programme says of the
// string: its own march up from the lower end in wall force, its own Hooke, Lamé and
// Lubinski, its own balance of pins, in lbf, in and °F. It knows vertical wells and a
// drag that is one number.

// plainPipe is a section: top and bottom in ft, diameters in in, lbf/ft.
type plainPipe struct{ top, bottom, od, id, hole, weight float64 }

func (p plainPipe) inner() float64 { return math.Pi / 4 * p.id * p.id }
func (p plainPipe) outer() float64 { return math.Pi / 4 * p.od * p.od }

type plainMarkKind int

const (
	plainJoint plainMarkKind = iota // in the order in which they stand at one depth
	plainHung
	plainHold
	plainSeal
)

// plainMark is a place where something may step or end: between two lengths.
type plainMark struct {
	kind  plainMarkKind
	depth float64
	area  float64 // in²
	index int
}

// plainString is the string of a well and how it stands.
type plainString struct {
	*plainWalk
	on                    sequence.WhichString
	hung                  map[int]float64             // by mark: what the other one puts on it, lbf, down positive
	moves                 func(depth float64) float64 // how far what it stands in has moved since it landed, in
	inside, around, below int
	pipes                 []plainPipe
	marks                 []plainMark // from above
	block, drag, lock     float64
	closed                bool
	seals                 []sequence.Seal

	ref    []float64           // length of each piece between marks when it landed, in
	held   map[int]float64     // by mark: how far it had moved when it took hold, in, down positive
	parted map[int]bool        // by mark
	hook   bool                // on the hook
	read   float64             // the weight indicator then
	down   bool                // it is let down,
	turn   float64             // since this reading,
	begun  bool                // when hole and seals took all that they take of a pull
	freed  int                 // the last step in which something let it go
	places map[unit.Length]int // mark of each place that can hold
	joints map[int]int         // mark by action
}

// plainLoads is a string under load.
type plainLoads struct {
	top     float64         // wall force
	reading float64         // of the weight indicator, or what it would show
	free    bool            // nothing holds it on the hook
	balance map[int]float64 // of joints, by mark
	moved   map[int]float64 // of marks, in
	load    map[int]float64 // by mark that holds: what it carries, up positive
	lost    map[int]bool    // marks that are gone
	rubs    map[int]float64 // of seals that slide: with what they pull up
	travel  map[int]float64 // of seals in what they stand in, in
	outer   *plainLoads     // the string around it
}

func newPlainString(w *plainWalk, p *sequence.String, on sequence.WhichString) *plainString {
	if p == nil {
		return nil
	}
	s := &plainString{plainWalk: w, on: on, hung: map[int]float64{}, moves: func(float64) float64 { return 0 }, inside: w.comp(p.Inside), around: w.comp(p.Around[0]), below: w.comp(p.Below), freed: -1,
		block: p.Block.In(unit.PoundForce), drag: p.Drag.Nominal.In(unit.PoundForce), lock: p.LockDown.In(unit.PoundForce), closed: p.Top == sequence.TopClosed,
		seals: p.Seals, held: map[int]float64{}, parted: map[int]bool{}, places: map[unit.Length]int{}, joints: map[int]int{}}
	top := p.HangerMD.In(foot)
	for _, x := range p.Sections {
		s.pipes = append(s.pipes, plainPipe{top, x.BottomMD.In(foot), x.Pipe.Size.In(unit.Inch), x.Pipe.Bore.In(unit.Inch), x.Hole.In(unit.Inch), x.Pipe.Weight.In(unit.PoundPerFoot)})
		top = x.BottomMD.In(foot)
	}
	for _, d := range w.plan.Devices {
		if d.On != on {
			continue
		}
		for _, a := range d.Actions {
			if a.Holds && !slices.ContainsFunc(s.marks, func(m plainMark) bool { return m.kind == plainHold && m.depth == d.MD.In(foot) }) {
				s.marks = append(s.marks, plainMark{plainHold, d.MD.In(foot), s.pipeAt(d.MD.In(foot)).outer(), len(s.marks)})
			}
			if a.Axial && !a.Unseats && a.LatchesTo == "" {
				seal := a.Seal.In(unit.Inch)
				s.marks = append(s.marks, plainMark{plainJoint, d.MD.In(foot), math.Pi / 4 * seal * seal, w.action(d.Name + ": " + a.Name)})
			}
		}
	}
	for k, x := range p.Seals {
		bore := x.Bore.In(unit.Inch)
		s.marks = append(s.marks, plainMark{plainSeal, x.MD.In(foot), math.Pi / 4 * bore * bore, k})
	}
	if on == sequence.OnOuterString {
		for _, md := range meets(w.plan) {
			s.marks = append(s.marks, plainMark{plainHung, md, 0, 0})
		}
	}
	slices.SortStableFunc(s.marks, func(a, b plainMark) int {
		return cmp.Or(cmp.Compare(a.depth, b.depth), cmp.Compare(a.kind, b.kind))
	})
	for k, m := range s.marks {
		switch m.kind {
		case plainHold:
			s.places[feet(m.depth)] = k
		case plainJoint:
			s.joints[m.index] = k
		case plainSeal, plainHung:
		}
	}
	return s
}

// pipeAt is the pipe that ends at a depth or goes through it.
func (s *plainString) pipeAt(depth float64) plainPipe {
	for _, p := range s.pipes {
		if depth <= p.bottom {
			return p
		}
	}
	return s.pipes[len(s.pipes)-1]
}

// outside is the pressure around the string, in the piece between marks: the last one
// of no length, under a seal at the lower end, is what is below.
func (s *plainString) outside(piece int, depth float64) float64 {
	end := s.pipes[len(s.pipes)-1].bottom
	if piece == len(s.marks) && len(s.marks) > 0 && s.marks[piece-1].depth == end && s.marks[piece-1].kind == plainSeal {
		return s.s.at(s.below, depth)
	}
	return s.s.at(s.around, depth)
}

func plainTensionOf(t sequence.Trigger) plainTrigger {
	return plainTrigger{level: t.Tension.Nominal.In(unit.PoundForce) / kips, falling: t.Direction == valve.Falling, count: max(t.Count, 1)}
}
