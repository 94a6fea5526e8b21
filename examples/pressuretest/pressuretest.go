// Pressuretest tells what a pressure test takes to pump, and reads its record.
package main

import (
	"completion.example/examples/internal/calculators/pressuretest"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(pressuretest.Command) }
