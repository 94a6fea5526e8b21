package accuracy

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/valve/production/inflow"
)

const inflowRange = "reservoir 10 to 1,000 bar, drawdown 1e-6 to 1 of it"

func (d draw) gas() (g inflow.GasDeliverability, p float64) {
	g = inflow.GasDeliverability{Reservoir: unit.Pressure(d.over(1e6, 1e8)), OpenFlow: unit.FlowRate(d.between(1, 100)), Exponent: d.between(0.5, 1)}
	return g, float64(g.Reservoir) * (1 - d.over(1e-6, 1))
}

func gasValues(g inflow.GasDeliverability) precise.Values {
	return precise.Values{"pr": float64(g.Reservoir), "AOF": float64(g.OpenFlow), "n": g.Exponent}
}

func (d draw) liquid() (l inflow.LiquidDeliverability, p float64) {
	l = inflow.LiquidDeliverability{Reservoir: unit.Pressure(d.over(1e6, 1e8)), Index: unit.ProductivityIndex(d.over(1e-11, 1e-8))}
	l.Bubble = l.Reservoir
	return l, float64(l.Reservoir) * (1 - d.over(1e-6, 1))
}

func liquidValues(l inflow.LiquidDeliverability) precise.Values {
	return precise.Values{"pr": float64(l.Reservoir), "J": float64(l.Index)}
}

const absolutes = "a = 101325\nwhole = pow(pr + a, 2) - a*a\n"

var inflowFormulas = []Formula{
	{Name: "valve/production/inflow.Gas.Rate", Range: inflowRange, Limit: 12, equation: absolutes + "AOF*pow((pow(pr + a, 2) - pow(p + a, 2))/whole, n)",
		draw: func(d draw) sample {
			g, p := d.gas()
			of := gasValues(g)
			of["p"] = p
			return sample{got: float64(g.Rate(unit.Pressure(p))), of: of}
		}},
	{Name: "valve/production/inflow.Gas.Pressure", Range: "rates to 0.999 of the open flow; against what a last place of the share is worth", Limit: 4,
		equation: absolutes + "sqrt(pow(pr + a, 2) - whole*pow(q/AOF, 1/n)) - a",
		draw: func(d draw) sample {
			g, _ := d.gas()
			share := d.over(1e-6, 0.999)
			q := float64(g.OpenFlow) * share
			p, err := g.Pressure(unit.FlowRate(q))
			of := gasValues(g)
			of["q"] = q
			x := math.Pow(share, 1/g.Exponent)
			return sample{got: float64(p), of: of, scale: float64(p) * (1 + x/(1-x)/4), err: err}
		}},
	{Name: "valve/production/inflow.Liquid.Rate, Vogel", Range: inflowRange, Limit: 12, equation: "J*pr/1.8*(1 - 0.2*p/pr - 0.8*p*p/(pr*pr))",
		draw: func(d draw) sample {
			l, p := d.liquid()
			of := liquidValues(l)
			of["p"] = p
			return sample{got: float64(l.Rate(unit.Pressure(p))), of: of}
		}},
	{Name: "valve/production/inflow.Liquid.Pressure, Vogel", Range: "rates to 0.999 of the open flow; against what a last place of the share is worth", Limit: 12,
		equation: "pr/8*(sqrt(81 - 80*q/(J*pr/1.8)) - 1)",
		draw: func(d draw) sample {
			l, _ := d.liquid()
			share := d.over(1e-6, 0.999)
			q := float64(l.OpenFlow()) * share
			p, err := l.Pressure(unit.FlowRate(q))
			of := liquidValues(l)
			of["q"] = q
			return sample{got: float64(p), of: of, scale: float64(p) * (1 + share/(1-share)/4), err: err}
		}},
}
