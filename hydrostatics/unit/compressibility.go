package unit

// Compressibility is relative change of volume per pressure, in 1/Pa.
// The zero value is zero.
type Compressibility float64

// Units of compressibility: multiply a number by one, or divide by one with In.
const (
	PerPascal     Compressibility = 1                                        // 1/Pa
	PerPSI        Compressibility = 0.0254 * 0.0254 / (0.45359237 * 9.80665) // 1/psi
	PerKilopascal Compressibility = 1e-3                                     // 1/kPa
	PerMegapascal Compressibility = 1e-6                                     // 1/MPa
	PerBar        Compressibility = 1e-5                                     // 1/bar
)

var compressibilityUnits = table{
	quantity: "compressibility",
	symbols: []symbol{
		{"1/Pa", float64(PerPascal)},
		{"1/psi", float64(PerPSI)},
		{"1/kPa", float64(PerKilopascal)},
		{"1/MPa", float64(PerMegapascal)},
		{"1/bar", float64(PerBar)},
	},
	trade: []trade{
		{"1/psi", float64(PerPSI), 0},
	},
}

// In returns c counted in u, for example c.In(unit.PerPSI).
func (c Compressibility) In(u Compressibility) float64 { return float64(c / u) }

// String writes c without loss, in the trade's unit.
func (c Compressibility) String() string { return compressibilityUnits.format(float64(c)) }

// Rounded writes c in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (c Compressibility) Rounded(digits int) string {
	return compressibilityUnits.rounded(float64(c), digits)
}

// MarshalText writes c without loss; NaN and infinities are errors.
func (c Compressibility) MarshalText() ([]byte, error) {
	return compressibilityUnits.marshal(float64(c))
}

// UnmarshalText reads a number with its unit; see the package doc.
func (c *Compressibility) UnmarshalText(text []byte) error {
	x, err := compressibilityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*c = Compressibility(x)
	return nil
}
