package unit

// FlowRate is volume per time; a gas rate counts volumes at standard conditions where its doc says so, in m³/s.
// The zero value is zero.
type FlowRate float64

// Units of flow rate: multiply a number by one, or divide by one with In.
const (
	CubicMetrePerSecond      FlowRate = 1                                           // m3/s
	BarrelPerDay             FlowRate = 42 * 231 * 0.0254 * 0.0254 * 0.0254 / 86400 // bbl/d
	BarrelPerMinute          FlowRate = 42 * 231 * 0.0254 * 0.0254 * 0.0254 / 60    // bbl/min
	GallonPerMinute          FlowRate = 231 * 0.0254 * 0.0254 * 0.0254 / 60         // gal/min
	LitrePerMinute           FlowRate = 0.001 / 60                                  // L/min
	CubicMetrePerMinute      FlowRate = 1.0 / 60                                    // m3/min
	CubicMetrePerHour        FlowRate = 1.0 / 3600                                  // m3/h
	CubicMetrePerDay         FlowRate = 1.0 / 86400                                 // m3/d
	CubicFootPerMinute       FlowRate = 0.3048 * 0.3048 * 0.3048 / 60               // ft3/min
	ThousandCubicFeetPerDay  FlowRate = 1000 * 0.3048 * 0.3048 * 0.3048 / 86400     // Mcf/d; M is a thousand in this trade
	CubicCentimetrePerMinute FlowRate = 1e-6 / 60                                   // cm3/min
)

var flowRateUnits = table{
	quantity: "flow rate",
	symbols: []symbol{
		{"m3/s", float64(CubicMetrePerSecond)},
		{"bbl/d", float64(BarrelPerDay)},
		{"bbl/min", float64(BarrelPerMinute)},
		{"gal/min", float64(GallonPerMinute)},
		{"L/min", float64(LitrePerMinute)},
		{"m3/min", float64(CubicMetrePerMinute)},
		{"m3/h", float64(CubicMetrePerHour)},
		{"m3/d", float64(CubicMetrePerDay)},
		{"ft3/min", float64(CubicFootPerMinute)},
		{"Mcf/d", float64(ThousandCubicFeetPerDay)},
		{"cm3/min", float64(CubicCentimetrePerMinute)},
	},
	trade: []trade{
		{"bbl/d", float64(BarrelPerDay), 0},
		{"bbl/min", float64(BarrelPerMinute), 0}, // only where it is the shorter text
	},
}
