package unit

// Expansivity is relative change of length or volume per temperature difference; the doc of each use says which, in 1/K.
// The zero value is zero.
type Expansivity float64

// Units of expansivity: multiply a number by one, or divide by one with In.
const (
	PerKelvin     Expansivity = 1   // 1/K
	PerCelsius    Expansivity = 1   // 1/degC
	PerFahrenheit Expansivity = 1.8 // 1/degF; exact
)

var expansivityUnits = table{
	quantity: "expansivity",
	symbols: []symbol{
		{"1/K", float64(PerKelvin)},
		{"1/degC", float64(PerCelsius)},
		{"1/degF", float64(PerFahrenheit)},
	},
	trade: []trade{
		{"1/degF", float64(PerFahrenheit), 0},
	},
}
