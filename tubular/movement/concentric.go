package movement

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Concentric is a string inside another one: hung, held and sealed in the outer
// string where that reaches, and in what stands still below or above it. Each
// moves the other: what the inner string puts on the outer one stretches it.
//
// The pressures on both are the conditions' of each. What the pressures do to a
// receptacle itself, at a change of the outer string's bore, is that change's
// shoulder and belongs to the outer string's sections. Where the pressure inside the
// outer string steps at a seal or a held place of the inner one, at a plug of the
// outer one's or at its lower end, the inner one closes the bore there: it bears the
// step on its own area, and the outer one on what is left of its bore.
//
// What a seal of the inner string takes to slide it hands on to the outer one, where it
// stands in that; what the pipe rubs along the outer one's bore it doesn't.
//
// What the inner string meets in a part of the outer one that has gone with a parted
// joint stands still for it.
type Concentric struct {
	Outer   *MadeUp `json:"outer"`
	Inner   *MadeUp `json:"inner"`
	touches []touch
}

// touch is a place where the strings meet.
type touch struct {
	kind  markKind // hungMark is the inner string's hanger
	inner int
	outer int // in the outer string's Hung
	md    unit.Length
}

// Carrying returns the assembly of an outer string with a place for everything
// that an inner one hangs on, is held in or seals in within it.
func (a Assembly) Carrying(inner Assembly) Assembly {
	end := a.Hanger
	if n := len(a.Sections); n > 0 {
		end = a.Sections[n-1].BottomMD
	}
	b := a
	b.Hung = append([]unit.Length(nil), a.Hung...)
	add := func(md unit.Length) {
		for _, x := range b.Hung {
			if x == md {
				return
			}
		}
		if md > a.Hanger && md <= end || md != md { // which MakeUp refuses
			b.Hung = append(b.Hung, md)
		}
	}
	add(inner.Hanger)
	for _, h := range inner.Holds {
		add(h.MD)
	}
	for _, s := range inner.Seals {
		add(s.MD)
	}
	return b
}

// Nest puts an inner string into an outer one that was made up Carrying it.
func Nest(outer, inner *MadeUp) (*Concentric, error) {
	if outer == nil || inner == nil {
		return nil, errNotMadeUp
	}
	c := &Concentric{Outer: outer, Inner: inner}
	at := make(map[unit.Length]int)
	for i := range outer.marks {
		if k := &outer.marks[i]; k.kind == hungMark {
			at[unit.Length(k.md)] = k.index
		}
	}
	faults := fault.In(scope)
	meet := func(kind markKind, index int, md unit.Length) {
		if md <= outer.hanger || md > outer.end {
			return
		}
		i, ok := at[md]
		if !ok {
			faults.New("Outer.Hung", "has no place at %v, where the inner string meets it; must be of a string made up Carrying it", md)
			return
		}
		c.touches = append(c.touches, touch{kind, index, i, md})
	}
	meet(hungMark, 0, inner.hanger)
	for i := range inner.holds {
		meet(holdMark, i, inner.holds[i].MD)
	}
	for i := range inner.seals {
		meet(sealMark, i, inner.seals[i].MD)
	}
	return c, faults.Err()
}

// check reports strings that Nest didn't put into each other.
func (c *Concentric) check() error {
	if c == nil || c.Outer == nil || c.Inner == nil {
		return errors.New("movement: the strings are not put into each other: do so with Nest")
	}
	return nil
}

// Nested is how both strings stand.
type Nested struct {
	Outer Standing      `json:"outer"`
	Inner Standing      `json:"inner"`
	moved []unit.Length // of the outer string at each touch when the inner one landed
}

// NestedLoading is both strings under load.
type NestedLoading struct {
	Outer Loading `json:"outer"`
	Inner Loading `json:"inner"`
	// Puts is what the inner string puts on the outer one at each place where they
	// meet, down positive: hanger, held places, seals in that order.
	Puts []unit.Force `json:"puts"`
}

// bears is what hangs on the outer string, with what the inner one puts on it.
func (c *Concentric) bears(other []unit.Force, puts []float64) []unit.Force {
	hung := make([]unit.Force, c.Outer.hung)
	copy(hung, other)
	for i, t := range c.touches {
		hung[t.outer] += unit.Force(puts[i])
	}
	return hung
}

// around is how far the outer string has moved since the inner one landed, at the
// places where they meet.
func (c *Concentric) around(n Nested, outer *Loading) func(unit.Length) unit.Length {
	return func(md unit.Length) unit.Length {
		for i, t := range c.touches {
			if t.md == md {
				return outer.HungMoved[t.outer] - n.moved[i]
			}
		}
		return 0
	}
}

// Load computes both strings. What they put on each other is found by Newton's
// steps, which is next to one step, since the strings are next to straight springs.
//
//	J·Δ = −(movement of one string − that of the other)
//
// Errors: those of MadeUp.Load, for either string; no balance found, where a string
// snaps to and fro between two ways to lie.
//
// Source: Newton.
func (c *Concentric) Load(n Nested, oc, ic Conditions) (NestedLoading, error) {
	if err := c.check(); err != nil {
		return NestedLoading{}, err
	}
	if len(n.moved) != len(c.touches) {
		return NestedLoading{}, errNotLanded
	}
	k := len(c.touches)
	l := NestedLoading{Puts: make([]unit.Force, k)}
	puts, found := make([]float64, k), make([]float64, k)
	if err := c.answer(&l, n, oc, ic, puts, found); err != nil {
		return l, err
	}
	// What they put on each other may be next to nothing: it is known no better than the
	// forces in them.
	scale := max(1, math.Abs(float64(l.Outer.HangerLoad)), math.Abs(float64(l.Inner.HangerLoad)))
	for range 30 {
		worst := 0.0
		for i := range puts {
			scale = max(scale, math.Abs(found[i]))
			worst = max(worst, math.Abs(found[i]-puts[i]))
		}
		if worst <= 1e-11*scale {
			for i := range puts {
				l.Puts[i] = unit.Force(puts[i])
			}
			return l, nil
		}
		if err := c.step(n, oc, ic, puts, found, 1e-4*scale); err != nil {
			return l, err
		}
		if err := c.answer(&l, n, oc, ic, puts, found); err != nil {
			return l, err
		}
	}
	return l, errors.New("movement: the two strings find no balance: one of them snaps to and fro between two ways to lie")
}

// answer is what the inner string puts on the outer one that bears puts.
func (c *Concentric) answer(l *NestedLoading, n Nested, oc, ic Conditions, puts, found []float64) error {
	oc.Hung = c.bears(oc.Hung, puts)
	if err := c.Outer.LoadInto(&l.Outer, n.Outer, oc); err != nil {
		return fmt.Errorf("outer string: %w", err)
	}
	ic.Around = c.around(n, &l.Outer)
	if err := c.Inner.LoadInto(&l.Inner, n.Inner, ic); err != nil {
		return fmt.Errorf("inner string: %w", err)
	}
	for i, t := range c.touches {
		switch t.kind {
		case hungMark:
			found[i] = 0
			if ic.Top == AtHanger {
				found[i] = float64(l.Inner.HangerLoad)
			}
		case holdMark:
			found[i] = -float64(l.Inner.Holds[t.inner].Load) + c.closes(l, t)
		case sealMark:
			found[i] = -float64(l.Inner.Seals[t.inner].Load) + c.closes(l, t) - c.Inner.rubbed(&l.Inner, t.inner)
		case jointMark, plugMark:
		}
	}
	return nil
}

// closes is what an outer string that is loaded as if a plug closed all of its bore at
// a touch doesn't bear there, as the inner one does: (pb - pa)·Ap, down positive.
func (c *Concentric) closes(l *NestedLoading, t touch) float64 {
	if l.Outer.Lost > 0 && t.md >= l.Outer.Lost {
		return 0
	}
	steps := t.md == c.Outer.end
	for i := range c.Outer.marks {
		steps = steps || c.Outer.marks[i].kind == plugMark && c.Outer.marks[i].md == float64(t.md)
	}
	if !steps {
		return 0
	}
	nodes := l.Inner.Nodes
	for i := range c.Inner.marks {
		if k := &c.Inner.marks[i]; k.kind == t.kind && k.index == t.inner {
			return float64(nodes[k.element+1].Outside-nodes[k.element].Outside) * k.area
		}
	}
	return 0
}

// rubbed is the friction with which a seal pulls at the string as it slides, up positive.
func (m *MadeUp) rubbed(l *Loading, seal int) float64 {
	c, end := &l.conditions, l.segments[0].lower
	if c.Top != AtHanger && end < len(m.marks) && float64(m.seals[seal].MD) >= m.marks[end].md {
		return 0
	}
	return float64(m.sealFriction(c, seal)) // nothing where it doesn't slide
}

// step takes one of Newton's steps in puts, with differences of a size.
func (c *Concentric) step(n Nested, oc, ic Conditions, puts, found []float64, size float64) error {
	k := len(puts)
	slope, rest := mat.NewDense(k, k, nil), mat.NewVecDense(k, nil)
	var l NestedLoading
	other := make([]float64, k)
	for j := range k {
		rest.SetVec(j, found[j]-puts[j])
		puts[j] += size
		err := c.answer(&l, n, oc, ic, puts, other)
		puts[j] -= size
		if err != nil {
			return err
		}
		for i := range k {
			d := (found[i] - other[i]) / size
			if i == j {
				d++
			}
			slope.Set(i, j, d)
		}
	}
	var by mat.VecDense
	if err := by.SolveVec(slope, rest); err != nil {
		return fmt.Errorf("movement: balance of two strings: %w", err)
	}
	for j := range k {
		puts[j] += by.AtVec(j)
	}
	return nil
}
