package sequence_test

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// land counts movements from here.
func (s *plainString) land() {
	s.ref = nil
	s.held, s.parted = map[int]float64{}, map[int]bool{}
	clear(s.hung)
	_, pieces := s.load()
	for _, p := range pieces {
		s.ref = append(s.ref, s.length(p, 0))
	}
}

// ends tells whether the string is cut at a mark.
func (s *plainString) ends(k int) bool {
	_, holds := s.held[k]
	return holds || s.parted[k]
}

// dragAt is the depth at which all drag is taken.
func (s *plainString) dragAt() float64 {
	for k, m := range s.marks {
		if s.ends(k) {
			_, holds := s.held[k]
			for _, j := range s.marks[:k] {
				if holds && j.kind == plainJoint {
					return j.depth
				}
			}
			return m.depth
		}
	}
	return s.pipes[len(s.pipes)-1].bottom
}

// rubs is what is taken of all that hole and seals down to where the string is cut
// can take, from −1, all of it on the way down, to 1, all on the way up; and of each
// seal what that is.
func (s *plainString) rubs() (share float64, of map[int]float64) {
	of = map[int]float64{}
	if !s.hook {
		return 0, of
	}
	all := s.drag
	for k, m := range s.marks {
		if s.ends(k) {
			break
		}
		if m.kind == plainSeal {
			of[k] = s.seals[m.index].Friction.Nominal.In(unit.PoundForce)
			all += of[k]
		}
	}
	share = 1
	if s.down && all > 0 {
		begun := 0.0
		if s.begun {
			begun = all
		}
		share = min(1, max(-1, (begun-(s.turn-s.read))/all))
	}
	for k := range of {
		of[k] *= share
	}
	return share, of
}

// load is the string as it stands now.
func (s *plainString) load() (plainLoads, [][]plainElement) {
	l := plainLoads{balance: map[int]float64{}, moved: map[int]float64{}, load: map[int]float64{}, lost: map[int]bool{}, travel: map[int]float64{}}
	pieces := s.pieces()
	end := s.pipes[len(s.pipes)-1]
	in, out := s.s.at(s.inside, end.bottom), s.outside(len(s.marks), end.bottom)
	share, seals := s.rubs()
	l.rubs = seals
	// A plug carries the pressure inside, and what is below pushes on all of the end.
	wall := in*end.inner() - out*end.outer()
	below := make([]float64, len(s.marks)) // effective force just below a mark
	above := make([]float64, len(s.marks))
	for k := len(s.marks); ; k-- {
		wall = s.march(pieces[k], wall)
		if k == 0 {
			break
		}
		m := s.marks[k-1]
		pipe := s.pipeAt(m.depth)
		under := pipe
		if len(pieces[k]) > 0 {
			under = pieces[k][0].pipe
		}
		in, outA := s.press(k-1, false)
		_, outB := s.press(k-1, true)
		fe := effectiveOf(under, wall, in, outB)
		below[k-1] = fe
		switch {
		case m.kind == plainJoint && s.parted[k-1]:
			fe = -(in - outA) * m.area // nothing pulls on its pins
		case m.kind == plainHung:
			fe += s.hung[k-1]
		case m.kind != plainJoint:
			fe -= m.area*(outB-outA) - seals[k-1]
		}
		above[k-1] = fe
		wall = fe + in*pipe.inner() - outA*pipe.outer()
	}
	// The drag lies on top of it.
	drag, at := share*s.drag, s.dragAt()
	top := s.pipes[0].top
	spread := func(z float64) float64 { return max(0, (at-z)/(at-top)) }
	cut := len(s.marks)
	for k := range s.marks {
		if s.ends(k) {
			cut = k
			break
		}
	}
	for k := 0; k <= cut; k++ {
		for i := range pieces[k] {
			e := &pieces[k][i]
			e.upper, e.upperE = e.upper+drag*spread(e.top), e.upperE+drag*spread(e.top)
			e.lower, e.lowerE = e.lower+drag*spread(e.bottom), e.lowerE+drag*spread(e.bottom)
		}
		if k < cut {
			above[k] += drag * spread(s.marks[k].depth)
			below[k] += drag * spread(s.marks[k].depth)
		}
	}
	wall += drag
	if cut < len(s.marks) {
		above[cut] += drag * spread(s.marks[cut].depth)
	}
	lid := 0.0
	if s.closed {
		lid = s.s.at(s.inside, top) * s.pipes[0].inner()
	}
	l.top = wall
	// Segment by segment: what holds it adds a force all along.
	for from, upper := 0, -1; from <= len(s.marks); {
		lower := from
		for lower < len(s.marks) && !s.ends(lower) {
			lower++
		}
		_, fixed := s.held[lower]
		torn := upper >= 0 && s.parted[upper]
		add, long := 0.0, 0.0
		lost := torn && !fixed
		switch {
		case lost:
		case !fixed:
			l.free = l.free || upper < 0 && s.hook
		case upper < 0 && s.hook:
			add = s.read - s.block + lid - l.top
		case torn:
			in, out := s.press(upper, true)
			add = -(in-out)*s.marks[upper].area - below[upper]
		case s.ref != nil:
			want := s.heldAt(lower) - s.moves(top)
			if upper >= 0 {
				want = s.heldAt(lower) - s.heldAt(upper)
			}
			add = s.fit(pieces[from:lower+1], s.ref[from:lower+1], want)
		}
		for k := from; k <= lower; k++ {
			if s.ref != nil {
				long += s.length(pieces[k], add) - s.ref[k]
			}
		}
		if upper < 0 {
			l.top += add
		} else {
			below[upper] += add
		}
		at := s.moves(top)
		switch {
		case fixed && (upper < 0 && s.hook || torn):
			at = s.heldAt(lower) - long
		case upper >= 0 && !torn:
			at = s.heldAt(upper)
		case torn:
			at = 0
		}
		for k := from; k < lower; k++ {
			above[k] += add
			below[k] += add
			if s.ref != nil {
				at += s.length(pieces[k], add) - s.ref[k]
			}
			s.put(&l, k, at, lost, above[k])
		}
		if lower < len(s.marks) {
			above[lower] += add
			if s.ref != nil {
				at += s.length(pieces[lower], add) - s.ref[lower]
			}
			s.put(&l, lower, at, lost, above[lower])
		}
		from, upper = lower+1, lower
	}
	for k := range s.held {
		_, outA := s.press(k, false)
		_, outB := s.press(k, true)
		l.load[k] = above[k] - below[k] + (outB-outA)*s.marks[k].area
	}
	l.reading = l.top - lid + s.block
	return l, pieces
}

// heldAt is how far a mark that holds has moved, with what it holds in.
func (s *plainString) heldAt(k int) float64 { return s.held[k] + s.moves(s.marks[k].depth) }

// put keeps what is felt at a mark.
func (s *plainString) put(l *plainLoads, k int, moved float64, lost bool, effective float64) {
	if lost {
		moved = 0
	}
	l.moved[k], l.lost[k], l.travel[k] = moved, lost, moved-s.moves(s.marks[k].depth)
	if m := s.marks[k]; m.kind == plainJoint && !lost && !s.parted[k] {
		in, out := s.press(k, false)
		l.balance[k] = effective + (in-out)*m.area
	}
}

// fit is the force that keeps pieces as long as what holds them has moved: by false
// position, as their length only grows with it.
func (s *plainString) fit(pieces [][]plainElement, ref []float64, want float64) float64 {
	off := func(f float64) float64 {
		sum := -want
		for k := range pieces {
			sum += s.length(pieces[k], f) - ref[k]
		}
		return sum
	}
	give := 0.0
	for _, p := range pieces {
		for i := range p {
			give += p[i].compliance
		}
	}
	a := 0.0
	fa := off(a)
	if math.Abs(fa) < 1e-13 {
		return 0
	}
	b := -1.000001 * fa / give
	fb := off(b)
	for range 60 {
		if fa*fb <= 0 {
			break
		}
		a, fa = b, fb
		b *= 2
		fb = off(b)
	}
	for range 200 {
		x := b - fb*(b-a)/(fb-fa)
		fx := off(x)
		if math.Abs(fx) < 1e-13 || x == a || x == b {
			return x
		}
		if fx*fb < 0 {
			a, fa = b, fb
		} else {
			fa /= 2 // Illinois
		}
		b, fb = x, fx
	}
	return b
}
