package unit

import "math"

// Angle is an inclination, azimuth or bend, in rad.
// The zero value is zero.
type Angle float64

// Units of angle: multiply a number by one, or divide by one with In.
const (
	Radian Angle = 1             // rad
	Degree Angle = math.Pi / 180 // deg
)

var angleUnits = table{
	quantity: "angle",
	symbols: []symbol{
		{"rad", float64(Radian)},
		{"deg", float64(Degree)},
	},
	trade: []trade{
		{"deg", float64(Degree), 0},
	},
}
