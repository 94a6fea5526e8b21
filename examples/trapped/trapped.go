// Trapped tells what pressure a closed annulus or pipe comes to when it is
// heated or squeezed, and what has to be bled.
package main

import (
	"completion.example/examples/internal/calculators/trapped"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(trapped.Command) }
