package record

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// says are the faults of a way in words.
func (d *diagnoser) says(n *node) []string {
	if len(n.faults) == 0 {
		return []string{"every device moved as the programme has it"}
	}
	var all []string
	for _, f := range n.faults {
		text := d.words(n, f)
		if n.share <= ruledOut {
			text += d.beyond(f)
		}
		all = append(all, text)
	}
	return all
}

// words are those of one fault of a way.
func (d *diagnoser) words(n *node, f lapse) string {
	at := fmt.Sprintf("step %d, %s: ", f.step+1, d.given.Steps[f.step].Name)
	if m := f.early; m != nil {
		when := "early"
		if m.Threshold >= m.Least-m.Unsure {
			when = "as it may by its band, though not by its nominal threshold"
		}
		return at + fmt.Sprintf("“%s” happened %s, with %s at %s, give or take %s; its threshold then is %s, and its band is from %s to %s",
			m.Action, when, m.Of, m.Surface.Rounded(digits), m.Unsure.Rounded(2), m.Threshold.Rounded(digits), m.Least.Rounded(digits), m.Greatest.Rounded(digits))
	}
	if f.action != "" {
		return at + "“" + f.action + "” did not happen"
	}
	text := at + f.leak + " leaks"
	o := n.outcomes[f.step]
	if o == nil {
		return text
	}
	if o.lost > 0 {
		text += fmt.Sprintf(", %s in all", size(o.lost))
		if rate := d.rate(o, f); rate != "" {
			text += ", " + rate
		}
	}
	if o.to != "" {
		return text + "; it shows in " + o.to
	}
	return text + "; where to, the record does not show"
}

// beyond says how far pressure went past where an action that did not happen should
// have; nothing where that isn't known.
func (d *diagnoser) beyond(f lapse) string {
	fr := d.frames[f.step]
	m := Moved{Action: f.action}
	a := m.find(d.plan)
	if f.action == "" || d.meant == nil || d.meant.seen[f.step] == nil || a == nil || a.Axial || fr == nil {
		return ""
	}
	seen := d.meant.seen[f.step]
	i := slices.IndexFunc(seen.Events, func(e sequence.Event) bool { return e.Action == f.action && e.Partial == "" })
	if i < 0 || seen.Events[i].Ramp < 1 || seen.Events[i].Ramp > len(fr.legs) {
		return ""
	}
	l := fr.legs[seen.Events[i].Ramp-1]
	lead := l.lead()
	if k := slices.Index(fr.driven, a.Inside); k >= 0 {
		lead = k
	}
	at := shown(seen.Events[i].Surface, fr.driven[lead])
	real := threshold(&m.find(d.given).Triggers[m.link])
	early, late := at-float64(real.Nominal-real.Least), at+float64(real.Greatest-real.Nominal)
	return fmt.Sprintf(" (meant at %s to %s of %s, which was brought to %s)", unit.Pressure(early).Rounded(digits), unit.Pressure(late).Rounded(digits),
		fr.driven[lead], unit.Pressure(l.to[lead]).Rounded(digits))
}

// rate of a leak where the pressure was highest.
func (d *diagnoser) rate(o *outcome, f lapse) string {
	fr := d.frames[f.step]
	c := fr.column(pressure, f.leak)
	if c < 0 {
		return ""
	}
	most := slices.Max(fr.filled[c])
	return fmt.Sprintf("%s a minute at %s", size(o.fits[f.leak].leak*most*60), unit.Pressure(most).Rounded(digits))
}

func (d *diagnoser) explanation(n *node) Explanation {
	e := Explanation{Says: d.says(n), Share: n.share}
	if n.share > 0 {
		e.Step, e.Against = d.given.Steps[n.worstIn].Name, n.worst.says
	}
	return e
}

// finding says what was made of the record.
func (x *Diagnosis) finding(alive []*node, best *node, d *diagnoser) {
	switch {
	case len(alive) == 0:
		x.Finding = Contrary
		x.Says = fmt.Sprintf("Nothing that was tried explains the record: %s. Stop, and find out what it is before going on.", d.contradiction(best))
	case best.share > fits:
		x.Finding = NotTold
		x.Says = fmt.Sprintf("Nothing explains the record well; what comes nearest: %s. Against it speaks: %s.", strings.Join(d.says(best), "; "), best.worst.says)
	case len(best.faults) == 0:
		x.Finding = AsPlanned
		x.Says = "The record is what the programme expects: every device moving as it should explains it."
	default:
		x.Finding = Otherwise
		planned := "The programme as planned is ruled out."
		if base := d.meant; base != nil && base.share <= ruledOut {
			planned = fmt.Sprintf("The programme as planned explains it badly and isn't ruled out (%s).", base.worst.says)
		}
		x.Says = planned + " What explains the record: " + strings.Join(d.says(best), "; ") + "."
		if n := x.equals(len(best.faults), alive); n > 1 {
			x.Says = fmt.Sprintf("%s %d things explain the record alike; the nearest: %s.", planned, n, strings.Join(d.says(best), "; "))
		}
	}
}

// equals is how many ways of so many faults aren't ruled out.
func (x *Diagnosis) equals(faults int, alive []*node) int {
	n := 0
	for _, a := range alive {
		if len(a.faults) == faults {
			n++
		}
	}
	return n
}

func (d *diagnoser) contradiction(n *node) string {
	if n == nil {
		return "it can't be walked"
	}
	return fmt.Sprintf("in step %d, %s, %s", n.worstIn+1, d.given.Steps[n.worstIn].Name, n.worst.says)
}
