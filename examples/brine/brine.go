// Brine tells the density of a clear brine in the well, what to mix at surface, how
// to weight it up or cut it back, and where it crystallises.
package main

import (
	"completion.example/examples/internal/calculators/brine"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(brine.Command) }
