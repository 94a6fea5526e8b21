package accuracy

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/inflow"
)

var (
	atmosphere = decimal("101325")
	one        = exact(1.0)
)

const inflowRange = "reservoir 10 to 1,000 bar, drawdown 1e-6 to 1 of it"

func (d draw) gas() (g inflow.Gas, p float64) {
	g = inflow.Gas{Reservoir: unit.Pressure(d.over(1e6, 1e8)), OpenFlow: unit.FlowRate(d.between(1, 100)), Exponent: d.between(0.5, 1)}
	return g, float64(g.Reservoir) * (1 - d.over(1e-6, 1))
}

// whole is pr² - pa², absolute.
func whole(g inflow.Gas) number {
	return exact(g.Reservoir).plus(atmosphere).squared().minus(atmosphere.squared())
}

func (d draw) liquid() (l inflow.Liquid, p float64) {
	l = inflow.Liquid{Reservoir: unit.Pressure(d.over(1e6, 1e8)), Index: unit.ProductivityIndex(d.over(1e-11, 1e-8))}
	l.Bubble = l.Reservoir
	return l, float64(l.Reservoir) * (1 - d.over(1e-6, 1))
}

var inflowFormulas = []Formula{
	{Name: "valve/production/inflow.Gas.Rate", Range: inflowRange, Limit: 12, draw: func(d draw) (float64, number, float64) {
		g, p := d.gas()
		x := exact(g.Reservoir).plus(atmosphere).squared().minus(exact(p).plus(atmosphere).squared()).over(whole(g))
		return float64(g.Rate(unit.Pressure(p))), exact(g.OpenFlow).times(x.pow(exact(g.Exponent))), 0
	}},
	{Name: "valve/production/inflow.Gas.Pressure", Range: "rates to 0.999 of the open flow", Limit: 4, draw: func(d draw) (float64, number, float64) {
		g, _ := d.gas()
		q := float64(g.OpenFlow) * d.over(1e-6, 0.999)
		p, err := g.Pressure(unit.FlowRate(q))
		if err != nil {
			return math.NaN(), one, 0
		}
		x := exact(q).over(exact(g.OpenFlow)).pow(one.over(exact(g.Exponent)))
		square := exact(g.Reservoir).plus(atmosphere).squared().minus(x.times(whole(g)))
		// What a last place of the share of open flow is worth near it is the share's.
		return float64(p), square.root().minus(atmosphere), float64(p) * (1 + x.over(one.minus(x)).float()/4)
	}},
	{Name: "valve/production/inflow.Liquid.Rate, Vogel", Range: inflowRange, Limit: 12, draw: func(d draw) (float64, number, float64) {
		l, p := d.liquid()
		y := exact(p).over(exact(l.Reservoir))
		v := exact(l.Index).times(exact(l.Reservoir)).over(decimal("1.8"))
		return float64(l.Rate(unit.Pressure(p))), v.times(sum(one, decimal("-0.2").times(y), decimal("-0.8").times(y.squared()))), 0
	}},
	{Name: "valve/production/inflow.Liquid.Pressure, Vogel", Range: "rates to 0.999 of the open flow", Limit: 12, draw: func(d draw) (float64, number, float64) {
		l, _ := d.liquid()
		v := exact(l.Index).times(exact(l.Reservoir)).over(decimal("1.8"))
		q := v.float() * d.over(1e-6, 0.999)
		p, err := l.Pressure(unit.FlowRate(q))
		if err != nil {
			return math.NaN(), one, 0
		}
		root := exact(81.0).minus(exact(80.0).times(exact(q).over(v))).root()
		share := q / v.float()
		return float64(p), exact(l.Reservoir).scaled(-3).times(root.minus(one)), float64(p) * (1 + share/(1-share)/4)
	}},
}
