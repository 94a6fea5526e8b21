// Package convert turns a quantity into every unit that it has, with the exact factor, and
// tells what the trade's rounded factors make of it.
package convert

import (
	"flag"

	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "convert",
	Question: "what is a quantity in other units, exactly, and what does the trade's rounded factor cost?",
	Setup:    setup,
}

// input is the flags.
type input struct{ value, to, quantity string }

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	flags.StringVar(&in.value, "value", "9.2 lb/gal", "what is to be converted: a number with its unit")
	flags.StringVar(&in.to, "in", "psi/ft", "unit wanted; empty for all of them alone")
	flags.StringVar(&in.quantity, "quantity", "", "what it is, where a unit is that of several quantities; empty takes what -in fits, or the first")
	return func() (calculator.Answer, error) { return in.answer() }
}
