package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Rheology is a Herschel–Bulkley fluid,
//
//	τ = τ0 + K γⁿ    where τ > τ0, otherwise no flow
//
// with the yield stress τ0 (Pa), the consistency index K (Pa·sⁿ) and the flow
// index n. A yield stress is zero or at least 1e-9 Pa. The other laws are special cases: Newtonian τ0 = 0 and n = 1,
// Bingham n = 1, power law τ0 = 0. The zero value is an error wherever it is
// used.
//
// Source: Herschel and Bulkley, Kolloid-Zeitschrift 39 (1926) 291; the same
// form in API RP 13D (2006), 4.
type Rheology struct {
	Yield       unit.Pressure    `json:"yield"`
	Consistency unit.Consistency `json:"consistency"`
	Index       float64          `json:"index"`
}

// Limits of what the package takes for a liquid.
const (
	leastIndex    = 0.1
	greatestIndex = 2.0
	mostYield     = 10_000 * unit.Pascal
	leastYield    = 1e-9 * unit.Pascal // below, it is none
	mostK         = 10_000 * unit.PascalSecondN
	leastK        = 1e-6 * unit.PascalSecondN
)

// Newtonian is a fluid of constant viscosity: water, brine, oil.
func Newtonian(viscosity unit.Viscosity) Rheology {
	return Rheology{Consistency: unit.Consistency(viscosity), Index: 1}
}

// Bingham is a fluid of plastic viscosity and yield point: τ = YP + PV γ.
func Bingham(plastic unit.Viscosity, yieldPoint unit.Pressure) Rheology {
	return Rheology{Yield: yieldPoint, Consistency: unit.Consistency(plastic), Index: 1}
}

// PowerLaw is a fluid without yield stress: τ = K γⁿ.
func PowerLaw(k unit.Consistency, n float64) Rheology {
	return Rheology{Consistency: k, Index: n}
}

// Model tells which law r is.
func (r Rheology) Model() Model {
	switch {
	case r.Yield == 0 && r.Index == 1:
		return ModelNewtonian
	case r.Index == 1:
		return ModelBingham
	case r.Yield == 0:
		return ModelPowerLaw
	}
	return ModelHerschelBulkley
}

// Stress returns the shear stress at a shear rate,
//
//	τ = τ0 + K γⁿ
//
// and at rest the yield stress: the most that the fluid bears without flowing.
//
// Range: a shear rate from zero up and a fluid that Validate takes; neither is
// checked, and below zero what comes out is no stress, as a rule NaN.
//
// Source: Herschel and Bulkley 1926.
func (r Rheology) Stress(rate unit.ShearRate) unit.Pressure {
	if r.Index == 1 {
		return r.Yield + unit.Pressure(float64(r.Consistency)*float64(rate))
	}
	return r.Yield + unit.Pressure(float64(r.Consistency)*math.Pow(float64(rate), r.Index))
}

// Rate returns the shear rate at a shear stress,
//
//	γ = ((τ - τ0)/K)^(1/n)    and 0 below the yield stress.
//
// Range: any stress; a fluid that Validate takes, which isn't checked.
//
// Source: Herschel and Bulkley 1926, turned round.
func (r Rheology) Rate(stress unit.Pressure) unit.ShearRate {
	x := float64(stress - r.Yield)
	if x <= 0 {
		return 0
	}
	return unit.ShearRate(math.Pow(x/float64(r.Consistency), 1/r.Index))
}

// Viscosity returns the apparent viscosity at a shear rate, τ/γ.
//
//	µa = τ/γ
//
// Range: a shear rate above zero. At rest it is infinite, or NaN without a
// yield stress.
//
// Source: definition.
func (r Rheology) Viscosity(rate unit.ShearRate) unit.Viscosity {
	return unit.Viscosity(float64(r.Stress(rate)) / float64(rate))
}

// Validate reports everything that is wrong with r.
func (r Rheology) Validate() error {
	f := fault.In("flow")
	if r.valid() { // the hot path builds no names
		return nil
	}
	if r.Yield != 0 {
		f.Add(fault.Between("Yield", r.Yield, leastYield, mostYield))
	}
	f.Add(fault.Between("Consistency", r.Consistency, leastK, mostK))
	f.Add(fault.Between("Index", r.Index, leastIndex, greatestIndex))
	return f.Err()
}

func (r Rheology) valid() bool {
	return (r.Yield == 0 || r.Yield >= leastYield && r.Yield <= mostYield) &&
		r.Consistency >= leastK && r.Consistency <= mostK &&
		r.Index >= leastIndex && r.Index <= greatestIndex
}
