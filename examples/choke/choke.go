// Choke tells how far open a choke must be, what it passes, or what it costs.
package main

import (
	"completion.example/examples/internal/calculators/choke"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(choke.Command) }
