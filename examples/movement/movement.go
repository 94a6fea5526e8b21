// Movement tells how far the seals of a tubing string travel, or what force the
// packer takes, when pressures, fluids and temperature change in a vertical well.
package main

import (
	"completion.example/examples/internal/calculators/movement"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(movement.Command) }
