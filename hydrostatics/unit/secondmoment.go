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
