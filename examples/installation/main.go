// Installation walks the programme of a completion whose devices are moved by
// pressure: what to apply at each step, which device moves, that no other can,
// what is left to every limit, and what is wrong with the plan.
package main

import (
	"context"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"reflect"
	"strings"

	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record"
)

//go:embed plans/demo.json
var demo []byte

const question = "what to apply at each step, which device moves, and can any other?"

// options are the flags.
type options struct {
	plan, against  string
	fresh, after   string
	set, gauge     list
	world          string
	asRun          string
	units          string
	over           float64
	report, csv    string
	floor          bool
	paper          string
	revision, date string
	asJSON, brief  bool
	schema, answer bool
	derived        bool
	pressures      bool
	explain        explained
	ahead          bool
	draws          sequence.Uncertainty
}

// list is a flag that may be given several times.
type list []string

func (l *list) String() string { return strings.Join(*l, "; ") }

func (l *list) Set(text string) error {
	*l = append(*l, text)
	return nil
}

func flags(o *options) *flag.FlagSet {
	f := flag.NewFlagSet("installation", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.StringVar(&o.plan, "plan", "", "the plan, a JSON `file`; the embedded demo where left out")
	f.StringVar(&o.fresh, "new", "", "write a small plan to begin with to this `file`, and stop; what each key means is in examples/installation/PLAN.md")
	f.BoolVar(&o.schema, "schema", false, "print the JSON schema of a plan, with the meaning, quantity, unit and default of every key, and stop")
	f.BoolVar(&o.answer, "schema-of-json", false, "print the JSON schema of what -json prints, with the quantity of every field and the unit that it has by -units, and stop")
	f.BoolVar(&o.derived, "derived", false, "print the plan that follows from the plan's assembly, each entry with the rule that made it, and stop")
	f.Var(&o.set, "set", "`'path = value'`: change a value of the plan, such as 'devices.isolation valve C.opens.pins = 6'; may stand several times; what changes is told")
	f.Var(&o.gauge, "gauge", "`'compartment = error'`: a gauge known to read wrong, such as 'tubing = -3 bar' where it shows 3 bar too little; may stand several times")
	f.StringVar(&o.world, "world", "", "walk one choice of values alone, `'name = value, ...'` as a finding's line replay has it; all others are nominal")
	f.StringVar(&o.asRun, "as-run", "", "hold the record of a job, a CSV `file`, against the plan: what it shows, which states of the devices explain it, and the plan from there on; the first line names its columns, such as time [min],step,tubing pressure [psi],tubing in [bbl],weight [klbf]")
	f.StringVar(&o.after, "after", "", "`'step = file'`: write the plan that goes on after this step to this JSON file, and stop; its beginning is the state in which the step leaves the well, to be read, changed and walked as any plan")
	f.StringVar(&o.against, "against", "", "an earlier plan, a JSON `file`: tell what has changed since")
	f.Float64Var(&o.over, "over", 2, "of changed margins tell those that change by more than this many `percent` of the limit")
	f.StringVar(&o.units, "units", "plan", "`units` of the output: "+unitsNames)
	f.StringVar(&o.report, "report", "", "write the programme with its drawings to this HTML `file`, for screen and print")
	f.BoolVar(&o.floor, "floor", false, "report: leave out the appendix with pressure tables and pictures")
	f.StringVar(&o.paper, "paper", "a4", "report: `size` of the printed page, a4 or letter")
	f.StringVar(&o.revision, "revision", "", "report: the revision that its pages bear, any `text`")
	f.StringVar(&o.date, "date", "", "report: the date that its pages bear, any `text`; today where left out")
	f.StringVar(&o.csv, "csv", "", "write the schedule to this CSV `file`")
	f.BoolVar(&o.asJSON, "json", false, "print the programme as JSON")
	f.BoolVar(&o.brief, "brief", false, "with -json or -schema-of-json: the short form, verdict, findings, what moves, windows and the least margin of each kind")
	f.BoolVar(&o.pressures, "pressures", false, "print the pressure of every compartment at every device for all steps, not only for those that fail")
	f.Var(&o.explain, "explain", "show the working of every margin: symbol = equation = numbers = value; with a `step`, as in -explain 'step 7', that step alone with the force balance of the string, term by term")
	f.BoolVar(&o.ahead, "ahead", false, "windows in which all steps that follow do what is intended, too, and not only the step itself")
	f.IntVar(&o.draws.Samples, "samples", 0, "draw every value that has a tolerance from its band this many times, and print how often each thing goes wrong")
	f.Uint64Var(&o.draws.Seed, "seed", 1, "of the draws: the same seed gives the same answer")
	f.BoolVar(&o.draws.Even, "even", false, "draws: anywhere in a band alike; else normal, the band being two standard deviations to either side")
	return f
}

// run returns 0 for a plan that does what it intends, 1 for one that fails or a
// record that isn't as planned, 2 for flags, plans or records that can't be read.
func run(ctx context.Context, args []string, out, errs io.Writer) int {
	var o options
	f := flags(&o)
	err := gone(args)
	if err == nil {
		err = calculator.Parse(f, stepsExplained(args))
	}
	switch {
	case errors.Is(err, flag.ErrHelp):
		help(out, f)
		return 0
	case err != nil:
		fmt.Fprintf(errs, "%v\ninstallation -h lists the flags.\n", err)
		return 2
	case o.schema:
		text, err := schema()
		if err == nil {
			_, err = out.Write(text)
		}
		return exit(errs, err)
	case o.answer:
		return exit(errs, writeAnswerSchema(out, &o))
	case o.fresh != "":
		return exit(errs, writeNew(out, o.fresh, o.units))
	}
	if err := o.check(); err != nil {
		return exit(errs, err)
	}
	w, before, err := begin(&o)
	if err != nil {
		return exit(errs, err)
	}
	if o.derived {
		_, err := io.WriteString(out, w.written())
		return exit(errs, err)
	}
	if o.after != "" {
		if err := w.onward(ctx); err != nil {
			return exit(errs, err)
		}
		if err := w.writeRest(ctx, out, o.after); err != nil {
			return exit(errs, err)
		}
		return exit(errs, w.warn(out))
	}
	p := newProgress(errs, isTerminal(errs))
	err = w.finish(ctx, &o, before, p.tell)
	p.done()
	switch {
	case err != nil && ctx.Err() != nil:
		fmt.Fprintln(errs, "stopped before anything was known")
		return 2
	case err != nil:
		return exit(errs, err)
	}
	if err := w.write(out, &o); err != nil {
		return exit(errs, err)
	}
	if !w.programme.OK() || w.record != nil && w.record.Finding != record.AsPlanned {
		return 1
	}
	return 0
}

// writeAnswerSchema prints the schema of -json in the units of the plan.
func writeAnswerSchema(out io.Writer, o *options) error {
	data, _, err := file(o.plan)
	if err != nil {
		return err
	}
	u, err := unitsNamed(o.units, texts(data))
	if err != nil {
		return err
	}
	of := reflect.TypeFor[answer]()
	if o.brief {
		of = reflect.TypeFor[shortAnswer]()
	}
	text, err := answerSchema(u, of)
	if err == nil {
		_, err = out.Write(text)
	}
	return err
}

// exit is the exit code of an error that keeps the plan from being walked.
func exit(errs io.Writer, err error) int {
	if err == nil {
		return 0
	}
	fmt.Fprintln(errs, err)
	return 2
}

// check holds the flags against each other.
func (o *options) check() error {
	var faults []error
	if o.paper != "a4" && o.paper != "letter" {
		faults = append(faults, fmt.Errorf("-paper is %q; there are a4 and letter", o.paper))
	}
	if !(o.over >= 0 && o.over <= 100) {
		faults = append(faults, fmt.Errorf("-over is %v; it must be from 0 to 100 percent", o.over))
	}
	if o.asRun != "" && (o.world != "" || o.against != "") {
		faults = append(faults, errors.New("-as-run tells what has changed since the plan; it can't stand with -against or -world"))
	}
	for _, x := range []struct {
		name  string
		given bool
	}{{"-floor", o.floor}, {"-revision", o.revision != ""}, {"-date", o.date != ""}} {
		if x.given && o.report == "" {
			faults = append(faults, fmt.Errorf("%s is of the report: -report names its file", x.name))
		}
	}
	if o.brief && !o.asJSON {
		faults = append(faults, errors.New("-brief is of -json; it must stand with it"))
	}
	return errors.Join(faults...)
}

// write writes everything that was asked for.
func (w *work) write(out io.Writer, o *options) error {
	if o.report != "" {
		if err := writeReport(o, w); err != nil {
			return err
		}
	}
	if o.csv != "" {
		if err := writeSchedule(o.csv, w); err != nil {
			return err
		}
	}
	switch {
	case o.brief:
		return printShortJSON(out, w)
	case o.asJSON:
		return printJSON(out, w, o.over)
	}
	return printText(out, *o, w)
}

func help(out io.Writer, f *flag.FlagSet) {
	fmt.Fprintf(out, "installation: %s\n\nusage: go run ./examples/installation [flags]\n\n", question)
	f.SetOutput(out)
	f.PrintDefaults()
	fmt.Fprintf(out, "\nWhat every key of a plan means: examples/installation/PLAN.md, and -schema for machines. -new FILE writes a plan to begin with.\n")
	fmt.Fprintf(out, "\n%s\n", calculator.Caution)
}
