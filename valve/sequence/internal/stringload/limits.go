package stringload

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Judge holds the string, and that around it, against their limits.
func (r *Room) Judge(j *judge.Judge, w *walk.World, p walk.Place) error {
	forms, moves, err := r.along(w, p.X, p.Pulling)
	if err != nil {
		return err
	}
	if p.Between != nil {
		if !moves {
			return nil // it stands as at the end, which is shown, too
		}
		if forms, err = r.bent(w, p, forms); err != nil {
			return err
		}
	}
	if r.Outer != nil {
		if err := r.Outer.judge(j, w, p, forms[r.size():], Outer); err != nil {
			return err
		}
	}
	return r.judge(j, w, p, forms, Main)
}

// judge holds one of the strings against its limits.
func (r *Room) judge(j *judge.Judge, w *walk.World, p walk.Place, forms []affine.Form, of int) error {
	n, first := 0, of*Second
	take := func() int { n++; return n - 1 }
	for k := range 5 {
		f := forms[take()]
		j.NoteTimes(w, p, judge.String, first+k, f, -judge.Parts, judge.Parts)
	}
	for k, s := range r.Seals {
		f := forms[take()]
		j.NoteTimes(w, p, judge.SealUp, first+k, f, judge.Parts, judge.Parts*s.Up)
		j.NoteTimes(w, p, judge.SealDown, first+k, f, -judge.Parts, judge.Parts*s.Down)
	}
	lift, free, reading, load, holds := forms[take()], forms[take()], forms[take()], forms[take()], forms[take()]
	if p.Pulling == nil || w.On != of {
		j.NoteTimes(w, p, judge.Lift, first, lift, -1, r.LockDown)
	} else {
		for k, most := range r.Lifts {
			if most > 0 {
				j.NoteTimes(w, p, judge.Rig, first+k, reading, -1, most)
			}
		}
		// A pull that nothing holds never comes to its reading; a string that the step
		// itself has freed is meant to come up, and one that is let down goes down.
		now := w.State.String.(*standing)
		turn := now.turn(of)
		down := turn != nil && turn.place != upwards
		if free.C > 0.5 && !down && !now.freedIn(p.Step, of) {
			j.Note(w, p, judge.PullFree, first, reading.Minus(p.Pulling.At(p.X)).Shift(1), 0)
		}
	}
	for place := range r.holds() {
		at := r.forcesAt(place)
		j.Force(w, p, judge.Carried, first+place, forms[at])
		j.Force(w, p, judge.Effective, first+place, forms[at+1])
		j.Force(w, p, judge.Wall, first+place, forms[at+2])
	}
	if r.Envelope != nil && holds.C > 0.5 {
		below, err := w.State.At(r.Below, r.BelowAt)
		if err != nil {
			return err
		}
		above, err := w.State.At(r.Above, r.AboveAt)
		if err != nil {
			return err
		}
		d := below.Minus(above).At(p.X)
		// The envelope is a polygon: with load and differential at the ends of what
		// they may be, its use is greatest at a corner.
		most := 0.0
		for _, a := range [2]float64{load.Least(), load.Greatest()} {
			for _, q := range [2]float64{d.Least(), d.Greatest()} {
				most = max(most, r.Envelope.Margin(packer.Load{Differential: unit.Pressure(q), Axial: unit.Force(a)}).Usage)
			}
		}
		mid := r.Envelope.Margin(packer.Load{Differential: unit.Pressure(d.C), Axial: unit.Force(load.C)}).Usage
		form := load.Times(0)
		form.C, form.T = judge.Parts*(1-mid), nil
		if spread := most - mid; spread > 0 && (load.Radius() > 0 || d.Radius() > 0) {
			form.R = judge.Parts * spread
		}
		j.Note(w, p, judge.Holding, first, form, 0)
	}
	return nil
}

// bent are forms halfway along a stretch, widened by what may lie beyond its ends and
// them: of a parabola through the three that is no more than a quarter of how far the
// middle lies off the straight line, and twice that is taken.
func (r *Room) bent(w *walk.World, p walk.Place, middle []affine.Form) ([]affine.Form, error) {
	var ends [2][]affine.Form
	for i, x := range p.Between {
		forms, err := r.enclose(w, x, p.Pulling)
		if err != nil {
			return nil, err
		}
		ends[i] = forms
	}
	all := slices.Clone(middle)
	for n := range all {
		off := middle[n].Minus(ends[0][n].Plus(ends[1][n]).Times(0.5))
		off.R = 0
		if d := math.Abs(off.C) + off.Radius(); d > 1e-9*(1+math.Abs(middle[n].C)) {
			all[n] = all[n].Widen(d / 2)
		}
	}
	return all, nil
}

// freedIn tells whether a step has parted the string or let it go.
func (s *standing) freedIn(step, of int) bool {
	for ; s != nil; s = s.before {
		if s.step == step && s.of == of && (s.act == parted || s.act == letGo) {
			return true
		}
	}
	return false
}

// read takes everything that a limit needs off the loaded string.
func (r *Room) read(l *movement.Loading, into []float64) []float64 {
	for _, g := range [...]movement.Governing{l.Limits.Burst, l.Limits.Collapse, l.Limits.Axial, l.Limits.Triaxial, l.Limits.Connection} {
		into = append(into, g.Usage)
	}
	for k := range r.Seals {
		travel := 0.0
		if !l.Seals[k].Lost && !l.Free {
			travel = float64(l.Seals[k].Travel)
		}
		into = append(into, travel)
	}
	free := 0.0
	if l.Free {
		free = 1
	}
	load, holds := 0.0, 0.0
	if r.Envelope != nil && l.Holds[r.Packer].Held && !l.Holds[r.Packer].Lost {
		load, holds = float64(l.Holds[r.Packer].Load), 1
	}
	into = append(into, float64(l.Lift), free, float64(l.Reading), load, holds)
	top := float64(l.HangerLoad)
	if r.Closed && len(l.Nodes) > 0 {
		top -= float64(l.Nodes[0].Inside) * r.TopBore
	}
	into = append(into, top)
	for _, j := range l.Joints {
		into = append(into, float64(j.Balance))
	}
	for i, n := range r.Pulled {
		if r.Latches[i] {
			into = append(into, float64(l.Joints[n].OnRest))
		} else {
			into = append(into, carried(&l.Holds[n]))
		}
	}
	for _, h := range l.Holds {
		into = append(into, carried(&h), float64(h.EffectiveAbove), float64(h.WallAbove))
	}
	return into
}

// topAt and jointsAt are where in what is read the load at the top and the balances
// of the joints stand.
func (r *Room) topAt() int    { return 5 + len(r.Seals) + 5 }
func (r *Room) jointsAt() int { return r.topAt() + 1 }

// feltAt is where what an axial action feels stands.
func (r *Room) feltAt(a *well.Action) int {
	at := r.jointsAt() + a.Joint
	if a.Feels != well.OfJoint {
		at += r.Joints
	}
	return at
}

// carried is the load up that a place carries.
func carried(h *movement.HoldLoad) float64 {
	if !h.Held || h.Lost {
		return 0
	}
	return float64(h.Load)
}

// forcesAt is where the three forces of a place stand.
func (r *Room) forcesAt(place int) int { return r.judged() + 3*place }

// size is how much is read.
func (r *Room) size() int { return r.judged() + 3*r.holds() }

// ofJudged are those of what is read that are held against limits.
func (r *Room) ofJudged(forms []affine.Form) []affine.Form {
	if r.Outer == nil {
		return forms[:r.judged()]
	}
	return slices.Concat(forms[:r.judged()], forms[r.size():r.size()+r.Outer.judged()])
}

// judged is how much of what is read is held against limits; the rest is told.
func (r *Room) judged() int { return r.jointsAt() + r.Joints + len(r.Pulled) }
