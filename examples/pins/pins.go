// Pins tells at what pressure shear pins part, and how many of the pins at hand
// suit a wanted window.
package main

import (
	"completion.example/examples/internal/calculators/pins"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(pins.Command) }
