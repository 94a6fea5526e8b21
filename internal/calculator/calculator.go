// Package calculator is the frame that every reference calculator stands in:
// flags with units, inputs as understood, working, tables, the answer, and the
// caution. A calculator's own file holds only its flags and its call of the
// library.
//
// Every calculator has -json (for machines), -md (Markdown), -units (field, si, or
// those of the inputs) and -explain (the working shown: symbol = equation =
// numbers = value, source). It exits with 0 when it has an
// answer, 1 when the calculation has none, 2 when the flags are wrong. Faults
// go to standard error, all of them at once.
package calculator

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/working"
)

// Caution stands on every output.
const Caution = "Caution: an engineering aid. Pressure, tension and gas kill: verify every input; the equipment maker's rated data, " +
	"local regulation, well-control practice and the review of a competent engineer come first."

// Command is one calculator.
type Command struct {
	Name     string // its folder under examples
	Question string // what it answers, in one line
	// Setup adds the flags and returns what is run after they are read.
	Setup func(flags *flag.FlagSet) func() (Answer, error)
	// Picture adds -picture FILE; the answer then has a Draw.
	Picture bool
}

// Answer is what a calculator prints.
type Answer struct {
	Results   []Result
	Steps     []working.Step
	Tables    []Table
	Notes     []string   // findings in words: ranges, warnings, what follows
	Published *Published // where the defaults reproduce a published case
	Draw      func(io.Writer) error
	Failed    bool // there is an answer, and it is no: exit 1
}

// Result is one named value: a quantity, a temperature, a duration, a band, a
// number or a word. What it is for says which unit it is shown in; it may be left
// out where its type says so, and for a working.Value, whose unit does.
type Result struct {
	Name  string
	Value any
	For   display.Purpose
}

// Table is a named table of values like those of Result; For holds what its
// columns are for, as far as they need it.
type Table struct {
	Name   string
	Header []string
	Rows   [][]any
	For    []display.Purpose
}

// Published is a printed answer beside ours.
type Published struct {
	Name    string
	Printed any // as printed in the source
	Ours    any
	Source  string
}

// Exit codes.
const (
	exitOK       = 0
	exitNoAnswer = 1
	exitBadInput = 2
)

// Main runs c on the command line and exits.
func Main(c Command) { os.Exit(c.Run(os.Args[1:], os.Stdout, os.Stderr)) }

// Run runs c and returns the exit code.
func (c Command) Run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet(c.Name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	units := addUnits(flags)
	run := c.Setup(flags)
	asJSON := flags.Bool("json", false, "print the answer as JSON; one fixed unit for each field, field units unless -units is given")
	asMarkdown := flags.Bool("md", false, "print the answer as Markdown")
	explain := flags.Bool("explain", false, "show the working: symbol = equation = numbers = value, and the source")
	picture := new(string)
	if c.Picture {
		picture = flags.String("picture", "", "write the picture to this SVG `file`")
	}
	typed, stop := record(flags)
	err := Parse(flags, args)
	stop()
	if err != nil {
		if errors.Is(err, flag.ErrHelp) {
			c.help(out, flags)
			return exitOK
		}
		fmt.Fprintf(errs, "%v\n%s -h lists the flags.\n", err, c.Name)
		return exitBadInput
	}
	if _, asked := typed[unitsFlag]; *asJSON && !asked {
		units.name = display.Field().String()
	}
	units.settle(flags, typed)
	answer, err := run()
	if err != nil {
		var bad BadInput
		if errors.As(err, &bad) {
			fmt.Fprintf(errs, "%v\n%s -h lists the flags.\n", bad.Err, c.Name)
			return exitBadInput
		}
		fmt.Fprintf(errs, "no answer: %v\n", err)
		return exitNoAnswer
	}
	if *picture != "" {
		if err := draw(answer, *picture); err != nil {
			fmt.Fprintln(errs, err)
			return exitNoAnswer
		}
	}
	page := page{command: c, answer: answer, inputs: inputs(flags, units, typed), explain: *explain, units: units}
	write := page.text
	switch {
	case *asJSON:
		write = page.json
	case *asMarkdown:
		write = page.markdown
	}
	if err := write(out); err != nil {
		fmt.Fprintln(errs, err)
		return exitNoAnswer
	}
	if answer.Failed {
		return exitNoAnswer
	}
	return exitOK
}

// BadInput marks an error of a run as a fault of the flags: exit code 2.
type BadInput struct{ Err error }

func (b BadInput) Error() string { return b.Err.Error() }
func (b BadInput) Unwrap() error { return b.Err }

func draw(a Answer, file string) error {
	if a.Draw == nil {
		return errors.New("this answer has no picture")
	}
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	return errors.Join(a.Draw(f), f.Close())
}

func (c Command) help(out io.Writer, flags *flag.FlagSet) {
	fmt.Fprintf(out, "%s: %s\n\nusage: go run ./examples/%s [flags]\n\n", c.Name, c.Question, c.Name)
	flags.SetOutput(out)
	defaults(flags)
	flags.PrintDefaults()
	fmt.Fprintf(out, "\n%s\n", Caution)
}
