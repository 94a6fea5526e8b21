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

// In returns a counted in u, for example a.In(unit.SquareInch).
func (a Area) In(u Area) float64 { return float64(a / u) }

// String writes a without loss, in the trade's unit.
func (a Area) String() string { return areaUnits.format(float64(a)) }

// Rounded writes a in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (a Area) Rounded(digits int) string { return areaUnits.rounded(float64(a), digits) }

// MarshalText writes a without loss; NaN and infinities are errors.
func (a Area) MarshalText() ([]byte, error) { return areaUnits.marshal(float64(a)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (a *Area) UnmarshalText(text []byte) error {
	x, err := areaUnits.parse(string(text))
	if err != nil {
		return err
	}
	*a = Area(x)
	return nil
}
