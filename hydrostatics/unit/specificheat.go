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
