package unit

// Torque is a moment, in N·m.
// The zero value is zero.
type Torque float64

// Units of torque: multiply a number by one, or divide by one with In.
const (
	NewtonMetre     Torque = 1                             // N.m
	FootPoundForce  Torque = 0.3048 * 0.45359237 * 9.80665 // ft-lbf
	KilonewtonMetre Torque = 1000                          // kN.m
)

var torqueUnits = table{
	quantity: "torque",
	symbols: []symbol{
		{"N.m", float64(NewtonMetre)},
		{"ft-lbf", float64(FootPoundForce)},
		{"kN.m", float64(KilonewtonMetre)},
	},
	trade: []trade{
		{"ft-lbf", float64(FootPoundForce), 0},
	},
}
