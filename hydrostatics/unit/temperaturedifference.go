package unit

// TemperatureDifference is the difference of two temperatures, in K.
// The zero value is zero.
type TemperatureDifference float64

// Units of temperature difference: multiply a number by one, or divide by one with In.
const (
	KelvinDifference     TemperatureDifference = 1       // K
	CelsiusDifference    TemperatureDifference = 1       // degC
	FahrenheitDifference TemperatureDifference = 1 / 1.8 // degF; 5/9 K, exact
)

var temperatureDifferenceUnits = table{
	quantity: "temperature difference",
	symbols: []symbol{
		{"K", float64(KelvinDifference)},
		{"degC", float64(CelsiusDifference)},
		{"degF", float64(FahrenheitDifference)},
	},
	trade: []trade{
		{"degF", float64(FahrenheitDifference), 0},
	},
}

// In returns d counted in u, for example d.In(unit.FahrenheitDifference).
func (d TemperatureDifference) In(u TemperatureDifference) float64 { return float64(d / u) }

// String writes d without loss, in the trade's unit.
func (d TemperatureDifference) String() string { return temperatureDifferenceUnits.format(float64(d)) }

// Rounded writes d in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (d TemperatureDifference) Rounded(digits int) string {
	return temperatureDifferenceUnits.rounded(float64(d), digits)
}

// MarshalText writes d without loss; NaN and infinities are errors.
func (d TemperatureDifference) MarshalText() ([]byte, error) {
	return temperatureDifferenceUnits.marshal(float64(d))
}

// UnmarshalText reads a number with its unit; see the package doc.
func (d *TemperatureDifference) UnmarshalText(text []byte) error {
	x, err := temperatureDifferenceUnits.parse(string(text))
	if err != nil {
		return err
	}
	*d = TemperatureDifference(x)
	return nil
}
