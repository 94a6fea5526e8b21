package hydrostatics

import "completion.example/hydrostatics/unit"

// gravity is the standard acceleration of free fall, m/s².
// Source: 3rd General Conference on Weights and Measures, 1901; exact.
const gravity = 9.80665

// Water that specific gravities are counted against.
const (
	// PureWater is the 1 g/cm³ that a mud or brine of SG 1.00 weighs in the
	// field's arithmetic. Water at its densest, 4 °C, has 999.97 kg/m³.
	PureWater = 1 * unit.GramPerCubicCentimetre

	// WaterAt60F is the density of water at 60 °F, against which the specific
	// gravity of a crude, and so its API gravity, is counted.
	//
	// Source: API MPMS 11.1 (2004), 999.016 kg/m³.
	WaterAt60F = 999.016 * unit.KilogramPerCubicMetre
)

// Pressure returns the hydrostatic pressure of a fluid of constant density
// over a vertical depth:
//
//	p = ρ·g·h
//
// ρ is the density in kg/m³, h the true vertical depth in m (never the
// measured depth), p in Pa. A negative h gives a negative p: what is lost on
// the way up. Density that changes with pressure and temperature is the
// business of Column.
//
// In field units 1 lb/gal is 4/77 = 0.051948 psi/ft; the 0.052 of the books is
// 0.100 % more.
//
// Range: any numbers; nothing is checked.
//
// Source: Bourgoyne et al., Applied Drilling Engineering, 1986, ch. 4; units
// by exact definition.
func Pressure(rho unit.Density, tvd unit.Length) unit.Pressure {
	return unit.Pressure(float64(rho) * gravity * float64(tvd))
}

// Gradient returns the pressure per vertical length of a fluid at rest:
//
//	G = ρ·g
//
// ρ in kg/m³, G in Pa/m. Source: as for Pressure.
//
// Range: any density; it isn't checked.
func Gradient(rho unit.Density) unit.Gradient {
	return unit.Gradient(float64(rho) * gravity)
}

// Density returns the density whose fluid at rest has this gradient, the
// inverse of Gradient:
//
//	ρ = G/g
//
// Range: any gradient; it isn't checked.
func Density(gradient unit.Gradient) unit.Density {
	return unit.Density(float64(gradient) / gravity)
}

// PressureOf returns the pressure of a gradient over a vertical depth:
//
//	p = G·h
//
// G in Pa/m, h in m, p in Pa. It serves pore and fracture gradients as well,
// counted from the datum of h.
//
// Range: any numbers; nothing is checked.
//
// Source: definition of the gradient.
func PressureOf(gradient unit.Gradient, tvd unit.Length) unit.Pressure {
	return unit.Pressure(float64(gradient) * float64(tvd))
}

// GradientOf returns the mean gradient from the datum to a depth:
//
//	G = p/h
//
// p in Pa, h in m and not zero, G in Pa/m.
//
// Source: definition.
func GradientOf(p unit.Pressure, tvd unit.Length) unit.Gradient {
	return unit.Gradient(float64(p) / float64(tvd))
}

// EquivalentDensity returns the equivalent mud weight of a pressure at a
// depth: the constant density that would give it with no pressure at surface:
//
//	ρe = p/(g·h)
//
// p in Pa (gauge), h the true vertical depth in m and not zero, ρe in kg/m³.
//
// Source: Bourgoyne et al., Applied Drilling Engineering, 1986, ch. 4, in SI.
func EquivalentDensity(p unit.Pressure, tvd unit.Length) unit.Density {
	return unit.Density(float64(p) / (gravity * float64(tvd)))
}

// Head returns the height of a column of constant density that gives this
// pressure:
//
//	h = p/(ρ·g)
//
// p in Pa, ρ in kg/m³ and not zero, h in m.
//
// Source: inverse of Pressure.
func Head(p unit.Pressure, rho unit.Density) unit.Length {
	return unit.Length(float64(p) / (float64(rho) * gravity))
}

// SpecificGravity returns a density relative to water:
//
//	SG = ρ/ρw
//
// For muds and brines take PureWater, for oils WaterAt60F.
//
// Range: any density over one of water that isn't zero: infinite at zero.
//
// Source: definition.
func SpecificGravity(rho, water unit.Density) float64 {
	return float64(rho) / float64(water)
}

// DensityOfSpecificGravity is the inverse of SpecificGravity:
//
//	ρ = SG·ρw
//
// Range: any numbers; nothing is checked.
func DensityOfSpecificGravity(sg float64, water unit.Density) unit.Density {
	return unit.Density(sg * float64(water))
}

// APIGravity returns the API gravity, in °API, of an oil with this density at
// 60 °F and atmospheric pressure:
//
//	°API = 141.5/SG − 131.5,  SG = ρ/ρw(60 °F)
//
// Water has 10 °API. A density at another temperature has to be carried to
// 60 °F first (API MPMS 11.1).
//
// Range: a density above zero, not checked: infinite at zero.
//
// Source: API MPMS 11.1 (2004); definition.
func APIGravity(rho unit.Density) float64 {
	return 141.5/SpecificGravity(rho, WaterAt60F) - 131.5
}

// DensityOfAPIGravity returns the density at 60 °F of an oil of this API
// gravity, the inverse of APIGravity:
//
//	ρ = ρw(60 °F)·141.5/(131.5 + °API)
//
// Range: above −131.5 °API, not checked: infinite there, negative below; crude
// oils have 5 to 60.
func DensityOfAPIGravity(api float64) unit.Density {
	return DensityOfSpecificGravity(141.5/(131.5+api), WaterAt60F)
}
