package fluid_test

import (
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
)

// IAPWS AN3-07, region 1: 0.00112892188 1/MPa and 0.00164118128 1/K at 3 MPa
// absolute and 500 K.
func ExampleWater_Compressibility() {
	p, t := 3*unit.Megapascal-unit.Atmosphere, unit.Kelvin(500)
	c, _ := fluid.Water{}.Compressibility(p, t)
	a, err := fluid.Water{}.Expansivity(p, t)
	fmt.Printf("%.11f 1/MPa, %.11f 1/K %v\n", float64(c)*1e6, float64(a), err)
	// Output: 0.00112892188 1/MPa, 0.00164118128 1/K <nil>
}

// A gas gives way some 150 times as readily as a brine.
func ExampleGas_Compressibility() {
	g, err := fluid.Gas{Gravity: 0.65}.Compressibility(3000*unit.PSI, unit.Fahrenheit(150))
	b := fluid.Brine{At70F: 9.5 * unit.PoundPerGallon, Expansion: 2.54e-4 * unit.PerFahrenheit, Compression: 1.98e-6 * unit.PerPSI}
	l, _ := b.Compressibility(3000*unit.PSI, unit.Fahrenheit(150))
	fmt.Printf("%.0f times %v\n", float64(g/l), err)
	// Output: 148 times <nil>
}

// The salt in a barrel of 20 % sodium chloride brine.
func ExampleSolution_Concentration() {
	c, err := fluid.Solution{Salt: fluid.SodiumChloride, Fraction: 0.2}.Concentration(unit.Fahrenheit(70))
	fmt.Printf("%.1f lb/bbl %v\n", c.In(unit.Density(unit.Pound)/unit.Density(unit.Barrel)), err)
	// Output: 80.4 lb/bbl <nil>
}
