package accuracy

import (
	"math"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
)

var gasFormulas = []Formula{
	{Name: "fluid.ZFactor", Range: "Tpr 1.05 to 3, ppr 0 to 30", Limit: 30, draw: func(d draw) (float64, number, float64) {
		ppr, tpr := d.over(1e-3, 30), d.between(1.05, 3)
		z, err := fluid.ZFactor(ppr, tpr)
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		return z, dranchuk(ppr, tpr, z), 0
	}},
	{Name: "fluid.AverageGasColumn.Factor", Range: "heights to 8,000 m", Limit: 8, draw: func(d draw) (float64, number, float64) {
		c := fluid.AverageGasColumn{Gravity: d.between(0.55, 1.5), Z: d.between(0.7, 1.3), Temperature: unit.Kelvin(d.between(280, 450)), Height: unit.Length(d.between(1, 8000))}
		weight := exact(c.Gravity).times(decimal("0.0289625")).times(gravity).times(exact(c.Height))
		return c.Factor(), weight.over(exact(c.Z).times(decimal("8.31446261815324")).times(exact(c.Temperature.Kelvin()))).exp(), 0
	}},
	{Name: "valve/production/choke.Nozzle", Range: "γ 1.05 to 1.67, p2/p1 from critical to 1 - 1e-9", Limit: 15, draw: func(d draw) (float64, number, float64) {
		γ := d.between(1.05, 1.67)
		p1 := d.between(1e5, 5e7)
		p2 := p1 * (1 - d.over(1e-9, 0.4))
		g := choke.Gas{Density: unit.Density(d.between(0.5, 300)), HeatRatio: γ}
		f, err := choke.Nozzle(g, 0.9, 1e-3, unit.Pressure(p1), unit.Pressure(p2))
		if err != nil || f.Critical {
			return 1, exact(1.0), 0
		}
		k, one := exact(γ), exact(1.0)
		upstream, downstream := exact(p1).plus(decimal("101325")), exact(p2).plus(decimal("101325"))
		r := downstream.over(upstream)
		head := r.pow(exact(2.0).over(k)).minus(r.pow(k.plus(one).over(k)))
		square := k.scaled(1).over(k.minus(one)).times(upstream).times(exact(g.Density)).times(head)
		// What a last place of the pressures is worth in their difference is theirs.
		return float64(f.Mass), exact(0.9).times(exact(1e-3)).times(square.root()), float64(f.Mass) * (1 + (p1+101325)/(p1-p2)/8)
	}},
}

// dranchuk is Z by the equation of Dranchuk and Abou-Kassem (1975), refined from
// what was found.
func dranchuk(ppr, tpr, found float64) number {
	A := map[int]number{}
	for i, text := range []string{"0.3265", "-1.0700", "-0.5339", "0.01569", "-0.05165", "0.5475", "-0.7361", "0.1844", "0.1056", "0.6134", "0.7210"} {
		A[i+1] = decimal(text)
	}
	T, one := exact(tpr), exact(1.0)
	c1 := sum(A[1], A[2].over(T), A[3].over(T.power(3)), A[4].over(T.power(4)), A[5].over(T.power(5)))
	b := A[7].over(T).plus(A[8].over(T.squared()))
	return refined(exact(found), func(z number) number {
		ρ := decimal("0.27").times(exact(ppr)).over(z.times(T))
		ρ2 := ρ.squared()
		x := A[11].times(ρ2)
		tail := A[10].times(one.plus(x)).times(ρ2.over(T.power(3))).times(x.negative().exp())
		return sum(one, c1.times(ρ), A[6].plus(b).times(ρ2), A[9].times(b).times(ρ.power(5)).negative(), tail).minus(z)
	})
}
