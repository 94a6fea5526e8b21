package choke

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// UpstreamLiquid is what flows, at inlet conditions.
type UpstreamLiquid struct {
	Density          unit.Density   `json:"density"`
	VapourPressure   unit.Pressure  `json:"vapour_pressure"`   // absolute, at inlet temperature; zero for a dead liquid
	CriticalPressure unit.Pressure  `json:"critical_pressure"` // absolute, of the substance; only with a vapour pressure
	Viscosity        unit.Viscosity `json:"viscosity"`         // zero stands for turbulent flow
}

// Validate reports everything that is wrong with l.
func (l UpstreamLiquid) Validate() error {
	f := fault.In(scope)
	f.Add(density(l.Density), fault.AtLeast("VapourPressure", l.VapourPressure, 0), viscosity(l.Viscosity))
	if l.VapourPressure > 0 && !(l.CriticalPressure > l.VapourPressure && finite(float64(l.CriticalPressure))) {
		f.New("CriticalPressure", "is %v; must be above the vapour pressure of %v", l.CriticalPressure, l.VapourPressure)
	}
	return f.Err()
}

func (l UpstreamLiquid) criticalRatio() float64 {
	if l.VapourPressure == 0 {
		return 0.96
	}
	return CriticalPressureRatio(l.VapourPressure, l.CriticalPressure)
}

// LiquidFlow is a liquid's flow through a choke with the terms that make it.
type LiquidFlow struct {
	Coefficient    unit.FlowCoefficient `json:"coefficient"` // C
	Liquid         UpstreamLiquid       `json:"liquid"`
	Upstream       unit.Pressure        `json:"upstream"`        // gauge
	Rate           unit.FlowRate        `json:"rate"`            // q
	Drop           unit.Pressure        `json:"drop"`            // Δp, as the pressures are
	ChokedDrop     unit.Pressure        `json:"choked_drop"`     // above it the rate doesn't grow
	SizingDrop     unit.Pressure        `json:"sizing_drop"`     // the lesser of the two
	CriticalRatio  float64              `json:"critical_ratio"`  // FF
	PipingFactor   float64              `json:"piping_factor"`   // FP
	Recovery       float64              `json:"recovery"`        // FLP
	Reynolds       float64              `json:"reynolds"`        // Rev; zero where no viscosity was given
	ReynoldsFactor float64              `json:"reynolds_factor"` // FR
	Choked         bool                 `json:"choked"`
	Outside        []string             `json:"outside"` // what lies beyond the standard's range
}

// Liquid computes the flow of a liquid from upstream to downstream:
//
//	q = FP·FR·C·sqrt(Δps/ρ)
//	Δps = min(p1-p2, Δpchoked)
//	Δpchoked = (FLP/FP)²·(p1 - FF·pv)
//
// upstream and downstream are gauge; p1, p2 and pv in the equations are absolute. With
// a viscosity FR follows from the valve Reynolds number of the flow itself. Equal pressures give no flow. Errors: ErrNoFlow
// where downstream is above upstream; faults of the inputs; an inlet at or
// below its own vapour pressure.
// Source: IEC 60534-2-1:2011, sizing equations for incompressible fluids.
func (t Trim) Liquid(l UpstreamLiquid, upstream, downstream unit.Pressure) (LiquidFlow, error) {
	p1, p2, err := pressures(upstream, downstream)
	f, errs := t.liquid(l, p1, err)
	if errs != nil {
		return LiquidFlow{}, errs
	}
	f.Drop = unit.Pressure(p1 - p2)
	f.SizingDrop = min(f.Drop, f.ChokedDrop)
	f.Choked = f.Drop > f.ChokedDrop
	full := f.PipingFactor * float64(t.Coefficient) * math.Sqrt(float64(f.SizingDrop)/float64(l.Density))
	q, err := t.viscous(full, float64(l.Viscosity)/float64(l.Density), func(float64) float64 { return 1 })
	if err != nil {
		return LiquidFlow{}, err
	}
	return t.finish(f, q), nil
}

// liquid checks the inputs and returns the terms that the rate doesn't change.
func (t Trim) liquid(l UpstreamLiquid, p1 float64, err error) (LiquidFlow, error) {
	if err := fault.Join(scope, t.check(l.Viscosity != 0), fault.At("Liquid", l.Validate()), fault.AboveTo("Recovery", t.Recovery, leastRecovery, 1), err); err != nil {
		return LiquidFlow{}, err
	}
	f := LiquidFlow{Coefficient: t.Coefficient, Liquid: l, Upstream: unit.Pressure(p1) - unit.Atmosphere, CriticalRatio: l.criticalRatio(), PipingFactor: t.PipingFactor(), Recovery: t.RecoveryWithFittings()}
	if p1 <= float64(l.VapourPressure) {
		return f, fault.NewIn(scope, "upstream", "is %v absolute; must be above the vapour pressure of %v: the liquid boils before the choke",
			unit.Pressure(p1), l.VapourPressure)
	}
	r := f.Recovery / f.PipingFactor
	f.ChokedDrop = unit.Pressure(r * r * (p1 - f.CriticalRatio*float64(l.VapourPressure)))
	return f, nil
}

// viscous solves q = FR(Rev(q))·Y(Rev)·full for the rate at inlet conditions.
// FR grows from zero as the root of q, so that there is always one solution
// above zero, and none above full.
func (t Trim) viscous(full, nu float64, expansion func(reynolds float64) float64) (float64, error) {
	q0 := full * expansion(math.Inf(1))
	if nu == 0 || q0 == 0 || t.reynolds(q0, nu) >= turbulent {
		return q0, nil
	}
	excess := func(q float64) float64 {
		re := t.reynolds(q, nu)
		return t.ReynoldsFactor(re)*expansion(re)*full - q
	}
	if excess(full) >= 0 {
		return full, nil
	}
	lo := full
	for excess(lo) < 0 && lo > math.SmallestNonzeroFloat64 {
		lo /= 16
	}
	q, err := root.Find(excess, lo, full, 0)
	if err != nil {
		return 0, fmt.Errorf("choke: viscous flow: %w", err)
	}
	return q, nil
}

// finish fills in what follows from the rate.
func (t Trim) finish(f LiquidFlow, q float64) LiquidFlow {
	l := f.Liquid
	f.Rate, f.ReynoldsFactor = unit.FlowRate(q), 1
	reynolds := math.Inf(1)
	if l.Viscosity > 0 && q > 0 {
		reynolds = t.reynolds(q, float64(l.Viscosity)/float64(l.Density))
		f.Reynolds, f.ReynoldsFactor = reynolds, t.ReynoldsFactor(reynolds)
	}
	f.Outside = t.outside(reynolds)
	return f
}

// LiquidDrop computes the drop that a rate costs, which is Liquid the other
// way round:
//
//	Δp = ρ·(q/(FP·FR·C))²
//
// upstream is gauge, as in Liquid. Errors: ErrChoked where no drop makes the choke
// pass the rate.
//
// Source: see Trim.Liquid.
func (t Trim) LiquidDrop(l UpstreamLiquid, upstream unit.Pressure, rate unit.FlowRate) (LiquidFlow, error) {
	p1, _, err := pressures(upstream, -unit.Atmosphere)
	f, err := t.liquid(l, p1, fault.Join(scope, err, fault.AtLeast("rate", rate, 0)))
	if err != nil {
		return LiquidFlow{}, err
	}
	f = t.finish(f, float64(rate))
	if rate == 0 {
		return f, nil
	}
	v := float64(rate) / (f.PipingFactor * f.ReynoldsFactor * float64(t.Coefficient))
	f.Drop = unit.Pressure(float64(l.Density) * v * v)
	f.SizingDrop = f.Drop
	if !(f.Drop <= f.ChokedDrop) {
		return LiquidFlow{}, fmt.Errorf("%w: %v would take a drop of %v; from %v upstream this choke of %v chokes at a drop of %v",
			ErrChoked, rate.Rounded(5), f.Drop.Rounded(5), upstream.Rounded(5), t.Coefficient.Rounded(4), f.ChokedDrop.Rounded(5))
	}
	return f, nil
}
