package unit

// Force is a force; tension is positive, in N.
// The zero value is zero.
type Force float64

// Units of force: multiply a number by one, or divide by one with In.
const (
	Newton        Force = 1                           // N
	PoundForce    Force = 0.45359237 * 9.80665        // lbf; exact with g = 9.80665 m/s²
	Kilopound     Force = 1000 * 0.45359237 * 9.80665 // klbf; 1,000 lbf
	Kilonewton    Force = 1000                        // kN
	Decanewton    Force = 10                          // daN
	KilogramForce Force = 9.80665                     // kgf; exact
)

var forceUnits = table{
	quantity: "force",
	symbols: []symbol{
		{"N", float64(Newton)},
		{"lbf", float64(PoundForce)},
		{"klbf", float64(Kilopound)},
		{"kN", float64(Kilonewton)},
		{"daN", float64(Decanewton)},
		{"kgf", float64(KilogramForce)},
	},
	trade: []trade{
		{"lbf", float64(PoundForce), 0},
	},
}

// In returns f counted in u, for example f.In(unit.PoundForce).
func (f Force) In(u Force) float64 { return float64(f / u) }

// String writes f without loss, in the trade's unit.
func (f Force) String() string { return forceUnits.format(float64(f)) }

// Rounded writes f in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (f Force) Rounded(digits int) string { return forceUnits.rounded(float64(f), digits) }

// MarshalText writes f without loss; NaN and infinities are errors.
func (f Force) MarshalText() ([]byte, error) { return forceUnits.marshal(float64(f)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (f *Force) UnmarshalText(text []byte) error {
	x, err := forceUnits.parse(string(text))
	if err != nil {
		return err
	}
	*f = Force(x)
	return nil
}
