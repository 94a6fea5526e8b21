package hydrostatics

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// marcher carries a pressure through layers and may keep the pieces.
type marcher struct {
	temperature *TemperatureProfile
	keep        bool
	pieces      []piece
	budget      int
}

const (
	maxPieces = 4096
	// fit is how much of a step's pressure difference the terms may hold that a
	// density's series leaves out.
	fit = 3e-9
	// settled is how much of a step's pressure difference the last sweep of the
	// fixed-point iteration may leave.
	settled   = 2e-10
	maxSweeps = 12
	// finest is how often a layer is halved, and its halves: a jump of the density
	// within what is left costs less than 2^-32 of the jump.
	finest = 32
)

// carry takes p from one depth to another.
func (m *marcher) carry(layers []Layer, p, from, to float64) (float64, error) {
	m.budget = maxPieces
	if from <= to {
		for i := range layers {
			l := &layers[i]
			a, b := max(float64(l.TopTVD), from), min(float64(l.BottomTVD), to)
			if a < b {
				var err error
				if p, err = m.through(l, p, a, b); err != nil {
					return 0, fmt.Errorf("layer %d: %w", i+1, err)
				}
			}
		}
		return p, nil
	}
	for i := len(layers) - 1; i >= 0; i-- {
		l := &layers[i]
		a, b := min(float64(l.BottomTVD), from), max(float64(l.TopTVD), to)
		if a > b {
			var err error
			if p, err = m.through(l, p, a, b); err != nil {
				return 0, fmt.Errorf("layer %d: %w", i+1, err)
			}
		}
	}
	return p, nil
}

// through takes p through one layer, from a to b.
func (m *marcher) through(l *Layer, p, a, b float64) (float64, error) {
	f, closed := l.Fluid.(SlightlyCompressible)
	rho, same := f.UniformDensity() // of its own type, which is quicker to ask than an interface
	if !closed {
		rho, same = uniform(l.Fluid)
	}
	if same {
		return m.end(&piece{z0: a, p0: p, law: constant, rho: float64(rho)}, b)
	}
	for z := a; z != b; {
		next := m.temperature.kink(z, b)
		var err error
		if closed {
			p, err = m.exponential(&f, p, z, next)
		} else {
			ta, tb := m.temperature.At(unit.Length(z)).Kelvin(), m.temperature.At(unit.Length(next)).Kelvin()
			p, err = m.smooth(l.Fluid, p, z, next, ta, tb, 0)
		}
		if err != nil {
			return 0, err
		}
		z = next
	}
	return p, nil
}

// end completes a piece that runs from its anchor to b.
func (m *marcher) end(q *piece, b float64) (float64, error) {
	p, err := reached(q.at(b), b)
	if m.keep && err == nil {
		q.top, q.bottom, q.ptop, q.pbottom = q.z0, b, q.p0, p
		if b < q.z0 {
			q.top, q.bottom, q.ptop, q.pbottom = b, q.z0, p, q.p0
		}
		m.pieces = append(m.pieces, *q)
	}
	return p, err
}

// reached passes on a pressure at z that is finite.
func reached(p, z float64) (float64, error) {
	if math.IsNaN(p) || math.IsInf(p, 0) {
		return 0, fmt.Errorf("hydrostatics: the pressure is not finite at TVD %s", unit.Length(z).Rounded(6))
	}
	return p, nil
}

// exponential takes p through a straight piece of temperature with a fluid that has
// the closed form. Where nothing is kept no piece is made: clearing one takes as
// long as the formula.
func (m *marcher) exponential(f *SlightlyCompressible, p, z, next float64) (float64, error) {
	t, slope := m.temperature.straight(z, next)
	rho := f.at(p, t)
	if !(rho > 0) || math.IsInf(rho, 0) {
		_, err := f.Density(unit.Pressure(p), t)
		return 0, err
	}
	c, a := float64(f.Compressibility), float64(f.Expansivity)*slope
	if !m.keep {
		return reached(p+rise(rho, c, a, next-z), next)
	}
	return m.end(&piece{z0: z, p0: p, law: exponential, rho: rho, c: c, a: a}, next)
}

// smooth integrates any density from z to next, where the temperature runs straight
// from ta to tb, in K: one collocated piece, or its halves where that doesn't fit.
func (m *marcher) smooth(f Fluid, p, z, next, ta, tb float64, halvings int) (float64, error) {
	if m.budget--; m.budget < 0 {
		return 0, errors.New("hydrostatics: the fluid's density isn't smooth enough to be integrated")
	}
	q := piece{z0: z, p0: p, law: polynomial, length: next - z}
	final := halvings == finest
	fits, err := q.collocate(f, ta, tb, final)
	if !fits && !final {
		middle, tm := (z+next)/2, (ta+tb)/2
		if p, err = m.smooth(f, p, z, middle, ta, tm, halvings+1); err != nil {
			return 0, err
		}
		return m.smooth(f, p, middle, next, tm, tb, halvings+1)
	}
	if err != nil {
		return 0, err
	}
	return m.end(&q, next)
}

// collocate fits the piece to a fluid between temperatures t0 at the anchor
// and t1. It tells whether the fit is good; an error is the fluid's own. A piece
// that isn't final may be given up half-way, without its series.
//
// The pressures at the collocation points are found by fixed-point iteration,
// which gains a factor of about c·ρ·g·length at each sweep: 60 for 4,000 m of
// water.
func (q *piece) collocate(f Fluid, t0, t1 float64, final bool) (fits bool, err error) {
	var rho, p [degree + 1]float64
	first, err := q.start(f, t0, t1, &p)
	if err != nil {
		return false, err
	}
	rho[0] = first
	last := math.Inf(1)
	for sweep := range maxSweeps {
		for j := 1; j <= degree; j++ {
			x := chebyshev[j]
			if rho[j], err = density(f, p[j], t0+(t1-t0)*x, q.z0); err != nil {
				return false, err
			}
		}
		// A density that doesn't fit shows it before the pressures have settled.
		if sweep == 0 && !final && misfit(&rho) > 2*fit*math.Abs(first) {
			return false, nil
		}
		change := 0.0
		for j := 1; j <= degree; j++ {
			row := &collocated[j-1]
			s, odd := row[0]*rho[0], 0.0 // two sums, so that neither waits for the other
			for k := 1; k < degree; k += 2 {
				odd += row[k] * rho[k]
				s += row[k+1] * rho[k+1]
			}
			s += odd
			was := p[j]
			p[j] = q.p0 + gravity*q.length/2*s
			change = max(change, math.Abs(p[j]-was))
		}
		// The next sweep would change the pressures by about the last change
		// times the ratio of the last two.
		left := change
		if change < last && !math.IsInf(last, 1) {
			left *= change / last
		}
		if left <= settled*math.Abs(p[degree]-q.p0) || change <= 1e-15*math.Abs(q.p0) {
			fits = true
			break
		}
		last = change
	}
	c := series(&rho)
	for m := range c {
		c[m] *= gravity * q.length / 2
	}
	q.rho, q.rise = first, integral(&c)
	return fits && misfit(&rho) <= fit*math.Abs(first), nil
}

// start guesses the pressures at the collocation points from the density at
// the anchor, at the far end and half-way: as good as one sweep of all points.
func (q *piece) start(f Fluid, t0, t1 float64, p *[degree + 1]float64) (first float64, err error) {
	weight := gravity * q.length
	a, err := density(f, q.p0, t0, q.z0)
	if err != nil {
		return 0, err
	}
	c, err := density(f, q.p0+weight*a, t1, q.z0)
	if err != nil {
		return 0, err
	}
	b, err := density(f, q.p0+weight*(3*a+c)/8, (t0+t1)/2, q.z0)
	if err != nil {
		return 0, err
	}
	for j, x := range chebyshev { // the integral of the parabola through the three
		p[j] = q.p0 + weight*x*(a+x*((4*b-3*a-c)/2+x*(2*a-4*b+2*c)/3))
	}
	return a, nil
}

// density asks the fluid in a piece that begins at z, as the error tells: what comes out is
// of a piece too small for the rest of it to show.
func density(f Fluid, p, kelvin, z float64) (float64, error) {
	rho, err := f.Density(unit.Pressure(p), unit.Kelvin(kelvin))
	if err != nil {
		return 0, fmt.Errorf("hydrostatics: at TVD %s: %w", unit.Length(z).Rounded(6), err)
	}
	if !(rho > 0 && rho <= math.MaxFloat64) {
		return 0, fmt.Errorf("hydrostatics: the fluid's density at TVD %s, %s and %s is %v; must be above 0 kg/m3 and finite",
			unit.Length(z).Rounded(6), unit.Pressure(p).Rounded(6), unit.Kelvin(kelvin).Rounded(4), rho)
	}
	return float64(rho), nil
}
