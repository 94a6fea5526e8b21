package tubular

import (
	"errors"
	"math"

	"completion.example/hydrostatics/unit"
)

// Body is a pipe prepared for many loads: all that does not depend on the load
// is computed once. Make it with Pipe.Prepare; it allocates nothing afterwards.
type Body struct {
	steel, inner, outer float64 // areas, m²
	ri, ro, young       float64
	perSteel            float64 // 1/As
	inAs, outAs         float64 // Ai/As and Ao/As; Ao/As is Lamé's B/r² per differential at the inner wall
	boreShare           float64 // Ai/Ao
	riJ, roJ            float64 // r/J
	yield, perYield     float64
	burst               float64
	slenderness         float64
	curve               CollapseCurve
	collapse            float64 // without axial load
}

// Prepare returns p prepared for many loads. It is an error when p can't be
// rated.
func (p Pipe) Prepare() (Body, error) {
	r, err := p.Ratings()
	if err != nil {
		return Body{}, err
	}
	b := Body{
		steel: float64(p.SteelArea()), inner: float64(p.InnerArea()), outer: float64(p.OuterArea()),
		ri: float64(p.ID) / 2, ro: float64(p.OD) / 2, young: float64(p.Material.Young),
		yield: float64(p.Material.Yield), burst: float64(r.InternalYield),
		slenderness: r.Collapse.Slenderness, curve: r.Collapse.Curve, collapse: float64(r.Collapse.Pressure),
	}
	b.perSteel, b.perYield = 1/b.steel, 1/b.yield
	b.inAs, b.outAs, b.boreShare = b.inner*b.perSteel, b.outer*b.perSteel, b.inner/b.outer
	J := float64(p.PolarMoment())
	b.riJ, b.roJ = b.ri/J, b.ro/J
	return b, errors.Join(finiteResult("1/steel area", unit.Area(b.perSteel)), finiteResult("outer radius/polar moment", unit.Curvature(b.roJ)))
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
// Source: follows from Lamé and von Mises; see Pipe.Stresses.
func (b *Body) VonMises(l Load) unit.Pressure {
	e, h := b.terms(float64(l.Axial), float64(l.Inside), float64(l.Outside))
	if l.Curvature == 0 && l.Torque == 0 {
		return unit.Pressure(math.Sqrt(e*e + 3*h*h))
	}
	e = math.Abs(e)
	c := b.young * math.Abs(float64(l.Curvature))
	n, m := e+c*b.ri, e+c*b.ro
	ho := h * b.boreShare
	ti, to := float64(l.Torque)*b.riJ, float64(l.Torque)*b.roJ
	inner := n*n + 3*(h*h+ti*ti)
	// Not max, which costs more: an outer that isn't a number is no greater, and
	// then inner isn't one either.
	if outer := m*m + 3*(ho*ho+to*to); outer > inner {
		inner = outer
	}
	return unit.Pressure(math.Sqrt(inner))
}

// StraightVonMises is VonMises without bending and torque: short enough to be
// put into a caller's loop by the compiler.
//
//	σv² = σe² + 3 (Δp Ao/As)²
func (b *Body) StraightVonMises(axial unit.Force, inside, outside unit.Pressure) unit.Pressure {
	e, h := b.terms(float64(axial), float64(inside), float64(outside))
	return unit.Pressure(math.Sqrt(e*e + 3*h*h))
}

// terms returns the effective force over the steel area, and Lamé's term at the
// inner wall.
func (b *Body) terms(F, pi, po float64) (e, h float64) {
	return F*b.perSteel - pi*b.inAs + po*b.outAs, (pi - po) * b.outAs
}

// Collapse returns the least outside minus inside pressure that collapses the
// pipe under an axial stress and an inside pressure, by the addendum of 2015: see
// Pipe.CollapseUnderLoad. Below a remaining yield strength of 24,000 psi, where
// API gives nothing and the pipe is near its axial yield, it goes down to zero in
// proportion to it: this library's own continuation.
func (b *Body) Collapse(axialStress, inside unit.Pressure) unit.Pressure {
	s := float64(axialStress + inside)
	if s <= 0 {
		return unit.Pressure(b.collapse)
	}
	left := EquivalentYield(unit.Pressure(b.yield), unit.Pressure(s))
	share := unit.Pressure(1)
	if left < leastYield {
		left, share = leastYield, left/leastYield
	}
	var c CollapseCurve
	c.prepare(left)
	return share * c.Pressure(b.slenderness)
}
