// Stretch tells how much longer a string hangs than it was measured, and what
// pull stretches it.
package main

import (
	"completion.example/examples/internal/calculators/stretch"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(stretch.Command) }
