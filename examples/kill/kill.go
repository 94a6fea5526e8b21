// Kill is the pressure schedule of circulating a shut-in well dead, held against
// the fracture of its weakest point.
package main

import (
	"completion.example/examples/internal/calculators/kill"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(kill.Command) }
