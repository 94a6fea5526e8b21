package unit

// Volume is a volume, in m³.
// The zero value is zero.
type Volume float64

// Units of volume: multiply a number by one, or divide by one with In.
const (
	CubicMetre Volume = 1                                   // m3
	Barrel     Volume = 42 * 231 * 0.0254 * 0.0254 * 0.0254 // bbl; 42 US gallons, exact
	Gallon     Volume = 231 * 0.0254 * 0.0254 * 0.0254      // gal; US gallon, 231 in³, exact
	CubicFoot  Volume = 0.3048 * 0.3048 * 0.3048            // ft3; exact
	CubicInch  Volume = 0.0254 * 0.0254 * 0.0254            // in3; exact
	Litre      Volume = 0.001                               // L
	Millilitre Volume = 1e-6                                // mL
)

var volumeUnits = table{
	quantity: "volume",
	symbols: []symbol{
		{"m3", float64(CubicMetre)},
		{"bbl", float64(Barrel)},
		{"gal", float64(Gallon)},
		{"ft3", float64(CubicFoot)},
		{"in3", float64(CubicInch)},
		{"L", float64(Litre)},
		{"mL", float64(Millilitre)},
	},
	trade: []trade{
		{"bbl", float64(Barrel), 42 * 231 * 0.0254 * 0.0254 * 0.0254},
		{"gal", float64(Gallon), 0},
	},
}

// In returns v counted in u, for example v.In(unit.Barrel).
func (v Volume) In(u Volume) float64 { return float64(v / u) }

// String writes v without loss, in the trade's unit.
func (v Volume) String() string { return volumeUnits.format(float64(v)) }

// Rounded writes v in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (v Volume) Rounded(digits int) string { return volumeUnits.rounded(float64(v), digits) }

// MarshalText writes v without loss; NaN and infinities are errors.
func (v Volume) MarshalText() ([]byte, error) { return volumeUnits.marshal(float64(v)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (v *Volume) UnmarshalText(text []byte) error {
	x, err := volumeUnits.parse(string(text))
	if err != nil {
		return err
	}
	*v = Volume(x)
	return nil
}
