package validation

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var unitSuite = Suite{
	File: "unit.csv",
	Quantities: map[string]Evaluator{
		"pressure":  convert[unit.Pressure],
		"density":   convert[unit.Density],
		"volume":    convert[unit.Volume],
		"flow rate": convert[unit.FlowRate],
	},
}

// convert reads x in one unit; the comparison counts it in another.
func convert[Q unit.Scalar](in *published.Inputs) (any, error) {
	var x Q
	in.Read("x", &x)
	return x, nil
}
