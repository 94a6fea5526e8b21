// Gascolumn tells the pressure under a column of natural gas, nitrogen or methane:
// a shut-in well, a gas cap, a nitrogen cushion.
package main

import (
	"completion.example/examples/internal/calculators/gascolumn"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(gascolumn.Command) }
