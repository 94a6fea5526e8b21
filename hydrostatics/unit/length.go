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

// In returns l counted in u, for example l.In(unit.Foot).
func (l Length) In(u Length) float64 { return float64(l / u) }

// String writes l without loss, in the trade's unit.
func (l Length) String() string { return lengthUnits.format(float64(l)) }

// Rounded writes l in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (l Length) Rounded(digits int) string { return lengthUnits.rounded(float64(l), digits) }

// MarshalText writes l without loss; NaN and infinities are errors.
func (l Length) MarshalText() ([]byte, error) { return lengthUnits.marshal(float64(l)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (l *Length) UnmarshalText(text []byte) error {
	x, err := lengthUnits.parse(string(text))
	if err != nil {
		return err
	}
	*l = Length(x)
	return nil
}
