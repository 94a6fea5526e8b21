package unit

// Gradient is pressure per length, in Pa/m.
// The zero value is zero.
type Gradient float64

// Units of pressure gradient: multiply a number by one, or divide by one with In.
const (
	PascalPerMetre     Gradient = 1                                                 // Pa/m
	PSIPerFoot         Gradient = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 0.3048 // psi/ft
	KilopascalPerMetre Gradient = 1000                                              // kPa/m
	BarPerMetre        Gradient = 1e5                                               // bar/m
)

var gradientUnits = table{
	quantity: "pressure gradient",
	symbols: []symbol{
		{"Pa/m", float64(PascalPerMetre)},
		{"psi/ft", float64(PSIPerFoot)},
		{"kPa/m", float64(KilopascalPerMetre)},
		{"bar/m", float64(BarPerMetre)},
	},
	trade: []trade{
		{"psi/ft", float64(PSIPerFoot), 0},
	},
}

// In returns g counted in u, for example g.In(unit.PSIPerFoot).
func (g Gradient) In(u Gradient) float64 { return float64(g / u) }

// String writes g without loss, in the trade's unit.
func (g Gradient) String() string { return gradientUnits.format(float64(g)) }

// Rounded writes g in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (g Gradient) Rounded(digits int) string { return gradientUnits.rounded(float64(g), digits) }

// MarshalText writes g without loss; NaN and infinities are errors.
func (g Gradient) MarshalText() ([]byte, error) { return gradientUnits.marshal(float64(g)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (g *Gradient) UnmarshalText(text []byte) error {
	x, err := gradientUnits.parse(string(text))
	if err != nil {
		return err
	}
	*g = Gradient(x)
	return nil
}
