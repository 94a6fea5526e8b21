package main

import (
	"fmt"
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
	if !ok || w.Ramp < 1 || w.Ramp > len(s.Points) {
		return false
	}
	for _, r := range s.Points[w.Ramp-1].Surface {
		if r.Compartment == w.Compartment {
			return planned < r.Pressure
		}
	}
	return false
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

// limits are the intervals of a window in words.
func (u reader) limits(s *sequence.StepResult, w *sequence.Window) string {
	if !w.Open() {
		var clash []string
		for _, c := range w.Clash {
			clash = append(clash, u.text(c))
		}
		return "NONE: " + strings.Join(clash, "; ")
	}
	var parts []string
	for _, x := range w.Intervals {
		parts = append(parts, u.interval(s, w, x))
	}
	return strings.Join(parts, ", or ")
}

func (u reader) interval(s *sequence.StepResult, w *sequence.Window, x sequence.Interval) string {
	least, greatest := u.of(u.shown(w, x.Least)), u.of(u.shown(w, x.Greatest))
	bleed := bleeds(s, w)
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

// edges say what fails beyond a window.
func (u reader) edges(w *sequence.Window) []string {
	var all []string
	for _, x := range w.Intervals {
		if x.Below != "" {
			all = append(all, "below "+u.of(u.shown(w, x.Least))+" "+u.text(x.Below))
		}
		if x.Above != "" {
			all = append(all, "above "+u.of(u.shown(w, x.Greatest))+" "+u.text(x.Above))
		}
	}
	return all
}

// pressureOf is a level as a pressure; nothing where it is a force.
func pressureOf(l sequence.Level) unit.Pressure {
	p, _ := l.Pressure()
	return p
}
