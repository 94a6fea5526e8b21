package inflow

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// LiquidDeliverability is the inflow of a zone of oil or water: straight above the bubble
// point and Vogel's curve below it.
//
//	p ≥ pb:  q = J·(pr - p)
//	p < pb:  q = J·(pr - pb) + J·pb/1.8·(1 - 0.2·p/pb - 0.8·(p/pb)²)
//
// pr reservoir pressure, p pressure in front of the zone, pb bubble point, J
// productivity index. With a bubble point of zero or less it is a straight line
// (water, undersaturated oil); with one at or above pr it is Vogel's equation with
// pr for pb. The slope is continuous at pb. Above pr the zone takes fluid along
// the straight line: common practice, nothing published stands behind it.
// Below zero gauge the curve goes on along its tangent; no zone is meant to be
// there, and a solver needs it.
//
// Source: Vogel, Inflow Performance Relationships for Solution-Gas Drive Wells,
// JPT, January 1968; joined at the bubble point after Standing, JPT, September 1970,
// and Brown, The Technology of Artificial Lift Methods, 1984.
type LiquidDeliverability struct {
	Reservoir unit.Pressure          `json:"reservoir"`
	Index     unit.ProductivityIndex `json:"index"`  // at small drawdown; Vogel's qmax is J·pr/1.8
	Bubble    unit.Pressure          `json:"bubble"` // zero for a straight line
}

// Validate reports a reservoir pressure or index that isn't above zero, and
// anything that isn't finite.
func (l LiquidDeliverability) Validate() error {
	return fault.Join(scope, fault.Above("Reservoir", l.Reservoir, 0), fault.Above("Index", l.Index, 0), fault.Finite("Bubble", l.Bubble))
}

// Static is the pressure at which nothing flows.
func (l LiquidDeliverability) Static() unit.Pressure { return l.Reservoir }

// bend is where the curve leaves the straight line.
func (l LiquidDeliverability) bend() float64 {
	return max(0, min(float64(l.Bubble), float64(l.Reservoir)))
}

// Rate is the flow at a pressure in front of the zone.
func (l LiquidDeliverability) Rate(p unit.Pressure) unit.FlowRate {
	q, _ := l.At(float64(p))
	return unit.FlowRate(q)
}

// At is Rate with its slope dq/dp, in SI, for solvers.
//
// Range: any pressure: beyond the ends of the curve as the type says.
func (l LiquidDeliverability) At(p float64) (q, slope float64) {
	j, pr, pb := float64(l.Index), float64(l.Reservoir), l.bend()
	if p >= pb || pb == 0 {
		return j * (pr - p), -j
	}
	v := j * pb / 1.8
	y := p / pb
	if y < 0 {
		return j*(pr-pb) + v*(1-0.2*y), -0.2 * v / pb
	}
	// 1 - 0.2y - 0.8y² as a product, which keeps its digits near y = 1.
	return j*(pr-pb) + v*((pb-p)/pb)*(1+0.8*y), -v / pb * (0.2 + 1.6*y)
}

// Pressure is the inverse of Rate: the pressure in front of the zone for a rate.
//
//	q ≤ qb:  p = pr - q/J
//	q > qb:  p = pb/8·(sqrt(81 - 80·(q-qb)/(J·pb/1.8)) - 1)
//
// qb = J·(pr-pb). Errors: ErrBeyondOpenFlow.
func (l LiquidDeliverability) Pressure(rate unit.FlowRate) (unit.Pressure, error) {
	if err := l.Validate(); err != nil {
		return 0, err
	}
	if most := l.OpenFlow(); !(rate <= most) || math.IsInf(float64(rate), 0) {
		return 0, fmt.Errorf("%w: %v is wanted; the zone gives %v", ErrBeyondOpenFlow, rate.Rounded(5), most.Rounded(5))
	}
	p, _ := l.Inverse(float64(rate))
	if !finite(p) {
		return 0, fmt.Errorf("inflow: rate is %v; no pressure in range takes it", rate)
	}
	return unit.Pressure(p), nil
}

// Inverse is Pressure with its slope dp/dq, in SI, for solvers; beyond the open
// flow it goes on along the tangent.
//
// Range: any rate.
func (l LiquidDeliverability) Inverse(q float64) (p, slope float64) {
	j, pr, pb := float64(l.Index), float64(l.Reservoir), l.bend()
	z := q - j*(pr-pb)
	if z <= 0 || pb == 0 {
		return pr - q/j, -1 / j
	}
	v := j * pb / 1.8
	if z > v { // below zero gauge
		return 5 * pb * (1 - z/v), -5 * pb / v
	}
	// (sqrt(81-80x)-1)/8 = 10(1-x)/(sqrt(81-80x)+1), free of cancellation near open flow
	s := math.Sqrt(81 - 80*z/v)
	return 10 * pb * (1 - z/v) / (s + 1), -5 * pb / (v * s)
}

// OpenFlow is the rate at zero gauge pressure in front of the zone: the most it
// could ever give.
func (l LiquidDeliverability) OpenFlow() unit.FlowRate { return l.Rate(0) }

// LiquidFromTest is the inflow that passes through one measured rate.
// Errors: ErrNoDrawdown; faults of the inputs.
//
//	J = q/(curve of J = 1 at p)
//
// Source: see LiquidDeliverability.
func LiquidFromTest(reservoir, bubble, flowing unit.Pressure, rate unit.FlowRate) (LiquidDeliverability, error) {
	l := LiquidDeliverability{Reservoir: reservoir, Index: 1, Bubble: bubble}
	f := fault.In(scope)
	f.Add(l.Validate(), fault.Above("rate", rate, 0))
	if !(flowing >= 0 && flowing < reservoir) {
		f.New("flowing", "is %v; must be at least 0 psi and below the reservoir's %v: %w", flowing, reservoir, ErrNoDrawdown)
	}
	if err := f.Err(); err != nil {
		return LiquidDeliverability{}, err
	}
	// The rate is proportional to the index.
	l.Index = unit.ProductivityIndex(float64(rate) / float64(l.Rate(flowing)))
	return l, l.Validate()
}

// ErrBeyondOpenFlow says that a zone can't give that much at any pressure.
var ErrBeyondOpenFlow = errors.New("inflow: beyond the zone's open flow")

// ErrNoDrawdown says that a test was not below reservoir pressure.
var ErrNoDrawdown = errors.New("inflow: no drawdown")

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// scope stands before every fault of this package.
const scope = "inflow"
