// Gaswell tells what a gas well gives through a choke, and what every size of choke
// makes of it.
package main

import (
	"completion.example/examples/internal/calculators/gaswell"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(gaswell.Command) }
