package unit

// TemperatureGradient is temperature difference per length, in K/m.
// The zero value is zero.
type TemperatureGradient float64

// Units of temperature gradient: multiply a number by one, or divide by one with In.
const (
	KelvinPerMetre       TemperatureGradient = 1                // K/m
	FahrenheitPer100Feet TemperatureGradient = 1 / 1.8 / 30.48  // degF/100ft
	FahrenheitPerFoot    TemperatureGradient = 1 / 1.8 / 0.3048 // degF/ft
	CelsiusPer100Metres  TemperatureGradient = 0.01             // degC/100m
)

var temperatureGradientUnits = table{
	quantity: "temperature gradient",
	symbols: []symbol{
		{"K/m", float64(KelvinPerMetre)},
		{"degF/100ft", float64(FahrenheitPer100Feet)},
		{"degF/ft", float64(FahrenheitPerFoot)},
		{"degC/100m", float64(CelsiusPer100Metres)},
	},
	trade: []trade{
		{"degF/100ft", float64(FahrenheitPer100Feet), 0},
	},
}

// In returns g counted in u, for example g.In(unit.FahrenheitPer100Feet).
func (g TemperatureGradient) In(u TemperatureGradient) float64 { return float64(g / u) }

// String writes g without loss, in the trade's unit.
func (g TemperatureGradient) String() string { return temperatureGradientUnits.format(float64(g)) }

// Rounded writes g in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (g TemperatureGradient) Rounded(digits int) string {
	return temperatureGradientUnits.rounded(float64(g), digits)
}

// MarshalText writes g without loss; NaN and infinities are errors.
func (g TemperatureGradient) MarshalText() ([]byte, error) {
	return temperatureGradientUnits.marshal(float64(g))
}

// UnmarshalText reads a number with its unit; see the package doc.
func (g *TemperatureGradient) UnmarshalText(text []byte) error {
	x, err := temperatureGradientUnits.parse(string(text))
	if err != nil {
		return err
	}
	*g = TemperatureGradient(x)
	return nil
}
