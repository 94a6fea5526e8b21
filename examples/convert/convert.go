// Convert turns a quantity into every unit that it has, with the exact factor, and
// tells what the trade's rounded factors make of it.
package main

import (
	"completion.example/examples/internal/calculators/convert"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(convert.Command) }
