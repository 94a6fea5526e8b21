package unit

// Mass is a mass, in kg.
// The zero value is zero.
type Mass float64

// Units of mass: multiply a number by one, or divide by one with In.
const (
	Kilogram Mass = 1          // kg
	Pound    Mass = 0.45359237 // lb; international pound, 1959, exact
	Tonne    Mass = 1000       // t; metric
	Gram     Mass = 0.001      // g
)

var massUnits = table{
	quantity: "mass",
	symbols: []symbol{
		{"kg", float64(Kilogram)},
		{"lb", float64(Pound)},
		{"t", float64(Tonne)},
		{"g", float64(Gram)},
	},
	trade: []trade{
		{"lb", float64(Pound), 0},
	},
}

// In returns m counted in u, for example m.In(unit.Pound).
func (m Mass) In(u Mass) float64 { return float64(m / u) }

// String writes m without loss, in the trade's unit.
func (m Mass) String() string { return massUnits.format(float64(m)) }

// Rounded writes m in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (m Mass) Rounded(digits int) string { return massUnits.rounded(float64(m), digits) }

// MarshalText writes m without loss; NaN and infinities are errors.
func (m Mass) MarshalText() ([]byte, error) { return massUnits.marshal(float64(m)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (m *Mass) UnmarshalText(text []byte) error {
	x, err := massUnits.parse(string(text))
	if err != nil {
		return err
	}
	*m = Mass(x)
	return nil
}
