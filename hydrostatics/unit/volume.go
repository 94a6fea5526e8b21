package unit

// Volume is a volume, in m³.
// The zero value is zero.
type Volume float64

// Units of volume: multiply a number by one, or divide by one with In.
const (
	CubicMetre Volume = 1                                   // m3
	Barrel     Volume = 42 * 231 * 0.0254 * 0.0254 * 0.0254 // bbl; 42 US gallons, exact
	Gallon     Volume = 231 * 0.0254 * 0.0254 * 0.0254      // gal; US gallon, 231 in³, exact
	CubicFoot  Volume = 0.3048 * 0.3048 * 0.3048            // ft3; exact
	CubicInch  Volume = 0.0254 * 0.0254 * 0.0254            // in3; exact
	Litre      Volume = 0.001                               // L
	Millilitre Volume = 1e-6                                // mL
)

var volumeUnits = table{
	quantity: "volume",
	symbols: []symbol{
		{"m3", float64(CubicMetre)},
		{"bbl", float64(Barrel)},
		{"gal", float64(Gallon)},
		{"ft3", float64(CubicFoot)},
		{"in3", float64(CubicInch)},
		{"L", float64(Litre)},
		{"mL", float64(Millilitre)},
	},
	trade: []trade{
		{"bbl", float64(Barrel), 42 * 231 * 0.0254 * 0.0254 * 0.0254},
		{"gal", float64(Gallon), 0},
	},
}
