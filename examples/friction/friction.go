// Friction tells what a fluid loses in pipe or annulus, by its viscometer
// readings or by its constants.
package main

import (
	"completion.example/examples/internal/calculators/friction"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(friction.Command) }
