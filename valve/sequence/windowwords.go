package sequence

import (
	"fmt"
	"strconv"
	"strings"

	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/proof"
)

// clash says what fails where, when nothing is left.
func (k *checker) clash(w *Window, bad []proof.Bad) []string {
	axial := w.Planned.Axial()
	type span struct{ least, greatest float64 }
	spans := map[string]span{}
	var order []string
	for _, b := range bad {
		why := k.reason(w, b)
		s, ok := spans[why]
		if !ok {
			order = append(order, why)
			s = span{b.Least, b.Greatest}
		}
		spans[why] = span{min(s.least, b.Least), max(s.greatest, b.Greatest)}
		// Where another limit stands in the way, it wasn't looked how far a pull falls short.
		if m := b.Margin; axial && m != nil && m.Kind == judge.Omission && m.Step == w.held.Step && k.out.Judge.SensedBy(m.Step, m.Index).HasReach {
			spans[why] = span{spans[why].least, max(spans[why].greatest, float64(k.sure(m.Step, m.Index)))}
		}
	}
	var all []string
	for _, why := range order {
		s := spans[why]
		all = append(all, fmt.Sprintf("from %s to %s %s", level(axial, s.least).Rounded(digits), level(axial, s.greatest).Rounded(digits), why))
	}
	if len(all) > 4 {
		all = all[:4]
	}
	return all
}

// reason says in a few words which limit makes an edge, and in which step if it is
// a later one.
func (k *checker) reason(w *Window, b proof.Bad) string {
	m, words := b.Margin, "it can't be walked"
	if m != nil {
		words = k.edge(m)
		if m.Step != w.held.Step {
			words += " in step " + strconv.Itoa(m.Step+1)
		}
	}
	switch {
	case !b.Left:
		return words
	case m == nil:
		return "it isn't decided"
	}
	return "it isn't decided whether " + words
}

// edge names a limit that makes an edge.
func (k *checker) edge(m *judge.Margin) string {
	name := k.nameOf(m)
	switch m.Kind {
	case judge.Event:
		return "“" + name + "” can happen"
	case judge.Omission:
		return "“" + name + "” may not happen"
	case judge.Inside, judge.Outside:
		return "the rating “" + name + "” is passed"
	case judge.ByHand:
		return "“" + name + "” can't be moved by hand"
	case judge.Fracture:
		return "the fracture pressure of “" + name + "” is passed"
	case judge.Inflow:
		return "fluid flows in by “" + name + "”"
	case judge.Loss:
		return "fluid is lost by “" + name + "”"
	case judge.Circulation:
		return "fluid circulates by “" + name + "”"
	case judge.Vacuum:
		return "the column of “" + name + "” falls"
	case judge.Barriers:
		return "too few barriers stand before “" + name + "”"
	case judge.TestLow:
		return "the test of “" + k.plan.Steps[m.Step].Tests[m.Index].Barrier + "” is short"
	case judge.Held:
		return "the test of “" + k.plan.Steps[m.Step].Tests[m.Index].Barrier + "” loses too much by its temperature"
	case judge.TestHigh:
		return "the test of “" + k.plan.Steps[m.Step].Tests[m.Index].Barrier + "” is too hard"
	case judge.BalanceLow:
		return "the balance against “" + k.plan.Steps[m.Step].Balance[m.Index].Formation + "” is less than planned"
	case judge.BalanceHigh:
		return "the balance against “" + k.plan.Steps[m.Step].Balance[m.Index].Formation + "” is more than planned"
	case judge.String:
		own, index := k.plan.whose(m.Index)
		return "the " + own.title + " passes its " + limitNames[index] + " limit"
	case judge.SealUp, judge.SealDown:
		own, index := k.plan.whose(m.Index)
		return "“" + own.seals()[index].name(index) + "” leaves its bore"
	case judge.Holding:
		return "the packer is overloaded"
	case judge.Lift:
		return "the hanger is lifted"
	case judge.Rig:
		_, index := k.plan.whose(m.Index)
		return "the " + lifts[index] + "'s rating is passed"
	case judge.PullFree:
		return "the string comes up"
	}
	return "the zones don't give what is planned"
}

// edgeDigits show an edge that is rounded to half a psi as it is.
const edgeDigits = 6

// Words writes a window for people.
func (w *Window) Words() string {
	if w.Awaits > 0 {
		return w.Clash[0]
	}
	if !w.Open() {
		return "none: " + strings.Join(w.Clash, "; ")
	}
	var parts []string
	for _, x := range w.Intervals {
		switch {
		case x.BledOff():
			parts = append(parts, x.Least.Rounded(edgeDigits)+" (bled off, which needs no gauge)")
		case x.Least == x.Greatest:
			parts = append(parts, x.Least.Rounded(edgeDigits)+"; what lies beside it isn't known to do")
		case x.Below == "" && x.Above == "":
			parts = append(parts, "any")
		case x.Above == "":
			parts = append(parts, "at least "+x.Least.Rounded(edgeDigits))
		case x.Below == "":
			parts = append(parts, "at most "+x.Greatest.Rounded(edgeDigits))
		default:
			parts = append(parts, x.Least.Rounded(edgeDigits)+" to "+x.Greatest.Rounded(edgeDigits))
		}
	}
	return strings.Join(parts, ", or ")
}

// name is what a window is of.
func (w *Window) name() string {
	if w.Compartment == "" {
		return fmt.Sprintf("pull %d", w.Ramp)
	}
	return strings.Join(append([]string{w.Compartment}, w.Together...), " and ")
}

// windowCure says what pressure or pull mends a step, or that none does.
func (k *checker) windowCure(m *judge.Margin) string {
	all := k.programme.Steps[m.Step].Windows
	best := -1
	for n := range all {
		if all[n].Inside {
			continue
		}
		if best < 0 || all[n].Open() && !all[best].Open() || all[n].Open() == all[best].Open() && all[n].Planned.si > all[best].Planned.si {
			best = n
		}
	}
	if best < 0 {
		return ""
	}
	w := &all[best]
	if !w.Open() {
		mend := "other fluids, other pins or another order of steps is wanted"
		switch {
		case len(w.Opens) > 0:
			mend = "it opens with " + w.adviceWords()
		case w.Advised:
			mend = "no single change of pins, density, pressure or order of steps was found that opens it"
		}
		return fmt.Sprintf("no surface pressure on %q does it as planned: %s. In the way stand: %s", w.name(), mend, strings.Join(w.Clash, "; "))
	}
	text := fmt.Sprintf("%s on %q", w.Words(), w.name())
	if len(k.plan.Steps[m.Step].Ramps) > 1 && !w.Planned.Axial() {
		text += fmt.Sprintf(" in ramp %d, in place of %s", w.Ramp, w.Planned.Rounded(digits))
	}
	return text
}
