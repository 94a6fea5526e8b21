package production

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// gasNode is gas through a choke, by the compressible form of IEC 60534-2-1
// that choke.Trim.Gas documents, counted at standard conditions.
type gasNode struct {
	perArea float64 // sqrt(ρ1/p1)/ρs: q = C·perArea·Y·sqrt(x)·p1
	choked  float64 // Fγ·xT
}

func newGasNode(g GasAtChoke) *gasNode {
	rho := float64(g.Density)
	perPressure := rho / float64(unit.Atmosphere) * g.Standard.Kelvin() / (g.Temperature.Kelvin() * g.Z)
	return &gasNode{perArea: math.Sqrt(perPressure) / rho, choked: g.HeatRatio / 1.4 * g.Ratio}
}

// through is the rate from absolute pressure up to down through a coefficient,
// with its slopes.
func (g *gasNode) through(c, up, down float64) (q, byUp, byDown float64) {
	k := c * g.perArea
	x := (up - down) / up
	if x >= g.choked {
		f := 2.0 / 3 * math.Sqrt(g.choked)
		return k * up * f, k * f, 0
	}
	root := math.Sqrt(x)
	f := (1 - x/(3*g.choked)) * root
	slope := (1 - x/g.choked) / (2 * root)
	return k * up * f, k * (f + slope*down/up), -k * slope
}

// excess is what the choke lets out less what the zone gives, for a pressure s
// in front of the zone; it grows with s.
func (g *gasNode) excess(curve Inflow, s, p, c float64) (value, slope float64) {
	q, fall := curve.At(s)
	out, own, _ := g.out(s, p, c)
	return out - q, own - fall
}

// out is the rate from in front of the zone into the tubing, either way, and
// its slopes by the two pressures.
func (g *gasNode) out(s, p, c float64) (q, bySandface, byTubing float64) {
	const pa = float64(unit.Atmosphere)
	if s > p {
		return g.through(c, s+pa, max(0, p+pa))
	}
	q, byTubing, bySandface = g.through(c, max(0, p+pa), s+pa)
	return -q, -bySandface, -byTubing
}

// sandface solves inflow(s) = out(s, p).
func (g *gasNode) sandface(curve Inflow, static, p, c float64) float64 {
	lo := min(max(p, -float64(unit.Atmosphere)), static)
	return bracketed(lo, max(p, static), func(s float64) (float64, float64) { return g.excess(curve, s, p, c) })
}

// rate is what flows into tubing at pressure p, and its slope.
func (g *gasNode) rate(curve Inflow, static, p, c float64) (q, slope float64) {
	if p == static {
		return 0, 0
	}
	s := g.sandface(curve, static, p, c)
	q, fall := curve.At(s)
	out, own, cross := g.out(s, p, c)
	if own < -fall { // the flatter of the two keeps its digits
		q = out
	}
	if fall == 0 {
		return q, 0
	}
	if math.IsInf(own, 0) {
		return q, fall
	}
	return q, cross / (1 - own/fall)
}
