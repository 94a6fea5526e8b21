package hydrostatics

import (
	"math"

	"completion.example/internal/root"
)

// law says how pressure runs within a piece.
type law uint8

const (
	constant    law = iota // p = p0 + ρ0·g·(z − z0)
	exponential            // SlightlyCompressible in a straight temperature
	polynomial             // the integral of a collocated density
)

// piece is a part of a column in which pressure has one formula. It is
// anchored at the end that is nearer to the reference.
type piece struct {
	top, bottom   float64 // TVD, m
	ptop, pbottom float64
	z0, p0        float64 // the anchor
	law           law
	rho           float64             // density at the anchor
	c             float64             // compressibility, 1/Pa
	a             float64             // expansivity times temperature gradient, 1/m
	length        float64             // from the anchor, negative upwards
	rise          [degree + 2]float64 // Chebyshev series of p − p0
}

// at returns the pressure at z.
//
// For the exponential law see rise.
func (q *piece) at(z float64) float64 {
	s := z - q.z0
	switch q.law {
	case exponential:
		return q.p0 + rise(q.rho, q.c, q.a, s)
	case polynomial:
		if s == 0 {
			return q.p0 // which the series misses by its rounding
		}
		return q.p0 + sum(&q.rise, 2*s/q.length-1)
	}
	return q.p0 + q.rho*gravity*s
}

// rise is p − p0 at a distance s under the anchor of the exponential law,
//
//	p = p0 − ln[1 − c·g·ρ0·(1 − e^(−a·s))/a]/c
func rise(rho, c, a, s float64) float64 {
	weight := gravity * rho * s * shrink(a*s)
	return weight * swell(c*weight)
}

// depth returns the depth at which the piece has pressure p, which it does.
func (q *piece) depth(p float64) float64 {
	switch {
	case p <= q.ptop:
		return q.top
	case p >= q.pbottom:
		return q.bottom
	case q.law == constant:
		return math.Min(math.Max(q.z0+(p-q.p0)/(q.rho*gravity), q.top), q.bottom)
	}
	// Pressure rises with depth in every piece, so the ends bracket the root: with
	// their own pressures, which the formula may miss by its rounding.
	z, _ := root.Find(func(z float64) float64 {
		switch z {
		case q.top:
			return q.ptop - p
		case q.bottom:
			return q.pbottom - p
		}
		return q.at(z) - p
	}, q.top, q.bottom, 0)
	return z
}
