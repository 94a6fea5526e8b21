package movement

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// forces fills in the nodes' pressures and axial forces with nothing
// restrained, and the lengths that they add to the string.
func (l *Landed) forces(state State, c *Case) error {
	if err := l.check(state); err != nil {
		return err
	}
	if cap(c.Nodes) < len(l.points) {
		c.Nodes = make([]Node, len(l.points))
	}
	c.Nodes = c.Nodes[:len(l.points)]
	if err := l.pressures(state, c.Nodes); err != nil {
		return err
	}
	l.axial(state, c)
	return nil
}

func (l *Landed) check(state State) error {
	var faults []error
	if state.Inside == nil {
		faults = append(faults, errors.New("pressure Inside is missing"))
	}
	if state.Outside == nil {
		faults = append(faults, errors.New("pressure Outside is missing"))
	}
	// Nothing is appended where nothing is wrong: this runs for every case.
	if err := l.checkFriction("Friction", state.Friction); err != nil {
		faults = append(faults, err)
	}
	if err := l.checkFriction("OutsideFriction", state.OutsideFriction); err != nil {
		faults = append(faults, err)
	}
	switch state.Tail {
	case Open, Hanging:
		if state.Below != 0 {
			faults = append(faults, fmt.Errorf("pressure Below = %s, permitted only where the tail is plugged", state.Below.Rounded(6)))
		}
	case Plugged:
		if err := finite("Below", state.Below); err != nil {
			faults = append(faults, err)
		}
	default:
		faults = append(faults, fmt.Errorf("Tail = %d, permitted Open, Plugged, Hanging", int(state.Tail)))
	}
	return errors.Join(faults...)
}

func (l *line) checkFriction(field string, gradients []unit.Gradient) error {
	if n := len(gradients); n != 0 && n != len(l.bars) {
		return fmt.Errorf("gradients of %s number %d, permitted none or one for each of %d sections", field, n, len(l.bars))
	}
	var faults []error
	for k, f := range gradients {
		if !isFinite(float64(f)) {
			faults = append(faults, finite(fmt.Sprintf("%s[%d]", field, k), f))
		}
	}
	return errors.Join(faults...)
}

// lost is the pressure lost over element k.
func (l *line) lost(friction []unit.Gradient, k int) float64 {
	if len(friction) == 0 {
		return 0
	}
	return float64(friction[l.elements[k].section]) * l.elements[k].length
}

// pressures asks the state at every node.
func (l *Landed) pressures(state State, nodes []Node) error {
	lostIn, lostOut := 0.0, 0.0
	for i := range l.points {
		p := &l.points[i]
		if i > 0 {
			lostIn += l.lost(state.Friction, i-1)
			lostOut += l.lost(state.OutsideFriction, i-1)
		}
		tvd := unit.Length(p.tvd)
		n := &nodes[i]
		n.MD, n.TVD, n.Section = unit.Length(p.md), tvd, p.section
		n.Inside, n.Outside = state.Inside(tvd)-unit.Pressure(lostIn), state.Outside(tvd)-unit.Pressure(lostOut)
		n.Temperature = unit.Temperature{}
		if state.Temperature != nil {
			n.Temperature = state.Temperature(tvd)
		}
		if !isFinite(float64(n.Inside)) || !isFinite(float64(n.Outside)) || !isFinite(n.Temperature.Kelvin()) {
			return fmt.Errorf("at a true vertical depth of %s pressure inside is %v, outside %v, temperature %v; permitted any finite values",
				tvd.Rounded(6), n.Inside, n.Outside, n.Temperature)
		}
	}
	return nil
}

// densities are the fluids' over an element, from the slope of the pressures;
// ok says that there is enough depth in it.
type densities struct {
	inside, outside float64
	ok              bool
}

// weigh fills in the effective weight, for which it wants the densities above
// and below a node. It matters where the hole is inclined; the axial force comes
// from the pressures themselves. Where the slopes to both neighbours agree they
// are good; where not, as at a change of fluid or a seal, or where there is none,
// as in a level hole, the state is asked again close by.
func (l *Landed) weigh(state State, n *Node, above, below densities) {
	in, out := (above.inside+below.inside)/2, (above.outside+below.outside)/2
	if !(above.ok && below.ok && alike(above.inside, below.inside) && alike(above.outside, below.outside)) {
		in, out = density(state.Inside, n.TVD), density(state.Outside, n.TVD)
	}
	n.Weight = unit.WeightPerLength(l.bars[n.Section].effectiveWeight(in, out))
}

func alike(a, b float64) bool {
	d := math.Abs(a - b)
	return d <= 0.01*math.Abs(a) || d <= 0.01*math.Abs(b)
}

// slope is the densities over element k; not ok where there is next to no depth
// in it.
func (l *Landed) slope(state State, nodes []Node, k int) densities {
	if l.elements[k].perDrop == 0 {
		return densities{}
	}
	a, b, per := &nodes[k], &nodes[k+1], l.elements[k].perDrop
	return densities{
		inside:  (float64(b.Inside-a.Inside) + l.lost(state.Friction, k)) * per,
		outside: (float64(b.Outside-a.Outside) + l.lost(state.OutsideFriction, k)) * per,
		ok:      true,
	}
}

// leastDrop is the vertical distance, in m, that a slope is taken over at least.
const leastDrop = 1.0

// density is the slope of a pressure over the metre above a depth.
func density(pressure func(unit.Length) unit.Pressure, tvd unit.Length) float64 {
	low, high := tvd-unit.Metre, tvd
	if low < 0 {
		low, high = tvd, tvd+unit.Metre
	}
	ρ := float64(pressure(high)-pressure(low)) / (gravity * float64(high-low))
	if !isFinite(ρ) {
		return 0
	}
	return ρ
}

// axial marches up from the lower end. In a section the true force grows by
// the pipe's own weight and the drag of flow; at a shoulder it steps.
func (l *Landed) axial(state State, c *Case) {
	nodes := c.Nodes
	last := len(nodes) - 1
	bottom := &nodes[last]
	s := l.sections[bottom.Section]
	end := End{Bore: l.seals.Bore, OD: s.Pipe.OD, ID: s.Pipe.ID, Inside: bottom.Inside, Outside: bottom.Outside}
	switch state.Tail {
	case Open:
		end.Below = bottom.Inside
	case Plugged:
		end.Below = state.Below
	case Hanging:
		end.Below = bottom.Outside
	}
	piston, drag, weight := float64(end.Force()), 0.0, 0.0
	c.EndForce, bottom.True = unit.Force(piston), unit.Force(piston)
	bottom.Effective = l.bars[bottom.Section].effective(bottom)
	var sum totals
	var below densities
	for i := last - 1; i >= 0; i-- {
		a, b, e := &nodes[i], &nodes[i+1], &l.elements[i]
		bar := &l.bars[a.Section]
		above := l.slope(state, nodes, i)
		l.weigh(state, b, above, below)
		below = above
		if a.Section != b.Section {
			lower := &l.bars[b.Section]
			piston += float64(a.Inside)*(bar.ai-lower.ai) - float64(a.Outside)*(bar.ao-lower.ao)
			a.True = unit.Force(piston + drag + weight)
			a.Effective = bar.effective(a)
			continue
		}
		give := e.length * bar.perEA
		// Of the annulus' loss the pipe's wall bears δ*(Ah - Ao)*Do/(Dh + Do).
		grown := l.lost(state.Friction, i)*bar.ai + l.lost(state.OutsideFriction, i)*bar.outerDrag
		sum.piston += piston * give
		sum.friction += (drag + grown/2) * give
		sum.ballooning -= bar.nu * give * (bar.ai*float64(a.Inside+b.Inside) - bar.ao*float64(a.Outside+b.Outside))
		sum.thermal += bar.alpha * e.length * (a.Temperature.Kelvin() + b.Temperature.Kelvin()) / 2
		drag += grown
		weight += bar.ws * e.drop
		a.True = unit.Force(piston + drag + weight)
		a.Effective = bar.effective(a)
	}
	l.weigh(state, &nodes[0], densities{}, below)
	c.totals = sum
}
