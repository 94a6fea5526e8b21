package unit

// WeightPerLength is the weight of a pipe or fluid per length, in N/m.
// The zero value is zero.
type WeightPerLength float64

// Units of weight per length: multiply a number by one, or divide by one with In.
const (
	NewtonPerMetre   WeightPerLength = 1                             // N/m
	PoundPerFoot     WeightPerLength = 0.45359237 * 9.80665 / 0.3048 // lb/ft; pound-force per foot
	PoundPerInch     WeightPerLength = 0.45359237 * 9.80665 / 0.0254 // lb/in; pound-force per inch
	KilogramPerMetre WeightPerLength = 9.80665                       // kg/m; kilogram-force per metre
)

var weightPerLengthUnits = table{
	quantity: "weight per length",
	symbols: []symbol{
		{"N/m", float64(NewtonPerMetre)},
		{"lb/ft", float64(PoundPerFoot)},
		{"lb/in", float64(PoundPerInch)},
		{"kg/m", float64(KilogramPerMetre)},
	},
	trade: []trade{
		{"lb/ft", float64(PoundPerFoot), 0},
	},
}

// In returns w counted in u, for example w.In(unit.PoundPerFoot).
func (w WeightPerLength) In(u WeightPerLength) float64 { return float64(w / u) }

// String writes w without loss, in the trade's unit.
func (w WeightPerLength) String() string { return weightPerLengthUnits.format(float64(w)) }

// Rounded writes w in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (w WeightPerLength) Rounded(digits int) string {
	return weightPerLengthUnits.rounded(float64(w), digits)
}

// MarshalText writes w without loss; NaN and infinities are errors.
func (w WeightPerLength) MarshalText() ([]byte, error) {
	return weightPerLengthUnits.marshal(float64(w))
}

// UnmarshalText reads a number with its unit; see the package doc.
func (w *WeightPerLength) UnmarshalText(text []byte) error {
	x, err := weightPerLengthUnits.parse(string(text))
	if err != nil {
		return err
	}
	*w = WeightPerLength(x)
	return nil
}
