// Balance tells over- or underbalance at a formation, the kill density, and how
// to leave a well underbalanced by a wanted pressure.
package main

import (
	"completion.example/examples/internal/calculators/balance"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(balance.Command) }
