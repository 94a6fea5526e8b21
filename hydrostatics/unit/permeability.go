package unit

// Permeability is how easily a rock lets fluid through, in m².
// The zero value is zero.
type Permeability float64

// Units of permeability: multiply a number by one, or divide by one with In.
//
// A darcy lets 1 cm³/s of 1 cP through 1 cm² under 1 atm per cm, which makes
// 1e-7/101325 m² exactly (SPE Metric Standard, 1984).
const (
	PermeabilitySI Permeability = 1              // m2
	Darcy          Permeability = 1e-7 / 101325  // D
	Millidarcy     Permeability = 1e-10 / 101325 // mD
)

var permeabilityUnits = table{
	quantity: "permeability",
	symbols: []symbol{
		{"m2", float64(PermeabilitySI)},
		{"D", float64(Darcy)},
		{"mD", float64(Millidarcy)},
	},
	trade: []trade{
		{"mD", float64(Millidarcy), 0},
	},
}
