// Freepoint tells where a string is stuck, from its stretch under a pull.
package main

import (
	"completion.example/examples/internal/calculators/freepoint"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(freepoint.Command) }
