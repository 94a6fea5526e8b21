package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Water is fresh water as a liquid.
//
// Density, compressibility and expansivity are by IAPWS-IF97 region 1, 32 to
// 662 °F (0 to 350 °C), from the boiling pressure up to 100 MPa absolute
// (14,489 psi). Its density agrees with the scientific formulation IAPWS-95
// within 0.002 % between 0 and 150 °C and 0.1 and 100 MPa.
//
// The state is taken as liquid: below 0 °C or under its boiling pressure water
// is a *RangeError.
//
// Source: IAPWS R7-97(2012), Section 5.
type Water struct{}

const waterName = "water"

// Density returns the density,
//
//	ρ = p*/(R·T·γπ),   γπ = −Σ n·I·(7.1 − π)^(I−1)·(τ − 1.222)^J
//
//	π  p/16.53 MPa, absolute; the argument is gauge
//	τ  1386 K/T
//	R  461.526 J/(kg·K)
//
// Source: IAPWS R7-97(2012), Table 3.
func (Water) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	P, T := absolute(p), t.Kelvin()
	if !surelyLiquid(P, T) {
		if err := checkWater(P, T); err != nil {
			return 0, err
		}
	}
	return unit.Density(region1Density(P, T)), nil
}

// Compressibility returns the isothermal compressibility,
//
//	κ = −γππ/(p*·γπ)
//
// Source: IAPWS R7-97(2012), Table 3; IAPWS AN3-07(2018), region 1.
func (Water) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	P, T := absolute(p), t.Kelvin()
	if err := checkWater(P, T); err != nil {
		return 0, err
	}
	gp, gpp, _ := region1Slopes(P, T)
	return unit.Compressibility(-gpp / gp / region1Pressure), nil
}

// Expansivity returns the volumetric thermal expansion at constant pressure,
//
//	α = (1 − τ·γπτ/γπ)/T
//
// It is negative below 4 °C at atmospheric pressure.
//
// Source: IAPWS R7-97(2012), Table 3; IAPWS AN3-07(2018), region 1.
func (Water) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	P, T := absolute(p), t.Kelvin()
	if err := checkWater(P, T); err != nil {
		return 0, err
	}
	gp, _, gpt := region1Slopes(P, T)
	return unit.Expansivity((1 - region1Temperature/T*gpt/gp) / T), nil
}

// Viscosity returns the dynamic viscosity at the density of Water by the
// IAPWS formulation of 2008 without its critical enhancement, which is 1 in
// this range; see WaterViscosity. Uncertainty 1 % at atmospheric pressure, 2 to
// 3 % under pressure.
//
// Source: IAPWS R12-08, Eqs. 10 to 12, Tables 1 and 2.
func (w Water) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	rho, err := w.Density(p, t)
	if err != nil {
		return 0, err
	}
	return WaterViscosity(rho, t), nil
}

// BoilingPressure returns the gauge pressure under which water boils at t; see
// boilingPressure.
func (Water) BoilingPressure(t unit.Temperature) (unit.Pressure, error) {
	if T := t.Kelvin(); !within(T, waterTLeast, waterTGreatest) {
		return 0, outside(waterName, "temperature", t, unit.Kelvin(waterTLeast), unit.Kelvin(waterTGreatest))
	}
	return gauge(boilingPressure(t.Kelvin())), nil
}

// surelyLiquid spares most states the saturation curve: 0.1 MPa is above it up
// to 372 K, and the pressure of 623.15 K is above all of it.
func surelyLiquid(p, t float64) bool {
	return t >= waterTLeast && p <= waterPGreatest && (t <= 372 && p >= 0.1e6 || t <= waterTGreatest && p >= region1Pressure+1e4)
}

// checkWater holds p (absolute, Pa) and t (K) against region 1.
func checkWater(p, t float64) error {
	if surelyLiquid(p, t) {
		return nil
	}
	var faults []error
	if !within(t, waterTLeast, waterTGreatest) {
		faults = append(faults, outside(waterName, "temperature", unit.Kelvin(t), unit.Kelvin(waterTLeast), unit.Kelvin(waterTGreatest)))
	}
	least := waterPTriple
	if faults == nil {
		least = boilingPressure(t)
	}
	if !within(p, least, waterPGreatest) {
		faults = append(faults, outside(waterName+" as a liquid", "pressure", gauge(p), gauge(least), gauge(waterPGreatest)))
	}
	return fault.Join(scope, faults...)
}
