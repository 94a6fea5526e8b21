// Displacement tells pressures, volumes, strokes and times while a well is
// displaced from one fluid to another.
package main

import (
	"completion.example/examples/internal/calculators/displacement"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(displacement.Command) }
