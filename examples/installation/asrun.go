package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"completion.example/internal/clock"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record"
)

// readRecord reads the record of a job.
func (w *work) readRecord(name string) error {
	data, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if w.log, err = record.Read(data, w.plan); err != nil {
		return fmt.Errorf("%s can't be held against the plan:\n%w", name, err)
	}
	return nil
}

// diagnose holds the record against the plan, and goes on with what it shows.
func (w *work) diagnose(ctx context.Context, check func(*sequence.Plan) (*sequence.Programme, error)) error {
	var err error
	if w.record, err = record.Diagnose(ctx, w.plan, w.programme, w.log, record.Options{Gauges: w.read.gauges}); err != nil {
		return err
	}
	steps := w.record.Steps
	last := steps[len(steps)-1]
	if w.record.Onward == nil {
		w.notes = append(w.notes, fmt.Sprintf("As run through step %d, %s: the programme below is the one that was planned; it can't go on from a record that nothing explains.", last.Number, last.Name))
		return nil
	}
	planned := w.programme
	now, err := check(w.record.Onward)
	if err != nil {
		w.record.Onward = nil
		w.notes = append(w.notes, "The plan can't be walked on from the record: "+err.Error())
		return nil
	}
	w.plan, w.programme, w.before, w.since = w.record.Onward.Expanded(), now, planned, "the plan as it was planned"
	note := fmt.Sprintf("As run through step %d, %s: those steps stand as they were done, thresholds as the record shows them, the rest as planned.", last.Number, last.Name)
	if w.record.Leaks {
		note += " The leak isn't in it: what it does to the rest is not checked."
	}
	w.notes = append(w.notes, note)
	return nil
}

// onward makes the plan the one that goes on from the record, where there is one.
func (w *work) onward(ctx context.Context) error {
	if w.log == nil {
		return nil
	}
	d, err := record.Diagnose(ctx, w.plan, nil, w.log, record.Options{Gauges: w.read.gauges})
	switch {
	case err != nil:
		return err
	case d.Onward == nil:
		return fmt.Errorf("-after: %s", w.read.text(d.Says))
	}
	w.plan, w.record = d.Onward.Expanded(), d
	return nil
}

// warn says what the plan that goes on from a record takes for granted.
func (w *work) warn(out io.Writer) error {
	if w.record == nil {
		return nil
	}
	var all []string
	if len(w.record.Unknown) > 0 {
		all = append(all, "Not known after the record: "+states(w.record.Unknown)+"; the plan takes them as they were meant to be. What may have happened can be written into its beginning.")
	}
	if w.record.Leaks {
		all = append(all, "The leak isn't in it.")
	}
	for _, x := range all {
		if _, err := fmt.Fprintln(out, x); err != nil {
			return err
		}
	}
	return nil
}

// recordLine is one line of what a record shows.
type recordLine struct{ Head, Text string }

// recorded are the lines on top of what a record shows.
func recorded(w *work) []recordLine {
	d, u := w.record, w.read
	var all []recordLine
	add := func(head, format string, args ...any) {
		all = append(all, recordLine{head, u.text(fmt.Sprintf(format, args...))})
	}
	for _, s := range d.Steps {
		for _, c := range s.Checks {
			if c.Mark == record.Off {
				add("OFF", "step %d, %s: %s: expected %s, recorded %s", s.Number, s.Name, c.What, c.Expected, c.Recorded)
			}
		}
	}
	for _, e := range d.Explains {
		add("explains", "%s%s", strings.Join(e.Says, "; "), against(e))
	}
	for _, e := range d.Doubtful {
		add("can't say", "%s%s", strings.Join(e.Says, "; "), against(e))
	}
	if known := states(d.Known); known != "" {
		add("known", "%s", known)
	}
	if unknown := states(d.Unknown); unknown != "" {
		add("UNKNOWN", "%s", unknown)
	}
	for _, e := range d.RuledOut {
		add("ruled out", "%s%s", strings.Join(e.Says, "; "), against(e))
	}
	for _, x := range d.Open {
		add("not told", "%s", x)
	}
	return all
}

// against says what speaks most against a way.
func against(e record.Explanation) string {
	if e.Against == "" {
		return ""
	}
	if e.Share > 1 {
		return fmt.Sprintf("; against it, %.1f times what noise and instruments allow: step %s, %s", e.Share, e.Step, e.Against)
	}
	return fmt.Sprintf("; nothing is off by more than %.0f %% of what noise and instruments allow", 100*e.Share)
}

func states(all []record.State) string {
	var parts []string
	for _, s := range all {
		is := s.Is
		if is == "" {
			is = strings.Join(s.Maybe, " or ")
		}
		parts = append(parts, s.Of+" "+is)
	}
	return strings.Join(parts, ", ")
}

// tried says what was looked for.
func tried(d *record.Diagnosis) string {
	return fmt.Sprintf("%s walked through all that was recorded: every device as it should, each move that the walk has not happening, each compartment under pressure leaking; together, one more of them than the simplest way needs; and, where none of these explains it, each device moving early.", count(d.Tried, "way was", "ways were"))
}

// printRecord writes what a record shows for people.
func printRecord(l *lines, w *work) {
	l.line(0, "", 0, "%s: %s", recordMark(w.record), w.read.text(w.record.Says))
	for _, x := range recorded(w) {
		l.line(2, x.Head, 11, "%s", x.Text)
	}
	l.line(2, "tried", 11, "%s", tried(w.record))
	l.WriteString("\n")
}

// recordMark is what was made of a record in one word.
func recordMark(d *record.Diagnosis) string {
	switch d.Finding {
	case record.AsPlanned:
		return "AS PLANNED"
	case record.Otherwise:
		return "NOT AS PLANNED"
	case record.NotTold:
		return "NOT TOLD"
	}
	return "CONTRADICTION"
}

// recordOf is what was recorded of a step of the programme; nil: nothing. Steps are known
// by their names: the branches that weren't taken aren't in a programme that goes on.
func (w *work) recordOf(number int) *record.Step {
	if w.record == nil || number < 1 || number > len(w.plan.Steps) {
		return nil
	}
	for i := range w.record.Steps {
		if w.record.Steps[i].Name == w.plan.Steps[number-1].Name {
			return &w.record.Steps[i]
		}
	}
	return nil
}

// printAsRun writes the record of a step.
func printAsRun(line func(head, format string, args ...any), w *work, number int) {
	s := w.recordOf(number)
	if s == nil {
		return
	}
	text := fmt.Sprintf("%d rows in %s", s.Rows, clock.Rewrite(s.Took))
	if s.Left != "" {
		text += "; held against the plan: " + s.Left
	}
	line("record", "%s", text)
	for _, c := range s.Checks {
		mark := ""
		if c.Mark == record.Off {
			mark = "OFF: "
		}
		expected := "; expected " + c.Expected
		if c.Expected == "" {
			expected = ""
		}
		line("", "%s%s", mark, w.read.text(fmt.Sprintf("%s: %s%s", c.What, c.Recorded, expected)))
	}
}

// stands is the step after which the well is drawn: the last that was recorded, or
// the first.
func (w *work) stands() int {
	if w.record == nil {
		return 0
	}
	last := w.record.Steps[len(w.record.Steps)-1].Name
	return max(slices.IndexFunc(w.plan.Steps, func(s sequence.Step) bool { return s.Name == last }), 0)
}

// unsure marks what isn't known after the record.
func (w *work) unsure(all []condition, i int) []condition {
	if w.record == nil || i != w.stands() {
		return all
	}
	for n := range all {
		for _, s := range w.record.Unknown {
			if s.Of == all[n].device || movesPort(w.plan, all[n].device, s.Of) {
				all[n].sign, all[n].word = isUnsure, strings.Join(s.Maybe, " or ")
			}
		}
	}
	return all
}

// movesPort tells whether a device opens or shuts a port.
func movesPort(p *sequence.Plan, device, port string) bool {
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			if d.Name == device && (slices.Contains(a.Opens, port) || slices.Contains(a.Closes, port)) {
				return true
			}
		}
	}
	return false
}
