package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Reading is one reading of the trade's rotational viscometer with the usual
// rotor, bob and spring (R1, B1, F1).
type Reading struct {
	Speed float64 `json:"speed"` // of the rotor, rev/min
	Dial  float64 `json:"dial"`  // deflection, degrees
}

// The viscometer's constants, by which 300 rev/min are 511 1/s and plastic
// viscosity in cP is the difference of the readings at 600 and 300. One degree
// is 1.067 lbf/100 ft²; taking it for 1, as one does on the rig for the yield
// point, costs 6 %.
//
// Source: API RP 13D (3rd edition, 1995): 5.11 dyn/cm² per degree, 1022 1/s at
// 600 rev/min. The gap of R1 and B1 (1.8415 and 1.7245 cm) gives 1.7023 1/s per
// rev/min.
const (
	stressPerDegree  = 0.511 * unit.Pascal
	ratePerRevPerMin = 511.0 / 300 * unit.PerSecond
)

// Rate returns the shear rate at the bob, 1.7033 1/s per rev/min: that of a
// Newtonian fluid, which the trade uses for all.
//
// Range: any speed; Validate takes 0.01 to 10,000 rev/min.
//
// Source: API RP 13D; geometry of rotor R1 and bob B1.
func (r Reading) Rate() unit.ShearRate { return ratePerRevPerMin * unit.ShearRate(r.Speed) }

// Stress returns the shear stress at the bob, 0.511 Pa per degree.
//
//	τ = 0.511·θ
//
// Range: any dial; Validate takes 0.01 to 10,000 degrees.
//
// Source: API RP 13D; spring F1.
func (r Reading) Stress() unit.Pressure { return stressPerDegree * unit.Pressure(r.Dial) }

// PlasticViscosity returns PV = θ600 - θ300, in cP where the dial is in
// degrees.
//
// Range: any readings, not checked; negative where θ300 is the greater.
//
// Source: API RP 13B-1.
func PlasticViscosity(theta600, theta300 float64) unit.Viscosity {
	return unit.Viscosity(theta600-theta300) * unit.Centipoise
}

// YieldPoint returns YP = θ300 - PV = 2 θ300 - θ600 as the trade quotes it,
// taking a degree for 1 lbf/100 ft². The stress proper is 1.067 times as much:
// TwoPointBingham uses that.
//
// Range: any readings, not checked; negative where θ600 is more than twice
// θ300.
//
// Source: API RP 13B-1.
func YieldPoint(theta600, theta300 float64) unit.Pressure {
	return unit.Pressure(2*theta300-theta600) * unit.PoundForcePer100SquareFeet
}

// TwoPointPowerLaw returns the power law through two readings,
//
//	n = ln(θ1/θ2)/ln(N1/N2),  K = τ1/γ1ⁿ
//
// The pair 600 and 300 stands for flow in the pipe; 100 and 3, or 300 and 3, for
// flow in the annulus. Speeds must differ, and the faster one must read more.
//
// Errors: faults of the readings; those of Rheology.Validate.
//
// Source: API RP 13D (3rd edition, 1995): n = 3.32 log10(θ600/θ300), K = 5.11
// θ600/1022ⁿ dyn·sⁿ/cm²; 3.32 there stands for 1/log10 2 = 3.3219.
func TwoPointPowerLaw(fast, slow Reading) (Rheology, error) {
	if err := checkPair(fast, slow); err != nil {
		return Rheology{}, err
	}
	n := math.Log(fast.Dial/slow.Dial) / math.Log(fast.Speed/slow.Speed)
	r := PowerLaw(unit.Consistency(float64(fast.Stress())/math.Pow(float64(fast.Rate()), n)), n)
	return r, r.Validate()
}

// TwoPointBingham returns the straight line through two readings,
//
//	PV = (τ1 - τ2)/(γ1 - γ2),  τ0 = τ1 - PV γ1
//
// An error where the line meets the axis below zero: then the readings bend
// upwards, and no Bingham fluid does.
//
// Source: API RP 13D; a line through two points.
func TwoPointBingham(fast, slow Reading) (Rheology, error) {
	if err := checkPair(fast, slow); err != nil {
		return Rheology{}, err
	}
	pv := float64(fast.Stress()-slow.Stress()) / float64(fast.Rate()-slow.Rate())
	r := Bingham(unit.Viscosity(pv), fast.Stress()-unit.Pressure(pv)*unit.Pressure(fast.Rate()))
	if math.Abs(float64(r.Yield)) < 1e-12*float64(fast.Stress())+float64(leastYield) {
		r.Yield = 0 // what is left of a straight line through zero
	}
	return r, r.Validate()
}

func checkPair(fast, slow Reading) error {
	f := fault.In("flow")
	f.At("fast", fast.Validate())
	f.At("slow", slow.Validate())
	if err := f.Err(); err != nil {
		return err
	}
	if fast.Speed <= slow.Speed {
		f.New("fast.Speed", "is %v rev/min; must be above slow.Speed, %v rev/min", fast.Speed, slow.Speed)
	}
	if fast.Dial <= slow.Dial {
		f.New("fast.Dial", "is %v degrees; must be above slow.Dial, %v degrees", fast.Dial, slow.Dial)
	}
	return f.Err()
}

// Validate reports everything that is wrong with r.
func (r Reading) Validate() error {
	f := fault.In("flow")
	f.Add(fault.Plain("Speed", r.Speed, 0.01, 10_000, "rev/min"))
	f.Add(fault.Plain("Dial", r.Dial, 0.01, 10_000, "degrees"))
	return f.Err()
}
