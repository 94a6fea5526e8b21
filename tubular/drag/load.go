package drag

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Motion is what the string does.
type Motion int

// The motions.
const (
	Rotating Motion = iota // turned on the spot: friction takes torque, not tension
	RunIn                  // sliding down: friction takes weight off
	Pulled                 // sliding up: friction adds to the weight
)

var motions = [...]string{Rotating: "rotating", RunIn: "run in", Pulled: "pulled"}

// String returns the name of m.
func (m Motion) String() string {
	if m < 0 || int(m) >= len(motions) {
		return fmt.Sprintf("Motion(%d)", int(m))
	}
	return motions[m]
}

// MarshalText returns the name of m.
func (m Motion) MarshalText() ([]byte, error) {
	if m < 0 || int(m) >= len(motions) {
		return nil, fault.NewIn(scope, "", "motion is %d; must be one of %q", int(m), motions)
	}
	return []byte(motions[m]), nil
}

// UnmarshalText reads the name of a motion.
func (m *Motion) UnmarshalText(text []byte) error {
	for k, name := range motions {
		if name == string(text) {
			*m = Motion(k)
			return nil
		}
	}
	return fault.NewIn(scope, "", "motion is %q; must be one of %q", text, motions)
}

// sign is that of axial friction on the way up the string.
func (m Motion) sign() float64 {
	switch m {
	case RunIn:
		return -1
	case Pulled:
		return 1
	}
	return 0
}

// HookLoad returns the effective axial force at surface, without the weight of
// block and top drive, for an effective force at the string's lower end: zero
// where it hangs free, the pull wanted there where it is held, negative for
// weight set down.
//
//	dF/ds = -w*cosθ ∓ μ*N                         s along the hole, downwards
//	N = sqrt((w*sinθ - F*θ')² + (F*sinθ*φ')²)
//
// Friction takes weight off on the way in, adds on the way out, and does
// neither while the string rotates. The march goes up from the lower end in
// steps of second order: contact is taken at the middle of a step.
//
// Source: Johancsik, Friesen & Dawson, JPT June 1984, Eq. 1–3.
func (p *Prepared) HookLoad(m Motion, end unit.Force) unit.Force {
	if p == nil {
		return unit.Force(math.NaN())
	}
	f, sign := float64(end), m.sign()
	if sign == 0 {
		for i := range p.elements {
			f += p.elements[i].weight
		}
		return unit.Force(f)
	}
	d := p.first(f, sign)
	for i := range p.climbs {
		d = p.climbs[i].up(f, d, sign)
		f += d
	}
	return unit.Force(f)
}

// first is what stands in for the step below the first: the slope at the lower
// end over the first element's length.
func (p *Prepared) first(f, sign float64) float64 {
	if len(p.elements) == 0 {
		return 0
	}
	e := &p.elements[0]
	return e.weight + sign*e.μ*e.contact(f)
}

// climb is an element as the march needs it: the friction factor is in side,
// build and turn already.
type climb struct {
	weight            float64
	side, build, turn float64
	half              float64 // half this element's length over the one's below
}

// up is the change of force over the element. The force at its middle is
// foreseen by the change d over the element below.
func (c *climb) up(f, d, sign float64) float64 {
	f += d * c.half
	a := c.side - f*c.build
	if c.turn == 0 {
		return c.weight + sign*math.Abs(a)
	}
	b := f * c.turn
	return c.weight + sign*math.Sqrt(a*a+b*b)
}

// contact is the force of the element against the wall under a tension f.
func (e *element) contact(f float64) float64 {
	a, b := e.side-f*e.build, f*e.turn
	return math.Sqrt(a*a + b*b)
}

// Torque returns the torque at surface that turns the string on the spot.
//
//	M = ∫ μ*N*Do/2 ds
//
// Range: any force at the end; NaN for a nil string.
//
// Source: Johancsik, Friesen & Dawson, JPT June 1984, Eq. 4.
func (p *Prepared) Torque(end unit.Force) unit.Torque {
	if p == nil {
		return unit.Torque(math.NaN())
	}
	f, torque := float64(end), 0.0
	for i := range p.elements {
		e := &p.elements[i]
		torque += e.μ * e.radius * e.contact(f+e.weight/2)
		f += e.weight
	}
	return unit.Torque(torque)
}

var errUnprepared = errors.New("drag: the string is not prepared: make it with String.Prepare")

// EndForce returns the effective force at the lower end that goes with a hook
// load: what a pull at surface leaves for the packer, or how much of the weight
// set down gets there.
//
//	HookLoad(m, F) = hook load, solved for F
//
// Errors: a string that wasn't prepared; a hook load that isn't finite, or that no
// force at the lower end gives.
//
// Source: see HookLoad.
func (p *Prepared) EndForce(m Motion, hookLoad unit.Force) (unit.Force, error) {
	if err := fault.Finite("hookLoad", hookLoad); err != nil {
		return 0, fault.Join(scope, err)
	}
	if p == nil || len(p.elements) == 0 {
		return 0, errUnprepared
	}
	residual := func(f float64) float64 { return float64(p.HookLoad(m, unit.Force(f)) - hookLoad) }
	weight := float64(p.HookLoad(Rotating, 0))
	reach := max(math.Abs(weight), math.Abs(float64(hookLoad)), 1)
	// The end's force never is further from zero than weight, friction and pull
	// can bring it; friction on a curve multiplies, so the bracket grows by tens.
	for range 30 {
		if residual(-reach) <= 0 && residual(reach) >= 0 {
			f, err := root.Find(residual, -reach, reach, 0)
			return unit.Force(f), err
		}
		reach *= 10
	}
	return 0, fmt.Errorf("drag: no force at the lower end gives a hook load of %v when %v", hookLoad, m)
}
