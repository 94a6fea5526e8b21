package working_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// A line of working, as a result's Steps has it.
func ExampleIn() {
	s := working.Step{
		Name: "pressure of the column", Symbol: "p", Equation: "ρ*g*h",
		Inputs: []working.Input{{Symbol: "ρ", Value: working.Of(9.2 * unit.PoundPerGallon)}, {Symbol: "h", Value: working.In(2743.2*unit.Metre, unit.Foot, "ft")}},
		Value:  working.Of(4301.3 * unit.PSI),
	}
	fmt.Println(s.Inputs[1].Value, s.Value)
	// Output: 9000 ft 4301.3 psi
}
