// Release tells what pull parts a release joint, what bears it, and what follows
// when it parts and when it doesn't.
package main

import (
	"completion.example/examples/internal/calculators/release"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(release.Command) }
