package unit

// Density is mass per volume, in kg/m³.
// The zero value is zero.
type Density float64

// Units of density: multiply a number by one, or divide by one with In.
const (
	KilogramPerCubicMetre  Density = 1                                                  // kg/m3
	PoundPerGallon         Density = 0.45359237 / (231 * 0.0254 * 0.0254 * 0.0254)      // lb/gal; pound per US gallon
	GramPerCubicCentimetre Density = 1000                                               // g/cm3
	PoundPerCubicFoot      Density = 0.45359237 / (0.3048 * 0.3048 * 0.3048)            // lb/ft3
	PoundPerBarrel         Density = 0.45359237 / (42 * 231 * 0.0254 * 0.0254 * 0.0254) // lb/bbl; of additives and salt
)

var densityUnits = table{
	quantity: "density",
	symbols: []symbol{
		{"kg/m3", float64(KilogramPerCubicMetre)},
		{"lb/gal", float64(PoundPerGallon)},
		{"g/cm3", float64(GramPerCubicCentimetre)},
		{"lb/ft3", float64(PoundPerCubicFoot)},
		{"lb/bbl", float64(PoundPerBarrel)},
	},
	trade: []trade{
		{"lb/gal", float64(PoundPerGallon), 0},
	},
}
