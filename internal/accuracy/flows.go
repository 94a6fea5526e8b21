package accuracy

import (
	"math"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
)

var flowFormulas = []Formula{
	{Name: "fluid/flow.Colebrook", Range: "Re 4e3 to 1e8, ε/D 0 to 0.05", Limit: 400, draw: func(d draw) (float64, number, float64) {
		re, e := d.over(4e3, 1e8), d.over(1e-7, 0.05)
		f := float64(flow.Colebrook(re, e))
		k := exact(2.0).over(exact(10.0).log())
		a, b := exact(e).over(decimal("3.7")), decimal("2.51").over(exact(re))
		x := refined(exact(1/math.Sqrt(f)), func(x number) number { return x.plus(k.times(a.plus(b.times(x)).log())) })
		return f, exact(1.0).over(x.squared()), 0
	}},
	{Name: "fluid/flow.Turbulent", Range: "n 0.3 to 0.99, Re 3e3 to 1e6, ε/De 0 to 0.02", Limit: 80, draw: func(d draw) (float64, number, float64) {
		n, re, e := d.between(0.3, 0.99), d.over(3e3, 1e6), d.over(1e-6, 0.02)
		f := float64(flow.Turbulent(n, re, e))
		N := exact(n)
		p := N.pow(decimal("-0.75"))
		a := exact(e).over(decimal("3.7"))
		c := decimal("1.255").pow(N.pow(decimal("-1.2"))).times(exact(re).pow(p.negative()))
		q := exact(2.0).minus(N).times(p)
		k := exact(4.0).over(exact(10.0).log())
		x := refined(exact(1/math.Sqrt(f)), func(x number) number { return x.plus(k.times(a.plus(c.times(x.pow(q))).log())) })
		return f, exact(1.0).over(x.squared()), 0
	}},
	{Name: "fluid/flow.Rheology.PipeLaminar, Bingham", Range: "yield 1e-3 to 100 Pa, viscosity 1 to 100 mPa·s, rate 1e-3 to 1e5 1/s", Limit: 60, draw: pipeLaminar(1, 1)},
	{Name: "fluid/flow.Rheology.PipeLaminar, Herschel–Bulkley", Range: "as Bingham, n 0.2 to 1.5", Limit: 60, draw: pipeLaminar(0.2, 1.5)},
	{Name: "fluid/flow.Conduit.Area", Range: "annulus, gap 1e-3 to 0.9 of the outer diameter", Limit: 6, draw: func(d draw) (float64, number, float64) {
		c := flow.Conduit{Outer: unit.Length(d.between(0.02, 1))}
		c.Inner = c.Outer * unit.Length(1-d.over(1e-3, 0.9))
		return float64(c.Area()), pi.scaled(-2).times(exact(c.Outer).squared().minus(exact(c.Inner).squared())), 0
	}},
}

// pipeLaminar is the wall stress of the Rabinowitsch–Mooney integral.
func pipeLaminar(least, most float64) func(d draw) (float64, number, float64) {
	return func(d draw) (float64, number, float64) {
		r := flow.Rheology{Yield: unit.Pressure(d.over(1e-3, 100)), Consistency: unit.Consistency(d.over(1e-3, 0.1)), Index: d.between(least, most)}
		shear := d.over(1e-3, 1e5)
		l, err := r.PipeLaminar(unit.ShearRate(shear))
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		τ0, K, m := exact(r.Yield), exact(r.Consistency), exact(1.0).over(exact(r.Index))
		at := func(n float64) number { return m.plus(exact(n)) }
		want := refined(exact(l.WallStress), func(τ number) number {
			x := τ.minus(τ0)
			series := sum(x.squared().over(at(3)), τ0.scaled(1).times(x).over(at(2)), τ0.squared().over(at(1)))
			return exact(4.0).times(x.over(K).pow(m)).times(x).times(series).over(τ.power(3)).minus(exact(shear))
		})
		return float64(l.WallStress), want, 0
	}
}
