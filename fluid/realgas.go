package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// gasConstant is R, J/(mol·K). Source: SI Brochure, 9th ed. (2019); exact.
const gasConstant = 8.31446261815324

// realGas is a gas that follows corresponding states with the Z factor of
// Dranchuk and Abou-Kassem; Gas and GasMixture are turned into it.
type realGas struct {
	name      string
	molarMass float64 // kg/mol
	pressure  float64 // pseudo-critical, absolute Pa
	reciproc  float64 // of the pseudo-critical temperature, 1/K
}

// state returns the equation's isotherm and the density an ideal gas of the
// same state would have, both reduced, or an error outside the range.
func (g *realGas) state(p unit.Pressure, t unit.Temperature) (s isotherm, r, P, T float64, err error) {
	P, T = absolute(p), t.Kelvin()
	tpr, ppr := T*g.reciproc, P/g.pressure
	if !within(tpr, zTLeast, zTGreatest) || !within(ppr, 0, zPGreatest) {
		return s, 0, 0, 0, g.fault(p, t, ppr, tpr)
	}
	s = newIsotherm(tpr)
	return s, zCritical * ppr * s.u, P, T, nil
}

func (g *realGas) fault(p unit.Pressure, t unit.Temperature, ppr, tpr float64) error {
	var faults []error
	if !within(tpr, zTLeast, zTGreatest) {
		faults = append(faults, outside(g.name, "temperature", t, unit.Kelvin(zTLeast/g.reciproc), unit.Kelvin(zTGreatest/g.reciproc)))
	}
	if !within(ppr, 0, zPGreatest) {
		faults = append(faults, outside(g.name, "pressure", p, gauge(0), gauge(zPGreatest*g.pressure)))
	}
	return fault.Join(scope, faults...)
}

func (g *realGas) zFactor(p unit.Pressure, t unit.Temperature) (float64, error) {
	s, r, _, _, err := g.state(p, t)
	if err != nil {
		return 0, err
	}
	if r == 0 {
		return 1, nil
	}
	return r / s.density(r), nil
}

// density returns ρ = p·M/(Z·R·T).
func (g *realGas) density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	s, r, P, T, err := g.state(p, t)
	if err != nil || r == 0 {
		return 0, err
	}
	return unit.Density(P * g.molarMass / (gasConstant * T) * s.density(r) / r), nil
}

// compressibility returns (1/ρ)·(∂ρ/∂p): with r = ρ·Z(ρ) and r proportional to
// p, that is r/(p·ρ·r'(ρ)).
func (g *realGas) compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	s, r, P, _, err := g.state(p, t)
	if err != nil {
		return 0, err
	}
	if r == 0 {
		return 0, outside(g.name, "pressure", p, gauge(1), gauge(zPGreatest*g.pressure))
	}
	rho := s.density(r)
	_, slope, _ := s.ideal(rho)
	return unit.Compressibility(r / (P * rho * slope)), nil
}

// expansivity returns −(1/ρ)·(∂ρ/∂T): r = ρ·Z(ρ, Tpr) at constant p, where r
// falls as 1/T.
func (g *realGas) expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	s, r, _, T, err := g.state(p, t)
	if err != nil {
		return 0, err
	}
	if r == 0 {
		return unit.Expansivity(1 / T), nil
	}
	rho := s.density(r)
	_, slope, _ := s.ideal(rho)
	// tpr·∂r/∂tpr at constant ρ is −Σ u·d/du of each coefficient.
	u, q := s.u, rho*rho
	u2 := u * u
	c1 := dak2*u + u2*u*(3*dak3+u*(4*dak4+5*u*dak5))
	b := u * (dak7 + 2*dak8*u)
	x := dak11 * q
	byU := q * (c1 + b*rho - dak9*b*q*q + 3*s.c4*rho*decay(x)*(1+x))
	return unit.Expansivity((r - byU) / (T * rho * slope)), nil
}
