package movement

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// check reports what is wrong with a state.
func (l *line) check(state WellProfiles) error {
	faults := fault.In(scope)
	if state.Inside == nil {
		faults.New("Inside", "is missing")
	}
	if state.Outside == nil {
		faults.New("Outside", "is missing")
	}
	// Nothing is appended where nothing is wrong: this runs for every case.
	if err := l.checkFriction("Friction", state.Friction); err != nil {
		faults.Add(err)
	}
	if err := l.checkFriction("OutsideFriction", state.OutsideFriction); err != nil {
		faults.Add(err)
	}
	switch state.Tail {
	case Open, Hanging:
		if state.Below != 0 {
			faults.New("Below", "is %v; must be 0 where the tail isn't plugged", state.Below)
		}
	case Plugged:
		if err := fault.Finite("Below", state.Below); err != nil {
			faults.Add(err)
		}
	default:
		faults.New("Tail", "is %d; must be Open, Plugged or Hanging", int(state.Tail))
	}
	return faults.Err()
}

func (l *line) checkFriction(field string, gradients []unit.Gradient) error {
	if n := len(gradients); n != 0 && n != len(l.bars) {
		return fault.New(field, "has %d gradients; must have none or one for each of %d sections", n, len(l.bars))
	}
	faults := fault.In(scope)
	for k, f := range gradients {
		if !isFinite(float64(f)) {
			faults.Add(fault.Finite(fault.Index(field, k), f))
		}
	}
	return faults.Err()
}

// lost is the pressure lost over element k.
func (l *line) lost(friction []unit.Gradient, k int) float64 {
	if len(friction) == 0 {
		return 0
	}
	return float64(friction[l.elements[k].section]) * l.elements[k].length
}

// unfit says that what was asked of a state at a depth isn't a number.
func unfit(tvd unit.Length, n *Node) error {
	return fault.NewIn(scope, "", "at a true vertical depth of %s pressure inside is %v, outside %v, temperature %v; must be finite", tvd.Rounded(6), n.Inside, n.Outside, n.Temperature)
}
