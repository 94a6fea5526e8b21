package choke

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// SizeLiquid finds the flow coefficient that passes a rate of liquid between
// two pressures (gauge), all factors that depend on the coefficient being converged.
// t's own Coefficient is not used. Errors: those of Liquid; ErrNoSize where the
// fittings alone hold back more than the rate.
// Source: IEC 60534-2-1:2011, solved rather than iterated a fixed number of
// times, so that printed examples that stop early differ.
func (t Trim) SizeLiquid(l UpstreamLiquid, upstream, downstream unit.Pressure, rate unit.FlowRate) (LiquidFlow, error) {
	if err := fault.Join(scope, fault.Above("rate", rate, 0)); err != nil {
		return LiquidFlow{}, err
	}
	var f LiquidFlow
	err := t.converge(float64(rate), func(c unit.FlowCoefficient) (float64, error) {
		t.Coefficient = c
		var err error
		f, err = t.Liquid(l, upstream, downstream)
		return float64(f.Rate), err
	})
	if err != nil {
		return LiquidFlow{}, err
	}
	return f, nil
}

// SizeGas finds the flow coefficient that passes a mass rate of gas between two
// pressures, as SizeLiquid does for liquid.
func (t Trim) SizeGas(g UpstreamGas, upstream, downstream unit.Pressure, rate unit.MassRate) (GasFlow, error) {
	if err := fault.Join(scope, fault.Above("rate", rate, 0)); err != nil {
		return GasFlow{}, err
	}
	var f GasFlow
	err := t.converge(float64(rate), func(c unit.FlowCoefficient) (float64, error) {
		t.Coefficient = c
		var err error
		f, err = t.Gas(g, upstream, downstream)
		return float64(f.Mass), err
	})
	if err != nil {
		return GasFlow{}, err
	}
	return f, nil
}

// converge leaves flow at the least coefficient for which it gives the target.
// The flow grows with the coefficient: in proportion first, and towards a limit
// where fittings hold it back.
func (t Trim) converge(target float64, flow func(unit.FlowCoefficient) (float64, error)) error {
	const least = 1e-14 // m²: far below any real opening
	most := 100.0       // m²: far above
	if t.Bore > 0 {
		most = 10 * greatestRatio * float64(unit.Kv/unit.FlowCoefficient(unit.Millimetre*unit.Millimetre)) * float64(t.Bore) * float64(t.Bore)
	}
	if sum, _ := t.fittings(); sum < 0 { // fittings that recover pressure do so up to a limit
		most = min(most, 0.999*float64(t.Bore)*float64(t.Bore)*math.Sqrt(n2/-sum))
	}
	var failed error
	excess := func(logC float64) float64 {
		q, err := flow(unit.FlowCoefficient(math.Exp(logC)))
		if err != nil {
			failed = err
			return math.NaN()
		}
		return q/target - 1
	}
	lo, hi := math.Log(least), math.Log(most)
	atMost := excess(hi)
	// Laminar flow through a full trim falls again where the coefficient grows
	// against the bore: the least coefficient that does it is the answer.
	for x := hi; atMost < 0 && failed == nil && x > lo; x -= math.Ln2 {
		if e := excess(x); e >= 0 || e > atMost {
			hi, atMost = x, e
		}
	}
	if failed != nil {
		return failed
	}
	if atMost < 0 {
		return fmt.Errorf("%w: at most %.4g of it, through a coefficient of %v", ErrNoSize, 1+atMost, unit.FlowCoefficient(math.Exp(hi)).Rounded(4))
	}
	x, err := root.Find(excess, lo, hi, 0)
	if failed != nil {
		return failed
	}
	if err != nil {
		return fmt.Errorf("%w: %w", ErrNoSize, err)
	}
	q, err := flow(unit.FlowCoefficient(math.Exp(x)))
	if err == nil && !(math.Abs(q/target-1) <= 1e-9) {
		return fmt.Errorf("%w: at a coefficient of %v the standard's Reynolds factor jumps past it, from %.4g of it",
			ErrNoSize, unit.FlowCoefficient(math.Exp(x)).Rounded(4), q/target)
	}
	return err
}
