// Bullhead tells what pressures a well shows while kill fluid is pumped into it
// behind what has come in, and between which limits they must stay.
package main

import (
	"completion.example/examples/internal/calculators/bullhead"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(bullhead.Command) }
