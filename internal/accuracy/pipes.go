package accuracy

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/valve/controlline"
)

const pipeRange = "OD 25 to 900 mm, OD over wall 3 to 1,000"

// pipe draws one, thick or thin, with diameters that have no wall exactly.
func (d draw) pipe() tubular.Pipe {
	od := d.between(0.025, 0.9)
	id := od * (1 - 2/d.over(3, 1000))
	return tubular.Pipe{OD: unit.Length(od), ID: unit.Length(id), Material: tubular.Steel().WithStrength(unit.Pressure(d.between(2e8, 1e9)), 1e9)}
}

func (d draw) load(p tubular.Pipe) tubular.Load {
	return tubular.Load{Axial: unit.Force(d.between(-1, 1) * 0.5 * float64(p.BodyYield())), Inside: unit.Pressure(d.between(0, 1e8)), Outside: unit.Pressure(d.between(0, 1e8))}
}

func pipeValues(p tubular.Pipe, l tubular.Load) precise.Values {
	return precise.Values{"D": float64(p.OD), "d": float64(p.ID), "Y": float64(p.Material.Yield), "k": tubular.WallTolerance,
		"F": float64(l.Axial), "pin": float64(l.Inside), "pout": float64(l.Outside)}
}

// ofPipe is a formula of a pipe alone.
func ofPipe(f func(p tubular.Pipe) float64) func(d draw) sample {
	return func(d draw) sample {
		p := d.pipe()
		return sample{got: f(p), of: pipeValues(p, tubular.Load{})}
	}
}

// ofLoad is a formula of a loaded pipe, and what its deviation is counted against.
func ofLoad(f func(p tubular.Pipe, l tubular.Load) (got, scale float64)) func(d draw) sample {
	return func(d draw) sample {
		p := d.pipe()
		l := d.load(p)
		got, scale := f(p, l)
		return sample{got: got, of: pipeValues(p, l), scale: scale}
	}
}

const (
	lame = `A = (pin*d*d - pout*D*D)/(D*D - d*d)
B = (pin - pout)*d*d*D*D/4/(D*D - d*d)
`
	vonMises = lame + `σr = A - B/(d*d/4)
σh = A + B/(d*d/4)
σz = F/(pi/4*(D*D - d*d))
sqrt((pow(σr - σh, 2) + pow(σh - σz, 2) + pow(σz - σr, 2))/2)`
	thinned = "left = D - k*(D - d)\n"
)

// greater is the greater of the pressures of a load.
func greater(l tubular.Load) float64 { return float64(max(l.Inside, l.Outside)) }

var pipeFormulas = []Formula{
	{Name: "tubular.Pipe.SteelArea", Range: pipeRange, Limit: 6, equation: "pi/4*(D*D - d*d)",
		draw: ofPipe(func(p tubular.Pipe) float64 { return float64(p.SteelArea()) })},
	{Name: "tubular.Pipe.SecondMoment", Range: pipeRange, Limit: 8, equation: "pi/64*(pow(D, 4) - pow(d, 4))",
		draw: ofPipe(func(p tubular.Pipe) float64 { return float64(p.SecondMoment()) })},
	{Name: "tubular.Pipe.YieldOpenEnds", Range: pipeRange, Limit: 10, equation: thinned + "Y*(D*D - left*left)/sqrt(3*pow(D, 4) + pow(left, 4))",
		draw: ofPipe(func(p tubular.Pipe) float64 { return float64(p.YieldOpenEnds(tubular.WallTolerance)) })},
	{Name: "tubular.Pipe.YieldClosedEnds", Range: pipeRange, Limit: 10, equation: thinned + "Y*(D*D - left*left)/(sqrt(3)*D*D)",
		draw: ofPipe(func(p tubular.Pipe) float64 { return float64(p.YieldClosedEnds(tubular.WallTolerance)) })},
	{Name: "tubular.Pipe.Stresses, hoop, inner wall", Range: pipeRange + "; against the differential's share", Limit: 10, equation: lame + "A + B/(d*d/4)",
		draw: ofLoad(func(p tubular.Pipe, l tubular.Load) (got, scale float64) {
			return float64(p.Stresses(l).Inner.Hoop), greater(l) + math.Abs(float64(l.Inside-l.Outside))*p.Slenderness()/2
		})},
	{Name: "tubular.Pipe.Stresses, radial, inner wall", Range: pipeRange + "; against the greater pressure", Limit: 4, equation: lame + "A - B/(d*d/4)",
		draw: ofLoad(func(p tubular.Pipe, l tubular.Load) (got, scale float64) {
			return float64(p.Stresses(l).Inner.Radial), greater(l)
		})},
	{Name: "tubular.Pipe.Stresses, von Mises", Range: pipeRange, Limit: 16, equation: vonMises,
		draw: ofLoad(func(p tubular.Pipe, l tubular.Load) (got, scale float64) { return float64(p.Stresses(l).VonMises()), 0 })},
	{Name: "tubular.Pipe.EffectiveForce", Range: pipeRange + "; against the forces on the steel and of the differential", Limit: 5, equation: "F - pi/4*(pin*d*d - pout*D*D)",
		draw: ofLoad(func(p tubular.Pipe, l tubular.Load) (got, scale float64) {
			return float64(p.EffectiveForce(l)), math.Abs(float64(l.Axial)) + float64(l.Outside)*float64(p.SteelArea()) + math.Abs(float64(l.Inside-l.Outside))*float64(p.InnerArea())
		})},
	{Name: "tubular.Body.StraightVonMises", Range: pipeRange, Limit: 16, equation: vonMises,
		draw: func(d draw) sample {
			p := d.pipe()
			l := d.load(p)
			b, err := p.Prepare()
			return sample{got: float64(b.StraightVonMises(l.Axial, l.Inside, l.Outside)), of: pipeValues(p, l), err: err}
		}},
	{Name: "tubular.CollapseCurve.Pressure", Range: "grades 40 to 125 ksi, D/t 5 to 60", Limit: 20, equation: `psi = 0.45359237*9.80665/(0.0254*0.0254)
Y = yield/psi
A = 2.8762 + 0.10679e-5*Y + 0.21301e-10*Y*Y - 0.53132e-16*pow(Y, 3)
B = 0.026233 + 0.50609e-6*Y
C = -465.93 + 0.030867*Y - 0.10483e-7*Y*Y + 0.36989e-13*pow(Y, 3)
b = B/A
r = 3*b/(2 + b)
F = 46.95e6*pow(r, 3)/(Y*(r - b)*pow(1 - r, 2))
thick = 2*Y*(x - 1)/(x*x)
plastic = Y*(A/x - B) - C
transition = Y*(F/x - F*b)
elastic = 46.95e6/(x*pow(x - 1, 2))
psi*(thick*isThick + plastic*isPlastic + transition*isTransition + elastic*isElastic)`,
		draw: func(d draw) sample {
			yield, x := unit.Pressure(d.between(40e3, 125e3))*unit.PSI, d.between(5, 60)
			c, err := tubular.PrepareCollapse(yield)
			of := precise.Values{"yield": float64(yield), "x": x, "isThick": 0, "isPlastic": 0, "isTransition": 0, "isElastic": 0}
			of[map[tubular.CollapseRegime]string{tubular.YieldCollapse: "isThick", tubular.PlasticCollapse: "isPlastic",
				tubular.TransitionCollapse: "isTransition", tubular.ElasticCollapse: "isElastic"}[c.Regime(x)]] = 1
			return sample{got: float64(c.Pressure(x)), of: of, err: err}
		}},
	{Name: "tubular/drag.Capstan", Range: "friction 0 to 1, bend to a full turn", Limit: 8, equation: "F*exp(μ*β)",
		draw: func(d draw) sample {
			F, μ, β := d.between(1, 1e6), d.between(0, 1), d.between(0, 2*math.Pi)
			return sample{got: float64(drag.Capstan(unit.Force(F), μ, unit.Angle(β))), of: precise.Values{"F": F, "μ": μ, "β": β}}
		}},
	{Name: "valve/controlline.Line.Head", Range: "3 to 6,000 m, compressibility 1e-12 to 1e-9 1/Pa", Limit: 8, equation: "-log1p(-c*ρ*9.80665*h)/c",
		draw: func(d draw) sample {
			h := d.over(3, 6000)
			l := controlline.Line{OD: 0.00635, Wall: 0.00124, Length: 7000, TVD: unit.Length(h)}
			q := controlline.LineFluid{Density: unit.Density(d.between(700, 1300)), Viscosity: 0.01, Compressibility: unit.Compressibility(d.over(1e-12, 1e-9))}
			got, err := l.Head(q)
			return sample{got: float64(got), of: precise.Values{"c": float64(q.Compressibility), "ρ": float64(q.Density), "h": h}, err: err}
		}},
}
