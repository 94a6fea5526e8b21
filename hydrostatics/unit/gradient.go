package unit

// Gradient is pressure per length, in Pa/m.
// The zero value is zero.
type Gradient float64

// Units of pressure gradient: multiply a number by one, or divide by one with In.
const (
	PascalPerMetre     Gradient = 1                                                 // Pa/m
	PSIPerFoot         Gradient = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 0.3048 // psi/ft
	KilopascalPerMetre Gradient = 1000                                              // kPa/m
	BarPerMetre        Gradient = 1e5                                               // bar/m
)

var gradientUnits = table{
	quantity: "pressure gradient",
	symbols: []symbol{
		{"Pa/m", float64(PascalPerMetre)},
		{"psi/ft", float64(PSIPerFoot)},
		{"kPa/m", float64(KilopascalPerMetre)},
		{"bar/m", float64(BarPerMetre)},
	},
	trade: []trade{
		{"psi/ft", float64(PSIPerFoot), 0},
	},
}
