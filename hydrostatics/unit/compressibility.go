package unit

// Compressibility is relative change of volume per pressure, in 1/Pa.
// The zero value is zero.
type Compressibility float64

// Units of compressibility: multiply a number by one, or divide by one with In.
const (
	PerPascal     Compressibility = 1                                        // 1/Pa
	PerPSI        Compressibility = 0.0254 * 0.0254 / (0.45359237 * 9.80665) // 1/psi
	PerKilopascal Compressibility = 1e-3                                     // 1/kPa
	PerMegapascal Compressibility = 1e-6                                     // 1/MPa
	PerBar        Compressibility = 1e-5                                     // 1/bar
)

var compressibilityUnits = table{
	quantity: "compressibility",
	symbols: []symbol{
		{"1/Pa", float64(PerPascal)},
		{"1/psi", float64(PerPSI)},
		{"1/kPa", float64(PerKilopascal)},
		{"1/MPa", float64(PerMegapascal)},
		{"1/bar", float64(PerBar)},
	},
	trade: []trade{
		{"1/psi", float64(PerPSI), 0},
	},
}
