package display_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// One pressure as each system of units shows it.
func ExampleNames() {
	for _, name := range display.Names() {
		s, err := display.Named(name)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(name, s.Format(5000*unit.PSI, display.Pressure))
	}
	// Output:
	// field 5000 psi
	// si 344.7 bar
	// plan 5000 psi
}
