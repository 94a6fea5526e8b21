package unit

// Velocity is length per time, in m/s.
// The zero value is zero.
type Velocity float64

// Units of velocity: multiply a number by one, or divide by one with In.
const (
	MetrePerSecond Velocity = 1           // m/s
	FootPerSecond  Velocity = 0.3048      // ft/s
	FootPerMinute  Velocity = 0.3048 / 60 // ft/min
	MetrePerMinute Velocity = 1.0 / 60    // m/min
)

var velocityUnits = table{
	quantity: "velocity",
	symbols: []symbol{
		{"m/s", float64(MetrePerSecond)},
		{"ft/s", float64(FootPerSecond)},
		{"ft/min", float64(FootPerMinute)},
		{"m/min", float64(MetrePerMinute)},
	},
	trade: []trade{
		{"ft/s", float64(FootPerSecond), 0},
		{"ft/min", float64(FootPerMinute), 0},
	},
}
