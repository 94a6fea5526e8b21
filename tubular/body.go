package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Body is a pipe prepared for many loads: all that does not depend on the load
// is computed once. Make it with Pipe.Prepare; it allocates nothing afterwards.
type Body struct {
	steel, inner, outer float64 // areas, m²
	ri, ro, young       float64
	perSteel            float64 // 1/As
	inAs, outAs         float64 // Ai/As and Ao/As: Lamé's B/r² per differential at the other wall
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
	b.inAs, b.outAs = b.inner*b.perSteel, b.outer*b.perSteel
	J := float64(p.PolarMoment())
	b.riJ, b.roJ = b.ri/J, b.ro/J
	return b, nil
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
	pi, po, T := float64(l.Inside), float64(l.Outside), float64(l.Torque)
	e := math.Abs(float64(l.Axial)*b.perSteel - pi*b.inAs + po*b.outAs)
	c := b.young * math.Abs(float64(l.Curvature))
	dp := pi - po
	n, m := e+c*b.ri, e+c*b.ro
	hi, ho := dp*b.outAs, dp*b.inAs
	ti, to := T*b.riJ, T*b.roJ
	return unit.Pressure(math.Sqrt(max(n*n+3*(hi*hi+ti*ti), m*m+3*(ho*ho+to*to))))
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
	if left >= leastYield {
		c := collapseCurve(left)
		return c.Pressure(b.slenderness)
	}
	c := collapseCurve(leastYield)
	return c.Pressure(b.slenderness) * (left / leastYield)
}
