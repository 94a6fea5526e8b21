package unit

// ProductivityIndex is flow rate per drawdown, in m³/(s·Pa).
// The zero value is zero.
type ProductivityIndex float64

// Units of productivity index: multiply a number by one, or divide by one with In.
const (
	CubicMetrePerSecondPascal ProductivityIndex = 1                                                                                        // m3/s/Pa
	BarrelPerDayPSI           ProductivityIndex = 42 * 231 * 0.0254 * 0.0254 * 0.0254 / 86400 / (0.45359237 * 9.80665 / (0.0254 * 0.0254)) // bbl/d/psi
	CubicMetrePerDayBar       ProductivityIndex = 1.0 / 86400 / 1e5                                                                        // m3/d/bar
)

var productivityIndexUnits = table{
	quantity: "productivity index",
	symbols: []symbol{
		{"m3/s/Pa", float64(CubicMetrePerSecondPascal)},
		{"bbl/d/psi", float64(BarrelPerDayPSI)},
		{"m3/d/bar", float64(CubicMetrePerDayBar)},
	},
	trade: []trade{
		{"bbl/d/psi", float64(BarrelPerDayPSI), 0},
	},
}
