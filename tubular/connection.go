package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Connection is what the joints of a pipe bear, where that is not what its body
// bears. A field that is zero is not known, and nothing is checked against it;
// the zero value is a connection of which nothing is known.
type Connection struct {
	Name        string        `json:"name"`
	Tension     unit.Force    `json:"tension"`
	Compression unit.Force    `json:"compression"`
	Inside      unit.Pressure `json:"inside"` // differentials that it holds: inside over outside, outside over inside
	Outside     unit.Pressure `json:"outside"`
	Triaxial    float64       `json:"triaxial"` // share of the body's yield strength that von Mises stress may reach
	Source      string        `json:"source"`
}

// Known tells whether anything is known of the connection.
func (c Connection) Known() bool {
	return c.Tension > 0 || c.Compression > 0 || c.Inside > 0 || c.Outside > 0 || c.Triaxial > 0
}

// Unknown lists the ratings that are not known, in words.
func (c Connection) Unknown() []string {
	var missing []string
	for _, x := range []struct {
		known bool
		name  string
	}{
		{c.Tension > 0, "tension"}, {c.Compression > 0, "compression"}, {c.Inside > 0, "internal pressure"},
		{c.Outside > 0, "external pressure"}, {c.Triaxial > 0, "triaxial share"},
	} {
		if !x.known {
			missing = append(missing, x.name)
		}
	}
	return missing
}

// Validate reports what is out of range; ratings are never negative.
func (c Connection) Validate() error {
	return fault.Join("tubular", fault.AtLeast("Tension", c.Tension, 0), fault.AtLeast("Compression", c.Compression, 0),
		fault.AtLeast("Inside", c.Inside, 0), fault.AtLeast("Outside", c.Outside, 0), fault.Between("Triaxial", c.Triaxial, 0, 1))
}

// Usage returns how much of the connection's ratings a load uses, design factors
// included: the greatest of those that are known, 0 where none is.
//
//	f(axial) Fa / Tension,  -f(axial) Fa / Compression
//	f(burst) (pi - po) / Inside,  f(collapse) (po - pi) / Outside
//	triaxial / Triaxial
//
// triaxial is what the body uses of its own triaxial limit, and yield what is
// left of the yield strength when hot, from 0 to 1. Bending counts in the triaxial
// term alone: a rating in tension under bending is the maker's to give.
//
// Range: any load; a share of yield above zero: at zero it is infinite or NaN.
//
// Source: definition.
func (c *Connection) Usage(l Load, f DesignFactors, triaxial, yield float64) float64 {
	axial, dp := float64(l.Axial), float64(l.Inside-l.Outside)
	if axial != axial || dp != dp {
		return math.NaN() // which no limit passes for safe
	}
	most := 0.0
	if axial > 0 && c.Tension > 0 {
		most = f.Axial * axial / float64(c.Tension)
	} else if axial < 0 && c.Compression > 0 {
		most = -f.Axial * axial / float64(c.Compression)
	}
	if dp > 0 && c.Inside > 0 {
		most = max(most, f.Burst*dp/float64(c.Inside))
	} else if dp < 0 && c.Outside > 0 {
		most = max(most, -f.Collapse*dp/float64(c.Outside))
	}
	most /= yield
	if c.Triaxial > 0 {
		most = max(most, triaxial/c.Triaxial)
	}
	return most
}
