package unit

import "math"

// Curvature is a bend per length: dogleg severity, in rad/m.
// The zero value is zero.
type Curvature float64

// Units of curvature: multiply a number by one, or divide by one with In.
const (
	RadianPerMetre    Curvature = 1                     // rad/m
	DegreePer100Feet  Curvature = math.Pi / 180 / 30.48 // deg/100ft
	DegreePer30Metres Curvature = math.Pi / 180 / 30    // deg/30m
)

var curvatureUnits = table{
	quantity: "curvature",
	symbols: []symbol{
		{"rad/m", float64(RadianPerMetre)},
		{"deg/100ft", float64(DegreePer100Feet)},
		{"deg/30m", float64(DegreePer30Metres)},
	},
	trade: []trade{
		{"deg/100ft", float64(DegreePer100Feet), 0},
	},
}
