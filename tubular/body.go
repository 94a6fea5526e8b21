package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Body is a pipe prepared for many loads: all that does not depend on the load
// is computed once. Make it with Pipe.Prepare; it allocates nothing afterwards.
//
// Range: a Body that Prepare made, under any load. Its methods return no error:
// NaN in, NaN out, and a load beyond yield gives what the elastic formulas
// give.
type Body struct {
	young, ri, ro float64
	perSteel      float64 // 1/As
	inAs          float64 // Ai/As
	lame          float64 // √3 Ao/As
	shear         float64 // √3 ri/J
	boreShare2    float64 // (Ai/Ao)², from inner to outer wall for the square of Lamé's term
	radii2        float64 // (ro/ri)², likewise for that of torsion
	perYield      float64
	yieldPSI      float64 // the yield strength in psi
	perBurst      float64
	slender       slender
	collapse      float64 // without axial load
}

// Prepare returns p prepared for many loads. It is an error when p can't be
// rated.
//
//	the ratings of Pipe.Ratings, and As, Ai, Ao, ri, ro
//
// Source: Pipe.Ratings; geometry.
func (p Pipe) Prepare() (Body, error) {
	r, err := p.Ratings()
	if err != nil {
		return Body{}, err
	}
	As, Ai, Ao := float64(p.SteelArea()), float64(p.InnerArea()), float64(p.OuterArea())
	ri, ro, Y := float64(p.ID)/2, float64(p.OD)/2, float64(p.Material.Yield)
	b := Body{
		young: float64(p.Material.Young), ri: ri, ro: ro,
		perSteel: 1 / As, inAs: Ai / As,
		lame: math.Sqrt(3) * Ao / As, shear: math.Sqrt(3) * ri / float64(p.PolarMoment()),
		boreShare2: (Ai / Ao) * (Ai / Ao), radii2: (ro / ri) * (ro / ri),
		perYield: 1 / Y, yieldPSI: p.Material.Yield.In(unit.PSI), perBurst: 1 / float64(r.InternalYield),
		slender: slenderness(r.Collapse.Slenderness), collapse: float64(r.Collapse.Pressure),
	}
	return b, fault.Join("tubular", finiteResult("1/steel area", unit.Area(b.perSteel)), finiteResult("inner radius/polar moment", unit.Curvature(b.shear)))
}

// VonMises returns the greatest von Mises stress in the wall: the same as
// Stresses(l).VonMises(), by an identity with one square root. With σe the
// effective force over the steel area
//
//	σv² = (|σe| + E κ r)² + 3 ((Δp Ax/As)² + (T r/J)²)
//
// at each wall; Ax is Ao at the inner and Ai at the outer wall. Without bending
// and torque the inner wall governs.
//
// Range: any load; see Body.
//
// Source: follows from Lamé and von Mises; see Pipe.Stresses.
func (b *Body) VonMises(l Load) unit.Pressure {
	e, h := b.terms(float64(l.Axial), float64(l.Inside), float64(l.Outside))
	t := float64(l.Torque) * b.shear
	return unit.Pressure(math.Sqrt(b.square(math.Abs(e), h*h, b.young*math.Abs(float64(l.Curvature)), t*t)))
}

// StraightVonMises is VonMises without bending and torque: short enough to be
// put into a caller's loop by the compiler.
//
//	σv² = σe² + 3 (Δp Ao/As)²
//
// Range: any load; see Body.
//
// Source: see Body.VonMises.
func (b *Body) StraightVonMises(axial unit.Force, inside, outside unit.Pressure) unit.Pressure {
	e, h := b.terms(float64(axial), float64(inside), float64(outside))
	return unit.Pressure(math.Sqrt(e*e + h*h))
}

// terms returns the effective force over the steel area, and √3 times Lamé's
// term at the inner wall. With Ao = Ai + As the former is
//
//	σe = Fa/As + po - Δp Ai/As
//
// which keeps its digits in a thin wall.
func (b *Body) terms(F, pi, po float64) (e, h float64) {
	Δp := pi - po
	return F*b.perSteel + po - Δp*b.inAs, Δp * b.lame
}

// square is that of the von Mises stress at the wall where it is greater: e is
// without sign, h and t are squared; c is the bending stress per radius, √t √3
// times the shear stress at the inner wall.
func (b *Body) square(e, h, c, t float64) float64 {
	n, m := e+c*b.ri, e+c*b.ro
	inner := n*n + h + t
	// Not max, which takes longer: an outer that isn't a number is no greater, and
	// then inner isn't one either.
	if outer := m*m + h*b.boreShare2 + t*b.radii2; outer > inner {
		inner = outer
	}
	return inner
}
