package production

import "completion.example/hydrostatics/unit"

// Equivalent is the single productivity index and static pressure of straight
// zones without chokes at one datum, which is what a test of the whole well
// would measure:
//
//	J = ΣJk        p = ΣJk·(pk - Δpk)/J
//
// J productivity indices, p static pressures, Δp the head from the zone down or
// up to the datum. Source: the multi-layer inflow formula of reservoir
// engineering, e.g. nafta.wiki, Multi-layer IPR.
//
// Range: indices above zero, not checked: the pressure is NaN where they add up
// to nothing.
func Equivalent(zones ...Straight) (unit.ProductivityIndex, unit.Pressure) {
	var j, jp float64
	for _, z := range zones {
		j += float64(z.Index)
		jp += float64(z.Index) * float64(z.Static-z.Head)
	}
	return unit.ProductivityIndex(j), unit.Pressure(jp / j)
}

// Straight is a zone for Equivalent.
type Straight struct {
	Index  unit.ProductivityIndex `json:"index"`
	Static unit.Pressure          `json:"static"`
	Head   unit.Pressure          `json:"head"` // static pressure at the zone less that at the datum, of the fluid in the well
}
