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
