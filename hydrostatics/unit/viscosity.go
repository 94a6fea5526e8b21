package unit

// Viscosity is dynamic viscosity, in Pa·s.
// The zero value is zero.
type Viscosity float64

// Units of viscosity: multiply a number by one, or divide by one with In.
const (
	PascalSecond      Viscosity = 1     // Pa.s
	Centipoise        Viscosity = 0.001 // cP; exact
	MillipascalSecond Viscosity = 0.001 // mPa.s
	MicropascalSecond Viscosity = 1e-6  // uPa.s
)

var viscosityUnits = table{
	quantity: "viscosity",
	symbols: []symbol{
		{"Pa.s", float64(PascalSecond)},
		{"cP", float64(Centipoise)},
		{"mPa.s", float64(MillipascalSecond)},
		{"uPa.s", float64(MicropascalSecond)},
	},
	trade: []trade{
		{"cP", float64(Centipoise), 0},
	},
}

// In returns v counted in u, for example v.In(unit.Centipoise).
func (v Viscosity) In(u Viscosity) float64 { return float64(v / u) }

// String writes v without loss, in the trade's unit.
func (v Viscosity) String() string { return viscosityUnits.format(float64(v)) }

// Rounded writes v in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (v Viscosity) Rounded(digits int) string { return viscosityUnits.rounded(float64(v), digits) }

// MarshalText writes v without loss; NaN and infinities are errors.
func (v Viscosity) MarshalText() ([]byte, error) { return viscosityUnits.marshal(float64(v)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (v *Viscosity) UnmarshalText(text []byte) error {
	x, err := viscosityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*v = Viscosity(x)
	return nil
}
