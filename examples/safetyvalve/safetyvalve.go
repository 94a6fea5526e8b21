// Safetyvalve tells how deep a surface-controlled safety valve may be set, what
// opens and keeps it open, and whether its leak is within the limit.
package main

import (
	"completion.example/examples/internal/calculators/safetyvalve"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(safetyvalve.Command) }
