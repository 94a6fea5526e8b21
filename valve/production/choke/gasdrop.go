package choke

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// GasDrop computes the drop that a mass rate of gas costs, which is Gas the
// other way round:
//
//	W = FP·FR·C·Y·sqrt(x·p1·ρ1), solved for x from none to Fγ·xTP
//
// The rate grows with the drop up to there, so that there is one answer. Errors:
// those of Gas; ErrChoked where the choke is critical before it passes the rate;
// ErrNoSize for a viscous rate at which the standard's Reynolds factor jumps, far
// beyond the openings that it covers.
// Source: IEC 60534-2-1:2011, sizing equations for compressible fluids.
func (t Trim) GasDrop(g UpstreamGas, upstream unit.Pressure, rate unit.MassRate) (GasFlow, error) {
	none, err := t.Gas(g, upstream, upstream)
	if err := fault.Join(scope, fault.AtLeast("rate", rate, 0), err); err != nil {
		return GasFlow{}, err
	}
	if rate == 0 {
		return none, nil
	}
	most, err := t.gas(g, upstream, min(1, none.ChokedRatio))
	if err != nil {
		return GasFlow{}, err
	}
	if !(rate <= most.Mass) {
		return GasFlow{}, fmt.Errorf("%w: %v is wanted; from %v upstream this choke of %v passes %v at most, from a drop of %v on",
			ErrChoked, rate.Rounded(5), upstream.Rounded(5), t.Coefficient.Rounded(4), most.Mass.Rounded(5), most.Drop.Rounded(5))
	}
	excess := func(x float64) float64 {
		f, fault := t.gas(g, upstream, x)
		if fault != nil {
			err = fault
		}
		return float64(f.Mass - rate)
	}
	x, found := root.Find(excess, 0, most.Ratio, 0)
	if err := errors.Join(err, found); err != nil {
		return GasFlow{}, fmt.Errorf("choke: drop of a gas: %w", err)
	}
	f, err := t.gas(g, upstream, x)
	if err == nil && math.Abs(float64(f.Mass-rate)) > 1e-9*float64(rate) {
		return GasFlow{}, fmt.Errorf("choke: drop of a gas: %w: at a valve Reynolds number of %.4g the standard's factor jumps from %v to another rate", ErrNoSize, f.Reynolds, f.Mass.Rounded(5))
	}
	return f, err
}
