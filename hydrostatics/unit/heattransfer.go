package unit

// HeatTransfer is heat rate per area and temperature difference, in W/(m²·K).
// The zero value is zero.
type HeatTransfer float64

// Units of heat transfer coefficient: multiply a number by one, or divide by one with In.
const (
	WattPerSquareMetreKelvin       HeatTransfer = 1                                              // W/m2/K
	BtuPerHourSquareFootFahrenheit HeatTransfer = 4186.8 * 0.45359237 / 3600 / (0.3048 * 0.3048) // Btu/h/ft2/degF
)

var heatTransferUnits = table{
	quantity: "heat transfer coefficient",
	symbols: []symbol{
		{"W/m2/K", float64(WattPerSquareMetreKelvin)},
		{"Btu/h/ft2/degF", float64(BtuPerHourSquareFootFahrenheit)},
	},
	trade: []trade{
		{"Btu/h/ft2/degF", float64(BtuPerHourSquareFootFahrenheit), 0},
	},
}
