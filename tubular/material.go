package tubular

import "completion.example/hydrostatics/unit"

// Material is what a pipe is made of.
type Material struct {
	Young     unit.Pressure    `json:"young"`     // Young's modulus
	Poisson   float64          `json:"poisson"`   // Poisson's ratio
	Expansion unit.Expansivity `json:"expansion"` // linear, per temperature difference
	Density   unit.Density     `json:"density"`
	Yield     unit.Pressure    `json:"yield"`   // specified minimum yield strength
	Tensile   unit.Pressure    `json:"tensile"` // specified minimum tensile strength
}

// Steel returns the elastic properties that the trade uses for carbon steel
// pipe. It has no strength: set Yield and Tensile, or take the Material of a
// grade in package catalogue.
//
//	E = 30e6 psi          Lubinski, Althouse and Logan 1962; API TR 5C3
//	ν = 0.3               Lubinski, Althouse and Logan 1962
//	α = 6.9e-6 1/degF     Lubinski, Althouse and Logan 1962; the mean from 70 to
//	                      300 °F in ASME BPVC II-D, Table TE-1, Group 1
//	ρ = 7,850 kg/m³       API Spec 5CT (0.0246615 (D - t) t kg/m is 7,850 π);
//	                      490.06 lb/ft³, 65.51 lb/gal
//
// Source: figures beside each constant.
func Steel() Material {
	return Material{
		Young:     30e6 * unit.PSI,
		Poisson:   0.3,
		Expansion: 6.9e-6 * unit.PerFahrenheit,
		Density:   7850 * unit.KilogramPerCubicMetre,
	}
}

// WithStrength returns m with the specified minimum yield and tensile strength
// of a grade.
func (m Material) WithStrength(yield, tensile unit.Pressure) Material {
	m.Yield, m.Tensile = yield, tensile
	return m
}

// ShearModulus returns the modulus of rigidity.
//
//	G = E / (2 (1 + ν))
//
// Range: ν from 0 to 0.5, which Validate checks; here any but −1, where it is
// infinite.
//
// Source: isotropic elasticity.
func (m Material) ShearModulus() unit.Pressure {
	return unit.Pressure(float64(m.Young) / (2 * (1 + m.Poisson)))
}
