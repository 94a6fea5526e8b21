// Isolation tells what surface pressure moves an isolation valve, after everything
// that it has seen before.
package main

import (
	"completion.example/examples/internal/calculators/isolation"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(isolation.Command) }
