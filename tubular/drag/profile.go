package drag

import "completion.example/hydrostatics/unit"

// Node is the string at one depth while it moves.
type Node struct {
	MD      unit.Length          `json:"md"`
	Section int                  `json:"section"` // of the element below the node, at the lower end of the one above
	Force   unit.Force           `json:"force"`   // effective, tension positive
	Contact unit.WeightPerLength `json:"contact"` // against the wall, of the element below
	Torque  unit.Torque          `json:"torque"`  // while rotating
	Buckles bool                 `json:"buckles"` // compressed beyond the load at which the element below bends
}

// Size returns the number of nodes.
func (p *Prepared) Size() int {
	if p == nil {
		return 0
	}
	return len(p.depths)
}

// Profile returns the nodes from the surface down.
//
//	F(i) = F(i+1) + ΔF of the element between
//
// Range: any force at the end; no nodes for a nil string.
//
// Source: see HookLoad.
func (p *Prepared) Profile(m Motion, end unit.Force) []Node {
	n := p.Size()
	if n == 0 {
		return nil
	}
	nodes := make([]Node, n)
	f, sign := float64(end), m.sign()
	torque, d := 0.0, p.first(f, sign)
	nodes[n-1] = Node{MD: unit.Length(p.depths[0]), Section: p.elements[0].section, Force: end}
	nodes[n-1].Contact = unit.WeightPerLength(p.elements[0].contact(f) / p.elements[0].length)
	nodes[n-1].Buckles = -f > p.elements[0].onset
	for i := range p.elements {
		e := &p.elements[i]
		if sign == 0 {
			torque += e.μ * e.radius * e.contact(f+e.weight/2)
			f += e.weight
		} else {
			d = p.climbs[i].up(f, d, sign)
			f += d
		}
		nodes[n-2-i] = Node{
			MD: unit.Length(p.depths[i+1]), Section: e.section, Force: unit.Force(f),
			Contact: unit.WeightPerLength(e.contact(f) / e.length), Torque: unit.Torque(torque), Buckles: -f > e.onset,
		}
	}
	return nodes
}

// Loads are the hook loads of one string at one depth, without block weight.
type Loads struct {
	RunIn    unit.Force  `json:"run_in"`
	Pulled   unit.Force  `json:"pulled"`
	Rotating unit.Force  `json:"rotating"`
	Torque   unit.Torque `json:"torque"`  // while rotating
	Buckles  bool        `json:"buckles"` // somewhere while run in
}

// Drag returns what friction adds when the string is pulled.
//
//	F = pulled − rotating
//
// Range: any loads; they aren't checked.
//
// Source: definition.
func (l Loads) Drag() unit.Force { return l.Pulled - l.Rotating }

// Loads returns the hook loads of the string hanging free.
func (p *Prepared) Loads() Loads {
	l := Loads{RunIn: p.HookLoad(RunIn, 0), Pulled: p.HookLoad(Pulled, 0), Rotating: p.HookLoad(Rotating, 0), Torque: p.Torque(0)}
	for _, n := range p.Profile(RunIn, 0) {
		l.Buckles = l.Buckles || n.Buckles
	}
	return l
}
