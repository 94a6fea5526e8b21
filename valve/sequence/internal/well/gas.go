package well

import (
	"fmt"
	"math"
	"sort"
	"sync"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"gonum.org/v1/gonum/integrate/quad"
)

// Gas is a gas in the hole at one temperature: all columns that it can make, one
// curve of pressure against depth for each pressure at TVD 0,
//
//	dp/dz = ρ(p, T(z))·g
//
// as hydrostatics.Column integrates it. Curves never cross, so that a pressure at a
// depth names one, and between curves ln p is a polynomial in ln p at another depth.
// Curves are made when they are wanted. What stands on a curve from the top of the
// hole down is its mass for each area, ∫ρ ds along the hole.
type Gas struct {
	Name    string
	fluid   hydrostatics.Fluid
	warmth  *hydrostatics.TemperatureProfile
	knots   []Depth // along the hole
	deepest float64 // TVD
	curves  []curve
}

type curve struct {
	once   sync.Once
	column *hydrostatics.Column
	err    error

	weighed sync.Once
	mass    []float64 // by knot: from the first down, kg/m²
	density []float64
	unknown error // why there are none
}

// Curves lie this much apart in ln p, from the least absolute pressure on.
const (
	curveStep  = 0.05
	curveLeast = 1e4 // Pa
	curveCount = 197 // to 180 MPa
	stencil    = 6
)

// atmosphere turns gauge pressures absolute, in Pa.
const atmosphere = float64(unit.Atmosphere)

// NewGas is a gas in a hole of which some depths are given, the first of them at its
// top; between two of them that lie near to each other the hole is smooth.
func NewGas(name string, fluid hydrostatics.Fluid, warmth *hydrostatics.TemperatureProfile, hole []Depth) *Gas {
	g := &Gas{Name: name, fluid: fluid, warmth: warmth, knots: hole, curves: make([]curve, curveCount)}
	for _, d := range hole {
		g.deepest = math.Max(g.deepest, d.TVD)
	}
	return g
}

// column is a curve of the gas.
func (g *Gas) column(j int) (*hydrostatics.Column, error) {
	c := &g.curves[j]
	c.once.Do(func() {
		p := curveLeast*math.Exp(float64(j)*curveStep) - atmosphere
		c.column, c.err = hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: g.fluid, TopTVD: 0, BottomTVD: unit.Length(g.deepest)}},
			g.warmth, hydrostatics.Reference{Pressure: unit.Pressure(p)})
	})
	if c.err != nil {
		return nil, fmt.Errorf("%s: %w", g.Name, c.err)
	}
	return c.column, nil
}

// log is ln of the absolute pressure of a curve at a depth.
func (g *Gas) log(j int, tvd float64) (float64, error) {
	c, err := g.column(j)
	if err != nil {
		return 0, err
	}
	p, err := c.At(unit.Length(tvd))
	return math.Log(float64(p) + atmosphere), err
}

// place is where between its curves a gas stands.
type place struct {
	first   int
	weights [stencil]float64
}

// place finds the curve that has a pressure at a depth.
func (g *Gas) place(p, tvd float64) (place, error) {
	var w place
	if !(p+atmosphere > curveLeast) {
		return w, g.vacuum(p)
	}
	y := math.Log(p + atmosphere)
	j := min(int((y-math.Log(curveLeast))/curveStep), curveCount-2)
	for ; j > 0; j-- { // a curve has more at the depth than at its top
		at, err := g.log(j, tvd)
		if err == nil && at <= y {
			break
		}
	}
	w.first = min(max(j-stencil/2+1, 0), curveCount-stencil)
	var at [stencil]float64
	for {
		ok := true
		for k := range at {
			var err error
			if at[k], err = g.log(w.first+k, tvd); err != nil {
				if w.first == 0 || k == 0 {
					return w, err
				}
				w.first, ok = w.first-1, false // the equation of state ends here
				break
			}
		}
		if ok {
			break
		}
	}
	if y > at[stencil-1]+curveStep {
		return w, fmt.Errorf("%s: %s is more than its equation of state is good for", g.Name, unit.Pressure(p).Rounded(4))
	}
	for k := range at {
		x := 1.0
		for m := range at {
			if m != k {
				x *= (y - at[m]) / (at[k] - at[m])
			}
		}
		w.weights[k] = x
	}
	return w, nil
}

func (g *Gas) vacuum(p float64) error {
	return fmt.Errorf("%s: %s is too near to a vacuum", g.Name, unit.Pressure(p).Rounded(4))
}

// pressure of a place at a depth.
func (g *Gas) pressure(w place, tvd float64) (float64, error) {
	y := 0.0
	for k, x := range w.weights {
		at, err := g.log(w.first+k, tvd)
		if err != nil {
			return 0, err
		}
		y += x * at
	}
	return math.Exp(y) - atmosphere, nil
}

// carry takes a pressure from one true vertical depth to another.
func (g *Gas) carry(p, from, to float64) (float64, error) {
	if from == to {
		return p, nil
	}
	w, err := g.place(p, from)
	if err != nil {
		return 0, err
	}
	return g.pressure(w, to)
}

// weigh finds the mass of a curve down to each knot.
func (c *curve) weigh(g *Gas) {
	c.mass, c.density = make([]float64, len(g.knots)), make([]float64, len(g.knots))
	rho := func(tvd float64) float64 {
		p, err := c.column.At(unit.Length(tvd))
		var d unit.Density
		if err == nil {
			d, err = g.fluid.Density(p, g.warmth.At(unit.Length(tvd)))
		}
		if err != nil {
			c.unknown = err
		}
		return float64(d)
	}
	for k, at := range g.knots {
		c.density[k] = rho(at.TVD)
		if k == 0 {
			continue
		}
		a := g.knots[k-1]
		share := (at.TVD - a.TVD) / (at.MD - a.MD)
		c.mass[k] = c.mass[k-1] + quad.Fixed(func(s float64) float64 { return rho(a.TVD + share*(s-a.MD)) }, a.MD, at.MD, 3, quad.Legendre{}, 0)
	}
}

// massTo is the mass of a curve down to a measured depth, for each area.
func (g *Gas) massTo(j int, md float64) (float64, error) {
	if _, err := g.column(j); err != nil {
		return 0, err
	}
	c := &g.curves[j]
	c.weighed.Do(func() { c.weigh(g) })
	if c.unknown != nil {
		return 0, fmt.Errorf("%s: %w", g.Name, c.unknown)
	}
	k := sort.Search(len(g.knots), func(k int) bool { return g.knots[k].MD >= md })
	k = min(max(k, 1), len(g.knots)-1)
	h := g.knots[k].MD - g.knots[k-1].MD
	t := (md - g.knots[k-1].MD) / h
	// Hermite's cubic: masses and densities at both ends.
	return (1+2*t)*(1-t)*(1-t)*c.mass[k-1] + t*(1-t)*(1-t)*h*c.density[k-1] +
		t*t*(3-2*t)*c.mass[k] - t*t*(1-t)*h*c.density[k], nil
}

// mass between two measured depths of a place, for each area.
func (g *Gas) mass(w place, top, bottom float64) (float64, error) {
	if bottom <= top {
		return 0, nil
	}
	y := 0.0
	for k, x := range w.weights {
		a, err := g.massTo(w.first+k, top)
		if err != nil {
			return 0, err
		}
		b, err := g.massTo(w.first+k, bottom)
		if err != nil {
			return 0, err
		}
		y += x * math.Log(b-a)
	}
	return math.Exp(y), nil
}

// Gases is a gas at a temperature that may be off as a whole: at the least, the
// middle and the greatest of what that may be.
type Gases struct {
	Gas   [3]*Gas // only the middle one where it isn't off
	Least float64 // K
	Most  float64
}

// with is what a gas makes of something, at a temperature off by h: between the
// three a parabola.
func (g *Gases) with(h float64, f func(*Gas) ([2]float64, error)) ([2]float64, error) {
	mid := g.Least + (g.Most-g.Least)/2
	if g.Gas[0] == nil || h == mid {
		return f(g.Gas[1])
	}
	var out [2]float64
	t := (h - mid) / (g.Most - mid)
	for k, w := range [3]float64{t * (t - 1) / 2, 1 - t*t, t * (t + 1) / 2} {
		if w == 0 {
			continue
		}
		x, err := f(g.Gas[k])
		if err != nil {
			return out, err
		}
		out[0] += w * x[0]
		out[1] += w * x[1]
	}
	return out, nil
}

// carry takes a pressure from one true vertical depth to another.
func (g *Gases) carry(p, from, to, h float64) (float64, error) {
	x, err := g.with(h, func(g *Gas) ([2]float64, error) {
		q, err := g.carry(p, from, to)
		return [2]float64{q}, err
	})
	return x[0], err
}

// column is the pressure at a depth and the mass from the top down to another, of a
// gas with a pressure at a third.
func (g *Gases) column(p, tvd, to, top, bottom, h float64) (pressure, mass float64, err error) {
	x, err := g.with(h, func(g *Gas) ([2]float64, error) {
		w, err := g.place(p, tvd)
		if err != nil {
			return [2]float64{}, err
		}
		q, err := g.pressure(w, to)
		if err != nil {
			return [2]float64{}, err
		}
		m, err := g.mass(w, top, bottom)
		return [2]float64{q, m}, err
	})
	return x[0], x[1], err
}
