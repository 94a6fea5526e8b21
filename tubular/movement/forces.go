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

func (l *Landed) checkFriction(field string, gradients []unit.Gradient) error {
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
func (l *Landed) lost(friction []unit.Gradient, k int) float64 {
	if len(friction) == 0 {
		return 0
	}
	return float64(friction[l.points[k+1].section]) * l.elements[k].length
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
		*n = Node{MD: unit.Length(p.md), TVD: tvd, Section: p.section}
		n.Inside, n.Outside = state.Inside(tvd)-unit.Pressure(lostIn), state.Outside(tvd)-unit.Pressure(lostOut)
		bad := !isFinite(float64(n.Inside)) || !isFinite(float64(n.Outside))
		if state.Temperature != nil {
			n.Temperature = state.Temperature(tvd)
			bad = bad || !isFinite(n.Temperature.Kelvin())
		}
		if bad {
			return fmt.Errorf("at a true vertical depth of %s pressure inside is %v, outside %v, temperature %v; permitted any finite values",
				tvd.Rounded(6), n.Inside, n.Outside, n.Temperature)
		}
	}
	for i := range nodes {
		ρi, ρo := l.densities(state, nodes, i)
		nodes[i].Weight = unit.WeightPerLength(l.bars[nodes[i].Section].effectiveWeight(ρi, ρo))
	}
	return nil
}

// densities are the fluids' at node i, from the slope of the pressures. They are
// wanted where the hole is inclined; the axial force comes from the pressures
// themselves. Where the slopes to both neighbours agree they are good; where
// not, as at a change of fluid or a seal, or where there is none, as in a level
// hole, the state is asked again close by.
func (l *Landed) densities(state State, nodes []Node, i int) (inside, outside float64) {
	in1, out1, ok1 := l.slope(state, nodes, i-1)
	in2, out2, ok2 := l.slope(state, nodes, i)
	alike := func(a, b float64) bool { return math.Abs(a-b) <= 0.01*max(math.Abs(a), math.Abs(b)) }
	if ok1 && ok2 && alike(in1, in2) && alike(out1, out2) {
		return (in1 + in2) / 2, (out1 + out2) / 2
	}
	return density(state.Inside, nodes[i].TVD), density(state.Outside, nodes[i].TVD)
}

// slope is the densities over element k; false where there is no such element,
// or next to no depth in it.
func (l *Landed) slope(state State, nodes []Node, k int) (inside, outside float64, ok bool) {
	if k < 0 || k >= len(l.elements) {
		return 0, 0, false
	}
	e := &l.elements[k]
	if math.Abs(e.drop) < leastDrop {
		return 0, 0, false
	}
	a, b := &nodes[k], &nodes[k+1]
	return (float64(b.Inside-a.Inside) + l.lost(state.Friction, k)) / (gravity * e.drop),
		(float64(b.Outside-a.Outside) + l.lost(state.OutsideFriction, k)) / (gravity * e.drop), true
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
	c.totals, c.EndForce = totals{}, unit.Force(piston)
	bottom.True = unit.Force(piston)
	for i := last - 1; i >= 0; i-- {
		a, b, e := &nodes[i], &nodes[i+1], &l.elements[i]
		bar := &l.bars[a.Section]
		if a.Section != b.Section {
			lower := &l.bars[b.Section]
			piston += float64(a.Inside)*(bar.ai-lower.ai) - float64(a.Outside)*(bar.ao-lower.ao)
			a.True = unit.Force(piston + drag + weight)
			continue
		}
		ea, h := bar.e*bar.as, e.length
		// Of the annulus' loss the pipe's wall bears δ*(Ah - Ao)*Do/(Dh + Do).
		grown := l.lost(state.Friction, i)*bar.ai + l.lost(state.OutsideFriction, i)*math.Pi/2*bar.r*bar.od
		c.totals.piston += piston * h / ea
		c.totals.friction += (drag + grown/2) * h / ea
		c.totals.ballooning -= bar.nu / ea * h * (bar.ai*float64(a.Inside+b.Inside) - bar.ao*float64(a.Outside+b.Outside))
		c.totals.thermal += bar.alpha * h * (a.Temperature.Kelvin() + b.Temperature.Kelvin()) / 2
		drag += grown
		weight += bar.ws * e.drop
		a.True = unit.Force(piston + drag + weight)
	}
	for i := range nodes {
		n, bar := &nodes[i], &l.bars[nodes[i].Section]
		n.Effective = unit.Force(float64(n.True) - float64(n.Inside)*bar.ai + float64(n.Outside)*bar.ao)
	}
}
