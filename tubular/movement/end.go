package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// End is the lower end of a string in a seal bore.
//
// Range: any pressures, and diameters from zero up; nothing is checked.
type End struct {
	Bore    unit.Length   `json:"bore"` // seal bore diameter
	OD      unit.Length   `json:"od"`   // of the pipe above the seals
	ID      unit.Length   `json:"id"`
	Inside  unit.Pressure `json:"inside"`  // in the pipe at the seals
	Outside unit.Pressure `json:"outside"` // around the pipe above the seals
	Below   unit.Pressure `json:"below"`   // under the seals: equal to Inside where the string is open below
}

// Force returns the axial force that the pressures cause in the pipe wall just
// above the seals: tension positive.
//
//	F = Ai*pi - Ap*pb + (Ap - Ao)*po
//
// Ap, Ai and Ao are the areas of seal bore, pipe bore and pipe outside; pi, po
// and pb the pressures inside, outside and below. With the string open below
// (pb = pi) this is Lubinski's -[(Ap - Ai)*pi - (Ap - Ao)*po]. With a plugged
// string hanging clear of any seal pb = po and the bore drops out:
// F = Ai*pi - Ao*po.
//
// Source: Lubinski, Althouse & Logan, JPT June 1962, actual force Fa.
func (e End) Force() unit.Force {
	ap, ai, ao := disc(e.Bore), disc(e.ID), disc(e.OD)
	return unit.Force(ai*float64(e.Inside) - ap*float64(e.Below) + (ap-ao)*float64(e.Outside))
}

// Effective returns the effective axial force just above the seals: tension
// positive. Its negative is Lubinski's fictitious force Ff.
//
//	Fe = F - pi*Ai + po*Ao = -Ap*(pb - po)
//
// Source: Lubinski, Althouse & Logan, JPT June 1962, fictitious force Ff.
func (e End) Effective() unit.Force {
	return unit.Force(-disc(e.Bore) * float64(e.Below-e.Outside))
}

func disc(d unit.Length) float64 { return math.Pi / 4 * float64(d) * float64(d) }

// ShoulderForce returns the step of true axial force at a change of section,
// above minus below, tension positive. The effective force has no step there.
//
//	ΔF = pi*(Ai above - Ai below) - po*(Ao above - Ao below)
//
// Range: any pressures, and diameters from zero up; nothing is checked.
//
// Source: equilibrium of the shoulder; Hammerlindl, JPT February 1977, forces
// at a change of tubing size.
func ShoulderForce(inside, outside unit.Pressure, aboveOD, aboveID, belowOD, belowID unit.Length) unit.Force {
	return unit.Force(float64(inside)*(disc(aboveID)-disc(belowID)) - float64(outside)*(disc(aboveOD)-disc(belowOD)))
}

// Load returns the load on a sealed joint with an end's pressures and areas, from
// the wall force just above it: what pins, threads or a latch have to carry,
// positive where it parts them.
//
//	P = Fa - F(end) = Fa - Ai*pi + Ap*pb - (Ap - Ao)*po = Fe + (pb - po)*Ap
//
// Range: any force; nothing is checked.
//
// Source: balance of the joint's upper half.
func (e End) Load(wall unit.Force) unit.Force {
	effective := float64(wall) - disc(e.ID)*float64(e.Inside) + disc(e.OD)*float64(e.Outside)
	return jointBalance(unit.Force(effective), e.Below, e.Outside, disc(e.Bore))
}
