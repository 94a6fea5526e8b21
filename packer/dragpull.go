package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/drag"
)

// Friction is one string in one hole with three guesses of its friction factors.
// One may stand for all where the friction is known.
type Friction = drag.Spread

// DragWith returns what the hole takes from the pull when the pins part, for
// Pull.Drag: least pins with least friction, to strongest pins with greatest.
//
//	drag = hook load pulled - hook load without friction
//
// each with the effective force at the joint, Fe = P - Ap (pb - po). In doglegs
// the drag grows with the pull, so that it is that of parting, and more than the
// string has with no load on the joint.
//
// The drag already in r.Pull is not used. Errors name every field out of range.
// Source: package drag.
func (r Release) DragWith(f Friction) (unit.Band[unit.Force], error) {
	r.Pull.Drag = unit.Band[unit.Force]{}
	p := fault.In(scope)
	pull := r.Pull.faults()
	p.At("Pull", pull.Err())
	checkPins(&p, "Pins", r.Pins)
	if f.Least == nil || f.Nominal == nil || f.Greatest == nil {
		p.New("Friction", "is incomplete; must be least, nominal and greatest")
	}
	if err := p.Err(); err != nil {
		return unit.Band[unit.Force]{}, err
	}
	h, err := r.Pull.hang()
	if err != nil {
		return unit.Band[unit.Force]{}, err
	}
	end := h.joint().Effective - h.joint().Balance // with no load on the joint
	of := func(hole *drag.Prepared, pins unit.Force) unit.Force {
		return hole.HookLoad(drag.Pulled, pins+end) - hole.HookLoad(drag.Rotating, pins+end)
	}
	band := unit.Band[unit.Force]{
		Least: of(f.Least, r.Pins.Least), Nominal: of(f.Nominal, r.Pins.Nominal), Greatest: of(f.Greatest, r.Pins.Greatest),
	}
	if err := band.Validate(); err != nil {
		p.At("Friction", err)
	}
	return band, p.Err()
}
