package unit

// Viscosity is dynamic viscosity, in Pa·s.
// The zero value is zero.
type Viscosity float64

// Units of viscosity: multiply a number by one, or divide by one with In.
const (
	PascalSecond      Viscosity = 1     // Pa.s
	Centipoise        Viscosity = 0.001 // cP; exact
	MillipascalSecond Viscosity = 0.001 // mPa.s
	MicropascalSecond Viscosity = 1e-6  // uPa.s
)

var viscosityUnits = table{
	quantity: "viscosity",
	symbols: []symbol{
		{"Pa.s", float64(PascalSecond)},
		{"cP", float64(Centipoise)},
		{"mPa.s", float64(MillipascalSecond)},
		{"uPa.s", float64(MicropascalSecond)},
	},
	trade: []trade{
		{"cP", float64(Centipoise), 0},
	},
}
