package choke

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// The constants of API RP 14E for solids-free flow, in its field units,
// sqrt(lb/ft)/s. The standard lets 150 to 200 pass for continuous service
// where corrosion is no matter; with sand the velocity should be lower.
const (
	ErosionContinuous   = 100.0
	ErosionIntermittent = 125.0
)

// ErosionalVelocity is the velocity above which erosion is to be expected:
//
//	Ve = C/sqrt(ρ)        (ft/s with ρ in lb/ft³)
//
// C is the empirical constant in the standard's field units (100 for
// continuous, 125 for intermittent service), ρ the mixture's density at flowing
// pressure and temperature. It knows nothing of sand: a screened-out velocity
// limit belongs beside it. Source: API RP 14E, 5th ed. 1991, Eq. 2.14.
//
// Range: a density above zero: infinite at zero, NaN below.
func ErosionalVelocity(c float64, density unit.Density) unit.Velocity {
	return unit.Velocity(c * math.Sqrt(density0/float64(density)) * float64(unit.FootPerSecond))
}

const density0 = float64(unit.PoundPerCubicFoot)

// ErosionalRate is the rate that flows at the erosional velocity through an
// area: q = A·Ve.
//
// Range: as ErosionalVelocity.
//
// Source: API RP 14E, see ErosionalVelocity.
func ErosionalRate(c float64, density unit.Density, a unit.Area) unit.FlowRate {
	return unit.FlowRate(float64(a) * float64(ErosionalVelocity(c, density)))
}

// ErosionalArea is the least flow area for which a rate stays at the erosional
// velocity: A = q/Ve.
//
// Range: any rate; a density from zero up, NaN below, and C above zero:
// infinite there.
//
// Source: API RP 14E, see ErosionalVelocity.
func ErosionalArea(c float64, density unit.Density, rate unit.FlowRate) unit.Area {
	return unit.Area(float64(rate) / float64(ErosionalVelocity(c, density)))
}
