// Hookload tells what the weight indicator shows while a string is run, pulled
// and rotated in a build-and-hold well, and what of a pull reaches its lower end.
package main

import (
	"completion.example/examples/internal/calculators/hookload"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(hookload.Command) }
