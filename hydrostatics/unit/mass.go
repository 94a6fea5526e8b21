package unit

// Mass is a mass, in kg.
// The zero value is zero.
type Mass float64

// Units of mass: multiply a number by one, or divide by one with In.
const (
	Kilogram Mass = 1          // kg
	Pound    Mass = 0.45359237 // lb; international pound, 1959, exact
	Tonne    Mass = 1000       // t; metric
	Gram     Mass = 0.001      // g
)

var massUnits = table{
	quantity: "mass",
	symbols: []symbol{
		{"kg", float64(Kilogram)},
		{"lb", float64(Pound)},
		{"t", float64(Tonne)},
		{"g", float64(Gram)},
	},
	trade: []trade{
		{"lb", float64(Pound), 0},
	},
}
