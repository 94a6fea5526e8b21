package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

// digits of a number in the programme: what a gauge shows.
const digits = 4

// printText writes the programme for people.
func printText(out io.Writer, o options, p, before *sequence.Programme, odds *risk) error {
	w := &strings.Builder{}
	fmt.Fprintf(w, "%s\n%s\n\n", p.Plan, calculator.Caution)
	verdict(w, p)
	if before != nil {
		changes(w, before, p)
	} else {
		for i := range p.Steps {
			step(w, i, &p.Steps[i], o)
		}
	}
	findings(w, p)
	if odds != nil {
		printRisk(w, odds)
	}
	_, err := io.WriteString(out, w.String())
	return err
}

func verdict(w io.Writer, p *sequence.Programme) {
	if p.OK() {
		fmt.Fprintf(w, "The plan does what it intends and nothing else, whatever the values inside their bands (%d inputs, %d ways told apart).\n", p.Inputs, p.Branches)
		return
	}
	fmt.Fprintf(w, "THE PLAN FAILS: %d findings, at the end of this page (%d inputs, %d ways told apart).\n", len(p.Findings), p.Inputs, p.Branches)
}

// step writes one step: the heads of the lines say what they are about.
func step(w io.Writer, i int, s *sequence.StepResult, o options) {
	mark := "ok"
	if !s.OK {
		mark = "FAILS"
	}
	fmt.Fprintf(w, "\n%2d  %s  [%s]\n", i+1, s.Name, mark)
	line := func(head, format string, args ...any) {
		fmt.Fprintf(w, "      %-10s %s\n", head, fmt.Sprintf(format, args...))
	}
	if s.Note != "" {
		line("note", "%s", s.Note)
	}
	for _, l := range surface(s) {
		line("apply", "%s", l)
	}
	for _, v := range s.Volumes {
		head, text := pumped(v)
		line(head, "%s", text)
	}
	for _, e := range s.Events {
		line("moves", "%s", event(e))
	}
	for _, t := range s.Triggers {
		if t.Intended {
			line("", "%s by %s at the late end of its band", t.Action, t.Margin.Rounded(digits))
		}
	}
	if t, ok := nearest(s); ok {
		line("nearest", "%s: feels %s, moves from %s; %s left", t.Action, extreme(t).Rounded(digits), near(t).Rounded(digits), t.Margin.Rounded(digits))
	}
	for n := range s.Windows {
		line("window", "%s", window(&s.Windows[n]))
	}
	for _, x := range s.Partings {
		line("parts", "%s at %s to %s on the weight indicator (nominal %s)", x.Action, x.Least.Rounded(digits), x.Greatest.Rounded(digits), x.Nominal.Rounded(digits))
	}
	rest(w, s, line)
	if o.pressures || !s.OK {
		pressures(w, s)
	}
	if o.explain {
		for _, x := range s.Steps() {
			fmt.Fprintf(w, "      working    %s: %s\n", x.Name, x)
		}
	}
}

// rest writes what the step leaves behind.
func rest(w io.Writer, s *sequence.StepResult, line func(head, format string, args ...any)) {
	for _, t := range s.Tests {
		line("test", "%s", tested(t))
	}
	if r, ok := mostUsed(s); ok {
		line("rating", "%.0f %% of %s", 100*r.Usage, r.Name)
	}
	if x, ok := mostLoaded(s); ok {
		line("string", "%s", stringWords(x))
	}
	for _, b := range s.Balance {
		line("balance", "%s against %s: %s", b.Compartment, b.Formation, balance(b.Overbalance))
	}
	for _, f := range s.Points[len(s.Points)-1].Flows {
		line("flow", "%s from %s to %s, driven by %s", f.Kind, f.From, f.To, f.Differential.Rounded(digits))
	}
	for _, z := range s.Zones {
		line("zone", "%s gives %s, of it %s water; %s at the sand face", z.Formation, z.Rate.Rounded(digits), z.Water.Rounded(digits), z.Sandface.Rounded(digits))
	}
	for _, b := range s.Barriers {
		if b.Lost {
			line("barrier", "%s is given up in this step", b.Name)
		}
	}
	if len(s.Unknown) > 0 {
		line("UNKNOWN", "from here on it isn't known what state these are in: %s", strings.Join(s.Unknown, ", "))
	}
}

// pressures is the table of every compartment at every device.
func pressures(w io.Writer, s *sequence.StepResult) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintf(t, "      device\tTVD\tcompartment\t")
	for _, p := range s.Points {
		fmt.Fprintf(t, "%s\t", p.Label)
	}
	fmt.Fprintln(t)
	for k, at := range s.Points[0].Pressures {
		fmt.Fprintf(t, "      %s\t%.0f ft\t%s\t", at.Device, at.TVD.In(unit.Foot), at.Compartment)
		for _, p := range s.Points {
			fmt.Fprintf(t, "%s\t", p.Pressures[k].Pressure.Rounded(digits))
		}
		fmt.Fprintln(t)
	}
	t.Flush() //nolint:errcheck // a strings.Builder takes everything
}

func findings(w io.Writer, p *sequence.Programme) {
	if p.OK() {
		return
	}
	fmt.Fprintf(w, "\nWhat is wrong with the plan\n")
	follow := 0
	for i, f := range p.Findings {
		if f.Follows != "" {
			follow++
			continue
		}
		fmt.Fprintf(w, "\n %d. step %q: %s\n", i+1, f.Step, f.Kind)
		fmt.Fprintf(w, "    %s: %s\n    numbers  %s\n    assumed  %s\n    cure     %s\n", f.Device, f.Says, f.Numbers, f.Assumed, f.Cure)
		if f.Until != "" {
			fmt.Fprintf(w, "    it stays so through step %q\n", f.Until)
		}
	}
	if follow > 0 {
		fmt.Fprintf(w, "\n What follows from these once the plan is left:\n")
	}
	for _, f := range p.Findings {
		if f.Follows != "" {
			fmt.Fprintf(w, "   step %q: %s: %s (%s)\n", f.Step, f.Device, f.Says, f.Numbers)
		}
	}
}

func changes(w io.Writer, before, after *sequence.Programme) {
	fmt.Fprintf(w, "\nWhat has changed since %s\n", before.Plan)
	all := sequence.Changes(before, after)
	if len(all) == 0 {
		fmt.Fprintln(w, "  nothing")
		return
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "  step\twhat\tbefore\tnow")
	for _, c := range all {
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\n", c.Step, c.What, c.Before, c.Now)
	}
	t.Flush() //nolint:errcheck // a strings.Builder takes everything
}

func printRisk(w io.Writer, r *risk) {
	fmt.Fprintf(w, "\nHow often it goes wrong, in %d draws (seed %d)\n", r.Samples, r.Seed)
	fmt.Fprintf(w, "  the plan as a whole: %.2f %% (95 %% sure between %.2f and %.2f %%)\n", 100*r.Fails.Value, 100*r.Fails.Least, 100*r.Fails.Greatest)
	for _, e := range r.Events {
		fmt.Fprintf(w, "  step %q, %s: %s in %.2f %% (%.2f to %.2f %%)\n", e.Step, e.Action, e.Kind, 100*e.Value, 100*e.Least, 100*e.Greatest)
	}
}
