package unit

import "math"

// Curvature is a bend per length: dogleg severity, in rad/m.
// The zero value is zero.
type Curvature float64

// Units of curvature: multiply a number by one, or divide by one with In.
const (
	RadianPerMetre    Curvature = 1                     // rad/m
	DegreePer100Feet  Curvature = math.Pi / 180 / 30.48 // deg/100ft
	DegreePer30Metres Curvature = math.Pi / 180 / 30    // deg/30m
)

var curvatureUnits = table{
	quantity: "curvature",
	symbols: []symbol{
		{"rad/m", float64(RadianPerMetre)},
		{"deg/100ft", float64(DegreePer100Feet)},
		{"deg/30m", float64(DegreePer30Metres)},
	},
	trade: []trade{
		{"deg/100ft", float64(DegreePer100Feet), 0},
	},
}

// In returns c counted in u, for example c.In(unit.DegreePer100Feet).
func (c Curvature) In(u Curvature) float64 { return float64(c / u) }

// String writes c without loss, in the trade's unit.
func (c Curvature) String() string { return curvatureUnits.format(float64(c)) }

// Rounded writes c in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (c Curvature) Rounded(digits int) string { return curvatureUnits.rounded(float64(c), digits) }

// MarshalText writes c without loss; NaN and infinities are errors.
func (c Curvature) MarshalText() ([]byte, error) { return curvatureUnits.marshal(float64(c)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (c *Curvature) UnmarshalText(text []byte) error {
	x, err := curvatureUnits.parse(string(text))
	if err != nil {
		return err
	}
	*c = Curvature(x)
	return nil
}
