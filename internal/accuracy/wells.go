package accuracy

import (
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

var gravity = decimal("9.80665")

var wellFormulas = []Formula{
	{Name: "hydrostatics.Column.At, brine in a straight temperature", Range: "to 6,000 m, compressibility 1e-12 to 1e-9 1/Pa, expansivity 1e-6 to 1e-3 1/K", Limit: 12, draw: func(d draw) (float64, number, float64) {
		f, gradient, z := d.brine(), d.between(0.01, 0.06), d.between(10, 6000)
		c, err := column(f, gradient)
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		p, err := c.At(unit.Length(z))
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		return float64(p), brineColumn(f, gradient, exact(0.0), exact(0.0), exact(z)), 0
	}},
	{Name: "hydrostatics.Column.Carry, brine in a straight temperature", Range: "as above, between any two depths; against ρ·g·z", Limit: 6, draw: func(d draw) (float64, number, float64) {
		f, gradient, from, to := d.brine(), d.between(0.01, 0.06), d.between(10, 6000), d.between(10, 6000)
		c, err := column(f, gradient)
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		p, err := c.Carry(2e7, unit.Length(from), unit.Length(to))
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		return float64(p), brineColumn(f, gradient, exact(2e7), exact(from), exact(to)), 2e7 + float64(f.Reference)*9.8*math.Abs(to-from)
	}},
	{Name: "hydrostatics.Column.At, the same by collocation", Range: "as At; 1e-8 of the pressure, 4.5e7 units, is what a column promises", Limit: 4.5e7, loose: true, draw: func(d draw) (float64, number, float64) {
		f, gradient, z := d.brine(), d.between(0.01, 0.06), d.between(10, 6000)
		c, err := column(hidden{f}, gradient)
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		p, err := c.At(unit.Length(z))
		if err != nil {
			return math.NaN(), exact(1.0), 0
		}
		return float64(p), brineColumn(f, gradient, exact(0.0), exact(0.0), exact(z)), float64(f.Reference) * 9.8 * 8192
	}},
	{Name: "hydrostatics.CourseBetween, TVD", Range: "bends of 1e-6 to 1.5 rad; against the length", Limit: 6, draw: func(d draw) (float64, number, float64) {
		a, b := d.stations()
		return float64(hydrostatics.CourseBetween(a, b).TVD), course(a, b).v, float64(b.MD - a.MD)
	}},
	{Name: "hydrostatics.CourseBetween, north", Range: "as above", Limit: 6, draw: func(d draw) (float64, number, float64) {
		a, b := d.stations()
		return float64(hydrostatics.CourseBetween(a, b).North), course(a, b).n, float64(b.MD - a.MD)
	}},
}

func (d draw) brine() hydrostatics.SlightlyCompressible {
	return hydrostatics.SlightlyCompressible{Reference: unit.Density(d.between(800, 2300)), Temperature: unit.Kelvin(300),
		Compressibility: unit.Compressibility(d.over(1e-12, 1e-9)), Expansivity: unit.Expansivity(d.over(1e-6, 1e-3))}
}

// hidden is a fluid whose closed form the column doesn't know.
type hidden struct{ hydrostatics.Fluid }

// column has 300 K at the top, where the fluid is at its reference.
func column(f hydrostatics.Fluid, gradient float64) (*hydrostatics.Column, error) {
	t, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{
		{Temperature: unit.Kelvin(300)}, {TVD: 8192, Temperature: unit.Kelvin(300 + 8192*gradient)}})
	if err != nil {
		return nil, err
	}
	return hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, Bottom: 8192}}, t, hydrostatics.Reference{})
}

// brineColumn integrates dp/dz = ρ0·g·exp(c·p − α·G·z) from a pressure at a depth:
//
//	e^(−c·p) = e^(−c·p1) − c·ρ0·g·(e^(−a·z1) − e^(−a·z))/a,  a = α·G
func brineColumn(f hydrostatics.SlightlyCompressible, gradient float64, p1, z1, z number) number {
	// The gradient that the profile has, after its own rounding.
	G := exact(300 + 8192*gradient).minus(exact(300.0)).scaled(-13)
	c, a := exact(f.Compressibility), exact(f.Expansivity).times(G)
	span := a.times(z1).negative().exp().minus(a.times(z).negative().exp()).over(a)
	left := c.times(p1).negative().exp().minus(c.times(exact(f.Reference)).times(gravity).times(span))
	return left.log().negative().over(c)
}

func (d draw) stations() (a, b hydrostatics.Station) {
	bend := d.over(1e-6, 0.75)
	a = hydrostatics.Station{MD: unit.Length(d.between(0, 5000)), Inclination: unit.Angle(d.between(0.8, 2)), Azimuth: unit.Angle(d.between(0, 6))}
	return a, hydrostatics.Station{MD: a.MD + unit.Length(d.between(1, 500)), Inclination: a.Inclination + unit.Angle(bend*d.between(-1, 1)), Azimuth: a.Azimuth + unit.Angle(bend)}
}

type displacement struct{ n, e, v number }

// course is the arc by minimum curvature, with β from its cosine and the digits to
// bear it.
func course(a, b hydrostatics.Station) displacement {
	si1, ci1 := exact(a.Inclination).sincos()
	si2, ci2 := exact(b.Inclination).sincos()
	sa1, ca1 := exact(a.Azimuth).sincos()
	sa2, ca2 := exact(b.Azimuth).sincos()
	cosine := ci1.times(ci2).plus(si1.times(si2).times(sa1.times(sa2).plus(ca1.times(ca2))))
	one := exact(1.0)
	tangent := one.minus(cosine).over(one.plus(cosine)).root() // of half the bend
	k := exact(b.MD).minus(exact(a.MD)).scaled(-1).times(tangent.over(tangent.atan()))
	return displacement{n: k.times(si1.times(ca1).plus(si2.times(ca2))), e: k.times(si1.times(sa1).plus(si2.times(sa2))), v: k.times(ci1.plus(ci2))}
}
