// Surge tells how fast a completion may be run and pulled, so that the open
// formation neither breaks down nor comes in.
package main

import (
	"completion.example/examples/internal/calculators/surge"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(surge.Command) }
