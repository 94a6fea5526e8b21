package sleeve_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sleeve"
)

// 400 to 600 lbf of seal friction, and 0.2 in² of it for each psi across.
func ExampleSleeve_Resistance() {
	s := sleeve.Sleeve{
		Friction:        unit.Band[unit.Force]{Least: 400 * unit.PoundForce, Nominal: 500 * unit.PoundForce, Greatest: 600 * unit.PoundForce},
		Across:          unit.Band[unit.Pressure]{Least: -1000 * unit.PSI, Greatest: 500 * unit.PSI},
		PerDifferential: 0.2 * unit.SquareInch,
	}
	fmt.Println(s.Resistance().Rounded(4))
	// Output: 400 lbf .. 500 lbf .. 800 lbf
}
