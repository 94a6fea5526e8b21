package production

import (
	"errors"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Errors that say why there is no answer. Each comes with the numbers.
var (
	ErrNoFlow       = errors.New("production: the network has no flow in this direction")
	ErrShut         = errors.New("production: every zone is shut")
	ErrOutsideTable = errors.New("production: outside the outflow table")
	ErrPosition     = errors.New("production: no such choke position")
	ErrUnresolved   = errors.New("production: the answer can't be resolved")

	errUnprepared = errors.New("production: there is no network: make it with Well.Prepare")
)

// scope stands before every fault of this package.
const scope = "production"

// Network is a well made ready for solving. It doesn't change and is safe for
// concurrent use.
type Network struct {
	well    Well
	nodes   []node
	outflow outflow
	lift    float64 // heads from the lowest zone to the topmost
}

// Prepare checks the well and makes it ready.
func (w Well) Prepare() (*Network, error) {
	if err := w.Validate(); err != nil {
		return nil, err
	}
	o, err := w.Outflow.prepare()
	if err != nil {
		return nil, err
	}
	n := &Network{well: w, outflow: o, nodes: make([]node, len(w.Zones))}
	for i, z := range w.Zones {
		last := i == len(w.Zones)-1
		next := z.TVD
		if !last {
			next = w.Zones[i+1].TVD
		}
		n.nodes[i] = newNode(z, last, next)
		n.lift += n.nodes[i].head
	}
	return n, nil
}

// Flow solves once: Prepare and Solve. Without positions every choke is in its
// last one.
func (w Well) Flow(positions ...int) (Flow, error) {
	n, err := w.Prepare()
	if err != nil {
		return Flow{}, err
	}
	if len(positions) == 0 {
		positions = n.Open()
	}
	var f Flow
	if err := n.Solve(positions, &f); err != nil {
		return Flow{}, err
	}
	return f, nil
}

// Open returns the positions with every choke in its last one.
func (n *Network) Open() []int {
	if n == nil {
		return nil
	}
	p := make([]int, len(n.nodes))
	for i := range n.nodes {
		p[i] = len(n.nodes[i].chokes) - 1
	}
	return p
}

// check reports positions that don't exist, and a network that is shut.
func (n *Network) check(positions []int) error {
	if n == nil {
		return errUnprepared
	}
	if len(positions) != len(n.nodes) {
		return fault.NewIn(scope, "positions", "has %d for %d zones; must have one for each: %w", len(positions), len(n.nodes), ErrPosition)
	}
	open := false
	for i, p := range positions {
		node := &n.nodes[i]
		if p < 0 || p >= len(node.chokes) {
			return fault.NewIn(scope, fault.Index("positions", i), "is %d; must be from 0 to %d: %w", p, len(node.chokes)-1, ErrPosition)
		}
		open = open || !node.shut(node.chokes[p])
	}
	if !open {
		return ErrShut
	}
	return nil
}

// state is one pass upwards through the network.
type state struct {
	excess, slope float64 // zero at the answer; grows with the pressure at the bottom
	top, rate     float64
}

// pass computes everything from the tubing pressure at the lowest zone, and
// leaves rates and pressures in zones where it isn't nil. target is the rate
// wanted where byRate is set.
func (n *Network) pass(p float64, positions []int, byRate bool, target float64, zones []ZoneFlow) state {
	dp, q, dq := 1.0, 0.0, 0.0
	for i := range n.nodes {
		node := &n.nodes[i]
		if k := node.chokes[positions[i]]; !node.shut(k) {
			r, slope := node.rate(p, k)
			q += r
			dq += slope * dp
			if zones != nil {
				zones[i].Rate = unit.FlowRate(r)
			}
		} else if zones != nil {
			zones[i].Rate = 0
		}
		if zones != nil {
			zones[i].Tubing = unit.Pressure(p)
			zones[i].Passing = unit.FlowRate(q)
		}
		if i < len(n.nodes)-1 {
			a := math.Abs(q)
			p -= node.head + (node.linear+node.square*a)*q
			dp -= (node.linear + 2*node.square*a) * dq
		}
	}
	if byRate {
		return state{target - q, -dq, p, q}
	}
	want, slope := n.outflow.at(q)
	return state{p - want, dp - slope*dq, p, q}
}
