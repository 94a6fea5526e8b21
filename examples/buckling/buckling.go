// Buckling tells at which compression a pipe buckles in its hole, and what the
// helix does to it: pitch, shortening, contact, bending, and what still passes
// through.
package main

import (
	"completion.example/examples/internal/calculators/buckling"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(buckling.Command) }
