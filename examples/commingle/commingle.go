// Commingle tells what zones give when they flow together through their chokes.
package main

import (
	"completion.example/examples/internal/calculators/commingle"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(commingle.Command) }
