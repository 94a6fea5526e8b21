package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Nitrogen is pure nitrogen by its reference equation of state.
//
// Range: 150 to 600 K (−190 to 620 °F), above a vacuum to 200 MPa absolute.
// Uncertainty of density 0.02 % up to 30 MPa, 0.6 % at the far end.
//
// Source: Span, Lemmon, Jacobsen, Wagner and Yokozeki, J. Phys. Chem. Ref. Data
// 29 (2000) 1361, Table 17.
type Nitrogen struct{}

// MolarMass returns the mass of one mole, kg/mol.
func (Nitrogen) MolarMass() float64 { return nitrogen.molarMass }

// Density returns the density; see the type.
func (Nitrogen) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	rho, _, _, err := nitrogen.state(absolute(p), t.Kelvin())
	return unit.Density(rho), err
}

// Compressibility returns the isothermal compressibility 1/(ρ·∂p/∂ρ).
func (Nitrogen) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	_, kappa, _, err := nitrogen.state(absolute(p), t.Kelvin())
	return unit.Compressibility(kappa), err
}

// Expansivity returns the thermal expansion (∂p/∂T)/(ρ·∂p/∂ρ).
func (Nitrogen) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	_, _, alpha, err := nitrogen.state(absolute(p), t.Kelvin())
	return unit.Expansivity(alpha), err
}

// Viscosity returns the viscosity at the equation's own density; see
// nitrogenViscosity. Uncertainty 0.5 % thin, 2 % dense.
//
//	µ = µ0(T) + µr(ρ, T)
//
// Errors: those of Density.
//
// Source: Lemmon and Jacobsen 2004, as nitrogenViscosity says.
func (n Nitrogen) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	rho, err := n.Density(p, t)
	if err != nil {
		return 0, err
	}
	return unit.Viscosity(nitrogenViscosity(t.Kelvin(), float64(rho)/nitrogen.molarMass)), nil
}

// nitrogenViscosity returns the viscosity, Pa·s, at t (K) and a molar density in
// mol/m³:
//
//	η = η0(T) + ηr(τ, δ)   µPa·s
//	η0 = 0.0266958·√(M·T)/(σ²·Ω),  ln Ω = Σ bi·(ln(T/98.94 K))^i
//	ηr = Σ N·τ^t·δ^d·exp(−δ^l), no exponential for l = 0
//
//	M  28.01348 g/mol
//	σ  0.3656 nm
//	τ  126.192 K/T
//	δ  density over 11183.9 mol/m³
//
// Source: Lemmon and Jacobsen, Int. J. Thermophys. 25 (2004) 21, Eqs. 1 to 4.
func nitrogenViscosity(t, moles float64) float64 {
	const (
		micropascals = 1e-6
		sigma        = 0.3656
		energy       = 98.94
		critical     = 11183.9
	)
	x := math.Log(t / energy)
	omega := math.Exp(0.431 + x*(-0.4623+x*(0.08406+x*(0.005341+x*-0.00331))))
	thin := 0.0266958 * math.Sqrt(1000*nitrogen.molarMass*t) / (sigma * sigma * omega)
	tau := nitrogen.tCritical / t
	delta := moles / critical
	d2 := delta * delta
	d10 := d2 * d2 * d2 * d2 * d2
	dense := 10.72*math.Pow(tau, 0.1)*d2 +
		0.03989*math.Pow(tau, 0.25)*d10*math.Exp(-delta) +
		0.001208*math.Pow(tau, 3.2)*d10*d2*math.Exp(-delta) +
		-7.402*math.Pow(tau, 0.9)*d2*math.Exp(-d2) +
		4.620*math.Pow(tau, 0.3)*delta*math.Exp(-d2*delta)
	return micropascals * (thin + dense)
}

// Table 17 of Span et al. (2000): n, then powers of δ, of δ in the exponential,
// and of τ in eighths; then n, φ, β, γ and powers of δ and τ.
var nitrogen = helmholtz{
	name:        "nitrogen",
	molarMass:   0.02801348,
	gasConstant: 8.31451,
	tCritical:   126.192,
	rhoCritical: 313.3,
	limits:      limits{1, 200e6, 150, 600},
	densest:     3.4, covolumeOfCritic: 1 / 3.2,
	terms: []helmholtzTerm{
		{0.924803575275, 1, 0, 2}, {-0.492448489428, 1, 0, 7}, {0.661883336938, 2, 0, 4},
		{-0.192902649201e1, 2, 0, 7}, {-0.622469309629e-1, 3, 0, 3}, {0.349943957581, 3, 0, 6},
		{0.564857472498, 1, 1, 4}, {-0.161720005987e1, 1, 1, 6}, {-0.481395031883, 1, 1, 16},
		{0.421150636384, 3, 1, 10}, {-0.161962230825e-1, 3, 1, 28}, {0.172100994165, 4, 1, 8},
		{0.735448924933e-2, 6, 1, 4}, {0.168077305479e-1, 6, 1, 24}, {-0.107626664179e-2, 7, 1, 0},
		{-0.137318088513e-1, 7, 1, 22}, {0.635466899859e-3, 8, 1, 6}, {0.304432279419e-2, 8, 1, 20},
		{-0.435762336045e-1, 1, 2, 32}, {-0.723174889316e-1, 2, 2, 48}, {0.389644315272e-1, 3, 2, 48},
		{-0.212201363910e-1, 4, 2, 24}, {0.408822981509e-2, 5, 2, 24}, {-0.551990017984e-4, 8, 2, 48},
		{-0.462016716479e-1, 4, 3, 128}, {-0.300311716011e-2, 5, 3, 88}, {0.368825891208e-1, 5, 3, 120},
		{-0.255856846220e-2, 8, 3, 96}, {0.896915264558e-2, 3, 4, 96}, {-0.441513370350e-2, 5, 4, 56},
		{0.133722924858e-2, 6, 4, 32}, {0.264832491957e-3, 9, 4, 128},
	},
	bells: []helmholtzBell{
		{0.196688194015e2, 20, 325, 1.16, 1, 0}, {-0.209115600730e2, 20, 325, 1.16, 1, 1},
		{0.167788306989e-1, 15, 300, 1.13, 3, 2}, {0.262767566274e4, 25, 275, 1.25, 2, 3},
	},
}
