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
