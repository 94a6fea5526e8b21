package unit

// Diffusivity is conductivity over density and specific heat, in m²/s.
// The zero value is zero.
type Diffusivity float64

// Units of thermal diffusivity: multiply a number by one, or divide by one with In.
const (
	SquareMetrePerSecond      Diffusivity = 1                       // m2/s
	SquareMillimetrePerSecond Diffusivity = 1e-6                    // mm2/s
	SquareFootPerHour         Diffusivity = 0.3048 * 0.3048 / 3600  // ft2/h
	SquareFootPerDay          Diffusivity = 0.3048 * 0.3048 / 86400 // ft2/d
)

var diffusivityUnits = table{
	quantity: "thermal diffusivity",
	symbols: []symbol{
		{"m2/s", float64(SquareMetrePerSecond)},
		{"mm2/s", float64(SquareMillimetrePerSecond)},
		{"ft2/h", float64(SquareFootPerHour)},
		{"ft2/d", float64(SquareFootPerDay)},
	},
	trade: []trade{
		{"ft2/d", float64(SquareFootPerDay), 0},
	},
}

// In returns d counted in u, for example d.In(unit.SquareFootPerDay).
func (d Diffusivity) In(u Diffusivity) float64 { return float64(d / u) }

// String writes d without loss, in the trade's unit.
func (d Diffusivity) String() string { return diffusivityUnits.format(float64(d)) }

// Rounded writes d in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (d Diffusivity) Rounded(digits int) string { return diffusivityUnits.rounded(float64(d), digits) }

// MarshalText writes d without loss; NaN and infinities are errors.
func (d Diffusivity) MarshalText() ([]byte, error) { return diffusivityUnits.marshal(float64(d)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (d *Diffusivity) UnmarshalText(text []byte) error {
	x, err := diffusivityUnits.parse(string(text))
	if err != nil {
		return err
	}
	*d = Diffusivity(x)
	return nil
}
