// Stress tells how near a pipe is to its limits under pressure, pull, bending
// and torque.
package main

import (
	"completion.example/examples/internal/calculators/stress"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(stress.Command) }
