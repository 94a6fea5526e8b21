package fluid

import "completion.example/hydrostatics/unit"

// Methane is pure methane by its reference equation of state.
//
// Range: 200 to 600 K (−100 to 620 °F), above a vacuum to 200 MPa absolute.
// Uncertainty of density 0.03 to 0.07 % up to 50 MPa, 0.15 % above.
//
// Source: Setzmann and Wagner, J. Phys. Chem. Ref. Data 20 (1991) 1061,
// Table 35.
type Methane struct{}

// MolarMass returns the mass of one mole, kg/mol.
func (Methane) MolarMass() float64 { return methane.molarMass }

// Density returns the density; see the type.
func (Methane) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	rho, _, _, err := methane.state(absolute(p), t.Kelvin())
	return unit.Density(rho), err
}

// Compressibility returns the isothermal compressibility 1/(ρ·∂p/∂ρ).
func (Methane) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	_, kappa, _, err := methane.state(absolute(p), t.Kelvin())
	return unit.Compressibility(kappa), err
}

// Expansivity returns the thermal expansion (∂p/∂T)/(ρ·∂p/∂ρ).
func (Methane) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	_, _, alpha, err := methane.state(absolute(p), t.Kelvin())
	return unit.Expansivity(alpha), err
}

// Viscosity returns the viscosity by Lee, Gonzalez and Eakin at the equation's
// own density, from 100 to 340 °F and up to 8,000 psia; see Gas.
func (m Methane) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	rho, err := m.Density(p, t)
	if err != nil {
		return 0, err
	}
	return gasViscosity(methane.name, methane.molarMass, rho, p, t)
}

// Table 35 of Setzmann and Wagner (1991), written as for nitrogen.
var methane = helmholtz{
	name:        "methane",
	molarMass:   0.0160428,
	gasConstant: 8.31451,
	tCritical:   190.564,
	rhoCritical: 162.66,
	limits:      limits{1, 200e6, 200, 600},
	densest:     3.4, covolumeOfCritic: 1 / 3.2,
	terms: []helmholtzTerm{
		{0.4367901028e-1, 1, 0, -4}, {0.6709236199, 1, 0, 4}, {-0.1765577859e1, 1, 0, 8},
		{0.8582330241, 2, 0, 4}, {-0.1206513052e1, 2, 0, 8}, {0.5120467220, 2, 0, 12},
		{-0.4000010791e-3, 2, 0, 36}, {-0.1247842423e-1, 3, 0, 0}, {0.3100269701e-1, 4, 0, 8},
		{0.1754748522e-2, 4, 0, 24}, {-0.3171921605e-5, 8, 0, 8}, {-0.2240346840e-5, 9, 0, 24},
		{0.2947056156e-6, 10, 0, 24}, {0.1830487909, 1, 1, 0}, {0.1511883679, 1, 1, 8},
		{-0.4289363877, 1, 1, 16}, {0.6894002446e-1, 2, 1, 0}, {-0.1408313996e-1, 4, 1, 0},
		{-0.3063054830e-1, 5, 1, 16}, {-0.2969906708e-1, 6, 1, 16}, {-0.1932040831e-1, 1, 2, 40},
		{-0.1105739959, 2, 2, 40}, {0.9952548995e-1, 3, 2, 40}, {0.8548437825e-2, 4, 2, 16},
		{-0.6150555662e-1, 4, 2, 32}, {-0.4291792423e-1, 3, 3, 96}, {-0.1813207290e-1, 5, 3, 64},
		{0.3445904760e-1, 5, 3, 80}, {-0.2385919450e-2, 8, 3, 80}, {-0.1159094939e-1, 2, 4, 80},
		{0.6641693602e-1, 3, 4, 112}, {-0.2371549590e-1, 4, 4, 96}, {-0.3961624905e-1, 4, 4, 144},
		{-0.1387292044e-1, 4, 4, 176}, {0.3389489599e-1, 5, 4, 144}, {-0.2927378753e-2, 6, 4, 112},
	},
	bells: []helmholtzBell{
		{0.9324799946e-4, 20, 200, 1.07, 2, 2}, {-0.6287171518e1, 40, 250, 1.11, 0, 0},
		{0.1271069467e2, 40, 250, 1.11, 0, 1}, {-0.6423953466e1, 40, 250, 1.11, 0, 2},
	},
}
