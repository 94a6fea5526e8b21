package hydrostatics

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// vector has the axes north, east and down.
type vector struct{ n, e, v float64 }

func (a vector) plus(b vector) vector   { return vector{a.n + b.n, a.e + b.e, a.v + b.v} }
func (a vector) minus(b vector) vector  { return vector{a.n - b.n, a.e - b.e, a.v - b.v} }
func (a vector) times(k float64) vector { return vector{k * a.n, k * a.e, k * a.v} }
func (a vector) dot(b vector) float64   { return a.n*b.n + a.e*b.e + a.v*b.v }

// direction is the unit tangent of a hole.
func direction(inclination, azimuth unit.Angle) vector {
	si, ci := math.Sincos(float64(inclination))
	if si == 0 {
		return vector{0, 0, ci}
	}
	sa, ca := math.Sincos(float64(azimuth))
	return vector{si * ca, si * sa, ci}
}

// angles is the inverse of direction; a vertical tangent has azimuth zero.
func angles(t vector) (inclination, azimuth unit.Angle) {
	flat := math.Hypot(t.n, t.e)
	if flat > 0 {
		azimuth = unit.Angle(fullTurn(math.Atan2(t.e, t.n)))
	}
	return unit.Angle(math.Atan2(flat, t.v)), azimuth
}

// fullTurn carries an angle of −π to π into 0 to 2π.
func fullTurn(a float64) float64 {
	if a < 0 {
		a += 2 * math.Pi
		if a >= 2*math.Pi {
			return 0 // a minute negative angle has no room below the full turn
		}
	}
	return a
}

// chord returns the displacement along an arc of length l between two unit
// tangents, and the square of its half-angle's tangent:
//
//	x = tan(β/2) = |t2 − t1|/|t2 + t1|
//	Δ = (l/2)·RF·(t1 + t2),  RF = tan(β/2)/(β/2) = x/atan x
//
// The half-angle's tangent needs no special case for a straight hole and loses
// no digits near one, where the arc cosine of the textbook form loses half of
// them.
func chord(l float64, t1, t2 vector) (delta vector, xx float64) {
	sum, diff := t1.plus(t2), t2.minus(t1)
	xx = diff.dot(diff) / sum.dot(sum)
	return sum.times(l / 2 * ratioFactor(xx)), xx
}

// ratioFactor is x/atan x as a function of x².
func ratioFactor(xx float64) float64 {
	if xx < 1e-3 { // the series' next term is below 1e-16
		y := xx * xx // two sums, so that neither waits for the other
		return 1 + xx*((1./3-xx*(4./45))+y*((44./945-xx*(428./14175))+y*(10196./467775)))
	}
	x := math.Sqrt(xx)
	return x / math.Atan(x)
}

// bend is the angle whose half's tangent has this square.
func bend(xx float64) float64 { return 2 * math.Atan(math.Sqrt(xx)) }

// arc is one interval of a path.
type arc struct {
	length, bend float64
	along, aside vector // unit tangent at its start, unit normal towards its centre
}

func (p *Path) arc(i int) arc { return between(&p.nodes[i], &p.nodes[i+1]) }

func between(from, to *node) arc {
	a := arc{length: to.md - from.md, bend: bend(from.xx), along: from.dir}
	normal := to.dir.minus(from.dir.times(from.dir.dot(to.dir)))
	if size := math.Sqrt(normal.dot(normal)); size > 0 {
		a.aside = normal.times(1 / size)
	}
	return a
}

// at returns the displacement and the tangent after a length s:
//
//	θ = β·s/l
//	Δ = s·[sin θ/θ·t + (1 − cos θ)/θ·n]
//	t(s) = cos θ·t + sin θ·n
func (a arc) at(s float64) (delta, tangent vector) {
	theta := a.bend * (s / a.length)
	sin, cos := math.Sincos(theta)
	sinc, rise := 1.0, 0.0
	if theta > 0 {
		sinc = sin / theta
		half := math.Sin(theta / 2)
		rise = 2 * half * half / theta
	}
	delta = a.along.times(s * sinc).plus(a.aside.times(s * rise))
	return delta, a.along.times(cos).plus(a.aside.times(sin))
}
