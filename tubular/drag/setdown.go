package drag

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
	"completion.example/tubular/movement"
)

// SetDown is a string that slides down with weight set down at its lower end, and
// the wall's force of what buckles counted.
type SetDown struct {
	Weight   unit.Force `json:"weight"`    // that arrives at the lower end: compression of the effective force
	HookLoad unit.Force `json:"hook_load"` // effective at surface, without block
	Slacked  unit.Force `json:"slacked"`   // off since it hung free on the way down: what was meant to arrive
	// Passes is the share of the next weight slacked off that arrives: 1 where
	// nothing buckles in a straight hole, more where a bend is relieved of tension,
	// towards 0 in lock-up.
	Passes float64 `json:"passes"`
	// Buckled is the length that is buckled in any way, Helical what is a helix.
	Buckled unit.Length `json:"buckled"`
	Helical unit.Length `json:"helical"`
}

// LockUp is the share of the next weight that arrives below which a string counts
// as locked up: common practice, without a source that can be cited.
const LockUp = 0.01

// Locked tells whether hardly more arrives, whatever is slacked off.
func (s SetDown) Locked() bool { return s.Passes < LockUp }

// SetDown returns what it takes at surface that a weight arrives at the lower end
// while the string slides down.
//
//	dF/ds = -w*cosθ + μ*N          s along the hole, downwards; F tension
//	N     = wc, or r*F²/(4*E*I) where that is more and the pipe is a helix
//
// In a straight vertical hole a long string so loaded never gets more down than
//
//	F = sqrt(4*E*I*w/(μ*r)),  and from its neutral point down F*tanh(w*z/F)
//
// In an inclined hole the helix is taken to come at the latest load, 2√2 times the
// sinusoidal one, as movement.Confined.Under does; it may come from half of that.
//
// Range: any weight, a negative one is a pull. Where no push at surface brings
// the weight down, and for NaN, HookLoad is -Inf and Slacked +Inf; of a nil
// string HookLoad is NaN.
//
// Source: Johancsik, Friesen & Dawson 1984 for the march; movement.Confined.Under
// for the wall's force; Mitchell, SPE Drilling Engineering December 1986 (SPE
// 13064), friction of a helix (memory).
func (p *Prepared) SetDown(weight unit.Force) SetDown {
	free := p.pushed(0)
	s := p.pushed(weight)
	s.Slacked = free.HookLoad - s.HookLoad
	const step = 1e-4
	d := unit.Force(step) * max(1000, unit.Force(math.Abs(float64(weight))))
	s.Passes = math.Max(0, 2*float64(d/(p.pushed(weight-d).HookLoad-p.pushed(weight+d).HookLoad)))
	return s
}

// pushed marches up from the lower end, by midpoints.
func (p *Prepared) pushed(weight unit.Force) SetDown {
	s := SetDown{Weight: weight}
	if p == nil {
		s.HookLoad = unit.Force(math.NaN())
		return s
	}
	f := -float64(weight)
	for i := range p.elements {
		e := &p.elements[i]
		k, _ := p.rise(i, f)
		k, mode := p.rise(i, f+k/2)
		f += k
		switch mode {
		case movement.Helical:
			s.Helical += unit.Length(e.length)
			s.Buckled += unit.Length(e.length)
		case movement.Sinusoidal:
			s.Buckled += unit.Length(e.length)
		case movement.Straight:
		}
		if math.IsInf(f, 0) || f != f {
			s.HookLoad = unit.Force(math.Inf(-1)) // no push at surface gets it there
			return s
		}
	}
	s.HookLoad = unit.Force(f)
	return s
}

// rise is the change of the force up element i on the way down, and how it lies.
func (p *Prepared) rise(i int, f float64) (float64, movement.Mode) {
	e := &p.elements[i]
	n, mode := e.contact(f), movement.Straight
	if f < 0 && !math.IsInf(e.onset, 1) {
		lay := p.lies[i].Under(unit.Force(f))
		n, mode = max(n, float64(lay.Contact)*e.length), lay.Mode
	}
	return e.weight - e.μ*n, mode
}

// ErrNotSlack says that so much can't be slacked off: the hook would have to push.
var ErrNotSlack = errors.New("drag: more than hangs on the hook can't be slacked off")

// Arrives returns the weight that arrives at the lower end of what is slacked off
// at surface from a string that hung free on the way down. Errors are ErrNotSlack
// and a weight that isn't a number from 0 up.
//
//	W = slacked − Σ friction on the way
//
// Source: SetDown.
func (p *Prepared) Arrives(slacked unit.Force) (SetDown, error) {
	if err := fault.AtLeast("slacked", slacked, 0); err != nil {
		return SetDown{}, fault.Join(scope, err)
	}
	if p.Size() < 2 {
		return SetDown{}, errUnprepared
	}
	free := p.pushed(0).HookLoad
	if slacked > free {
		return SetDown{}, fmt.Errorf("%w: %v slacked off, %v hangs", ErrNotSlack, slacked.Rounded(5), free.Rounded(5))
	}
	if slacked == 0 {
		return p.SetDown(0), nil
	}
	// The reach is halved until the march is finite there: then the root is between.
	over := func(w float64) float64 {
		return math.Max(-1e12, float64(p.pushed(unit.Force(w)).HookLoad)) - float64(free-slacked)
	}
	// Never more arrives than is slacked off and the string weighs in all.
	high := float64(slacked)
	for range 60 {
		if over(high) <= 0 {
			break
		}
		high *= 2
	}
	w, err := root.Find(over, 0, high, 1e-6)
	if err != nil {
		return SetDown{}, fmt.Errorf("drag: weight that arrives: %w", err)
	}
	return p.SetDown(unit.Force(w)), nil
}

// MostSetDown returns the greatest weight that arrives: with all that hangs on
// the hook slacked off.
func (p *Prepared) MostSetDown() (SetDown, error) {
	free := p.pushed(0).HookLoad
	if p.Size() < 2 {
		return SetDown{}, errUnprepared
	}
	if free <= 0 {
		return SetDown{}, fmt.Errorf("%w: the string doesn't slide down by itself, %v hangs", ErrNotSlack, free.Rounded(5))
	}
	return p.Arrives(free)
}
