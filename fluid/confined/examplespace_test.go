package confined_test

import (
	"fmt"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
)

func ExampleSystem_Compressibility() {
	s := confined.System{
		{Volume: 100 * unit.Barrel, Fluid: 3e-6 * unit.PerPSI, Walls: 0.4e-6 * unit.PerPSI},
		{Volume: 300 * unit.Barrel, Fluid: 4e-6 * unit.PerPSI, Walls: 0.2e-6 * unit.PerPSI},
	}
	fmt.Println(s.Compressibility().Rounded(3)) // (100 · 3.4 + 300 · 4.2)/400
	// Output: 4e-06 1/psi
}

// Heated by 100 °F all around, an annulus of carbon steel whose ends can't give
// grows by 2 (1 + ν) α ΔT = 2 · 1.28 · 6.9e-6 · 100.
func ExampleSpace_Expansion() {
	inner := confined.Tube{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 6.9e-6 * unit.PerFahrenheit}
	outer := confined.Tube{OD: 9.625 * unit.Inch, ID: 8.681 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 6.9e-6 * unit.PerFahrenheit}
	hotter := 100 * unit.FahrenheitDifference
	fmt.Printf("%.6f\n", confined.Space{Outer: outer, Inner: &inner}.Expansion(hotter, hotter))
	// Output: 0.001766
}

func ExamplePresets() {
	for _, c := range confined.Presets()[:2] {
		fmt.Println(c.Name, c.Hold, c.MostDecline)
	}
	// Output:
	// us-offshore-casing 30m0s 0.1
	// alaska-injection 30m0s 0.1
}
