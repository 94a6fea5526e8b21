package unit

// ShearRate is a velocity gradient, in 1/s.
// The zero value is zero.
type ShearRate float64

// Units of shear rate: multiply a number by one, or divide by one with In.
const (
	PerSecond ShearRate = 1        // 1/s
	PerMinute ShearRate = 1.0 / 60 // 1/min
)

var shearRateUnits = table{
	quantity: "shear rate",
	symbols: []symbol{
		{"1/s", float64(PerSecond)},
		{"1/min", float64(PerMinute)},
	},
	trade: []trade{
		{"1/s", float64(PerSecond), 0},
	},
}

// In returns r counted in u, for example r.In(unit.PerSecond).
func (r ShearRate) In(u ShearRate) float64 { return float64(r / u) }

// String writes r without loss, in the trade's unit.
func (r ShearRate) String() string { return shearRateUnits.format(float64(r)) }

// Rounded writes r in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (r ShearRate) Rounded(digits int) string { return shearRateUnits.rounded(float64(r), digits) }

// MarshalText writes r without loss; NaN and infinities are errors.
func (r ShearRate) MarshalText() ([]byte, error) { return shearRateUnits.marshal(float64(r)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (r *ShearRate) UnmarshalText(text []byte) error {
	x, err := shearRateUnits.parse(string(text))
	if err != nil {
		return err
	}
	*r = ShearRate(x)
	return nil
}
