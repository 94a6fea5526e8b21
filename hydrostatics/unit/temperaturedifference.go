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
