package unit

// SpecificHeat is heat per mass and temperature difference, in J/(kg·K).
// The zero value is zero.
type SpecificHeat float64

// Units of specific heat: multiply a number by one, or divide by one with In.
const (
	JoulePerKilogramKelvin     SpecificHeat = 1      // J/kg/K
	KilojoulePerKilogramKelvin SpecificHeat = 1000   // kJ/kg/K
	BtuPerPoundFahrenheit      SpecificHeat = 4186.8 // Btu/lb/degF; exact, with the international table Btu
)

var specificHeatUnits = table{
	quantity: "specific heat",
	symbols: []symbol{
		{"J/kg/K", float64(JoulePerKilogramKelvin)},
		{"kJ/kg/K", float64(KilojoulePerKilogramKelvin)},
		{"Btu/lb/degF", float64(BtuPerPoundFahrenheit)},
	},
	trade: []trade{
		{"Btu/lb/degF", float64(BtuPerPoundFahrenheit), 0},
	},
}

// In returns s counted in u, for example s.In(unit.BtuPerPoundFahrenheit).
func (s SpecificHeat) In(u SpecificHeat) float64 { return float64(s / u) }

// String writes s without loss, in the trade's unit.
func (s SpecificHeat) String() string { return specificHeatUnits.format(float64(s)) }

// Rounded writes s in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (s SpecificHeat) Rounded(digits int) string {
	return specificHeatUnits.rounded(float64(s), digits)
}

// MarshalText writes s without loss; NaN and infinities are errors.
func (s SpecificHeat) MarshalText() ([]byte, error) { return specificHeatUnits.marshal(float64(s)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (s *SpecificHeat) UnmarshalText(text []byte) error {
	x, err := specificHeatUnits.parse(string(text))
	if err != nil {
		return err
	}
	*s = SpecificHeat(x)
	return nil
}
