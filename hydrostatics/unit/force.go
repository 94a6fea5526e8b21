package unit

// Force is a force; tension is positive, in N.
// The zero value is zero.
type Force float64

// Units of force: multiply a number by one, or divide by one with In.
const (
	Newton        Force = 1                           // N
	PoundForce    Force = 0.45359237 * 9.80665        // lbf; exact with g = 9.80665 m/s²
	Kilopound     Force = 1000 * 0.45359237 * 9.80665 // klbf; 1,000 lbf
	Kilonewton    Force = 1000                        // kN
	Decanewton    Force = 10                          // daN
	KilogramForce Force = 9.80665                     // kgf; exact
)

var forceUnits = table{
	quantity: "force",
	symbols: []symbol{
		{"N", float64(Newton)},
		{"lbf", float64(PoundForce)},
		{"klbf", float64(Kilopound)},
		{"kN", float64(Kilonewton)},
		{"daN", float64(Decanewton)},
		{"kgf", float64(KilogramForce)},
	},
	trade: []trade{
		{"lbf", float64(PoundForce), 0},
	},
}
