package choke

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// UpstreamGas is what flows, at inlet conditions.
type UpstreamGas struct {
	Density   unit.Density   `json:"density"`    // at inlet pressure and temperature
	HeatRatio float64        `json:"heat_ratio"` // γ, ratio of specific heats
	Viscosity unit.Viscosity `json:"viscosity"`  // zero stands for turbulent flow
}

// Validate reports everything that is wrong with g.
func (g UpstreamGas) Validate() error {
	return fault.Join(scope, density(g.Density), fault.AboveTo("HeatRatio", g.HeatRatio, 1, 2), viscosity(g.Viscosity))
}

// GasFlow is a gas's flow through a choke with the terms that make it.
type GasFlow struct {
	Coefficient    unit.FlowCoefficient `json:"coefficient"`     // C
	Density        unit.Density         `json:"density"`         // ρ1
	Upstream       unit.Pressure        `json:"upstream"`        // p1, gauge
	Mass           unit.MassRate        `json:"mass"`            // W
	Rate           unit.FlowRate        `json:"rate"`            // at inlet conditions
	Drop           unit.Pressure        `json:"drop"`            // p1 - p2
	Ratio          float64              `json:"ratio"`           // x = (p1-p2)/p1, absolute
	ChokedRatio    float64              `json:"choked_ratio"`    // Fγ·xTP
	SizingRatio    float64              `json:"sizing_ratio"`    // the lesser of the two
	Expansion      float64              `json:"expansion"`       // Y
	PipingFactor   float64              `json:"piping_factor"`   // FP
	Reynolds       float64              `json:"reynolds"`        // Rev; zero where no viscosity was given
	ReynoldsFactor float64              `json:"reynolds_factor"` // FR
	Critical       bool                 `json:"critical"`        // the rate doesn't grow with a lower downstream pressure
	Outside        []string             `json:"outside"`         // what lies beyond the standard's range
}

// Gas computes the flow of a gas from upstream to downstream:
//
//	W = FP·FR·C·Y·sqrt(xs·p1·ρ1)
//	xs = min(x, Fγ·xTP)         Fγ = γ/1.4
//	Y = 1 - xs/(3·Fγ·xTP)       turbulent; 2/3 when critical
//	Y = sqrt(1 - xs/2)          Rev below 1,000; in between linear in Rev
//
// upstream and downstream are gauge; p1 in the equation is absolute, and so are those
// of x = (p1-p2)/p1. Equal pressures give no flow. Errors: ErrNoFlow where
// downstream is above upstream; faults of the inputs.
// Source: IEC 60534-2-1:2011, sizing equations for compressible fluids.
func (t Trim) Gas(g UpstreamGas, upstream, downstream unit.Pressure) (GasFlow, error) {
	p1, p2, err := pressures(upstream, downstream)
	if err := fault.Join(scope, t.check(g.Viscosity != 0), fault.At("Gas", g.Validate()), fault.AboveTo("GasRatio", t.GasRatio, 0, 1), err); err != nil {
		return GasFlow{}, err
	}
	if p1 == 0 { // both sides are vacuum
		return GasFlow{}, ErrNoFlow
	}
	return t.gas(g, upstream, (p1-p2)/p1)
}

// gas is Gas for a ratio x, of inputs that are in order.
func (t Trim) gas(g UpstreamGas, upstream unit.Pressure, x float64) (GasFlow, error) {
	p1 := float64(upstream + unit.Atmosphere)
	f := GasFlow{
		Coefficient: t.Coefficient, Density: g.Density, Upstream: upstream,
		Drop: unit.Pressure(x * p1), Ratio: x, PipingFactor: t.PipingFactor(),
		ChokedRatio: g.HeatRatio / 1.4 * t.GasRatioWithFittings(), ReynoldsFactor: 1,
	}
	f.SizingRatio = min(f.Ratio, f.ChokedRatio)
	f.Critical = f.Ratio >= f.ChokedRatio
	expansion := func(reynolds float64) float64 { return expansion(f.SizingRatio, f.ChokedRatio, reynolds) }
	full := f.PipingFactor * float64(t.Coefficient) * math.Sqrt(f.SizingRatio*p1/float64(g.Density))
	nu := float64(g.Viscosity) / float64(g.Density)
	q, err := t.viscous(full, nu, expansion)
	if err != nil {
		return GasFlow{}, err
	}
	reynolds := math.Inf(1)
	if nu > 0 && q > 0 {
		reynolds = t.reynolds(q, nu)
		f.Reynolds, f.ReynoldsFactor = reynolds, t.ReynoldsFactor(reynolds)
	}
	f.Expansion = expansion(reynolds)
	f.Rate, f.Mass = unit.FlowRate(q), unit.MassRate(q*float64(g.Density))
	f.Outside = t.outside(reynolds)
	return f, nil
}

// expansion is the factor Y, for turbulent flow and down to laminar.
func expansion(x, choked, reynolds float64) float64 {
	y := 1 - x/(3*choked)
	if reynolds >= turbulent {
		return y
	}
	laminar := math.Sqrt(1 - min(1, x)/2)
	if reynolds < 1000 {
		return laminar
	}
	return laminar + (reynolds-1000)/9000*(y-laminar)
}
