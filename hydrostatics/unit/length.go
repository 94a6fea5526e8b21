package unit

// Length is a length, depth or diameter, in m.
// The zero value is zero.
type Length float64

// Units of length: multiply a number by one, or divide by one with In.
const (
	Metre      Length = 1      // m
	Foot       Length = 0.3048 // ft; international foot, 1959, exact
	Inch       Length = 0.0254 // in; exact
	Centimetre Length = 0.01   // cm
	Millimetre Length = 0.001  // mm
	Kilometre  Length = 1000   // km
)

var lengthUnits = table{
	quantity: "length",
	symbols: []symbol{
		{"m", float64(Metre)},
		{"ft", float64(Foot)},
		{"in", float64(Inch)},
		{"cm", float64(Centimetre)},
		{"mm", float64(Millimetre)},
		{"km", float64(Kilometre)},
	},
	trade: []trade{
		{"ft", float64(Foot), 20 * 0.3048},
		{"in", float64(Inch), 0},
	},
}
