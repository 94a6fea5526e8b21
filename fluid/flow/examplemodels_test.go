package flow_test

import (
	"fmt"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
)

// Every law that readings can be fitted to, and which one a fluid follows.
func ExampleModels() {
	for _, m := range flow.Models() {
		fmt.Println(m)
	}
	fmt.Println("drilled with:", flow.Bingham(15*unit.Centipoise, 10*unit.PoundForcePer100SquareFeet).Model())
	// Output:
	// newtonian
	// bingham
	// power-law
	// herschel-bulkley
	// drilled with: bingham
}
