package inflow

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// GasDeliverability is the inflow of a gas zone by the back-pressure equation:
//
//	q = C·(pr² - p²)^n = AOF·((pr² - p²)/(pr² - pa²))^n
//
// pressures absolute; AOF the absolute open flow against one atmosphere pa; n
// between 0.5 (fully turbulent) and 1 (laminar). Above pr the zone takes gas
// by the same law with the sign turned: common practice.
// Source: Rawlins and Schellhardt, US Bureau of Mines Monograph 7, 1936.
type GasDeliverability struct {
	Reservoir unit.Pressure `json:"reservoir"`
	OpenFlow  unit.FlowRate `json:"open_flow"` // at standard conditions
	Exponent  float64       `json:"exponent"`  // n
}

// Validate reports what is out of range.
func (g GasDeliverability) Validate() error {
	return fault.Join(scope, fault.Above("Reservoir", g.Reservoir, 0), fault.Above("OpenFlow", g.OpenFlow, 0), fault.Between("Exponent", g.Exponent, 0.5, 1))
}

// Static is the pressure at which nothing flows.
func (g GasDeliverability) Static() unit.Pressure { return g.Reservoir }

// Rate is the flow at a pressure in front of the zone.
func (g GasDeliverability) Rate(p unit.Pressure) unit.FlowRate {
	q, _ := g.At(float64(p))
	return unit.FlowRate(q)
}

// atmosphere turns gauge into absolute.
const atmosphere = float64(unit.Atmosphere)

// At is Rate with its slope dq/dp, in SI, for solvers. At reservoir pressure
// the slope is -Inf for n below one. Below vacuum the rate stays what it is in
// vacuum.
//
// Range: any pressure.
func (g GasDeliverability) At(p float64) (q, slope float64) {
	// Differences of squares as products, and those of pressures in gauge, keep
	// their digits near pr and near pa.
	p = max(p, -atmosphere)
	sum, whole := float64(g.Reservoir)+p+2*atmosphere, float64(g.Reservoir)*(float64(g.Reservoir)+2*atmosphere)
	x := (float64(g.Reservoir) - p) * sum / whole
	q = float64(g.OpenFlow) * math.Copysign(math.Pow(math.Abs(x), g.Exponent), x)
	slope = -g.Exponent * q / x * 2 * (p + atmosphere) / whole
	if x == 0 {
		slope = math.Inf(-1)
		if g.Exponent == 1 {
			slope = -float64(g.OpenFlow) * 2 * (p + atmosphere) / whole
		}
	}
	return q, slope
}

// Pressure is the inverse of Rate. Errors: ErrBeyondOpenFlow, also between the
// absolute open flow and flow into vacuum.
func (g GasDeliverability) Pressure(rate unit.FlowRate) (unit.Pressure, error) {
	if err := g.Validate(); err != nil {
		return 0, err
	}
	if !(rate <= g.OpenFlow) || math.IsInf(float64(rate), 0) {
		return 0, fmt.Errorf("%w: %v is wanted; the zone gives %v", ErrBeyondOpenFlow, rate.Rounded(5), g.OpenFlow.Rounded(5))
	}
	r := float64(rate / g.OpenFlow)
	x := math.Copysign(math.Pow(math.Abs(r), 1/g.Exponent), r)
	// p² - pa² = (pr² - pa²)(1 - x); divided by p + pa it is the gauge pressure.
	square := float64(g.Reservoir) * (float64(g.Reservoir) + 2*atmosphere) * (1 - x)
	p := square / (math.Sqrt(square+atmosphere*atmosphere) + atmosphere)
	if !finite(p) {
		return 0, fault.NewIn(scope, "rate", "is %v; must be one that a pressure in range takes", rate)
	}
	return unit.Pressure(p), nil
}

// Test is one stabilised rate of a flow-after-flow test.
type Test struct {
	Flowing unit.Pressure `json:"flowing"`
	Rate    unit.FlowRate `json:"rate"`
}

// GasFit is an inflow with how well it fits its test.
type GasFit struct {
	GasDeliverability
	RSquared float64 `json:"r_squared"` // of the logarithms
}

// GasFromTests fits the back-pressure equation to a flow-after-flow test of at
// least two rates, by least squares on the logarithms of rate and pr² - p².
// Errors: ErrNoDrawdown; an exponent outside 0.5 to 1, which says that the
// test was not stabilised; faults of the inputs.
// Source: Rawlins and Schellhardt, 1936; the log-log line.
func GasFromTests(reservoir unit.Pressure, tests ...Test) (GasFit, error) {
	f := fault.In(scope)
	f.Add(fault.Above("reservoir", reservoir, 0))
	if len(tests) < 2 {
		f.New("tests", "has %d rates; must have two or more", len(tests))
	}
	pr := float64(reservoir) + atmosphere
	var x, y []float64
	for i, t := range tests {
		if !(t.Flowing >= 0 && t.Flowing < reservoir) {
			f.New(fault.Index("tests", i)+".Flowing", "is %v; must be at least 0 psi and below the reservoir's %v: %w", t.Flowing, reservoir, ErrNoDrawdown)
		}
		f.AtIndex("tests", i, fault.Above("Rate", t.Rate, 0))
		p := float64(t.Flowing) + atmosphere
		x = append(x, math.Log((pr-p)*(pr+p)))
		y = append(y, math.Log(float64(t.Rate)))
	}
	if len(x) > 1 && slices.Max(x) == slices.Min(x) {
		f.New("tests", "all have the same flowing pressure; must differ")
	}
	if err := f.Err(); err != nil {
		return GasFit{}, err
	}
	c, n := stat.LinearRegression(x, y, nil, false)
	fit := GasFit{GasDeliverability: GasDeliverability{Reservoir: reservoir, Exponent: n,
		OpenFlow: unit.FlowRate(math.Exp(c + n*math.Log((pr-atmosphere)*(pr+atmosphere))))}, RSquared: stat.RSquared(x, y, nil, c, n)}
	if err := fit.Validate(); err != nil {
		return GasFit{}, fmt.Errorf("inflow: the line through the test does not fit the equation: %w", err)
	}
	return fit, nil
}
