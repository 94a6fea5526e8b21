// Installation walks the programme of a completion whose devices are moved by
// pressure: what to apply at each step, which device moves, that no other can,
// what is left to every limit, and what is wrong with the plan.
package main

import (
	"context"
	_ "embed"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

//go:embed plans/demo.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

const question = "what to apply at each step, which device moves, and can any other?"

// options are the flags.
type options struct {
	plan, against, report string
	asJSON, pressures     bool
	explain               bool
	draws                 draws
}

func flags(o *options) *flag.FlagSet {
	f := flag.NewFlagSet("installation", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.StringVar(&o.plan, "plan", "", "the plan, a JSON `file`; the embedded demo where left out")
	f.StringVar(&o.against, "against", "", "an earlier plan, a JSON `file`: show only what has changed since")
	f.StringVar(&o.report, "report", "", "write the programme with pictures to this HTML `file`")
	f.BoolVar(&o.asJSON, "json", false, "print the programme as JSON")
	f.BoolVar(&o.pressures, "pressures", false, "print the pressure of every compartment at every device for all steps, not only for those that fail")
	f.BoolVar(&o.explain, "explain", false, "show the working of every margin: symbol = equation = numbers = value")
	f.IntVar(&o.draws.Samples, "samples", 0, "draw every threshold from its band this many times and print how often each thing goes wrong")
	f.Uint64Var(&o.draws.Seed, "seed", 1, "of the draws: the same seed gives the same answer")
	f.Float64Var(&o.draws.Density, "spread-density", 0, "draws: standard deviation of densities, as a share such as 0.005")
	f.TextVar(&o.draws.Formation, "spread-formation", unit.Pressure(0), "draws: standard deviation of formation pressures")
	f.TextVar(&o.draws.Gauge, "spread-gauge", unit.Pressure(0), "draws: standard deviation of the surface gauge")
	f.TextVar(&o.draws.Temperature, "spread-temperature", unit.TemperatureDifference(0), "draws: standard deviation of temperature")
	return f
}

// run returns 0 for a plan that does what it intends, 1 for one that fails, 2
// for flags or plans that can't be read.
func run(args []string, out, errs io.Writer) int {
	var o options
	f := flags(&o)
	if err := calculator.Parse(f, args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintf(out, "installation: %s\n\nusage: go run ./examples/installation [flags]\n\n", question)
			f.SetOutput(out)
			f.PrintDefaults()
			fmt.Fprintf(out, "\n%s\n", calculator.Caution)
			return 0
		}
		fmt.Fprintf(errs, "%v\ninstallation -h lists the flags.\n", err)
		return 2
	}
	plan, programme, err := walk(o.plan)
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	var before *sequence.Programme
	if o.against != "" {
		if _, before, err = walk(o.against); err != nil {
			fmt.Fprintln(errs, err)
			return 2
		}
	}
	var odds *risk
	if o.draws.Samples != 0 {
		if odds, err = sample(context.Background(), plan, o.draws); err != nil {
			fmt.Fprintln(errs, err)
			return 2
		}
	}
	if o.report != "" {
		if err := writeReport(o.report, plan, programme, odds); err != nil {
			fmt.Fprintln(errs, err)
			return 2
		}
	}
	if o.asJSON {
		err = printJSON(out, programme, before, odds)
	} else {
		err = printText(out, o, programme, before, odds)
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	if !programme.OK() {
		return 1
	}
	return 0
}

// walk reads a plan, or the demo where no file is named, and walks it.
func walk(file string) (*sequence.Plan, *sequence.Programme, error) {
	data := demo
	name := "the embedded demo"
	if file != "" {
		var err error
		if data, err = os.ReadFile(file); err != nil {
			return nil, nil, err
		}
		name = file
	}
	plan, err := sequence.Read(data)
	if err != nil {
		return nil, nil, fmt.Errorf("%s can't be walked:\n%w", name, err)
	}
	programme, err := sequence.Check(context.Background(), plan, sequence.Options{})
	if err != nil {
		return nil, nil, fmt.Errorf("%s can't be walked:\n%w", name, err)
	}
	return plan, programme, nil
}

func printJSON(out io.Writer, p, before *sequence.Programme, odds *risk) error {
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	d := struct {
		Caution string `json:"caution"`
		*sequence.Programme
		Changes []sequence.Change `json:"changes,omitempty"`
		Risk    *risk             `json:"risk,omitempty"`
	}{calculator.Caution, p, nil, odds}
	if before != nil {
		d.Changes = sequence.Changes(before, p)
	}
	return e.Encode(d)
}
