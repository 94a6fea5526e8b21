// Envelope holds loads against what a packer bears, its polygon given or built
// from the ratings of its parts.
package main

import (
	"completion.example/examples/internal/calculators/envelope"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(envelope.Command) }
