// Column tells the pressure in a column of layered fluids at every depth.
package main

import (
	"completion.example/examples/internal/calculators/column"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(column.Command) }
