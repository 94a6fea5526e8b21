package unit_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"completion.example/hydrostatics/unit"
)

func Example() {
	p := 5000 * unit.PSI
	fmt.Println(p)
	fmt.Printf("%.2f bar\n", p.In(unit.Bar))
	fmt.Println((345 * unit.Bar).Rounded(5))
	// Output:
	// 5000 psi
	// 344.74 bar
	// 5003.8 psi
}

// One psi is 6.894757 kPa (NIST Special Publication 811, 2008, B.8).
func ExamplePressure_In() {
	fmt.Printf("%.6f kPa\n", (1 * unit.PSI).In(unit.Kilopascal))
	// Output: 6.894757 kPa
}

func ExamplePressure_UnmarshalText() {
	var p unit.Pressure
	fmt.Println(p.UnmarshalText([]byte("35 MPa")), p.Rounded(6))
	err := p.UnmarshalText([]byte("9000 ft"))
	fmt.Println(err)
	var e *unit.ParseError
	fmt.Println(errors.As(err, &e), e.Quantity, e.Text)
	// Output:
	// <nil> 5076.32 psi
	// unit: cannot read "9000 ft" as a pressure: "ft" is a unit of length; write a number with one of Pa, psi, kPa, MPa, bar, atm, ksi, kgf/cm2, lbf/100ft2
	// true pressure 9000 ft
}

func ExampleLength() {
	var casing unit.Length
	set := flag.NewFlagSet("", flag.ContinueOnError)
	set.TextVar(&casing, "casing", 7*unit.Inch, "outer diameter")
	_ = set.Parse([]string{"-casing", "9-5/8 in"})
	fmt.Println(casing, casing.In(unit.Millimetre))
	// Output: 9.625 in 244.475
}

func ExampleTemperature() {
	surface, bottom := unit.Fahrenheit(70), unit.Celsius(100)
	fmt.Println(bottom.Rounded(4), bottom.Sub(surface).Rounded(4), surface.Add(20*unit.FahrenheitDifference).Rounded(4))
	// Output: 212 degF 142 degF 90 degF
}

func ExampleBand() {
	var shear unit.Band[unit.Pressure]
	_ = shear.UnmarshalText([]byte("3000 psi +/- 5 %"))
	fmt.Println(shear.Rounded(4), shear.Contains(3100*unit.PSI), shear.Contains(3200*unit.PSI))
	// Output: 2850 psi .. 3000 psi .. 3150 psi true false
}

func ExampleSignificant() {
	fmt.Println(unit.Significant(12345.6, 3), unit.Significant(0.012345, 3), unit.Significant(1.5e-6, 2))
	// Output: 12346 0.0123 1.5e-06
}

func ExampleDensity_MarshalText() {
	text, _ := json.Marshal(map[string]unit.Density{"brine": 9.2 * unit.PoundPerGallon})
	fmt.Println(string(text))
	// Output: {"brine":"9.2 lb/gal"}
}
