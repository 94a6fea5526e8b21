package unit

// Expansivity is relative change of length or volume per temperature difference; the doc of each use says which, in 1/K.
// The zero value is zero.
type Expansivity float64

// Units of expansivity: multiply a number by one, or divide by one with In.
const (
	PerKelvin     Expansivity = 1   // 1/K
	PerCelsius    Expansivity = 1   // 1/degC
	PerFahrenheit Expansivity = 1.8 // 1/degF; exact
)

var expansivityUnits = table{
	quantity: "expansivity",
	symbols: []symbol{
		{"1/K", float64(PerKelvin)},
		{"1/degC", float64(PerCelsius)},
		{"1/degF", float64(PerFahrenheit)},
	},
	trade: []trade{
		{"1/degF", float64(PerFahrenheit), 0},
	},
}

// In returns e counted in u, for example e.In(unit.PerFahrenheit).
func (e Expansivity) In(u Expansivity) float64 { return float64(e / u) }

// String writes e without loss, in the trade's unit.
func (e Expansivity) String() string { return expansivityUnits.format(float64(e)) }

// Rounded writes e in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (e Expansivity) Rounded(digits int) string { return expansivityUnits.rounded(float64(e), digits) }

// MarshalText writes e without loss; NaN and infinities are errors.
func (e Expansivity) MarshalText() ([]byte, error) { return expansivityUnits.marshal(float64(e)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (e *Expansivity) UnmarshalText(text []byte) error {
	x, err := expansivityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*e = Expansivity(x)
	return nil
}
