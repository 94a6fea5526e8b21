package stringload

import (
	"math"
	"slices"

	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
)

// Memory keeps the loads of one walk: on most legs nothing moves that the string
// feels. It is for one goroutine.
type Memory struct {
	loads [64]remembered
	next  int

	stoods    [32]stood // at choices of the inputs, the last ones
	nextStood int
	at        profile
	piece     float64 // of a pull that was straight

	// Work is what loads are worked out in; memories that are used one after the other may
	// share it. Nil: one of its own.
	Work *Work
}

// Work is what loads are worked out in, and used again.
type Work struct {
	scratch, hook        movement.NestedLoading
	numbers              sharp
	mid, wide, low, high []float64 // of what is read off the strings
}

// work is what a room works loads out in.
func (r *Room) work() *Work {
	if r.Memory == nil {
		return new(Work)
	}
	if r.Memory.Work == nil {
		r.Memory.Work = new(Work)
	}
	return r.Memory.Work
}

type remembered struct {
	sign  uint64
	s     *standing
	p     *profile
	pull  *reading
	forms []affine.Form
}

// stood is how the string stood at a choice of the inputs.
type stood struct {
	s  *standing
	e  []float64
	as movement.Nested
}

func (m *Memory) stood(s *standing, e []float64) (movement.Nested, bool) {
	if m != nil {
		for i := range m.stoods {
			if x := &m.stoods[i]; x.s == s && slices.Equal(x.e, e) {
				return x.as, true
			}
		}
	}
	return movement.Nested{}, false
}

func (m *Memory) stands(s *standing, e []float64, as movement.Nested) {
	if m != nil {
		m.stoods[m.nextStood] = stood{s, e, as}
		m.nextStood = (m.nextStood + 1) % len(m.stoods)
	}
}

func (m *Memory) find(sign uint64, s *standing, p *profile, pull *reading) ([]affine.Form, bool) {
	if m == nil {
		return nil, false
	}
	for i := range m.loads {
		r := &m.loads[i]
		if r.sign == sign && r.s == s && r.forms != nil && pull.same(r.pull) && r.p.same(p) {
			return r.forms, true
		}
	}
	return nil, false
}

func (m *Memory) keep(r remembered) {
	if m != nil {
		m.loads[m.next] = r
		m.next = (m.next + 1) % len(m.loads)
	}
}

// sign is equal for equal profiles.
func (p *profile) sign() uint64 {
	h := uint64(p.temperature + 1)
	for _, forms := range p.forms {
		for _, f := range [2]affine.Form{forms[0], forms[len(forms)-1]} {
			h = (h ^ math.Float64bits(math.Round(f.C))) * 1099511628211
		}
	}
	return h
}
