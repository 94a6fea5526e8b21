package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/valve/sequence"
)

// change is one thing that is another than before.
type change struct {
	Step   int    `json:"step,omitempty"` // by its number now; 0: of the whole plan
	What   string `json:"what"`
	Before string `json:"before"`
	Now    string `json:"now"`
}

// changed are the changes between two programmes in the order in which they
// matter: verdict, findings, windows, margins.
type changed struct {
	Since    string   `json:"since"`
	Verdict  []change `json:"verdict"`
	Findings []change `json:"findings"`
	Windows  []change `json:"windows"`
	Margins  []change `json:"margins"`
	Over     float64  `json:"over"` // percent of the limit by which a margin must have changed to be told
	// Smaller counts margins that changed by less, Unseen those, and windows, that
	// can't be held against each other because the programme is left before them.
	Smaller int `json:"smaller"`
	Unseen  int `json:"unseen"`
}

// compare tells what has changed; over is the share of a limit by which a margin
// must have changed to be told.
func compare(w *work, over float64) *changed {
	c := &changed{Since: w.since, Over: over}
	before, now := w.before, w.programme
	if before.Verdict != now.Verdict {
		c.Verdict = append(c.Verdict, change{What: "verdict", Before: string(before.Verdict), Now: string(now.Verdict)})
	}
	if a, b := broken(before), broken(now); a != b {
		c.Verdict = append(c.Verdict, change{What: "first step that breaks", Before: a, Now: b})
	}
	c.steps(before, now)
	c.findings(w, before, now)
	c.windows(w, before, now)
	if w.record != nil { // what was done is done
		c.Windows = slices.DeleteFunc(c.Windows, func(x change) bool { return w.recordOf(x.Step) != nil })
	}
	c.margins(w, before, now)
	return c
}

// nothing tells whether all is as before, but for small changes of margins.
func (c *changed) nothing() bool {
	return len(c.Verdict)+len(c.Findings)+len(c.Windows)+len(c.Margins) == 0
}

func broken(p *sequence.Programme) string {
	k := firstBroken(p)
	if k < 0 {
		return "none"
	}
	return fmt.Sprintf("%d, %s", k+1, p.Steps[k].Name)
}

// steps that have come or gone.
func (c *changed) steps(before, now *sequence.Programme) {
	for i := range now.Steps {
		if numberOf(before, now.Steps[i].Name) == 0 {
			c.Verdict = append(c.Verdict, change{i + 1, "step “" + now.Steps[i].Name + "”", "", "new"})
		}
	}
	for i := range before.Steps {
		if numberOf(now, before.Steps[i].Name) == 0 {
			c.Verdict = append(c.Verdict, change{0, "step “" + before.Steps[i].Name + "”", "was there", ""})
		}
	}
}

// same tells whether two findings are of the same thing.
func same(a, b sequence.Finding) bool {
	return a.Kind == b.Kind && a.Step == b.Step && a.Device == b.Device
}

func (c *changed) findings(w *work, before, now *sequence.Programme) {
	u := w.read
	for _, f := range now.Findings {
		i := slices.IndexFunc(before.Findings, func(g sequence.Finding) bool { return same(f, g) })
		switch {
		case i < 0:
			c.Findings = append(c.Findings, change{numberOf(now, f.Step), f.Device + ": " + string(f.Kind), "", u.text(f.Numbers)})
		case u.text(before.Findings[i].Numbers) != u.text(f.Numbers):
			c.Findings = append(c.Findings, change{numberOf(now, f.Step), f.Device + ": " + string(f.Kind), u.text(before.Findings[i].Numbers), u.text(f.Numbers)})
		}
	}
	for _, f := range before.Findings {
		if !slices.ContainsFunc(now.Findings, func(g sequence.Finding) bool { return same(f, g) }) {
			c.Findings = append(c.Findings, change{numberOf(now, f.Step), f.Device + ": " + string(f.Kind), u.text(f.Numbers), "gone"})
		}
	}
}

func (c *changed) windows(w *work, before, now *sequence.Programme) {
	for i := range now.Steps {
		s := &now.Steps[i]
		k := numberOf(before, s.Name) - 1
		if k < 0 {
			continue
		}
		if s.Follows != "" || before.Steps[k].Follows != "" {
			c.Unseen += max(len(s.Windows), len(before.Steps[k].Windows))
			continue
		}
		old := &before.Steps[k]
		was := map[string]string{}
		for n := range old.Windows {
			was[windowName(old, n)] = w.read.limits(old, &old.Windows[n])
		}
		for n := range s.Windows {
			what, text := windowName(s, n), w.read.limits(s, &s.Windows[n])
			if was[what] != text {
				c.Windows = append(c.Windows, change{i + 1, what, was[what], text})
			}
			delete(was, what)
		}
		for n := range old.Windows {
			if text, left := was[windowName(old, n)]; left {
				c.Windows = append(c.Windows, change{i + 1, windowName(old, n), text, "not known"})
			}
		}
	}
}

// windowName tells a window of a step from the others.
func windowName(s *sequence.StepResult, n int) string {
	verb, of := held(s, &s.Windows[n])
	return fmt.Sprintf("%s %s, ramp %d", verb, of, s.Windows[n].Ramp)
}

func (c *changed) margins(w *work, before, now *sequence.Programme) {
	key := func(m sequence.Margin) string { return limitWords(m.Kind) + ": " + m.Limit }
	left := leaves(now) || leaves(before)
	was := map[string]sequence.Margin{}
	for _, m := range before.Margins {
		was[key(m)] = m
	}
	for _, m := range now.Margins {
		old, known := was[key(m)]
		delete(was, key(m))
		switch {
		case left && (!known || m.Share >= old.Share):
			c.Unseen++
		case !known:
			c.Margins = append(c.Margins, change{numberOf(now, m.Step), key(m), "", w.read.sized(m.Left)})
		case math.Abs(m.Share-old.Share) > c.Over/100:
			c.Margins = append(c.Margins, change{numberOf(now, m.Step), key(m), w.read.sized(old.Left), w.read.sized(m.Left)})
		case m.Left != old.Left:
			c.Smaller++
		}
	}
	for _, m := range before.Margins {
		if _, gone := was[key(m)]; gone && left {
			c.Unseen++
		} else if gone {
			c.Margins = append(c.Margins, change{numberOf(now, m.Step), key(m), w.read.sized(m.Left), "gone"})
		}
	}
}

// leaves tells whether a programme is left before its end, so that its margins
// aren't those of all steps.
func leaves(p *sequence.Programme) bool {
	return slices.ContainsFunc(p.Steps, func(s sequence.StepResult) bool { return s.Follows != "" })
}

// differences writes the changes for people.
func differences(l *lines, w *work, over float64) {
	c := compare(w, over)
	l.WriteString("\n")
	l.line(0, "", 0, "What has changed since %s", c.Since)
	if c.nothing() {
		l.line(2, "", 0, "nothing of verdict, findings and windows, and no margin by more than %v %% of its limit", over)
	}
	for _, part := range []struct {
		head string
		of   []change
	}{{"verdict", c.Verdict}, {"finding", c.Findings}, {"window", c.Windows}, {"margin", c.Margins}} {
		for _, x := range part.of {
			text := x.What
			if x.Step > 0 {
				text = fmt.Sprintf("step %d, %s", x.Step, x.What)
			}
			l.line(2, part.head, 9, "%s: %s", text, strings.TrimPrefix(x.Before+" → "+x.Now, " → "))
		}
	}
	if c.Smaller > 0 {
		l.line(2, "", 0, "%s by no more than %v %% of the limit (-over)", count(c.Smaller, "margin changed", "margins changed"), over)
	}
	if c.Unseen > 0 {
		l.line(2, "", 0, "%s told: the programme is left before its end, and what comes after can't be held against each other",
			count(c.Unseen, "window or margin isn't", "windows and margins aren't"))
	}
}
