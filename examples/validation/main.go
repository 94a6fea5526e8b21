// Validation runs every published case on this machine and says, capability by
// capability, whose figures were met and how nearly.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"completion.example/internal/calculator"
	"completion.example/internal/published"
	"completion.example/internal/validation"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// row sums up the cases of one capability, source and status.
type row struct {
	Capability string           `json:"capability"`
	Source     string           `json:"source"`
	Status     published.Status `json:"status"`
	Cases      int              `json:"cases"`
	Met        int              `json:"met"`
	Missed     int              `json:"missed"`
	Worst      float64          `json:"worst"` // deviation from the printed answer, as a share of it
	WorstCase  string           `json:"worst_case"`
	OfAllowed  float64          `json:"of_allowed"`       // the greatest deviation as a share of the case's tolerance
	Faults     []string         `json:"faults,omitempty"` // of the cases missed: inputs, got, want, tolerance, row
}

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("validation", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	asJSON := flags.Bool("json", false, "print JSON: a list of objects with capability, source, status, cases, met, missed, worst, worst_case, faults")
	only := flags.String("capability", "", "only this `row`, such as H1 or T8")
	digits := flags.Bool("accuracy", false, "instead, how many digits each formula keeps against the same equation worked with 256 binary digits")
	if err := calculator.Parse(flags, args); errors.Is(err, flag.ErrHelp) {
		fmt.Fprint(out, "validation: are the published figures met on this machine?\n\nusage: go run ./examples/validation [flags]\n\n")
		flags.SetOutput(out)
		flags.PrintDefaults()
		return 0
	} else if err != nil {
		fmt.Fprintf(errs, "%v\nvalidation -h lists the flags.\n", err)
		return 2
	}
	if *digits {
		return printAccuracy(out, errs, *asJSON)
	}
	rows, missed, figures, err := collect(*only)
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	if *asJSON {
		e := json.NewEncoder(out)
		e.SetIndent("", "  ")
		e.SetEscapeHTML(false)
		err = e.Encode(rows)
	} else {
		err = text(out, rows, missed, figures, *only)
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	if len(missed) > 0 {
		return 1
	}
	return 0
}

// collect runs all suites.
func collect(only string) (rows []*row, missed []validation.Outcome, figures int, err error) {
	var outcomes []validation.Outcome
	for _, s := range validation.Suites() {
		all, err := s.Run()
		if err != nil {
			return nil, nil, 0, err
		}
		for _, o := range all {
			if only == "" || o.Capability == only {
				outcomes = append(outcomes, o)
			}
		}
	}
	if len(outcomes) == 0 {
		return nil, nil, 0, fmt.Errorf("no case of capability %q", only)
	}
	rows, missed = summarise(outcomes)
	return rows, missed, validation.Figures(outcomes), nil
}

// summarise sums outcomes up by capability, source and status.
func summarise(outcomes []validation.Outcome) (rows []*row, missed []validation.Outcome) {
	index := map[[3]string]*row{}
	for _, o := range outcomes {
		key := [3]string{o.Capability, o.Source, string(o.Status)}
		r := index[key]
		if r == nil {
			r = &row{Capability: o.Capability, Source: o.Source, Status: o.Status}
			index[key] = r
			rows = append(rows, r)
		}
		r.add(o)
		if !o.OK() {
			missed = append(missed, o)
		}
	}
	slices.SortStableFunc(rows, func(a, b *row) int { return byCapability(a.Capability, b.Capability) })
	return rows, missed
}

func (r *row) add(o validation.Outcome) {
	r.Cases++
	if o.OK() {
		r.Met++
	} else {
		r.Missed++
		r.Faults = append(r.Faults, o.Fault())
	}
	if o.Err != nil {
		if r.WorstCase == "" {
			r.WorstCase = o.ID + ", " + o.Quantity
		}
		return
	}
	if d := o.Relative(); d >= r.Worst {
		r.Worst, r.WorstCase = d, o.ID+", "+o.Quantity
	}
	if o.Comparison.Tolerance > 0 {
		r.OfAllowed = max(r.OfAllowed, math.Abs(o.Got-o.Want)/o.Comparison.Tolerance)
	}
}

// byCapability puts H1 before H10, and floors in the order of the library.
func byCapability(a, b string) int {
	floor := func(s string) int { return strings.Index("HFTPVS", s[:1]) }
	number := func(s string) int { n, _ := strconv.Atoi(s[1:]); return n }
	if d := floor(a) - floor(b); d != 0 {
		return d
	}
	return number(a) - number(b)
}

// without lists the capabilities that no case from outside stands behind.
func without(rows []*row, only string) (list []validation.Capability) {
	behind := map[string]bool{}
	for _, r := range rows {
		behind[r.Capability] = behind[r.Capability] || r.Status.External()
	}
	for _, c := range validation.Capabilities {
		if !behind[c.ID] && (only == "" || only == c.ID) {
			list = append(list, c)
		}
	}
	return list
}

func text(out io.Writer, rows []*row, missed []validation.Outcome, figures int, only string) error {
	asides, err := validation.Asides()
	if err != nil {
		return err
	}
	w := &strings.Builder{}
	counts := map[published.Status]int{}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "row\tstatus\tmet\tworst\tof allowed\tsource")
	for _, r := range rows {
		counts[r.Status] += r.Cases
		fmt.Fprintf(t, "%s\t%s\t%d of %d\t%.2g %%\t%.0f %%\t%s\n", r.Capability, r.Status, r.Met, r.Cases, 100*r.Worst, 100*r.OfAllowed, r.Source)
	}
	for _, c := range without(rows, only) {
		fmt.Fprintf(t, "%s\tNO OUTSIDE CASE\t\t\t\t%s\n", c.ID, c.Name)
	}
	t.Flush() //nolint:errcheck // a strings.Builder takes everything
	fmt.Fprintln(w)
	for _, s := range published.Statuses {
		fmt.Fprintf(w, "%6d %s\n", counts[s], s)
	}
	fmt.Fprintf(w, "%6d figures count as outside evidence: published or computed with a named version of another library.\n", figures)
	fmt.Fprintln(w, "A figure that stands behind two capabilities is a row of each, and one figure.")
	fmt.Fprintln(w, "Memory, derived and transcription cases guard against slips; they prove nothing and are not in that number.")
	fmt.Fprintln(w, "A misprint is a figure that is wrong in its source: it is met when it is missed, and counts for nothing.")
	fmt.Fprintln(w, "Worst is the deviation as a share of the printed answer: large where few digits are printed, or nearly nothing.")
	fmt.Fprintln(w, "Of allowed is the deviation as a share of the tolerance: half of the last printed digit, unless a row says why not.")
	if only != "" {
		asides = slices.DeleteFunc(asides, func(a validation.Aside) bool { return a.Capability != only })
	}
	for i, a := range asides {
		if i == 0 {
			fmt.Fprintln(w, "\nRead in a source, and no case, with the reason:")
		}
		fmt.Fprintf(w, "%s %s, %s: %s (%s): %s.\n", a.Capability, a.ID, a.Quantity, a.Printed, a.Source, a.Why)
	}
	for _, o := range missed {
		fmt.Fprintf(w, "\nMISSED %s", o.Fault())
	}
	if len(missed) > 0 {
		fmt.Fprintln(w)
	}
	if len(missed) == 0 {
		fmt.Fprintln(w, "\nEvery case is met within the digits that its source prints, or the tolerance that its row explains.")
	}
	_, err = io.WriteString(out, w.String())
	return err
}
