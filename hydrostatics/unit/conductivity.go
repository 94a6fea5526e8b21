package unit

// Conductivity is heat rate per length and temperature difference, in W/(m·K).
// The zero value is zero.
type Conductivity float64

// Units of thermal conductivity: multiply a number by one, or divide by one with In.
const (
	WattPerMetreKelvin       Conductivity = 1                                   // W/m/K
	BtuPerHourFootFahrenheit Conductivity = 4186.8 * 0.45359237 / 3600 / 0.3048 // Btu/h/ft/degF
)

var conductivityUnits = table{
	quantity: "thermal conductivity",
	symbols: []symbol{
		{"W/m/K", float64(WattPerMetreKelvin)},
		{"Btu/h/ft/degF", float64(BtuPerHourFootFahrenheit)},
	},
	trade: []trade{
		{"Btu/h/ft/degF", float64(BtuPerHourFootFahrenheit), 0},
	},
}

// In returns k counted in u, for example k.In(unit.BtuPerHourFootFahrenheit).
func (k Conductivity) In(u Conductivity) float64 { return float64(k / u) }

// String writes k without loss, in the trade's unit.
func (k Conductivity) String() string { return conductivityUnits.format(float64(k)) }

// Rounded writes k in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (k Conductivity) Rounded(digits int) string {
	return conductivityUnits.rounded(float64(k), digits)
}

// MarshalText writes k without loss; NaN and infinities are errors.
func (k Conductivity) MarshalText() ([]byte, error) { return conductivityUnits.marshal(float64(k)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (k *Conductivity) UnmarshalText(text []byte) error {
	x, err := conductivityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*k = Conductivity(x)
	return nil
}
