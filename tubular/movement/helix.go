package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// Helix is a helically buckled pipe under an effective compression.
//
// Range: a compression above zero of a pipe in a wider hole, not checked. At no
// compression the pitch is infinite and all else zero; below it the pitch is
// NaN.
type Helix struct {
	Pipe        tubular.Pipe `json:"pipe"`
	Hole        unit.Length  `json:"hole"`        // inside diameter of the casing or hole
	Compression unit.Force   `json:"compression"` // effective, positive
}

func (h Helix) numbers() (f, ei, r float64) {
	return float64(h.Compression), float64(h.Pipe.Material.Young) * float64(h.Pipe.SecondMoment()), float64(h.Hole-h.Pipe.OD) / 2
}

// Pitch returns the length of one turn.
//
//	p = π*sqrt(8*E*I/F)
//
// Source: Lubinski, Althouse & Logan, JPT June 1962, pitch of the helix.
func (h Helix) Pitch() unit.Length {
	f, ei, _ := h.numbers()
	return unit.Length(math.Pi * math.Sqrt(8*ei/f))
}

// Strain returns the shortening per length: never positive.
//
//	ε = -r²*F/(4*E*I)
//
// Source: Lubinski, Althouse & Logan, JPT June 1962.
func (h Helix) Strain() float64 {
	f, ei, r := h.numbers()
	return -r * r * f / (4 * ei)
}

// Contact returns the force per length against the wall.
//
//	W = r*F²/(4*E*I)
//
// Source: Mitchell, SPE Drilling Engineering December 1986 (SPE 13064); Wu & Juvkam-Wold 1993 (SPE 25503).
func (h Helix) Contact() unit.WeightPerLength {
	f, ei, r := h.numbers()
	return unit.WeightPerLength(r * f * f / (4 * ei))
}

// Curvature returns the curvature of the pipe's axis.
//
//	κ = r*F/(2*E*I)
//
// Source: Lubinski, Althouse and Logan 1962.
func (h Helix) Curvature() unit.Curvature {
	return h.Pipe.HelixCurvature((h.Hole-h.Pipe.OD)/2, h.Compression)
}

// BendingStress returns the bending stress at the outer fibre.
//
//	σb = Do*r*F/(4*I)
//
// Source: Lubinski, Althouse & Logan, JPT June 1962, stress at the outer wall.
func (h Helix) BendingStress() unit.Pressure {
	return BendingStress(h.Pipe, h.Curvature())
}

// BendingStress returns the bending stress at the outer fibre of a pipe bent
// to a curvature.
//
//	σb = E*Do*κ/2
//
// Range: stresses below yield, not checked.
//
// Source: Bernoulli and Euler.
func BendingStress(pipe tubular.Pipe, curvature unit.Curvature) unit.Pressure {
	return unit.Pressure(float64(pipe.Material.Young) * float64(pipe.OD) * float64(curvature) / 2)
}

// LongestTool returns the length of the longest stiff tool of a diameter that
// passes through the helix, or of the whole hole where the length doesn't
// matter: then ok is false.
//
//	l = sqrt(8*(d - dt)/κ)
//
// d is the pipe's bore and dt the tool's diameter. The helix is taken as a
// circle of its curvature, which lets a little less pass than the helix does.
// Any length passes where (d - dt)/2 is no less than the helix's radius r,
// because a line along the hole's axis then lies in the bore. A tool wider
// than the bore has length zero.
//
// Range: any diameter; NaN in, NaN out.
//
// Source: geometry of a chord.
func (h Helix) LongestTool(diameter unit.Length) (length unit.Length, limited bool) {
	play := float64(h.Pipe.ID - diameter)
	if play < 0 {
		return 0, true
	}
	_, _, r := h.numbers()
	κ := float64(h.Curvature())
	if play/2 >= r || κ <= 0 {
		return 0, false
	}
	return unit.Length(math.Sqrt(8 * play / κ)), true
}
