// Capacity tells what a pipe and the annulus around it hold.
package main

import (
	"completion.example/examples/internal/calculators/capacity"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(capacity.Command) }
