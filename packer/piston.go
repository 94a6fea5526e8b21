package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
)

// Push returns the force of a pressure on an area.
//
//	F = p A
//
// Range: any numbers; nothing is checked.
//
// Source: definition.
func Push(p unit.Pressure, a unit.Area) unit.Force { return unit.Force(float64(p) * float64(a)) }

// JointLoad returns what a sealed joint has to carry by pins, threads or a latch
// with a real force in the string just above it; positive where it parts the
// joint.
//
//	P = Fa - F(end) = Fa - Ai pi + Ap pb - (Ap - Ao) po
//
//	Fa  real force in the string above, tension positive
//	Ap  area of the joint's seal; Ai, Ao bore and outside area of the string
//	pi  pressure inside, po outside, pb below the seal
//
// With the effective force Fe it is Fe + (pb - po) Ap: pins feel the effective
// force and the differential on the seal.
//
// It is movement.End.Load, by which a string in the programme finds the balance
// of its joints too.
//
// Source: balance of the joint's upper half; movement.End.Force for F(end).
func JointLoad(end movement.End, real unit.Force) unit.Force { return end.Load(real) }

// JointForce returns the real force in the string above a joint that carries a
// load; the inverse of JointLoad.
//
//	Fa = P + F(end)
//
// Range: any load and end; nothing is checked.
func JointForce(end movement.End, load unit.Force) unit.Force { return load + end.Force() }
