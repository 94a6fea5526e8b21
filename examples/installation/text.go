package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"completion.example/internal/calculator"
	"completion.example/internal/clock"
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
		if w.plan.String != nil {
			l.line(0, "", 0, "What the string bears is enclosed between evaluated loads, at both ends of every tolerance and along every stretch: not proved.")
		}
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
		l.line(0, "", 0, "It takes %s as far as the plan says how long each thing takes.", clock.Rewrite(p.Takes))
	}
	for _, x := range w.notes {
		l.line(0, "", 0, "%s", x)
	}
}

func findings(l *lines, w *work) {
	p, u := w.programme, w.read
	number := 0
	for _, f := range p.Findings {
		if f.Follows != "" {
			continue
		}
		number++
		l.WriteString("\n")
		l.line(0, fmt.Sprintf("%d", number), 3, "step %d, %s: %s", numberOf(p, f.Step), f.Step, f.Kind)
		l.line(3, "what", column, "%s %s", f.Device+":", u.text(f.Says))
		l.line(3, "numbers", column, "%s", u.text(f.Numbers))
		l.line(3, "assumed", column, "%s", u.text(f.Assumed))
		l.line(3, "cure", column, "%s", u.cure(p, &f))
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
		at = append(at, u.text(c.Name+" "+u.sized(c.Value)))
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
