package main

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"completion.example/valve/sequence"
)

// step writes one step: the heads of the lines say what they are about.
func step(l *lines, i int, s *sequence.StepResult, w *work, o options) {
	u := w.read
	l.WriteString("\n")
	l.line(0, fmt.Sprintf("%2d", i+1), 4, "%s  [%s]", s.Name, mark(w.programme, s))
	line := func(head, format string, args ...any) { l.line(4, head, column, format, args...) }
	if s.Note != "" {
		line("note", "%s", s.Note)
	}
	for _, x := range u.apply(s) {
		line("apply", "%s", x)
	}
	printAsRun(line, w, i+1)
	for _, x := range s.Rises {
		line("rise", "%s", u.rise(x))
	}
	for _, a := range s.Acts {
		line("hand", "%s", u.byHand(a))
	}
	for n := range s.Windows {
		x := &s.Windows[n]
		line("window", "%s", u.window(s, x))
		if e := u.edges(s, x); len(e) > 0 {
			line("", "%s", strings.Join(e, "; "))
		}
	}
	for _, v := range s.Volumes {
		head, text := u.pumped(v)
		line(head, "%s", text)
	}
	if s.BranchOf != "" {
		line("only", "where what it expects was not seen in step %d, %s", numberOf(w.programme, s.BranchOf), s.BranchOf)
	}
	for n := range s.Pumps {
		for k, text := range u.pumping(s, n) {
			head := "pump"
			if k > 0 {
				head = ""
			}
			line(head, "%s", text)
		}
	}
	for _, x := range s.Levels {
		line("level", "%s", u.level(x))
	}
	for _, g := range s.Gas {
		line("gas", "%s", u.gasIn(g))
	}
	for _, e := range s.Events {
		line("moves", "%s", u.happening(e))
	}
	for _, t := range s.Triggers {
		switch at, _ := t.Margin.Pressure(); {
		case t.Intended && at < 0 && t.Firing == sequence.MustFire: // it isn't the ramp that brings it there
			line("", "%s: follows at once from what happens before it", t.Action)
		case t.Intended:
			line("", "%s: %s beyond the late end of its band", t.Action, u.of(t.Margin))
		}
	}
	if s.Time != nil {
		line("time", "%s", u.timeWords(s.Time))
	}
	for _, x := range u.decisions(w.programme, s) {
		line("decide", "%s", x)
	}
	if t, ok := nearest(s); ok {
		line("nearest", "%s: feels %s, moves from %s; %s left", t.Action, u.of(extreme(t)), u.of(near(t)), u.of(t.Margin))
	}
	for _, x := range s.Partings {
		line("parts", "%s", u.parting(x))
	}
	rest(line, s, w)
	if o.pressures || !s.OK && s.Follows == "" {
		pressures(l, u, s)
	}
	explain(line, u, s, o.explain)
}

// rest writes what the step leaves behind.
func rest(line func(head, format string, args ...any), s *sequence.StepResult, w *work) {
	u := w.read
	for _, t := range s.Tests {
		line("test", "%s", u.tested(t))
	}
	u.loads(s, line)
	for _, f := range s.Points[len(s.Points)-1].Flows {
		line("flow", "%s", u.flow(f))
	}
	for _, z := range s.Zones {
		line("zone", "%s", u.zone(z))
	}
	for _, b := range s.Barriers {
		if b.Lost {
			line("barrier", "%s is given up in this step", b.Name)
		}
	}
	open, shut, doubt := doors(w.plan, s)
	for _, x := range []struct {
		head string
		of   []string
	}{{"open", open}, {"shut", shut}, {"NOT SURE", doubt}} {
		if len(x.of) > 0 {
			line(x.head, "%s", strings.Join(x.of, ", "))
		}
	}
	if len(s.Unknown) > 0 {
		line("UNKNOWN", "from here on it isn't known what state these are in: %s", strings.Join(s.Unknown, ", "))
	}
}

// loads tells what bears most in a step, in text and on its sheet.
func (u reader) loads(s *sequence.StepResult, line func(head, format string, args ...any)) {
	if r, ok := mostUsed(s); ok {
		line("rating", "%.0f %% of %s", 100*r.Usage, r.Name)
	}
	if x, ok := mostLoaded(s); ok {
		line("string", "%s", u.string(x, x.String))
	}
	if x, ok := mostUsing(s, outerOf); ok {
		line("outer", "string: %s", u.string(x, x.OuterString))
	}
	for _, x := range s.Forces {
		line("forces", "%s", u.forces(x))
	}
	for _, x := range s.Passage {
		line("tool", "%s", u.passage(x))
	}
	if s.SetDown != nil {
		line("set down", "%s", u.setDown(s.SetDown))
	}
	if s.OuterSetDown != nil {
		line("set down", "outer string: %s", u.setDown(s.OuterSetDown))
	}
	for _, b := range s.Balance {
		line("balance", "%s against %s: %s", b.Compartment, b.Formation, u.balance(b.Overbalance))
	}
}

// pressures is the table of every compartment at every device, as many points
// beside each other as there is room for.
func pressures(l *lines, u reader, s *sequence.StepResult) {
	names, places := 0, 0
	for _, at := range s.Points[0].Pressures {
		names, places = max(names, utf8.RuneCountInString(at.Device)), max(places, utf8.RuneCountInString(at.Compartment))
	}
	fixed := 4 + names + 2 + 8 + 2 + places
	room := max((width-fixed)/10, 1)
	for from := 0; from < len(s.Points); from += room {
		points := s.Points[from:min(from+room, len(s.Points))]
		row := fmt.Sprintf("    %s%8s  %s", pad("device", names+2), "TVD "+u.symbol(depth), pad("pressure, "+u.symbol(pressure), places))
		for _, p := range points {
			row += fmt.Sprintf("%10s", p.Label)
		}
		l.WriteString(strings.TrimRight(row, " ") + "\n")
		for k, at := range s.Points[0].Pressures {
			row := fmt.Sprintf("    %s%8s  %s", pad(at.Device, names+2), u.number(at.TVD, depth), pad(at.Compartment, places))
			for _, p := range points {
				row += fmt.Sprintf("%10s", u.number(p.Pressures[k].Pressure, pressure))
			}
			l.WriteString(row + "\n")
		}
	}
}
