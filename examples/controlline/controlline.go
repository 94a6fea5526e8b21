// Controlline tells what a control line stands and takes, how long a shift lasts,
// and what volumes tell a good shift from a leak.
package main

import (
	"completion.example/examples/internal/calculators/controlline"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(controlline.Command) }
