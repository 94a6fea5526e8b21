package unit

// Diffusivity is conductivity over density and specific heat, in m²/s.
// The zero value is zero.
type Diffusivity float64

// Units of thermal diffusivity: multiply a number by one, or divide by one with In.
const (
	SquareMetrePerSecond      Diffusivity = 1                       // m2/s
	SquareMillimetrePerSecond Diffusivity = 1e-6                    // mm2/s
	SquareFootPerHour         Diffusivity = 0.3048 * 0.3048 / 3600  // ft2/h
	SquareFootPerDay          Diffusivity = 0.3048 * 0.3048 / 86400 // ft2/d
)

var diffusivityUnits = table{
	quantity: "thermal diffusivity",
	symbols: []symbol{
		{"m2/s", float64(SquareMetrePerSecond)},
		{"mm2/s", float64(SquareMillimetrePerSecond)},
		{"ft2/h", float64(SquareFootPerHour)},
		{"ft2/d", float64(SquareFootPerDay)},
	},
	trade: []trade{
		{"ft2/d", float64(SquareFootPerDay), 0},
	},
}
