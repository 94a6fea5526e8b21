package well

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Ringed is the error of two ways that are open between compartments in which something
// else stands: fluid goes round by itself.
type Ringed struct {
	A, B, Port string
	By         float64
}

func (e Ringed) Error() string {
	return fmt.Sprintf("%q and %q are joined by %q and by another open way, and between the two what stands in one weighs %s more than in the other: it goes round by itself, which isn't modelled. "+
		"Let the same fluid stand in both, or shut one of the ways before", e.A, e.B, e.Port, unit.Pressure(e.By).Rounded(4))
}

// balanced is the difference in a ring of open ports that counts as none: what counts as no
// flow elsewhere.
const balanced = 0.5 * float64(unit.PSI)

// sortPorts puts the ports of each compartment in the order of their names, which is that
// in which pressures are carried: the order of the file is nobody's order. It finds whether
// they make a ring.
func (n *Network) sortPorts() {
	first := make([]int, len(n.Compartments))
	for i := range first {
		first[i] = i
		slices.SortStableFunc(n.around[i], func(p, q int) int { return cmp.Compare(n.Ports[p].Name, n.Ports[q].Name) })
	}
	of := func(i int) int {
		for first[i] != i {
			i = first[i]
		}
		return i
	}
	for _, p := range n.Ports {
		a, b := of(p.A), of(p.B)
		n.rings = n.rings || a == b
		first[a] = b
	}
}

// Rings makes sure that columns balance wherever open ports make a ring. What is enclosed
// and not straight is left out: it is the same both ways but isn't known to be.
func (s *State) Rings() error {
	if !s.rings {
		return nil
	}
	for p := range s.Ports {
		x := &s.Ports[p]
		if !s.Open[p] {
			continue
		}
		a, err := s.At(x.A, x.AtA)
		if err != nil {
			return err
		}
		b, err := s.At(x.B, x.AtB)
		if err != nil {
			return err
		}
		d := a.Minus(b)
		if s.jumps != nil {
			d = d.Plus(s.jumps[p])
		}
		by := math.Max(math.Abs(d.F.C), math.Abs(d.F.C+d.S*s.Span))
		for _, t := range d.F.T {
			by += math.Abs(t.C)
		}
		if by > balanced {
			return Ringed{s.Compartments[x.A].Name, s.Compartments[x.B].Name, x.Name, by}
		}
	}
	return nil
}
