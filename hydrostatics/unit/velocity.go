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

// In returns v counted in u, for example v.In(unit.FootPerSecond).
func (v Velocity) In(u Velocity) float64 { return float64(v / u) }

// String writes v without loss, in the trade's unit.
func (v Velocity) String() string { return velocityUnits.format(float64(v)) }

// Rounded writes v in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (v Velocity) Rounded(digits int) string { return velocityUnits.rounded(float64(v), digits) }

// MarshalText writes v without loss; NaN and infinities are errors.
func (v Velocity) MarshalText() ([]byte, error) { return velocityUnits.marshal(float64(v)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (v *Velocity) UnmarshalText(text []byte) error {
	x, err := velocityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*v = Velocity(x)
	return nil
}
