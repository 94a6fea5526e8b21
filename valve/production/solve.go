package production

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// Solve finds the flow for choke positions, one index per zone, and puts it
// into f, whose slices it uses again. It allocates nothing once f has them.
// Errors: ErrNoFlow where the zones can't give what is asked, or where tubing
// to surface asks more than they hold; ErrOutsideTable; ErrShut; ErrPosition;
// ErrUnresolved where friction between zones dwarfs everything else so far that
// float64 can't hold the answer. After an error f is not to be used.
//
//	Σ qi(p) = outflow(p), with the drops between the zones
//
// Source: continuity.
func (n *Network) Solve(positions []int, f *Flow) error {
	if err := n.check(positions); err != nil {
		return err
	}
	if f == nil {
		return errors.New("production: there is no Flow to put the answer in")
	}
	if cap(f.Zones) < len(n.nodes) {
		f.Zones = make([]ZoneFlow, len(n.nodes))
	}
	if cap(f.cells) < len(n.nodes) {
		f.cells = make([]cell, len(n.nodes))
	}
	f.Zones, f.cells = f.Zones[:len(n.nodes)], f.cells[:len(n.nodes)]
	if n.outflow.kind == fixedRate {
		return n.byRate(positions, n.outflow.rate, f)
	}
	start := n.outflow.pressure + n.lift
	p, s, ok := n.newton(start, positions, false, 0, f)
	if ok {
		f.settle()
	} else {
		var err error
		if p, s, err = n.guarded(start, positions, f); err != nil {
			return err
		}
	}
	if err := n.refuse(s, positions); err != nil {
		return err
	}
	return n.report(p, s, positions, f)
}

// guarded solves for a pressure at the outflow by search.
func (n *Network) guarded(start float64, positions []int, f *Flow) (float64, state, error) {
	s := n.pass(start, positions, false, 0, f.Zones)
	// The excess grows at least as fast as the pressure at the bottom, so that
	// one pass brackets the answer.
	lo, hi := start, start
	if s.excess > 0 {
		lo -= s.excess
	} else {
		hi -= s.excess
	}
	return n.search(start, s, lo, hi, positions, false, 0, f)
}

// search is Newton's method inside a bracket that closes: a step that leaves
// it, or gains less than half of the one before, is replaced by halving. It
// ends for any network, and at the answer where inflow falls and losses grow.
func (n *Network) search(p float64, s state, lo, hi float64, positions []int, byRate bool, target float64, f *Flow) (float64, state, error) {
	if !finite(hi - lo) {
		return 0, s, fmt.Errorf("%w: pressures in the network overflow", ErrUnresolved)
	}
	f.Passes = 1
	last := math.Inf(1)
	for range maxSteps {
		if s.excess == 0 {
			return p, s, nil
		}
		if s.excess > 0 {
			hi = p
		} else {
			lo = p
		}
		next := p - s.excess/s.slope
		step := math.Abs(next - p)
		if step <= resolution*math.Abs(p) || step <= rounding*math.Abs(p) && step >= last/2 || hi <= math.Nextafter(lo, hi) {
			return p, s, nil
		}
		if !(next >= lo && next <= hi) || step > last/2 {
			next = lo + (hi-lo)/2
		}
		last = math.Abs(next - p)
		p = next
		s = n.pass(p, positions, byRate, target, f.Zones)
		f.Passes++
		if math.IsNaN(s.excess) {
			break
		}
	}
	return 0, s, fmt.Errorf("%w: after %d passes %.3g is left over", ErrUnresolved, f.Passes, s.excess)
}

// byRate solves for a rate to surface. Above the highest static pressure every
// zone takes, below the lowest every zone gives: the answer for no flow lies in
// between, and for production below it, down to where the topmost zone's tubing
// has no pressure left.
func (n *Network) byRate(positions []int, target float64, f *Flow) error {
	lo, hi := n.statics(positions)
	if p, s, ok := n.newton(lo+(hi-lo)/2, positions, true, target, f); ok && s.top >= 0 {
		f.settle()
		return n.report(p, s, positions, f)
	}
	at := func(p float64) state { return n.pass(p, positions, true, target, f.Zones) }
	if target > 0 {
		// With no zone giving, heads alone part the zones; with flow it is less.
		lo = min(lo, n.lift)
		if s := at(lo); s.excess > 0 {
			return fmt.Errorf("%w: %v is wanted; with the tubing at the topmost zone down at %v the zones give %v", ErrNoFlow,
				unit.FlowRate(target).Rounded(5), unit.Pressure(s.top).Rounded(5), unit.FlowRate(s.rate).Rounded(5))
		}
	}
	if target < 0 {
		for range 60 {
			if at(hi).excess >= 0 {
				break
			}
			hi += hi - lo + float64(unit.Atmosphere)
		}
	}
	p := lo + (hi-lo)/2
	s := at(p)
	p, s, err := n.search(p, s, lo, hi, positions, true, target, f)
	if err != nil {
		return err
	}
	if s.top < -float64(unit.Atmosphere) {
		return fmt.Errorf("%w: %v would take %v in the tubing at the topmost zone, which is below vacuum", ErrNoFlow,
			unit.FlowRate(target).Rounded(5), unit.Pressure(s.top).Rounded(5))
	}
	return n.report(p, s, positions, f)
}

// statics returns the lowest and highest static pressure of the open zones,
// told at the lowest zone.
func (n *Network) statics(positions []int) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	head := 0.0
	for i := range n.nodes {
		node := &n.nodes[i]
		if !node.shut(node.chokes[positions[i]]) {
			lo, hi = min(lo, node.static+head), max(hi, node.static+head)
		}
		head += node.head
	}
	return lo, hi
}

// refuse says why a solution of the equations is not one of the well: tubing to
// surface gives nothing back, and a table ends.
func (n *Network) refuse(s state, positions []int) error {
	const slack = 1e-9
	switch n.outflow.kind {
	case tubing:
		if s.rate < -slack*math.Abs(n.scale(positions)) {
			return n.noFlow(positions, n.outflow.pressure)
		}
	case tabled:
		t := n.outflow.table
		if s.rate > t.last*(1+slack) {
			return fmt.Errorf("%w: the zones give more than its greatest rate of %v", ErrOutsideTable, unit.FlowRate(t.last).Rounded(5))
		}
		if s.rate < t.first-slack*t.last {
			return n.unstable(positions)
		}
	case fixedPressure, fixedRate:
	}
	return nil
}

// noFlow compares what the zones hold shut in with what is asked for.
func (n *Network) noFlow(positions []int, asked float64) error {
	var f Flow
	f.Zones, f.cells = make([]ZoneFlow, len(n.nodes)), make([]cell, len(n.nodes))
	if err := n.byRate(positions, 0, &f); err != nil {
		return fmt.Errorf("%w: the outflow asks for %v at the topmost zone", ErrNoFlow, unit.Pressure(asked).Rounded(5))
	}
	return fmt.Errorf("%w: without flow the zones hold %v at the topmost zone; the outflow asks for %v or more", ErrNoFlow,
		f.Pressure.Rounded(5), unit.Pressure(asked).Rounded(5))
}

// unstable compares what the zones give at the table's least pressure with the
// rate that it belongs to.
func (n *Network) unstable(positions []int) error {
	t := n.outflow.table
	at := *n
	at.outflow = outflow{kind: fixedPressure, pressure: t.firstP}
	var f Flow
	if err := at.Solve(positions, &f); err != nil {
		return err
	}
	return fmt.Errorf("%w: at %v, the least that the table asks for, the zones give %v; its stable branch begins at %v", ErrNoFlow,
		unit.Pressure(t.firstP).Rounded(5), f.Rate.Rounded(5), unit.FlowRate(t.first).Rounded(5))
}

// scale is the rate that the zones give each other or surface, for judging
// whether a rate is none.
func (n *Network) scale(positions []int) float64 {
	sum := 0.0
	p := n.outflow.pressure + n.lift
	for i := range n.nodes {
		node := &n.nodes[i]
		if k := node.chokes[positions[i]]; !node.shut(k) {
			q, _ := node.rate(p, k)
			sum += math.Abs(q)
		}
		p -= node.head
	}
	return sum
}

// report checks the answer and fills in what follows from it.
func (n *Network) report(p float64, s state, positions []int, f *Flow) error {
	if n.outflow.kind == fixedRate && n.outflow.rate == 0 {
		s.rate = 0 // what the zones leave over is rounding, and no flow
	}
	f.Bottom, f.Pressure, f.Rate = unit.Pressure(p), unit.Pressure(s.top), unit.FlowRate(s.rate)
	if !finite(s.top) || !finite(s.rate) {
		return fmt.Errorf("%w: pressures in the network overflow", ErrUnresolved)
	}
	// What is left over must be rounding: in pressure, or in the rates that it moves.
	left := math.Abs(s.excess)
	if n.outflow.kind != fixedRate {
		if left > 1e-9*(math.Abs(p)+math.Abs(s.top)+float64(unit.Atmosphere)) {
			return fmt.Errorf("%w: %v is left over", ErrUnresolved, unit.Pressure(s.excess).Rounded(4))
		}
	}
	f.Crossflow = 0
	for i := range n.nodes {
		z := &f.Zones[i]
		node := &n.nodes[i]
		k := node.chokes[positions[i]]
		z.Position, z.Drop, z.Shut = positions[i], 0, node.shut(k)
		switch {
		case z.Shut:
			z.Drop = unit.Pressure(node.static) - z.Tubing
		case k != 0:
			z.Drop = unit.Pressure(node.drop(float64(z.Tubing), float64(z.Rate), k))
		}
		z.Sandface = z.Tubing + z.Drop
		if z.Takes = z.Rate < 0; z.Takes {
			f.Crossflow -= z.Rate
		}
	}
	n.water(f)
	return nil
}
