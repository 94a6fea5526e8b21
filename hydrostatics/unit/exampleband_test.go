package unit_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

func ExampleWithin() {
	b := unit.Within(3000*unit.PSI, 0.05)
	fmt.Println(b.Rounded(5))
	fmt.Println(b.Shift(-500 * unit.PSI).Rounded(5))
	fmt.Println(b.Times(-1).Rounded(5))
	// Output:
	// 2850 psi .. 3000 psi .. 3150 psi
	// 2350 psi .. 2500 psi .. 2650 psi
	// -3150 psi .. -3000 psi .. -2850 psi
}

func ExampleTemperature_Rankine() {
	fmt.Printf("%.2f degR, %s\n", unit.Fahrenheit(60).Rankine(), unit.Rankine(671.67).Rounded(4))
	// Output: 519.67 degR, 212 degF
}
