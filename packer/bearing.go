package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/tubular"
)

// Seat is a packer set in casing: the bore of the casing and its own seal bore,
// or for a string made up into the packer the diameter up to which the string's
// own end force counts.
type Seat struct {
	Casing unit.Length `json:"casing"`
	Bore   unit.Length `json:"bore"`
}

// Bearing is what a set packer bears and hands on to the casing.
type Bearing struct {
	Tubing   unit.Force `json:"tubing"`   // of the tubing on the packer, positive up
	Pressure unit.Force `json:"pressure"` // of the differential on the packer's own ring
	Casing   unit.Force `json:"casing"`   // of the packer on the casing, positive up

	Load Load `json:"load"` // for the envelope

	seat         Seat
	below, above unit.Pressure
}

// Bearing returns the forces on a set packer.
//
//	Fp = (pb - pa) π/4 (D² - B²)
//	Fc = Ft + Fp
//
//	Ft      force of the tubing on the packer, positive where it pulls up
//	pb, pa  pressure below the packer and above it, in the annulus
//	D, B    bore of the casing, seal bore of the packer
//
// NaN in gives NaN out; D must not be less than B. What the pressures do inside
// the seal bore acts on the string and stands in Ft. Source: balance of the
// packer.
func (s Seat) Bearing(tubing unit.Force, below, above unit.Pressure) Bearing {
	b := Bearing{
		Tubing: tubing, Pressure: Push(below-above, tubular.AnnularCapacity(s.Casing, s.Bore)),
		Load: Load{Differential: below - above, Axial: tubing},
		seat: s, below: below, above: above,
	}
	b.Casing = b.Tubing + b.Pressure
	return b
}

// Steps works the result.
func (b Bearing) Steps() []working.Step {
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	return []working.Step{{
		Name: "differential on the packer's ring", Symbol: "Fp", Equation: "(pb - pa)*pi/4*(D*D - B*B)",
		Inputs: []working.Input{in("pb", working.Of(b.below)), in("pa", working.Of(b.above)), in("D", working.Of(b.seat.Casing)), in("B", working.Of(b.seat.Bore))},
		Value:  working.Of(b.Pressure), Source: "pressure on an area",
	}, {
		Name: "packer on casing", Symbol: "Fc", Equation: "Ft + Fp",
		Inputs: []working.Input{in("Ft", working.Of(b.Tubing)), in("Fp", working.Of(b.Pressure))},
		Value:  working.Of(b.Casing), Source: "balance of the packer",
	}}
}
