// Ratings tells what pressures and forces a pipe of the catalogue bears.
package main

import (
	"completion.example/examples/internal/calculators/ratings"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(ratings.Command) }
