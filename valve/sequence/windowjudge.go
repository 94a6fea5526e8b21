package sequence

import (
	"cmp"
	"slices"

	"completion.example/hydrostatics/unit"
)

// verdict is what goes wrong with a pressure: for want of more, and of less.
type verdict struct{ low, high string }

func (v *verdict) tooLow(why string)  { v.low = cmp.Or(v.low, why) }
func (v *verdict) tooHigh(why string) { v.high = cmp.Or(v.high, why) }

// further is what goes wrong because the pressure was driven too far: too high
// where it goes up, too low where it comes down.
func (t trial) further(v *verdict, why string) {
	if t.falls {
		v.tooLow(why)
	} else {
		v.tooHigh(why)
	}
}

// judge is what one world makes of a step: the same that Check looks at.
func (t trial) judge(step *Step, w *walked) (low, high string) {
	var v verdict
	t.judgeEvents(&v, step, w)
	strayed := v != verdict{} // then balance and flow follow from that
	if w.trace.stands == nil {
		return v.low, v.high
	}
	t.judgeRatings(&v, w)
	t.judgeTests(&v, step, w)
	for _, b := range step.Balance {
		if strayed {
			break
		}
		d, err := t.overbalance(w.trace.stand(b.Moment), t.byName.compartment[b.Compartment], t.byName.formation[b.Formation])
		if err == nil && d < b.Overbalance.Least {
			v.tooLow("the balance against “" + b.Formation + "” is less than planned")
		} else if err == nil && d > b.Overbalance.Greatest {
			v.tooHigh("the balance against “" + b.Formation + "” is more than planned")
		}
	}
	for i := range w.trace.stands {
		k := &w.trace.stands[i]
		t.judgeStand(&v, k)
		if !strayed && step.Produce == nil {
			judgeFlow(&v, step, k)
		}
	}
	return v.low, v.high
}

func (t trial) judgeEvents(v *verdict, step *Step, w *walked) {
	done := w.done()
	for _, name := range step.Expect {
		if slices.Contains(done, name) {
			continue
		}
		if why := "“" + name + "” may not happen"; t.down {
			v.tooHigh(why)
		} else {
			v.tooLow(why)
		}
	}
	for _, name := range done {
		if !slices.Contains(step.Expect, name) {
			t.further(v, "“"+name+"” can happen")
		}
	}
}

func (t trial) judgeRatings(v *verdict, w *walked) {
	for i, r := range t.plan.Ratings {
		burst, collapse := t.network.ratings[i].burst, t.network.ratings[i].collapse
		u := w.trace.ratings[i]
		if (burst > 0 && u.burst > burst) || (collapse > 0 && u.collapse > collapse) {
			t.further(v, "the rating “"+r.Name+"” is passed")
		}
	}
}

func (t trial) judgeTests(v *verdict, step *Step, w *walked) {
	for _, x := range step.Tests {
		d, _, _, err := t.testDifferential(w.trace.stand(x.moment()), x)
		if err != nil || x.Differential.Contains(d) {
			continue
		}
		short := (d < x.Differential.Least) == (x.Differential.Nominal >= 0)
		why := "the test of “" + x.Barrier + "” is too hard"
		if short {
			why = "the test of “" + x.Barrier + "” is short"
		}
		if short {
			v.tooLow(why)
		} else {
			v.tooHigh(why)
		}
	}
}

// judgeStand looks at string, packer and formations where a step stands still.
func (t trial) judgeStand(v *verdict, k *stand) {
	if k.load != nil {
		if k.load.governing.Usage > 1 {
			t.further(v, "the string is overloaded")
		}
		if t.plan.String.leaves(k.load) {
			t.further(v, "the seals leave their bore")
		}
	}
	if load, held, err := t.holdingLoad(k); err == nil && held && t.envelope.Margin(load).Used > 1 {
		t.further(v, "the packer is overloaded")
	}
	for i, f := range t.plan.Formations {
		if f.Fracture == 0 || t.face[i] < 0 {
			continue
		}
		if p, err := k.state.at(t.face[i], t.formationTVD[i]); err == nil && p > f.Fracture {
			v.tooHigh("the fracture pressure of “" + f.Name + "” is passed")
		}
	}
}

// judgeFlow looks at flow that the step doesn't allow.
func judgeFlow(v *verdict, step *Step, k *stand) {
	for _, f := range k.flows {
		switch {
		case slices.Contains(step.Allow, f.kind):
		case f.kind == FlowIn:
			v.tooLow("“" + f.from + "” flows in")
		case f.kind == FlowOut:
			v.tooHigh("“" + f.to + "” takes fluid")
		default:
			v.tooHigh("fluid flows from “" + f.from + "” to “" + f.to + "”")
		}
	}
}

// leaves tells whether the seals have moved out of their bore, or onto their
// shoulder. Of a string that hangs free on a pull nobody asks.
func (s *String) leaves(l *load) bool {
	return !l.free && (l.seals < -s.Up || l.seals > s.Down)
}

// moment is when a test is held against its goal.
func (t Test) moment() Moment {
	if t.Moment == "" {
		return AtPeak
	}
	return t.Moment
}

// failure is what goes wrong with a pressure in one sense.
func (t trial) failure(p unit.Pressure, kind sense) string {
	low, high := t.fails(p)
	if kind == tooHigh {
		return high
	}
	return low
}
