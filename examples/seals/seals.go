// Seals tells how far the seals of a string travel, where to space them out, and
// what weights stab them in and pull them out.
package main

import (
	"completion.example/examples/internal/calculators/seals"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(seals.Command) }
