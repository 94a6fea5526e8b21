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
	"strings"

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
	a := c.ask(args)
	if a.message != "" {
		fmt.Fprint(errs, a.message)
	}
	switch {
	case a.err != nil:
		return a.code
	case a.help:
		c.help(out, a.flags)
		return exitOK
	}
	if a.picture != "" {
		if err := draw(a.answer, a.picture); err != nil {
			fmt.Fprintln(errs, err)
			return exitNoAnswer
		}
	}
	write := a.text
	switch {
	case a.asJSON:
		write = a.json
	case a.asMarkdown:
		write = a.markdown
	}
	if err := write(out); err != nil {
		fmt.Fprintln(errs, err)
		return exitNoAnswer
	}
	return a.code
}

// asked is a command whose flags were read and whose answer was worked out.
type asked struct {
	page
	flags              *flag.FlagSet
	help, settled      bool // settled: the units of the output are known
	asJSON, asMarkdown bool
	picture            string
	code               int
	err                error
	message            string // what people are told of err
}

// set adds all flags of c to a, and returns what is run after they are read.
func (a *asked) set(c Command) func() (Answer, error) {
	a.command = c
	a.flags = flag.NewFlagSet(c.Name, flag.ContinueOnError)
	a.flags.SetOutput(io.Discard)
	a.units = addUnits(a.flags)
	run := c.Setup(a.flags)
	a.flags.BoolVar(&a.asJSON, "json", false, "print the answer as JSON; one fixed unit for each field, field units unless -units is given")
	a.flags.BoolVar(&a.asMarkdown, "md", false, "print the answer as Markdown")
	a.flags.BoolVar(&a.explain, "explain", false, "show the working: symbol = equation = numbers = value, and the source")
	if c.Picture {
		a.flags.StringVar(&a.picture, "picture", "", "write the picture to this SVG `file`")
	}
	return run
}

// ask reads the flags and works out the answer.
func (c Command) ask(args []string) *asked {
	a := &asked{}
	run := a.set(c)
	typed, stop := record(a.flags)
	err := Parse(a.flags, args)
	stop()
	if errors.Is(err, flag.ErrHelp) {
		a.help = true
		return a
	}
	if err != nil {
		return a.fail(exitBadInput, err)
	}
	if _, given := typed[unitsFlag]; a.asJSON && !given {
		a.units.name = display.Field().String()
	}
	a.units.settle(a.flags, typed)
	a.settled = true
	if a.answer, err = run(); err != nil {
		var bad BadInput
		if errors.As(err, &bad) {
			return a.fail(exitBadInput, bad.Err)
		}
		return a.fail(exitNoAnswer, err)
	}
	a.inputs = inputs(a.flags, a.units, typed)
	if a.answer.Failed {
		a.code = exitNoAnswer
	}
	return a
}

// fail keeps what went wrong and the words for it.
func (a *asked) fail(code int, err error) *asked {
	a.code, a.err = code, err
	text := err.Error()
	if a.settled {
		text = a.units.Rewrite(text)
	}
	if code == exitBadInput {
		a.message = fmt.Sprintf("%s\n%s -h lists the flags.\n", text, a.command.Name)
	} else {
		a.message = fmt.Sprintf("no answer: %s\n", text)
	}
	return a
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
	fmt.Fprintf(out, "%s\n\nusage: go run ./examples/%s [flags]\n\n", strings.Join(Wrap(c.Name+": "+c.Question, Width), "\n  "), c.Name)
	flags.SetOutput(out)
	defaults(flags)
	flags.PrintDefaults()
	fmt.Fprintf(out, "\n%s\n", strings.Join(Wrap(Caution, Width), "\n"))
}
