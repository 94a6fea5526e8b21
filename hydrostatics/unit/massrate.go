package unit

// MassRate is mass per time, in kg/s.
// The zero value is zero.
type MassRate float64

// Units of mass rate: multiply a number by one, or divide by one with In.
const (
	KilogramPerSecond MassRate = 1                 // kg/s
	KilogramPerHour   MassRate = 1.0 / 3600        // kg/h
	PoundPerSecond    MassRate = 0.45359237        // lb/s; exact
	PoundPerMinute    MassRate = 0.45359237 / 60   // lb/min
	PoundPerHour      MassRate = 0.45359237 / 3600 // lb/h
)

var massRateUnits = table{
	quantity: "mass rate",
	symbols: []symbol{
		{"kg/s", float64(KilogramPerSecond)},
		{"kg/h", float64(KilogramPerHour)},
		{"lb/s", float64(PoundPerSecond)},
		{"lb/min", float64(PoundPerMinute)},
		{"lb/h", float64(PoundPerHour)},
	},
	trade: []trade{
		{"lb/s", float64(PoundPerSecond), 0},
	},
}

// In returns m counted in u, for example m.In(unit.KilogramPerHour).
func (m MassRate) In(u MassRate) float64 { return float64(m / u) }

// String writes m without loss, in the trade's unit.
func (m MassRate) String() string { return massRateUnits.format(float64(m)) }

// Rounded writes m in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (m MassRate) Rounded(digits int) string { return massRateUnits.rounded(float64(m), digits) }

// MarshalText writes m without loss; NaN and infinities are errors.
func (m MassRate) MarshalText() ([]byte, error) { return massRateUnits.marshal(float64(m)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (m *MassRate) UnmarshalText(text []byte) error {
	x, err := massRateUnits.parse(string(text))
	if err != nil {
		return err
	}
	*m = MassRate(x)
	return nil
}
