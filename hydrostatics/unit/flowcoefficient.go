package unit

// FlowCoefficient is what a valve, choke or sleeve lets through, as the
// standard's coefficient Av = q·sqrt(ρ/Δp), in m². An opening of area A with
// discharge coefficient Cd has Av = √2·Cd·A. The zero value is shut.
type FlowCoefficient float64

// Square roots that make a flow coefficient; constants can't call math.Sqrt.
// Water is that of 15 °C and one atmosphere, 999.1026 kg/m³ (Tanaka et al.,
// Metrologia 38, 2001), the standard's reference for a relative density of one.
const (
	sqrtWater = 31.608584277059927 // of 999.1026 kg/m³
	sqrtBar   = 316.22776601683793 // of 1e5 Pa
	sqrtPSI   = 83.034675245757187 // of one psi in Pa
)

// Units of flow coefficient: multiply a number by one, or divide by one with
// In. Kv counts m³/h of water at 1 bar, Cv US gal/min of water at 1 psi; Cv is
// therefore 1.15610 Kv (IEC 60534-1 rounds it to 1.156).
const (
	Av FlowCoefficient = 1                                                           // m2
	Kv FlowCoefficient = sqrtWater / sqrtBar / 3600                                  // Kv
	Cv FlowCoefficient = sqrtWater / sqrtPSI * (231 * 0.0254 * 0.0254 * 0.0254) / 60 // Cv
)

var flowCoefficientUnits = table{
	quantity: "flow coefficient",
	symbols: []symbol{
		{"m2", float64(Av)},
		{"Kv", float64(Kv)},
		{"Cv", float64(Cv)},
	},
	trade: []trade{
		{"Cv", float64(Cv), 0},
	},
}
