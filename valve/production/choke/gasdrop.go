package choke

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/root"
)

// GasDrop computes the drop that a mass rate of gas costs, which is Gas the
// other way round:
//
//	W = FP·FR·C·Y·sqrt(x·p1·ρ1), solved for x from none to Fγ·xTP
//
// The rate grows with the drop up to there, so that there is one answer. Errors:
// those of Gas; ErrChoked where the choke is critical before it passes the rate.
// Source: IEC 60534-2-1:2011, sizing equations for compressible fluids.
func (t Trim) GasDrop(g Gas, upstream unit.Pressure, rate unit.MassRate) (GasFlow, error) {
	none, err := t.Gas(g, upstream, upstream)
	if err := errors.Join(notNegative("mass rate", rate), err); err != nil {
		return GasFlow{}, err
	}
	if rate == 0 {
		return none, nil
	}
	p1 := upstream + unit.Atmosphere
	lowest := max(0, p1*unit.Pressure(1-none.ChokedRatio)) - unit.Atmosphere
	most, err := t.Gas(g, upstream, lowest)
	if err != nil {
		return GasFlow{}, err
	}
	if !(rate <= most.Mass) {
		return GasFlow{}, fmt.Errorf("%w: %v is wanted; from %v upstream this choke of %v passes %v at most, from a drop of %v on",
			ErrChoked, rate.Rounded(5), upstream.Rounded(5), t.Coefficient.Rounded(4), most.Mass.Rounded(5), most.Drop.Rounded(5))
	}
	var f GasFlow
	flow := func(downstream float64) float64 {
		if f, err = t.Gas(g, upstream, unit.Pressure(downstream)); err != nil {
			return 0
		}
		return float64(f.Mass - rate)
	}
	p2, found := root.Find(flow, float64(lowest), float64(upstream), 0)
	if err := errors.Join(err, found); err != nil {
		return GasFlow{}, fmt.Errorf("choke: drop of a gas: %w", err)
	}
	return t.Gas(g, upstream, unit.Pressure(p2))
}
