package flow

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Laminar solves steady laminar flow at mean velocity v in a pipe or a
// concentric annulus, exactly for every rheology: PipeLaminar in the pipe;
// in the annulus the closed form of a Newtonian fluid, and otherwise the
// stress field by quadrature (about 1e-10; some tens of microseconds where
// there is a yield stress). Index is that of the slot in an annulus.
//
// Whether the flow is laminar at that velocity is Stream.Friction's business.
func (c Conduit) Laminar(r Rheology, v unit.Velocity) (Laminar, error) {
	f := fault.In("flow")
	f.At("Conduit", c.Validate())
	f.At("Rheology", r.Validate())
	f.Add(fault.Between("velocity", v, 0, mostVelocity))
	if err := f.Err(); err != nil {
		return Laminar{}, err
	}
	return c.laminar(r, float64(v))
}

const mostVelocity = 1000 * unit.MetrePerSecond

func (c Conduit) laminar(r Rheology, v float64) (Laminar, error) {
	if !c.Annulus() || v == 0 {
		return r.laminar(8*v/float64(c.Outer), round), nil
	}
	τw, n, err := r.annulus(float64(c.Outer), float64(c.Inner), v)
	l := Laminar{WallStress: unit.Pressure(τw), Index: n}
	l.WallRate = r.Rate(l.WallStress)
	return l, err
}

// LaminarRate is Laminar turned round: the rate that a friction gradient
// drives while flow is laminar. It is zero where the yield stress holds the
// fluid: up to a gradient of 4 τ0/(D - d). Errors: faults of c, r and the gradient.
func (c Conduit) LaminarRate(r Rheology, gradient unit.Gradient) (unit.FlowRate, error) {
	f := fault.In("flow")
	f.At("Conduit", c.Validate())
	f.At("Rheology", r.Validate())
	f.Add(fault.Between("gradient", gradient, 0, 1e12*unit.PascalPerMetre))
	if err := f.Err(); err != nil {
		return 0, err
	}
	τ0, k, m := float64(r.Yield), float64(r.Consistency), 1/r.Index
	τw := float64(gradient) * float64(c.HydraulicDiameter()) / 4
	x := τw - τ0
	if x <= 0 {
		return 0, nil
	}
	ro := float64(c.Outer) / 2
	if !c.Annulus() {
		p := x*x/(m+3) + 2*τ0*x/(m+2) + τ0*τ0/(m+1)
		shear := 4 * math.Pow(x/k, m) * x * p / (τw * τw * τw)
		return finite(shear / 4 * math.Pi * ro * ro * ro)
	}
	var g ring
	κ := float64(c.Inner / c.Outer)
	if κ < leastRatioOther {
		return 0, errThin(κ)
	}
	g.prepare(κ, r.Index)
	T := τw / (1 - κ)
	var middle float64
	q, err := g.rate(τ0/T, &middle)
	if err != nil {
		return 0, err
	}
	return finite(math.Pi * ro * ro * ro * math.Exp(q+m*math.Log(T/k)))
}

func finite(rate float64) (unit.FlowRate, error) {
	if !(math.Abs(rate) <= math.MaxFloat64) {
		return 0, fmt.Errorf("flow: the gradient drives no finite laminar rate")
	}
	return unit.FlowRate(rate), nil
}
