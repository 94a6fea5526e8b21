// Utube tells how tubing and annulus come to rest when a port between them
// opens.
package main

import (
	"completion.example/examples/internal/calculators/utube"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(utube.Command) }
