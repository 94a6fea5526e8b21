package accuracy

import (
	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
)

var flowFormulas = []Formula{
	{Name: "fluid/flow.Colebrook", Range: "Re 4e3 to 1e8, ε/D 0 to 0.05", Limit: 400, answer: "f", equation: "1/sqrt(f) + 2*log10(e/3.7 + 2.51/(Re*sqrt(f)))",
		draw: func(d draw) sample {
			re, e := d.over(4e3, 1e8), d.over(1e-7, 0.05)
			return sample{got: float64(flow.Colebrook(re, e)), of: precise.Values{"Re": re, "e": e}}
		}},
	{Name: "fluid/flow.Turbulent", Range: "n 0.3 to 0.99, Re 3e3 to 1e6, ε/De 0 to 0.02", Limit: 80, answer: "f",
		equation: "1/sqrt(f) + 4*log10(e/3.7 + pow(1.255, pow(n, -1.2))/pow(Re*pow(f, 1 - n/2), pow(n, -0.75)))",
		draw: func(d draw) sample {
			n, re, e := d.between(0.3, 0.99), d.over(3e3, 1e6), d.over(1e-6, 0.02)
			return sample{got: float64(flow.Turbulent(n, re, e)), of: precise.Values{"n": n, "Re": re, "e": e}}
		}},
	{Name: "fluid/flow.Rheology.PipeLaminar, Bingham", Range: "yield 1e-3 to 100 Pa, viscosity 1 to 100 mPa·s, rate 1e-3 to 1e5 1/s", Limit: 60, answer: "τ", equation: rabinowitsch,
		draw: pipeLaminar(1, 1)},
	{Name: "fluid/flow.Rheology.PipeLaminar, Herschel–Bulkley", Range: "as Bingham, n 0.2 to 1.5", Limit: 60, answer: "τ", equation: rabinowitsch,
		draw: pipeLaminar(0.2, 1.5)},
	{Name: "fluid/flow.Conduit.Area", Range: "annulus, gap 1e-3 to 0.9 of the outer diameter", Limit: 6, equation: "pi/4*(D*D - d*d)",
		draw: func(d draw) sample {
			c := flow.Conduit{Outer: unit.Length(d.between(0.02, 1))}
			c.Inner = c.Outer * unit.Length(1-d.over(1e-3, 0.9))
			return sample{got: float64(c.Area()), of: precise.Values{"D": float64(c.Outer), "d": float64(c.Inner)}}
		}},
}

// rabinowitsch is the Rabinowitsch–Mooney integral for a Herschel–Bulkley fluid in a
// pipe, less the nominal rate.
const rabinowitsch = `m = 1/n
x = τ - τ0
4*pow(x/K, m)*x*(x*x/(m + 3) + 2*τ0*x/(m + 2) + τ0*τ0/(m + 1))/pow(τ, 3) - rate`

func pipeLaminar(least, most float64) func(d draw) sample {
	return func(d draw) sample {
		r := flow.Rheology{Yield: unit.Pressure(d.over(1e-3, 100)), Consistency: unit.Consistency(d.over(1e-3, 0.1)), Index: d.between(least, most)}
		rate := d.over(1e-3, 1e5)
		l, err := r.PipeLaminar(unit.ShearRate(rate))
		return sample{got: float64(l.WallStress), err: err, of: precise.Values{"τ0": float64(r.Yield), "K": float64(r.Consistency), "n": r.Index, "rate": rate}}
	}
}
