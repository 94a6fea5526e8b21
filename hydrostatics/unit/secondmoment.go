package unit

// SecondMoment is the second moment of a cross-section about a diameter, in m⁴.
// The zero value is zero.
type SecondMoment float64

// Units of second moment of area: multiply a number by one, or divide by one with In.
const (
	MetreToTheFourth      SecondMoment = 1                                 // m4
	InchToTheFourth       SecondMoment = 0.0254 * 0.0254 * 0.0254 * 0.0254 // in4
	CentimetreToTheFourth SecondMoment = 1e-8                              // cm4
)

var secondMomentUnits = table{
	quantity: "second moment of area",
	symbols: []symbol{
		{"m4", float64(MetreToTheFourth)},
		{"in4", float64(InchToTheFourth)},
		{"cm4", float64(CentimetreToTheFourth)},
	},
	trade: []trade{
		{"in4", float64(InchToTheFourth), 0},
	},
}

// In returns i counted in u, for example i.In(unit.InchToTheFourth).
func (i SecondMoment) In(u SecondMoment) float64 { return float64(i / u) }

// String writes i without loss, in the trade's unit.
func (i SecondMoment) String() string { return secondMomentUnits.format(float64(i)) }

// Rounded writes i in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (i SecondMoment) Rounded(digits int) string {
	return secondMomentUnits.rounded(float64(i), digits)
}

// MarshalText writes i without loss; NaN and infinities are errors.
func (i SecondMoment) MarshalText() ([]byte, error) { return secondMomentUnits.marshal(float64(i)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (i *SecondMoment) UnmarshalText(text []byte) error {
	x, err := secondMomentUnits.parse(string(text))
	if err != nil {
		return err
	}
	*i = SecondMoment(x)
	return nil
}
