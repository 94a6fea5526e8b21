package unit

// Density is mass per volume, in kg/m³.
// The zero value is zero.
type Density float64

// Units of density: multiply a number by one, or divide by one with In.
const (
	KilogramPerCubicMetre  Density = 1                                                  // kg/m3
	PoundPerGallon         Density = 0.45359237 / (231 * 0.0254 * 0.0254 * 0.0254)      // lb/gal; pound per US gallon
	GramPerCubicCentimetre Density = 1000                                               // g/cm3
	PoundPerCubicFoot      Density = 0.45359237 / (0.3048 * 0.3048 * 0.3048)            // lb/ft3
	PoundPerBarrel         Density = 0.45359237 / (42 * 231 * 0.0254 * 0.0254 * 0.0254) // lb/bbl; of additives and salt
)

var densityUnits = table{
	quantity: "density",
	symbols: []symbol{
		{"kg/m3", float64(KilogramPerCubicMetre)},
		{"lb/gal", float64(PoundPerGallon)},
		{"g/cm3", float64(GramPerCubicCentimetre)},
		{"lb/ft3", float64(PoundPerCubicFoot)},
		{"lb/bbl", float64(PoundPerBarrel)},
	},
	trade: []trade{
		{"lb/gal", float64(PoundPerGallon), 0},
	},
}

// In returns d counted in u, for example d.In(unit.PoundPerGallon).
func (d Density) In(u Density) float64 { return float64(d / u) }

// String writes d without loss, in the trade's unit.
func (d Density) String() string { return densityUnits.format(float64(d)) }

// Rounded writes d in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (d Density) Rounded(digits int) string { return densityUnits.rounded(float64(d), digits) }

// MarshalText writes d without loss; NaN and infinities are errors.
func (d Density) MarshalText() ([]byte, error) { return densityUnits.marshal(float64(d)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (d *Density) UnmarshalText(text []byte) error {
	x, err := densityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*d = Density(x)
	return nil
}
