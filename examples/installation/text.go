package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

// column at which the text of a step's lines begins.
const column = 11

// printText writes the programme for people: what is wrong first.
func printText(out io.Writer, o options, w *work) error {
	l := &lines{}
	p := w.programme
	l.line(0, "", 0, "%s", p.Plan)
	l.line(0, "", 0, "%s", calculator.Caution)
	l.line(0, "", 0, "Units: %s. Pressures are gauge, differentials inside minus outside.", w.read.legend())
	for _, x := range began(w.plan) {
		l.line(0, "", 0, "%s", x)
	}
	l.WriteString("\n")
	if w.record != nil {
		printRecord(l, w)
	}
	verdict(l, w)
	findings(l, w)
	if w.before != nil {
		differences(l, w, o.over)
	}
	tightest(l, w, 5, o.explain.all)
	if o.against == "" {
		for i := range p.Steps {
			if o.explain.wants(i, &p.Steps[i]) {
				step(l, i, &p.Steps[i], w, o)
			}
		}
	}
	if w.risk != nil {
		printRisk(l, w.read, w.risk)
	}
	if !w.world { // in which nothing has a tolerance
		l.WriteString("\n")
		l.line(0, "", 0, "Not checked by this plan: %s. Silence is not consent.", count(len(p.Unchecked), "thing", "things"))
		for _, x := range p.Unchecked {
			l.line(2, "-", 2, "%s", w.read.text(x))
		}
	}
	_, err := io.WriteString(out, l.String())
	return err
}

// count writes a number of things.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// sentence says in one sentence what was found of a plan.
func sentence(w *work) string {
	text := verdictWords(w)
	switch {
	case w.record == nil:
		return text
	case w.record.Onward == nil:
		return "As it was planned: " + text
	}
	return "As run, and from there on as planned: " + text
}

func verdictWords(w *work) string {
	p, first := w.programme, ""
	if k := firstBroken(p); k >= 0 {
		first = fmt.Sprintf(" The first step that breaks is %d, %s.", k+1, p.Steps[k].Name)
	}
	switch {
	case w.world && p.OK():
		return "HOLDS in this one world: each step does what it intends and nothing else with these values."
	case w.world:
		return "FAILS in this one world: " + count(len(p.Findings), "finding", "findings") + "." + first
	}
	switch p.Verdict {
	case sequence.Proved:
		return "PROVED: each step does what it intends and nothing else, whatever the values inside their bands."
	case sequence.Refuted:
		return "REFUTED: there are values inside the bands with which the plan fails: " + count(len(p.Findings), "finding", "findings") + "." + first
	}
	text := "NOT DECIDED, which fails the plan: neither could it be shown that it holds, nor that it fails"
	if p.Open != "" {
		text += " (" + p.Open + ")"
	}
	return text + "." + first
}

// firstBroken is the first step that fails, or -1.
func firstBroken(p *sequence.Programme) int {
	for i := range p.Steps {
		if !p.Steps[i].OK && p.Steps[i].Follows == "" {
			return i
		}
	}
	return -1
}

func verdict(l *lines, w *work) {
	p := w.programme
	l.line(0, "", 0, "%s", sentence(w))
	if !w.world {
		l.line(0, "", 0, "%s with a tolerance, %s told apart. Not checked by this plan: %s, listed at the end.",
			count(p.Inputs, "quantity", "quantities"), count(p.Branches, "way", "ways"), count(len(p.Unchecked), "thing", "things"))
	}
	if p.Takes != "" {
		l.line(0, "", 0, "It takes %s as far as the plan says how long each thing takes.", p.Takes)
	}
	for _, x := range w.notes {
		l.line(0, "", 0, "%s", x)
	}
}

func findings(l *lines, w *work) {
	p, u := w.programme, w.read
	for i, f := range p.Findings {
		if f.Follows != "" {
			continue
		}
		l.WriteString("\n")
		l.line(0, fmt.Sprintf("%d", i+1), 3, "step %d, %s: %s", numberOf(p, f.Step), f.Step, f.Kind)
		l.line(3, "what", column, "%s %s", f.Device+":", u.text(f.Says))
		l.line(3, "numbers", column, "%s", u.text(f.Numbers))
		l.line(3, "assumed", column, "%s", u.text(f.Assumed))
		l.line(3, "cure", column, "%s", u.text(f.Cure))
		if f.Until != "" {
			l.line(3, "lasts", column, "through step %d, %s", numberOf(p, f.Until), f.Until)
		}
		if r := w.replay(f); r != "" {
			l.line(3, "replay", column, "-world '%s'", r)
		}
	}
	head := false
	for _, f := range p.Findings {
		if f.Follows == "" {
			continue
		}
		if !head {
			l.WriteString("\n")
			l.line(0, "", 0, "What follows once the plan is left; mend the above first:")
			head = true
		}
		l.line(2, "-", 2, "step %d, %s: %s: %s (%s)", numberOf(p, f.Step), f.Step, f.Device, u.text(f.Says), u.text(f.Numbers))
	}
}

// tightest lists the margins with the least left.
func tightest(l *lines, w *work, n int, explain bool) {
	p, u := w.programme, w.read
	if len(p.Margins) == 0 {
		return
	}
	l.WriteString("\n")
	l.line(0, "", 0, "Tightest margins over the whole programme, of %d limits", len(p.Margins))
	names := 0
	for _, m := range p.Margins[:min(n, len(p.Margins))] {
		names = max(names, utf8.RuneCountInString(m.Limit))
	}
	for _, m := range p.Margins[:min(n, len(p.Margins))] {
		text := fmt.Sprintf("%s  %s%s (%s)", pad(u.sized(m.Left), 10), pad(m.Limit, names+2), where(p, m), limitWords(m.Kind))
		l.line(2, fmt.Sprintf("%5.1f %%", 100*m.Share), 9, "%s", text)
		if explain {
			l.line(11, "", 0, "%s", attained(u, m))
		}
	}
}

// attained says with which values a margin is least, and what takes most of it.
func attained(u reader, m sequence.Margin) string {
	var at, takes []string
	for _, c := range m.At {
		at = append(at, c.Name+" "+u.sized(c.Value))
	}
	for _, s := range m.Slopes {
		takes = append(takes, s.Input+" "+u.sized(s.Takes))
	}
	text := string(m.Method)
	if len(at) > 8 {
		at = append(at[:8], fmt.Sprintf("and %d more", len(at)-8))
	}
	if len(at) > 0 {
		text += "; least with " + strings.Join(at, ", ")
	}
	if len(takes) > 0 {
		text += "; of it the whole bands take: " + strings.Join(takes, ", ")
	}
	return text
}

// where says in which step a margin is least.
func where(p *sequence.Programme, m sequence.Margin) string {
	text := fmt.Sprintf("step %d, %s", numberOf(p, m.Step), m.Step)
	if m.Place != "" {
		text += ", " + m.Place
	}
	return text
}

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
	for _, g := range s.Gas {
		line("gas", "%s", u.gasIn(g))
	}
	for _, e := range s.Events {
		line("moves", "%s", u.happening(e))
	}
	for _, t := range s.Triggers {
		if t.Intended {
			line("", "%s: %s beyond the late end of its band", t.Action, u.of(t.Margin))
		}
	}
	if s.Time != nil {
		line("time", "%s", timeWords(s.Time))
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
	if r, ok := mostUsed(s); ok {
		line("rating", "%.0f %% of %s", 100*r.Usage, r.Name)
	}
	if x, ok := mostLoaded(s); ok {
		line("string", "%s", u.string(x))
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
	for _, b := range s.Balance {
		line("balance", "%s against %s: %s", b.Compartment, b.Formation, u.balance(b.Overbalance))
	}
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
