// Circulation tells pump pressure and equivalent circulating density while one
// fluid goes round, and surge and swab while the pipe moves.
package main

import (
	"completion.example/examples/internal/calculators/circulation"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(circulation.Command) }
