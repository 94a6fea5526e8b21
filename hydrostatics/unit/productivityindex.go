package unit

// ProductivityIndex is flow rate per drawdown, in m³/(s·Pa).
// The zero value is zero.
type ProductivityIndex float64

// Units of productivity index: multiply a number by one, or divide by one with In.
const (
	CubicMetrePerSecondPascal ProductivityIndex = 1                                                                                        // m3/s/Pa
	BarrelPerDayPSI           ProductivityIndex = 42 * 231 * 0.0254 * 0.0254 * 0.0254 / 86400 / (0.45359237 * 9.80665 / (0.0254 * 0.0254)) // bbl/d/psi
	CubicMetrePerDayBar       ProductivityIndex = 1.0 / 86400 / 1e5                                                                        // m3/d/bar
)

var productivityIndexUnits = table{
	quantity: "productivity index",
	symbols: []symbol{
		{"m3/s/Pa", float64(CubicMetrePerSecondPascal)},
		{"bbl/d/psi", float64(BarrelPerDayPSI)},
		{"m3/d/bar", float64(CubicMetrePerDayBar)},
	},
	trade: []trade{
		{"bbl/d/psi", float64(BarrelPerDayPSI), 0},
	},
}

// In returns j counted in u, for example j.In(unit.BarrelPerDayPSI).
func (j ProductivityIndex) In(u ProductivityIndex) float64 { return float64(j / u) }

// String writes j without loss, in the trade's unit.
func (j ProductivityIndex) String() string { return productivityIndexUnits.format(float64(j)) }

// Rounded writes j in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (j ProductivityIndex) Rounded(digits int) string {
	return productivityIndexUnits.rounded(float64(j), digits)
}

// MarshalText writes j without loss; NaN and infinities are errors.
func (j ProductivityIndex) MarshalText() ([]byte, error) {
	return productivityIndexUnits.marshal(float64(j))
}

// UnmarshalText reads a number with its unit; see the package doc.
func (j *ProductivityIndex) UnmarshalText(text []byte) error {
	x, err := productivityIndexUnits.parse(string(text))
	if err != nil {
		return err
	}
	*j = ProductivityIndex(x)
	return nil
}
