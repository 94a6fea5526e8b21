// Survey tells where a well goes: depth, north, east and dogleg severity along
// the hole by minimum curvature.
package main

import (
	"completion.example/examples/internal/calculators/survey"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(survey.Command) }
