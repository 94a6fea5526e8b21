package unit

// Power is work per time, hydraulic or mechanical, in W.
// The zero value is zero.
type Power float64

// Units of power: multiply a number by one, or divide by one with In.
const (
	Watt       Power = 1                                   // W
	Kilowatt   Power = 1000                                // kW
	Horsepower Power = 550 * 0.3048 * 0.45359237 * 9.80665 // hp; 550 ft·lbf/s
)

var powerUnits = table{
	quantity: "power",
	symbols: []symbol{
		{"W", float64(Watt)},
		{"kW", float64(Kilowatt)},
		{"hp", float64(Horsepower)},
	},
	trade: []trade{
		{"hp", float64(Horsepower), 0},
	},
}
