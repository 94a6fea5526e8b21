package unit

// Torque is a moment, in N·m.
// The zero value is zero.
type Torque float64

// Units of torque: multiply a number by one, or divide by one with In.
const (
	NewtonMetre     Torque = 1                             // N.m
	FootPoundForce  Torque = 0.3048 * 0.45359237 * 9.80665 // ft-lbf
	KilonewtonMetre Torque = 1000                          // kN.m
)

var torqueUnits = table{
	quantity: "torque",
	symbols: []symbol{
		{"N.m", float64(NewtonMetre)},
		{"ft-lbf", float64(FootPoundForce)},
		{"kN.m", float64(KilonewtonMetre)},
	},
	trade: []trade{
		{"ft-lbf", float64(FootPoundForce), 0},
	},
}

// In returns t counted in u, for example t.In(unit.FootPoundForce).
func (t Torque) In(u Torque) float64 { return float64(t / u) }

// String writes t without loss, in the trade's unit.
func (t Torque) String() string { return torqueUnits.format(float64(t)) }

// Rounded writes t in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (t Torque) Rounded(digits int) string { return torqueUnits.rounded(float64(t), digits) }

// MarshalText writes t without loss; NaN and infinities are errors.
func (t Torque) MarshalText() ([]byte, error) { return torqueUnits.marshal(float64(t)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (t *Torque) UnmarshalText(text []byte) error {
	x, err := torqueUnits.parse(string(text))
	if err != nil {
		return err
	}
	*t = Torque(x)
	return nil
}
