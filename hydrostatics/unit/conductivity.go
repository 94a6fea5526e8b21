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
