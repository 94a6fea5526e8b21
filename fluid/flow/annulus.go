package flow

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// The concentric annulus with radii κ and 1 (in outer radii) under a pressure
// gradient G: with T = G Ro/2 the shear stress is
//
//	τ(r) = T (r - r1 r2/r)
//
// where the plug |τ| < τ0 lies between r1 and r2 = r1 + τ0/T. Outside it
//
//	|τ| - τ0 = T |r - ra| (r + rb)/r,    (ra, rb) = (r2, r1) outside, (r1, r2) inside
//
// No slip at both walls fixes r1, and the rate follows by one integration by
// parts:
//
//	∫κ..r1 γ dr = ∫r2..1 γ dr,    Q = π Ro³ [∫r2..1 γ r² dr - ∫κ..r1 γ r² dr]
//
// Source: Fredrickson and Bird, Ind. Eng. Chem. 50 (1958) 347 (Bingham and
// power law); Hanks, Ind. Eng. Chem. Process Des. Dev. 18 (1979) 488
// (Herschel–Bulkley).
type ring struct {
	κ, m float64

	nodes, weights [ringNodes]float64
}

// ringNodes makes the quadrature good to 1e-11 down to κ = 0.001 and n = 0.1.
const ringNodes = 32

func (g *ring) prepare(κ, n float64) {
	g.κ, g.m = κ, 1/n
	quad.Legendre{}.FixedLocations(g.nodes[:], g.weights[:], 0, 1)
	// s = ξ³ takes the fractional power out of the integrand at the plug.
	for i, ξ := range g.nodes {
		g.nodes[i] = ξ * ξ * ξ
		g.weights[i] *= 3 * ξ * ξ
	}
}

// side integrates γ and γ r² from the plug's edge ra to the wall, with γ in
// units of (T w/K)^m. The steps are even in ln r, so that a thin inner pipe
// does no harm.
func (g *ring) side(ra, rb, wall, w float64) (slip, flow float64) {
	l := math.Log(wall / ra)
	for i, s := range g.nodes {
		e := math.Expm1(l * s)
		r := ra * (1 + e)
		y := math.Abs(ra*e) * (r + rb) / (r * w)
		if g.m != 1 {
			y = math.Pow(y, g.m)
		}
		y *= g.weights[i] * r * math.Abs(l)
		slip += y
		flow += y * r * r
	}
	return slip, flow
}

// rate returns ln of Q K^m/(π Ro³ T^m) at a plug of width β, by the c² = r1 r2 at
// which both walls' sides slip alike. It leaves c there for the next call to start
// from.
func (g *ring) rate(β float64, c *float64) (float64, error) {
	w := (1 - g.κ - β) / 2
	edges := func(c float64) (r1, r2 float64) {
		r2 = math.Hypot(c, β/2) + β/2
		return c * c / r2, r2
	}
	// The plug's edges lie in the gap while c does so between these.
	lo, hi := math.Sqrt(g.κ*(g.κ+β)), math.Sqrt(1-β)
	var flow float64
	slip := func(c float64) (float64, error) {
		r1, r2 := edges(c)
		inner, less := g.side(r1, r2, g.κ, w)
		outer, more := g.side(r2, r1, 1, w)
		flow = more - less
		return math.Log(inner / outer), nil
	}
	// Each side slips as its width to the power m+1.
	x, err := root.From(slip, *c, 4*(g.m+1)/(hi-lo), lo, hi)
	if err != nil {
		return 0, err
	}
	*c = x
	return math.Log(flow) + g.m*math.Log(w), nil
}

func errThin(κ float64) error {
	return fault.NewIn("flow", "Conduit.Inner", "is %.3g of Outer; must be at least %v of it for a fluid that isn't Newtonian", κ, leastRatioOther)
}

// annulus returns the mean wall stress at mean velocity v, and n'. The
// stress is G (D-d)/4; the slot's answer is the start.
func (r Rheology) annulus(outer, inner, v float64) (τw, index float64, err error) {
	τ0, k, n := float64(r.Yield), float64(r.Consistency), r.Index
	κ := inner / outer
	shear := 12 * v / (outer - inner)
	if τ0 == 0 && n == 1 {
		// V = G/(8μ) [Ro² + Ri² - (Ro² - Ri²)/ln(Ro/Ri)]
		s := 1 + κ*κ + (1-κ*κ)/math.Log(κ)
		return 8 * k * v * (1 - κ) / (outer * s), 1, nil
	}
	if κ < leastRatioOther {
		return 0, 0, errThin(κ)
	}
	var g ring
	g.prepare(κ, n)
	var c float64
	// ln V of the target, in the units of rate: V = Q/(π Ro² (1-κ²)).
	target := math.Log(v*(1-κ*κ)/(outer/2)) + g.m*math.Log(k)
	if τ0 == 0 {
		q, err := g.rate(0, &c)
		return math.Exp((target-q)/g.m) * (1 - κ), n, err
	}
	ξ, slope, _ := excess(shear, τ0, k, g.m, slot)
	miss := func(u float64) (float64, error) {
		T := (math.Exp(u) + τ0) / (1 - κ)
		q, err := g.rate(τ0/T, &c)
		return q + g.m*math.Log(T) - target, err
	}
	u := math.Log(τ0 * ξ)
	u, err = root.From(miss, u, slope, u-4, u+4)
	if err != nil {
		return 0, 0, err
	}
	// The slot's slope was the start's; n' takes the annulus's own, d ln V/d ln x, to 1e-5.
	const h = 1e-5
	above, err := miss(u + h)
	x := math.Exp(u)
	return x + τ0, x / (x + τ0) * h / above, err
}
