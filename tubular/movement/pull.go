package movement

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// ErrNotReached says that what is done at surface doesn't reach a place or a
// joint: the string isn't on the hook, something above holds it, or nothing holds
// it and it comes up instead.
var ErrNotReached = errors.New("movement: the pull doesn't reach it")

// ReadingForJoint returns the reading of the weight indicator at which the
// balance of a joint is a value, in the conditions of a loading on the hook: with
// drag, pressures and heat as they are there.
//
//	R = R(loading) + P - P(loading)
//
// The force is the same all along what the hook carries, so that it is exact.
// Errors are ErrNotReached with the reason.
//
// Source: balance of forces; a bracketed root.
func (m *MadeUp) ReadingForJoint(l *Loading, joint int, balance unit.Force) (unit.Force, error) {
	if err := fault.Join(scope, m.loaded(l)); err != nil {
		return 0, err
	}
	if err := fault.Join(scope, noJoint(joint, len(m.joints)), fault.Finite("balance", balance)); err != nil {
		return 0, err
	}
	if l.Joints[joint].Parted {
		return 0, fmt.Errorf("%w: joint %d has parted", ErrNotReached, joint)
	}
	if err := m.pulled(l, jointMark, joint); err != nil {
		return 0, err
	}
	return reading(l.Reading + balance - l.Joints[joint].Balance)
}

// ReadingForHold returns the reading at which the uppermost place that holds the
// string carries a load, up positive: see ReadingForJoint.
//
//	load(reading) = load
//
// Errors: no such place; a loading of another string; ErrNotReached where the pull
// doesn't arrive there.
func (m *MadeUp) ReadingForHold(l *Loading, place int, load unit.Force) (unit.Force, error) {
	if err := fault.Join(scope, m.loaded(l)); err != nil {
		return 0, err
	}
	if err := fault.Join(scope, noPlace(place, len(m.holds)), fault.Finite("load", load)); err != nil {
		return 0, err
	}
	if err := m.pulled(l, holdMark, place); err != nil {
		return 0, err
	}
	return reading(l.Reading + load - l.Holds[place].Load)
}

// reading is a reading that is a number, which that of an edited loading may not be.
func reading(r unit.Force) (unit.Force, error) {
	return r, fault.Join(scope, fault.Finite("reading", r))
}

// loaded reports a loading that isn't one of this string.
func (m *MadeUp) loaded(l *Loading) error {
	if m == nil {
		return errNotMadeUp
	}
	if l != nil && len(l.Nodes) == len(m.points) && len(l.Joints) == len(m.joints) && len(l.Holds) == len(m.holds) &&
		len(l.Seals) == len(m.seals) && len(l.segments) > 0 && m.sectioned(l.Nodes) {
		return nil
	}
	return fault.New("loading", "is empty or another string's; must be one that Load of the same MadeUp made")
}

// sectioned tells whether every node is of a section of this string.
func (m *MadeUp) sectioned(nodes []Node) bool {
	for i := range nodes {
		if k := nodes[i].Section; k < 0 || k >= len(m.sections) {
			return false
		}
	}
	return true
}

// pulled tells whether the hook's pull arrives at a part.
func (m *MadeUp) pulled(l *Loading, kind markKind, index int) error {
	switch {
	case l.Top == AtHanger:
		return fmt.Errorf("%w: the string is landed", ErrNotReached)
	case l.Free:
		return fmt.Errorf("%w: nothing holds the string", ErrNotReached)
	}
	for i := range m.marks {
		k := &m.marks[i]
		if k.kind == kind && k.index == index {
			if kind == holdMark && !l.Holds[index].Held {
				return fmt.Errorf("%w: place %d doesn't hold", ErrNotReached, index)
			}
			return nil
		}
		if k.kind == holdMark && l.Holds[k.index].Held {
			return fmt.Errorf("%w: place %d above it holds", ErrNotReached, k.index)
		}
	}
	return ErrNotReached
}

// Bears is what else must bear a pull: a hanger's running tool, the rig, a tool in
// the string. Its share of a rating is the caller's: give what may be used.
type Bears struct {
	Name   string      `json:"name"`
	MD     unit.Length `json:"md"`     // measured depth of a part of the string; the hanger's for what stands on top
	Rating unit.Force  `json:"rating"` // wall force that it bears; zero: none
}

// PullLimits are the limits of a pull besides the string's own.
type PullLimits struct {
	Rig   unit.Force `json:"rig"`  // greatest reading; zero: none
	Hold  unit.Force `json:"hold"` // greatest load up on the uppermost place that holds; zero: none
	Parts []Bears    `json:"parts"`
}

// MostPull is the greatest reading that all limits permit.
type MostPull struct {
	Reading unit.Force  `json:"reading"`
	By      string      `json:"by"` // what limits it: "pipe body in tension", "rig", the name of a part
	MD      unit.Length `json:"md"`
}

// MostReading returns the greatest reading of the weight indicator that string,
// connections, rig, packer and parts permit, and which of them limits it, in the
// conditions of a loading on the hook. The use of every limit grows with the pull,
// or falls first and then grows, so that it is a bracketed root.
//
// Errors are ErrNotReached where nothing holds the string or it is landed, and
// ErrNoPull where no reading keeps all limits.
//
//	usage(reading) = 1, of the first limit that comes to it
//
// Source: definition; a bracketed root.
func (m *MadeUp) MostReading(l *Loading, limits PullLimits) (MostPull, error) {
	if err := fault.Join(scope, m.loaded(l)); err != nil {
		return MostPull{}, err
	}
	if l.Top == AtHanger {
		return MostPull{}, fmt.Errorf("%w: the string is landed", ErrNotReached)
	}
	if l.Free {
		return MostPull{}, fmt.Errorf("%w: nothing holds the string", ErrNotReached)
	}
	if err := fault.Join(scope, fault.Finite("loading.Reading", l.Reading)); err != nil {
		return MostPull{}, err
	}
	most := MostPull{Reading: unit.Force(math.Inf(1))}
	take := func(reading unit.Force, by string, md unit.Length) {
		if reading < most.Reading {
			most = MostPull{reading, by, md}
		}
	}
	if limits.Rig > 0 {
		take(limits.Rig, "rig", m.hanger)
	}
	first := &l.segments[0]
	if limits.Hold > 0 && m.fixedAt(first.lower) && m.marks[first.lower].kind == holdMark {
		k := m.marks[first.lower]
		take(l.Reading+limits.Hold-l.Holds[k.index].Load, "packer", unit.Length(k.md))
	}
	for _, p := range limits.Parts {
		if p.Rating <= 0 {
			continue
		}
		if f, ok := m.WallAt(l, p.MD); ok {
			take(l.Reading+p.Rating-f, p.Name, p.MD)
		}
	}
	more, g, err := m.mostForce(l)
	if err != nil {
		return MostPull{}, err
	}
	take(l.Reading+unit.Force(more), "string, "+g.Limit.String(), g.MD)
	return most, fault.Join(scope, fault.Finite("loading", most.Reading), fault.Finite("loading.MD", most.MD))
}

// ErrNoPull says that no reading keeps all limits of the string.
var ErrNoPull = errors.New("movement: no pull keeps the string within its limits")

// WallAt returns the wall force at a measured depth that what is done at the top
// reaches, above what steps there; not ok below it, nor in a loading that this
// string didn't make.
//
//	F(md) = F(top) − Σ w·ΔTVD − Σ Δp·ΔA
//
// Range: from the hanger to where the pull reaches. Below it zero and not ok;
// above the hanger the force there; NaN for NaN and for a loading of another
// string.
//
// Source: balance of forces.
func (m *MadeUp) WallAt(l *Loading, md unit.Length) (unit.Force, bool) {
	if m.loaded(l) != nil || md != md {
		return unit.Force(math.NaN()), false
	}
	_, to := m.reach(&l.segments[0])
	for i := 0; i <= to; i++ {
		if b := &l.Nodes[i]; b.MD >= md {
			if i == 0 || b.MD == md {
				return b.True, true
			}
			a := &l.Nodes[i-1]
			return mix(a.True, b.True, float64((md-a.MD)/(b.MD-a.MD))), true
		}
	}
	return 0, false
}

// mostForce is the greatest force that may be added to what the hook carries, and
// what limits it.
func (m *MadeUp) mostForce(l *Loading) (float64, Governing, error) {
	_, to := m.reach(&l.segments[0])
	var try Loading // its limits alone are used
	var fail error
	use := func(x float64) Governing {
		try.Limits = Limits{}
		for i := 0; i <= to; i++ {
			n := l.Nodes[i]
			n.True += unit.Force(x)
			n.Effective += unit.Force(x)
			m.bend(&n, &m.elements[m.own[i]], m.across(l.Nodes, i))
			if err := m.rateNode(&try, &n); err != nil {
				fail = err
			}
		}
		return try.Limits.Governing()
	}
	over := func(x float64) float64 { return use(x).Usage - 1 }
	strongest := 0.0
	for k := range m.bars {
		strongest = max(strongest, m.bars[k].as*float64(m.sections[k].Pipe.Material.Yield), float64(m.connections[k].Tension))
	}
	if strongest == 0 {
		return math.Inf(1), Governing{}, nil // nothing is known: nothing is checked
	}
	low, high := 0.0, 4*strongest
	if over(low) > 0 {
		if low = least(over, -high, high); over(low) > 0 {
			g := use(low)
			return 0, g, errors.Join(fail, fmt.Errorf("%w: %s at %s uses %.3g of what it may at best", ErrNoPull, g.Limit, g.MD.Rounded(6), g.Usage))
		}
	}
	if over(high) <= 0 {
		return math.Inf(1), Governing{}, fail
	}
	x, err := root.Find(over, low, high, 1e-9*strongest)
	return x, use(x), errors.Join(err, fail)
}

// least is where a function that falls and then grows is least: golden section.
func least(f func(float64) float64, a, b float64) float64 {
	golden := (math.Sqrt(5) - 1) / 2
	x, y := b-golden*(b-a), a+golden*(b-a)
	fx, fy := f(x), f(y)
	for range 60 {
		if fx < fy {
			b, y, fy = y, x, fx
			x = b - golden*(b-a)
			fx = f(x)
		} else {
			a, x, fx = x, y, fy
			y = a + golden*(b-a)
			fy = f(y)
		}
	}
	return (a + b) / 2
}
