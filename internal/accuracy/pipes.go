package accuracy

import (
	"math"

	"completion.example/hydrostatics/unit"
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

// squares are D² and d² of a pipe of which k is left of the wall.
func squares(p tubular.Pipe, k float64) (D2, d2 number) {
	D, d := exact(p.OD), exact(p.ID)
	left := D.minus(exact(k).times(D.minus(d)))
	return D.squared(), left.squared()
}

// lame are hoop and radial stress at a radius.
func lame(p tubular.Pipe, l tubular.Load, r number) (radial, hoop number) {
	ri, ro := exact(p.ID).scaled(-1), exact(p.OD).scaled(-1)
	pi, po := exact(l.Inside), exact(l.Outside)
	per := ro.squared().minus(ri.squared())
	A := pi.times(ri.squared()).minus(po.times(ro.squared())).over(per)
	B := pi.minus(po).times(ri.squared()).times(ro.squared()).over(per)
	return A.minus(B.over(r.squared())), A.plus(B.over(r.squared()))
}

func (d draw) load(p tubular.Pipe) tubular.Load {
	return tubular.Load{Axial: unit.Force(d.between(-1, 1) * 0.5 * float64(p.BodyYield())), Inside: unit.Pressure(d.between(0, 1e8)), Outside: unit.Pressure(d.between(0, 1e8))}
}

// straight is the von Mises stress at the inner wall without bending and torque.
func straight(p tubular.Pipe, l tubular.Load) number {
	radial, hoop := lame(p, l, exact(p.ID).scaled(-1))
	D2, d2 := squares(p, 1)
	axial := exact(l.Axial).over(pi.scaled(-2).times(D2.minus(d2)))
	return sum(radial.minus(hoop).squared(), hoop.minus(axial).squared(), axial.minus(radial).squared()).scaled(-1).root()
}

var pipeFormulas = []Formula{
	{Name: "tubular.Pipe.SteelArea", Range: pipeRange, Limit: 6, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		D2, d2 := squares(p, 1)
		return float64(p.SteelArea()), pi.scaled(-2).times(D2.minus(d2)), 0
	}},
	{Name: "tubular.Pipe.SecondMoment", Range: pipeRange, Limit: 8, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		D2, d2 := squares(p, 1)
		return float64(p.SecondMoment()), pi.scaled(-6).times(D2.squared().minus(d2.squared())), 0
	}},
	{Name: "tubular.Pipe.YieldOpenEnds", Range: pipeRange, Limit: 10, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		D2, d2 := squares(p, tubular.WallTolerance)
		root := exact(3.0).times(D2.squared()).plus(d2.squared()).root()
		return float64(p.YieldOpenEnds(tubular.WallTolerance)), exact(p.Material.Yield).times(D2.minus(d2)).over(root), 0
	}},
	{Name: "tubular.Pipe.YieldClosedEnds", Range: pipeRange, Limit: 10, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		D2, d2 := squares(p, tubular.WallTolerance)
		return float64(p.YieldClosedEnds(tubular.WallTolerance)), exact(p.Material.Yield).times(D2.minus(d2)).over(exact(3.0).root().times(D2)), 0
	}},
	{Name: "tubular.Pipe.Stresses, hoop, inner wall", Range: pipeRange + "; against the differential's share", Limit: 10, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		l := d.load(p)
		_, hoop := lame(p, l, exact(p.ID).scaled(-1))
		return float64(p.Stresses(l).Inner.Hoop), hoop, max(float64(l.Inside), float64(l.Outside)) + math.Abs(float64(l.Inside-l.Outside))*p.Slenderness()/2
	}},
	{Name: "tubular.Pipe.Stresses, radial, inner wall", Range: pipeRange + "; against the greater pressure", Limit: 4, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		l := d.load(p)
		return float64(p.Stresses(l).Inner.Radial), exact(l.Inside).negative(), max(float64(l.Inside), float64(l.Outside))
	}},
	{Name: "tubular.Pipe.Stresses, von Mises", Range: pipeRange, Limit: 16, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		l := d.load(p)
		return float64(p.Stresses(l).VonMises()), straight(p, l), 0
	}},
	{Name: "tubular.Pipe.EffectiveForce", Range: pipeRange + "; against the forces on the steel and of the differential", Limit: 5, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		l := d.load(p)
		D2, d2 := squares(p, 1)
		ends := exact(l.Outside).times(D2).minus(exact(l.Inside).times(d2)).times(pi.scaled(-2))
		return float64(p.EffectiveForce(l)), exact(l.Axial).plus(ends), math.Abs(float64(l.Axial)) + float64(l.Outside)*float64(p.SteelArea()) + math.Abs(float64(l.Inside-l.Outside))*float64(p.InnerArea())
	}},
	{Name: "tubular.Body.StraightVonMises", Range: pipeRange, Limit: 16, draw: func(d draw) (float64, number, float64) {
		p := d.pipe()
		l := d.load(p)
		b, err := p.Prepare()
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		return float64(b.StraightVonMises(l.Axial, l.Inside, l.Outside)), straight(p, l), 0
	}},
	{Name: "tubular.CollapseCurve.Pressure", Range: "grades 40 to 125 ksi, D/t 5 to 60", Limit: 20, draw: func(d draw) (float64, number, float64) {
		Y := d.between(40e3, 125e3)
		x := d.between(5, 60)
		c, err := tubular.PrepareCollapse(unit.Pressure(Y) * unit.PSI)
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		return float64(c.Pressure(x)), collapse(unit.Pressure(Y)*unit.PSI, x, c.Regime(x)), 0
	}},
	{Name: "tubular/drag.Capstan", Range: "friction 0 to 1, bend to a full turn", Limit: 8, draw: func(d draw) (float64, number, float64) {
		F, μ, β := d.between(1, 1e6), d.between(0, 1), d.between(0, 2*math.Pi)
		return float64(drag.Capstan(unit.Force(F), μ, unit.Angle(β))), exact(F).times(exact(μ).times(exact(β)).exp()), 0
	}},
	{Name: "valve/controlline.Line.Head", Range: "3 to 6,000 m, compressibility 1e-12 to 1e-9 1/Pa", Limit: 8, draw: func(d draw) (float64, number, float64) {
		h := d.over(3, 6000)
		l := controlline.Line{OD: 0.00635, Wall: 0.00124, Length: 7000, Depth: unit.Length(h)}
		q := controlline.Liquid{Density: unit.Density(d.between(700, 1300)), Viscosity: 0.01, Compressibility: unit.Compressibility(d.over(1e-12, 1e-9))}
		got, err := l.Head(q)
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		c, one := exact(q.Compressibility), exact(1.0)
		column := exact(q.Density).times(decimal("9.80665")).times(exact(h))
		return float64(got), one.minus(c.times(column)).log().negative().over(c), 0
	}},
}

// collapse is API's formula of a regime, its coefficients as printed.
func collapse(yield unit.Pressure, slenderness float64, regime tubular.CollapseRegime) number {
	psi := decimal("0.45359237").times(decimal("9.80665")).over(decimal("0.0254").squared())
	Y, x, one := exact(yield).over(psi), exact(slenderness), exact(1.0)
	A := sum(decimal("2.8762"), decimal("0.10679e-5").times(Y), decimal("0.21301e-10").times(Y.squared()), decimal("-0.53132e-16").times(Y.power(3)))
	B := decimal("0.026233").plus(decimal("0.50609e-6").times(Y))
	C := sum(decimal("-465.93"), decimal("0.030867").times(Y), decimal("-0.10483e-7").times(Y.squared()), decimal("0.36989e-13").times(Y.power(3)))
	ratio := B.over(A)
	r := exact(3.0).times(ratio).over(exact(2.0).plus(ratio))
	F := decimal("46.95e6").times(r.power(3)).over(Y.times(r.minus(ratio)).times(one.minus(r).squared()))
	var p number
	switch regime {
	case tubular.YieldCollapse:
		p = Y.scaled(1).times(x.minus(one)).over(x.squared())
	case tubular.PlasticCollapse:
		p = Y.times(A.over(x).minus(B)).minus(C)
	case tubular.TransitionCollapse:
		p = Y.times(F.over(x).minus(F.times(ratio)))
	default:
		p = decimal("46.95e6").over(x.times(x.minus(one).squared()))
	}
	return p.times(psi)
}
