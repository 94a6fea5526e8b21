package choke

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// LiquidRate is the turbulent flow of a liquid that does not choke:
//
//	q = Av·sqrt(Δp/ρ)
//
// q rate (m³/s), Av flow coefficient (m²), Δp drop (Pa), ρ density (kg/m³).
// In field units q[gal/min] = Cv·sqrt(Δp[psi]/SG). A negative drop gives NaN.
// Valid while Δp stays below Trim's choked drop and the Reynolds number above
// 10,000. Source: IEC 60534-1, definition of the flow coefficient.
func LiquidRate(c unit.FlowCoefficient, density unit.Density, drop unit.Pressure) unit.FlowRate {
	return unit.FlowRate(float64(c) * math.Sqrt(float64(drop)/float64(density)))
}

// LiquidDrop is the inverse of LiquidRate for the drop; it has the sign of the
// rate:
//
//	Δp = ρ·q·|q|/Av²
//
// Range: any rate; infinite, or NaN at no rate, through no coefficient.
func LiquidDrop(c unit.FlowCoefficient, density unit.Density, rate unit.FlowRate) unit.Pressure {
	v := float64(rate) / float64(c)
	return unit.Pressure(float64(density) * v * math.Abs(v))
}

// LiquidCoefficient is the inverse of LiquidRate for the coefficient:
//
//	Av = q·sqrt(ρ/Δp)
//
// Range: a drop above zero: infinite at zero, NaN below.
func LiquidCoefficient(rate unit.FlowRate, density unit.Density, drop unit.Pressure) unit.FlowCoefficient {
	return unit.FlowCoefficient(float64(rate) * math.Sqrt(float64(density)/float64(drop)))
}

// JetVelocity is the speed of the jet that a drop makes in an opening with a
// discharge coefficient:
//
//	v = Cd·sqrt(2Δp/ρ)
//
// Range: a drop from zero up, NaN below; a density above zero: infinite there.
//
// Source: Bourgoyne et al., Applied Drilling Engineering, 1986, nozzle velocity.
func JetVelocity(cd float64, density unit.Density, drop unit.Pressure) unit.Velocity {
	return unit.Velocity(cd * math.Sqrt(2*float64(drop)/float64(density)))
}

// CriticalPressureRatio is the factor FF by which the pressure at the vena
// contracta of a choked liquid lies below its vapour pressure:
//
//	FF = 0.96 - 0.28·sqrt(pv/pc)
//
// pv vapour pressure at the inlet temperature, pc thermodynamic critical
// pressure, both absolute, not gauge, 0 ≤ pv ≤ pc. Source: IEC 60534-2-1, liquid critical
// pressure ratio factor.
//
// Range: not checked: NaN for pressures of unlike sign, and beyond pc what the
// formula gives.
func CriticalPressureRatio(vapour, critical unit.Pressure) float64 {
	return 0.96 - 0.28*math.Sqrt(float64(vapour)/float64(critical))
}
