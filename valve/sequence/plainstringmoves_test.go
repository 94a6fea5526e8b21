package sequence_test

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// holdsOn lets what stands at a depth take hold.
func (s *plainString) holdsOn(depth unit.Length) {
	k, there := s.places[depth]
	if _, already := s.held[k]; !there || already {
		return
	}
	l := s.now()
	if !l.lost[k] {
		s.held[k] = l.moved[k] - s.moves(s.marks[k].depth)
	}
}

// letsGo frees what an action that releases frees: what holds at its depth, where
// something can, or all.
func (s *plainString) letsGo(depth unit.Length) {
	if k, there := s.places[depth]; there {
		if _, holds := s.held[k]; holds {
			s.freed = s.step
		}
		delete(s.held, k)
		return
	}
	if len(s.held) > 0 {
		s.freed = s.step
	}
	clear(s.held)
}

// kips is the unit in which an axial action feels: 1,000 lbf, so that what is exact of
// a pressure in psi is exact of it.
const kips = 1000

// plainPull is a near miss of what the string feels, in kips: its lengths are cut in
// other places than the programme's.
const plainPull = 0.02

// moves lets an action hold, free or part the string.
func (w *plainWalk) moves(a *plainAction) {
	s := w.stringOn(w.plan.Devices[a.device].On)
	defer func() { w.known = nil }()
	switch {
	case s == nil:
	case a.holds:
		s.holdsOn(a.at)
	case a.unseats:
		s.letsGo(a.at)
	case a.latches != "":
		if k := s.left(a); k >= 0 {
			delete(s.parted, k)
		}
	case a.axial && a.releases:
		s.parted[s.joints[a.group]] = true
		s.freed = w.step
	case a.releases:
		s.letsGo(a.at)
	}
}

// axial is what an action's joint feels, in kips.
func (s *plainString) axial(action int) float64 {
	a, l := &s.actions[action], s.now()
	if a.unseats {
		if k, there := s.places[a.at]; there && !l.lost[k] {
			return l.load[k] / kips // nothing where it doesn't hold
		}
		return 0
	}
	if a.latches != "" {
		if k := s.left(a); k >= 0 && l.free && !slices.ContainsFunc(s.marks[:k], func(m plainMark) bool { return s.parted[s.joints[m.index]] && m.kind == plainJoint }) {
			return (s.read - l.reading) / kips
		}
		return 0
	}
	return l.balance[s.joints[action]] / kips
}

// left is the mark of the joint that an action latches to again, where it has parted
// and something holds what it has left; else -1.
func (s *plainString) left(a *plainAction) int {
	k := s.joints[s.action(s.plan.Devices[a.device].Name+": "+a.latches)]
	if !s.parted[k] {
		return -1
	}
	for below := k + 1; below < len(s.marks); below++ {
		if _, holds := s.held[below]; holds {
			return k
		}
		if s.parted[below] {
			break
		}
	}
	return -1
}

// pulls takes the string from where the weight indicator stands to readings.
func (w *plainWalk) pulls(step *sequence.Step) error {
	s := w.stringOn(step.On)
	w.known = nil
	for n, to := range step.Pull {
		w.leg++
		goal := to.In(unit.PoundForce)
		if n == 0 {
			s.read = s.now().reading
		}
		from := s.read
		switch down := goal < from; {
		case down && n == 0:
			s.down, s.turn, s.begun = true, from, false
		case down && !s.down:
			s.down, s.turn, s.begun = true, from, true
		case !down:
			s.down = false
		}
		if math.Abs(goal-from) < 1 {
			w.r.close = true
		}
		s.hook, w.known = true, nil
		if err := w.run(func(x float64) { s.read = from*(1-x) + goal*x }, nil); err != nil {
			return err
		}
		w.stand()
	}
	if s != nil {
		s.hook, w.known = false, nil
	}
	return nil
}

// far notes a near miss of what the string feels.
func (s *plainString) far(margin float64) float64 {
	if math.Abs(margin) < plainPull {
		s.r.close = true
	}
	return margin
}

// judge holds seals, hanger and pull against what the plan says.
func (s *plainString) judge() {
	l := s.now()
	for k, m := range s.marks {
		if m.kind != plainSeal || l.lost[k] || l.free {
			continue
		}
		x := s.seals[m.index]
		s.fail(sequence.SealTravel, x.Name+" up", x.Up.In(unit.Inch)+l.moved[k]-s.moves(m.depth))
		s.fail(sequence.SealTravel, x.Name+" down", x.Down.In(unit.Inch)-l.moved[k]+s.moves(m.depth))
	}
	if !s.hook {
		s.fail(sequence.HangerLift, "hanger"+string(s.on), s.far((s.lock+l.top)/kips))
		return
	}
	if l.free && !s.down && s.freed != s.step {
		short := l.reading - s.read
		if math.Abs(short) > 1e-5 { // at its own weight there is no near miss
			s.far(short / kips)
		}
		s.fail(sequence.PullOff, "string"+string(s.on), (short+1/unit.PoundForce.In(unit.Newton))/kips)
	}
}
