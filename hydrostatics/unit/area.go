package unit

// Area is a cross-section; a capacity such as bbl/ft is an area too, in m².
// The zero value is zero.
type Area float64

// Units of area: multiply a number by one, or divide by one with In.
const (
	SquareMetre      Area = 1                                            // m2
	SquareInch       Area = 0.0254 * 0.0254                              // in2; exact
	SquareFoot       Area = 0.3048 * 0.3048                              // ft2; exact
	SquareCentimetre Area = 1e-4                                         // cm2
	SquareMillimetre Area = 1e-6                                         // mm2
	BarrelPerFoot    Area = 42 * 231 * 0.0254 * 0.0254 * 0.0254 / 0.3048 // bbl/ft; linear capacity
	LitrePerMetre    Area = 0.001                                        // L/m; linear capacity
)

var areaUnits = table{
	quantity: "area",
	symbols: []symbol{
		{"m2", float64(SquareMetre)},
		{"in2", float64(SquareInch)},
		{"ft2", float64(SquareFoot)},
		{"cm2", float64(SquareCentimetre)},
		{"mm2", float64(SquareMillimetre)},
		{"bbl/ft", float64(BarrelPerFoot)},
		{"L/m", float64(LitrePerMetre)},
	},
	trade: []trade{
		{"in2", float64(SquareInch), 0},
		{"bbl/ft", float64(BarrelPerFoot), 0}, // only where it is the shorter text
	},
}
