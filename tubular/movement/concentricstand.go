package movement

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// Land returns both strings with the inner one landed in the outer one, which
// stands as it does already. Hung of the outer conditions is what else hangs on it;
// Around of the inner ones is not used.
func (c *Concentric) Land(outer Standing, oc, ic Conditions) (Nested, error) {
	if err := c.check(); err != nil {
		return Nested{}, err
	}
	n := Nested{Outer: outer, moved: make([]unit.Length, len(c.touches))}
	ic.Around = nil
	s, err := c.Inner.Land(ic)
	if err != nil {
		return Nested{}, fmt.Errorf("inner string: %w", err)
	}
	n.Inner = s
	l, err := c.Load(n, oc, ic)
	if err != nil {
		return Nested{}, err
	}
	for i, t := range c.touches {
		n.moved[i] = l.Outer.HungMoved[t.outer]
	}
	return n, nil
}

// TakeHold returns both strings with the inner one held at a place as they stand.
func (c *Concentric) TakeHold(n Nested, place int, oc, ic Conditions) (Nested, error) {
	l, err := c.Load(n, oc, ic)
	if err != nil {
		return Nested{}, err
	}
	ic.Around = c.around(n, &l.Outer)
	next := n
	next.Inner, err = c.Inner.TakeHold(n.Inner, place, ic)
	return next, err
}

// TakeHoldOuter returns both strings with the outer one held at a place as they stand.
func (c *Concentric) TakeHoldOuter(n Nested, place int, oc, ic Conditions) (Nested, error) {
	l, err := c.Load(n, oc, ic)
	if err != nil {
		return Nested{}, err
	}
	puts := make([]float64, len(l.Puts))
	for i, f := range l.Puts {
		puts[i] = float64(f)
	}
	oc.Hung = c.bears(oc.Hung, puts)
	next := n
	next.Outer, err = c.Outer.TakeHold(n.Outer, place, oc)
	return next, err
}
