package production

import (
	"errors"
	"fmt"
	"math"

	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

// GasWell is one gas zone that flows up its tubing and through a choke into a line.
//
// The rate is the one at which what the zone gives reaches the choke with the
// pressure that passes it:
//
//	q = AOF·(…)^n at p      inflow.Gas
//	p to pwh                gasflow.Tubing
//	q = nozzle(pwh, line)   choke.Nozzle
//
// More rate is less pressure at the wellhead, and less pressure passes less through
// the choke, so there is one such rate, or none where the well does not reach the
// line's pressure even at rest.
//
// Source: nodal analysis with the choke as the node, common practice; each part's
// own source.
type GasWell struct {
	Inflow    inflow.GasDeliverability `json:"inflow"`
	Tubing    gasflow.Tubing           `json:"tubing"`
	Choke     unit.Area                `json:"choke"`      // its opening; see choke.Hole
	Discharge float64                  `json:"discharge"`  // of the opening
	HeatRatio float64                  `json:"heat_ratio"` // of the gas, at the wellhead
	Line      unit.Pressure            `json:"line"`
	Standard  unit.Temperature         `json:"standard"` // at which the rate is counted, at 101.325 kPa
}

// GasWellFlow is the well flowing.
type GasWellFlow struct {
	Rate     unit.FlowRate  `json:"rate"` // at standard conditions
	Mass     unit.MassRate  `json:"mass"`
	Sandface unit.Pressure  `json:"sandface"` // in front of the zone
	Nodes    []gasflow.Node `json:"nodes"`
	Wellhead unit.Pressure  `json:"wellhead"`
	Critical bool           `json:"critical"` // the line's pressure doesn't count
	Ratio    float64        `json:"ratio"`    // line over wellhead pressure, absolute
}

// ErrDead says that the well does not flow into its line.
var ErrDead = errors.New("production: the well does not flow against the line's pressure")

// Flow finds the rate. Errors: ErrDead; faults of the inputs; what the gas refuses.
//
//	choke(p(q)) = q, p(q) from inflow and tubing
//
// Source: continuity.
func (w GasWell) Flow() (GasWellFlow, error) {
	standard, err := w.check()
	if err != nil {
		return GasWellFlow{}, err
	}
	var failed error
	excess := func(q float64) float64 { // of what the choke passes over the rate
		x, err := w.at(q, standard)
		switch {
		case errors.Is(err, gasflow.ErrNotReached) || errors.Is(err, inflow.ErrBeyondOpenFlow) || errors.Is(err, choke.ErrNoFlow):
			return -q - float64(w.Inflow.OpenFlow) // below anything that passes
		case err != nil:
			if failed == nil {
				failed = err
			}
			return math.NaN()
		}
		return float64(x.Mass)/float64(standard) - q
	}
	most := float64(w.Inflow.OpenFlow)
	least := most * 1e-9
	switch low := excess(least); {
	case failed != nil:
		return GasWellFlow{}, failed
	case low < 0:
		return GasWellFlow{}, ErrDead
	}
	q, err := root.Find(excess, least, most, most*1e-12)
	if failed != nil {
		return GasWellFlow{}, failed
	}
	if err != nil {
		return GasWellFlow{}, fmt.Errorf("production: gas well: %w", err)
	}
	// The root may lie on the side where the choke has no flow any more.
	x, err := w.at(q, standard)
	if err != nil {
		if x, err = w.at(q*(1-1e-9), standard); err != nil {
			return GasWellFlow{}, fmt.Errorf("production: gas well: %w", err)
		}
	}
	x.Rate, x.Mass = unit.FlowRate(q), unit.MassRate(q*float64(standard))
	return x, nil
}

// at is the well at a rate; its Mass is what the choke passes there.
func (w GasWell) at(q float64, standard unit.Density) (GasWellFlow, error) {
	p, err := w.Inflow.Pressure(unit.FlowRate(q))
	if err != nil {
		return GasWellFlow{}, err
	}
	nodes, err := w.Tubing.Up(unit.MassRate(q*float64(standard)), max(0, p))
	if err != nil {
		return GasWellFlow{}, err
	}
	top := nodes[0]
	n, err := choke.Nozzle(choke.UpstreamGas{Density: top.Density, HeatRatio: w.HeatRatio}, w.Discharge, w.Choke, top.Pressure, w.Line)
	if err != nil {
		return GasWellFlow{}, err
	}
	return GasWellFlow{Mass: n.Mass, Sandface: p, Nodes: nodes, Wellhead: top.Pressure, Critical: n.Critical, Ratio: n.Ratio}, nil
}

// check validates, and returns the gas's density at standard
// conditions.
func (w GasWell) check() (unit.Density, error) {
	f := fault.In("production")
	f.At("Inflow", w.Inflow.Validate())
	f.At("Tubing", w.Tubing.Validate())
	f.Add(fault.AboveTo("Choke", w.Choke, 0, 1*unit.SquareMetre), fault.AboveTo("Discharge", w.Discharge, 0, 1.5), fault.AboveTo("HeatRatio", w.HeatRatio, 1, 2),
		fault.Between("Line", w.Line, 0, 1e9*unit.Pascal), fault.Temperature("Standard", w.Standard, unit.Celsius(-20), unit.Celsius(45)))
	if err := f.Err(); err != nil {
		return 0, err
	}
	standard, err := w.Tubing.Gas.Density(0, w.Standard)
	if err != nil {
		return 0, fmt.Errorf("production: gas well: at standard conditions: %w", err)
	}
	return standard, nil
}
