package movement

import "completion.example/hydrostatics/unit"

// Movement is a change of length by cause: lengthening positive.
type Movement struct {
	Piston     unit.Length `json:"piston"`     // changed pressure forces on the end and on every change of section
	Ballooning unit.Length `json:"ballooning"` // changed pressure inside and outside, through Poisson's ratio
	Buckling   unit.Length `json:"buckling"`   // changed helical or sinusoidal shortening
	Thermal    unit.Length `json:"thermal"`    // changed temperature
	Friction   unit.Length `json:"friction"`   // drag of fluid flowing inside
}

// Total returns the sum of all causes.
//
// Range: any lengths; they aren't checked.
//
// Source: superposition; Lubinski, Althouse and Logan 1962.
func (m Movement) Total() unit.Length {
	return m.Piston + m.Ballooning + m.Buckling + m.Thermal + m.Friction
}

func (m Movement) plus(n Movement) Movement {
	return Movement{
		Piston: m.Piston + n.Piston, Ballooning: m.Ballooning + n.Ballooning, Buckling: m.Buckling + n.Buckling,
		Thermal: m.Thermal + n.Thermal, Friction: m.Friction + n.Friction,
	}
}
