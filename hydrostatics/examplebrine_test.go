package hydrostatics_test

import (
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// A script: a column of calcium chloride brine in a warm well in eight lines.
// unit.Must panics; a program that serves others takes the errors.
func ExampleNewColumn_brine() {
	depth := 12_000 * unit.Foot
	brine := unit.Must(fluid.ParseBrine("CaCl2 11.3 lb/gal"))
	warm := unit.Must(hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.4 * unit.FahrenheitPer100Feet}.Profile(depth))
	column := unit.Must(hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: brine, BottomTVD: depth}}, warm, hydrostatics.Reference{}))
	for _, tvd := range []unit.Length{4000 * unit.Foot, 8000 * unit.Foot, depth} {
		p := unit.Must(column.At(tvd))
		fmt.Println(tvd, p.Rounded(5), hydrostatics.EquivalentDensity(p, tvd).Rounded(4))
	}
	// Output:
	// 4000 ft 2336.6 psi 11.24 lb/gal
	// 8000 ft 4650.6 psi 11.19 lb/gal
	// 12000 ft 6942.6 psi 11.14 lb/gal
}
