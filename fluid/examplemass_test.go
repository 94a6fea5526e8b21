package fluid_test

import (
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
)

func ExampleBatch_Mass() {
	b := fluid.Batch{Volume: 100 * unit.Barrel, Density: 10 * unit.PoundPerGallon}
	fmt.Println(b.Mass().Rounded(5))
	// Output: 42000 lb
}

// Gravity 0.65 is 0.65 of the 28.96 g/mol of air.
func ExampleGas_MolarMass() {
	fmt.Printf("%.2f g/mol\n", 1000*fluid.Gas{Gravity: 0.65}.MolarMass())
	// Output: 18.83 g/mol
}

func ExampleGasMixture_MolarMass() {
	m := fluid.GasMixture{Methane: 0.9, Ethane: 0.05, CarbonDioxide: 0.05}
	fmt.Printf("%.2f g/mol\n", 1000*m.MolarMass()) // 0.9 · 16.04 + 0.05 · 30.07 + 0.05 · 44.01
	// Output: 18.14 g/mol
}

func ExampleGasState_ReducedDensity() {
	s, err := fluid.Gas{Gravity: 0.65}.State(3000*unit.PSI, unit.Fahrenheit(150))
	fmt.Printf("%.4f = 0.27 · %.3f/(%.4f · %.3f) %v\n", s.ReducedDensity(), s.Ppr, s.Z, s.Tpr, err)
	// Output: 0.8444 = 0.27 · 4.499/(0.8614 · 1.670) <nil>
}

// Well Control for Completions and Interventions (2018), pp. 31-33, works columns
// of gas in this way.
func ExampleAverageGasColumn_Bottom() {
	c := fluid.AverageGasColumn{Gravity: 0.65, Z: 0.9, Temperature: unit.Fahrenheit(150), Height: 8000 * unit.Foot}
	fmt.Printf("%.4f %s\n", c.Factor(), c.Bottom(3000*unit.PSI).Rounded(5))
	// Output: 1.1944 3585.9 psi
}
