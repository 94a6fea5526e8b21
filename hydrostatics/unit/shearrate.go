package unit

// ShearRate is a velocity gradient, in 1/s.
// The zero value is zero.
type ShearRate float64

// Units of shear rate: multiply a number by one, or divide by one with In.
const (
	PerSecond ShearRate = 1        // 1/s
	PerMinute ShearRate = 1.0 / 60 // 1/min
)

var shearRateUnits = table{
	quantity: "shear rate",
	symbols: []symbol{
		{"1/s", float64(PerSecond)},
		{"1/min", float64(PerMinute)},
	},
	trade: []trade{
		{"1/s", float64(PerSecond), 0},
	},
}
