package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// held says what a window is of: "hold tubing", "bleed tubing to", "pull".
func held(s *sequence.StepResult, w *sequence.Window) (verb, of string) {
	if w.Compartment == "" {
		return "pull", "weight indicator"
	}
	of = strings.Join(append([]string{w.Compartment}, w.Together...), " and ")
	if bleeds(s, w) {
		return "bleed", of
	}
	return "hold", of
}

// bleeds tells whether a pressure goes down to where it is planned.
func bleeds(s *sequence.StepResult, w *sequence.Window) bool {
	planned, ok := w.Planned.Pressure()
	return ok && planned < stood(s, w)
}

// stood is the surface pressure before the ramp of a window.
func stood(s *sequence.StepResult, w *sequence.Window) unit.Pressure {
	if w.Ramp < 1 || w.Ramp > len(s.Points) {
		return 0
	}
	for _, r := range s.Points[w.Ramp-1].Surface {
		if r.Compartment == w.Compartment {
			return r.Pressure
		}
	}
	return 0
}

// shown is a level as the gauge of a window's compartment shows it.
func (u reader) shown(w *sequence.Window, l sequence.Level) sequence.Level {
	if p, ok := l.Pressure(); ok {
		return sequence.PressureLevel(u.gauge(w.Compartment, p))
	}
	return l
}

// window writes a window: what to hold and within what limits.
func (u reader) window(s *sequence.StepResult, w *sequence.Window) string {
	verb, of := held(s, w)
	return fmt.Sprintf("%s %s: %s (planned %s)", verb, of, u.limits(s, w), u.of(u.shown(w, w.Planned)))
}

// briefly are the limits of a window where what stands against it is told elsewhere.
func (u reader) briefly(s *sequence.StepResult, w *sequence.Window) string {
	if w.Awaits > 0 {
		return u.limits(s, w)
	}
	if !w.Open() {
		return "NONE does it: see the step"
	}
	return u.limits(s, w)
}

// limits are the intervals of a window in words.
func (u reader) limits(s *sequence.StepResult, w *sequence.Window) string {
	if w.Awaits > 0 {
		return u.awaited(s, w)
	}
	if !w.Open() {
		var clash []string
		for _, c := range w.Clash {
			clash = append(clash, u.text(c))
		}
		return "NONE: " + strings.Join(clash, "; ")
	}
	var parts []string
	for _, x := range spans(w) {
		parts = append(parts, u.interval(s, w, x))
	}
	if !w.Inside && s.OK && s.Follows == "" { // it was proved by itself, of which its window is less sure
		parts = append(parts, "the planned "+u.of(u.shown(w, w.Planned)))
	}
	return strings.Join(parts, ", or ")
}

// cure is what mends a finding: where that is a window, its limits as the gauge shows them,
// rounded inwards.
func (u reader) cure(p *sequence.Programme, f *sequence.Finding) string {
	if n := numberOf(p, f.Step) - 1; n >= 0 && n < len(p.Steps) {
		s := &p.Steps[n]
		for i := range s.Windows {
			w := &s.Windows[i]
			rest, ok := strings.CutPrefix(f.Cure, w.Words()+" on ")
			if !ok || !w.Open() {
				continue
			}
			rest, more, _ := strings.Cut(rest, "; ")
			rest, _, replaced := strings.Cut(rest, ", in place of ")
			text := u.limits(s, w) + " on " + rest
			if replaced {
				text += ", in place of " + u.of(u.shown(w, w.Planned))
			}
			if more != "" {
				text += "; " + u.text(more)
			}
			return text
		}
	}
	return u.text(f.Cure)
}

// awaited tells what a window depends on, and what it is with what mends that.
func (u reader) awaited(s *sequence.StepResult, w *sequence.Window) string {
	text := fmt.Sprintf("depends on step %d: mend that first", w.Awaits)
	if len(w.Opens) == 0 {
		return text
	}
	var parts []string
	for _, x := range w.Opens[0].Window {
		parts = append(parts, u.interval(s, w, x))
	}
	return text + "; with " + u.text(w.Opens[0].Does) + " it is " + strings.Join(parts, ", or ")
}

func (u reader) interval(s *sequence.StepResult, w *sequence.Window, x sequence.Interval) string {
	least, greatest := u.limit(w, x.Least, up), u.limit(w, x.Greatest, down)
	bleed := bleeds(s, w)
	switch {
	case x.BledOff():
		return "to nothing (bled off, which needs no gauge)"
	case x.Least == x.Greatest:
		return least + "; what lies beside it isn't known to do"
	}
	if bleed && x.Below == "" && pressureOf(x.Greatest) >= stood(s, w) {
		return "to anything from " + u.of(u.gauge(w.Compartment, stood(s, w))) + " down to 0"
	}
	switch {
	case x.Below == "" && x.Above == "":
		return "any, as far as it was looked (" + greatest + ")"
	case x.Below == "" && bleed:
		return "to at most " + greatest + ", at least 0"
	case x.Below == "":
		return "at most " + greatest
	case x.Above == "":
		return "at least " + least + ", as far as it was looked (" + greatest + ")"
	}
	return least + " to " + greatest
}

// way is where a limit is rounded to.
type way int

const (
	up way = iota
	down
)

// limit writes an end of a window as the gauge shows it, rounded inwards to four
// digits, so that nothing printed lies outside the window.
func (u reader) limit(w *sequence.Window, l sequence.Level, to way) string {
	p := pressure
	if l.Axial() {
		p = force
	}
	return u.limitNumber(w, l, to) + " " + u.symbol(p)
}

// limitNumber is limit without the unit.
func (u reader) limitNumber(w *sequence.Window, l sequence.Level, to way) string {
	p := pressure
	if l.Axial() {
		p = force
	}
	n := u.in(u.shown(w, l), p)
	if n == 0 {
		return "0"
	}
	places := 3 - int(math.Floor(math.Log10(math.Abs(n))))
	step := math.Pow10(-places)
	const noise = 1e-6 // of a step, so that what is whole stays whole
	if to == up {
		n = math.Ceil(n/step-noise) * step
	} else {
		n = math.Floor(n/step+noise) * step
	}
	text := strconv.FormatFloat(n, 'f', max(places, 0), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// edges say what fails beyond a window, or what opens one that is empty.
func (u reader) edges(s *sequence.StepResult, w *sequence.Window) []string {
	if w.Awaits > 0 {
		return nil
	}
	var all []string
	for i := range w.Opens {
		all = append(all, u.advice(s, w, &w.Opens[i]))
	}
	if w.Advised && len(w.Opens) == 0 {
		all = append(all, "no single change of pins, density, pressure or order of steps was found that opens it")
	}
	for _, x := range spans(w) {
		if x.Below != "" {
			all = append(all, "below "+u.limit(w, x.Least, up)+" "+u.text(x.Below))
		}
		if x.Above != "" && !x.BledOff() && !(bleeds(s, w) && pressureOf(x.Greatest) >= stood(s, w)) {
			all = append(all, "above "+u.limit(w, x.Greatest, down)+" "+u.text(x.Above))
		}
	}
	return all
}

// advice says what opens a window, and what becomes of the plan then.
func (u reader) advice(s *sequence.StepResult, w *sequence.Window, a *sequence.Advice) string {
	var parts []string
	for _, x := range a.Window {
		parts = append(parts, u.interval(s, w, x))
	}
	text := "opens with "
	if a.Step > 0 {
		text += fmt.Sprintf("what mends step %d: ", a.Step)
	}
	text += u.text(a.Does) + ": then " + strings.Join(parts, ", or ")
	switch {
	case a.Proves:
		text += "; with " + u.of(u.shown(w, a.Value)) + " the whole plan is proved"
	case a.Fails != "":
		text += "; “" + a.Fails + "” then still fails"
	}
	return text + u.edits(a.Edits)
}

// edits say what does it to the plan: with its value where that is in the reader's units
// to the digit.
func (u reader) edits(all []sequence.Edit) string {
	var parts []string
	for _, e := range all {
		switch {
		case u.quoted(e.Now) == e.Now:
			parts = append(parts, "-set '"+e.Path+" = "+e.Now+"'")
		default:
			parts = append(parts, "in "+e.Path)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + ")"
}

// spans are the intervals of a window for the reader. What is vented to nothing is nothing,
// while a pressure of less than the gauge's error may be less than that: the hole between
// nothing and there is nobody's to stay out of.
func spans(w *sequence.Window) []sequence.Interval {
	all := w.Intervals
	if len(all) < 2 || all[0].Greatest.Axial() || pressureOf(all[0].Greatest) != 0 || all[0].Above != all[1].Below || !strings.HasPrefix(all[0].Above, "the column of ") {
		return all
	}
	first := all[1]
	first.Least, first.Below = all[0].Least, all[0].Below
	return append([]sequence.Interval{first}, all[2:]...)
}

// pressureOf is a level as a pressure; nothing where it is a force.
func pressureOf(l sequence.Level) unit.Pressure {
	p, _ := l.Pressure()
	return p
}
