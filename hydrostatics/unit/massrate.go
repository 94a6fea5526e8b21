package unit

// MassRate is mass per time, in kg/s.
// The zero value is zero.
type MassRate float64

// Units of mass rate: multiply a number by one, or divide by one with In.
const (
	KilogramPerSecond MassRate = 1                 // kg/s
	KilogramPerHour   MassRate = 1.0 / 3600        // kg/h
	PoundPerSecond    MassRate = 0.45359237        // lb/s; exact
	PoundPerMinute    MassRate = 0.45359237 / 60   // lb/min
	PoundPerHour      MassRate = 0.45359237 / 3600 // lb/h
)

var massRateUnits = table{
	quantity: "mass rate",
	symbols: []symbol{
		{"kg/s", float64(KilogramPerSecond)},
		{"kg/h", float64(KilogramPerHour)},
		{"lb/s", float64(PoundPerSecond)},
		{"lb/min", float64(PoundPerMinute)},
		{"lb/h", float64(PoundPerHour)},
	},
	trade: []trade{
		{"lb/s", float64(PoundPerSecond), 0},
	},
}
