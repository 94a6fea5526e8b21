// Sleeves tells in what order sliding sleeves on a common close line are shifted,
// what each line gives and takes, and what one wrong line would move.
package main

import (
	"completion.example/examples/internal/calculators/sleeves"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(sleeves.Command) }
