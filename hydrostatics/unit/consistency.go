package unit

// Consistency is the consistency index K of a power-law or Herschel–Bulkley
// fluid, in Pa·sⁿ: the stress above the yield point at a shear rate of 1/s. Its
// dimension depends on the flow index n; with n = 1 it is a viscosity in Pa·s.
// The zero value is zero.
type Consistency float64

// Units of consistency index: multiply a number by one, or divide by one with In.
const (
	PascalSecondN                     Consistency = 1                                              // Pa.s^n
	MillipascalSecondN                Consistency = 0.001                                          // mPa.s^n; equivalent centipoise
	DyneSecondNPerSquareCentimetre    Consistency = 0.1                                            // dyn.s^n/cm2; equivalent poise
	PoundForceSecondNPer100SquareFeet Consistency = 0.45359237 * 9.80665 / (100 * 0.3048 * 0.3048) // lbf.s^n/100ft2
)

var consistencyUnits = table{
	quantity: "consistency index",
	symbols: []symbol{
		{"Pa.s^n", float64(PascalSecondN)},
		{"mPa.s^n", float64(MillipascalSecondN)},
		{"dyn.s^n/cm2", float64(DyneSecondNPerSquareCentimetre)},
		{"lbf.s^n/100ft2", float64(PoundForceSecondNPer100SquareFeet)},
	},
	trade: []trade{
		{"lbf.s^n/100ft2", float64(PoundForceSecondNPer100SquareFeet), 0},
	},
}
