package unit

// Pressure is a pressure, pressure difference or stress; gauge unless a doc says otherwise, in Pa.
// The zero value is zero.
type Pressure float64

// Units of pressure: multiply a number by one, or divide by one with In.
const (
	Pascal                           Pressure = 1                                               // Pa
	PSI                              Pressure = 0.45359237 * 9.80665 / (0.0254 * 0.0254)        // psi; lbf/in², exact
	Kilopascal                       Pressure = 1e3                                             // kPa
	Megapascal                       Pressure = 1e6                                             // MPa
	Bar                              Pressure = 1e5                                             // bar
	Atmosphere                       Pressure = 101325                                          // atm; standard atmosphere
	KSI                              Pressure = 1000 * 0.45359237 * 9.80665 / (0.0254 * 0.0254) // ksi; 1,000 psi
	KilogramForcePerSquareCentimetre Pressure = 9.80665 * 1e4                                   // kgf/cm2
	PoundForcePer100SquareFeet       Pressure = 0.45359237 * 9.80665 / (100 * 0.3048 * 0.3048)  // lbf/100ft2; of yield points and gel strengths
)

var pressureUnits = table{
	quantity: "pressure",
	symbols: []symbol{
		{"Pa", float64(Pascal)},
		{"psi", float64(PSI)},
		{"kPa", float64(Kilopascal)},
		{"MPa", float64(Megapascal)},
		{"bar", float64(Bar)},
		{"atm", float64(Atmosphere)},
		{"ksi", float64(KSI)},
		{"kgf/cm2", float64(KilogramForcePerSquareCentimetre)},
		{"lbf/100ft2", float64(PoundForcePer100SquareFeet)},
	},
	trade: []trade{
		{"psi", float64(PSI), 0},
	},
}
