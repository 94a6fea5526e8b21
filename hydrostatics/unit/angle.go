package unit

import "math"

// Angle is an inclination, azimuth or bend, in rad.
// The zero value is zero.
type Angle float64

// Units of angle: multiply a number by one, or divide by one with In.
const (
	Radian Angle = 1             // rad
	Degree Angle = math.Pi / 180 // deg
)

var angleUnits = table{
	quantity: "angle",
	symbols: []symbol{
		{"rad", float64(Radian)},
		{"deg", float64(Degree)},
	},
	trade: []trade{
		{"deg", float64(Degree), 0},
	},
}

// In returns a counted in u, for example a.In(unit.Degree).
func (a Angle) In(u Angle) float64 { return float64(a / u) }

// String writes a without loss, in the trade's unit.
func (a Angle) String() string { return angleUnits.format(float64(a)) }

// Rounded writes a in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (a Angle) Rounded(digits int) string { return angleUnits.rounded(float64(a), digits) }

// MarshalText writes a without loss; NaN and infinities are errors.
func (a Angle) MarshalText() ([]byte, error) { return angleUnits.marshal(float64(a)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (a *Angle) UnmarshalText(text []byte) error {
	x, err := angleUnits.parse(string(text))
	if err != nil {
		return err
	}
	*a = Angle(x)
	return nil
}
