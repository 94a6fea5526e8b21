package confined

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Tube is an elastic pipe as the wall of a space.
type Tube struct {
	OD        unit.Length      `json:"od"`
	ID        unit.Length      `json:"id"`
	Young     unit.Pressure    `json:"young"`     // Young's modulus
	Poisson   float64          `json:"poisson"`   // Poisson's ratio
	Expansion unit.Expansivity `json:"expansion"` // linear
	// Rigid takes the wall as unmoved by pressure and heat: pipe cemented into
	// hard rock. Only OD and ID count then.
	Rigid bool `json:"rigid"`
}

// Ends tells how the ends of a pipe are held. The zero value is fixed.
type Ends int

// The ways to hold a pipe's ends.
const (
	EndsFixed  Ends = iota // no axial movement: between hanger and packer, in cement
	EndsOpen               // free to move, the ends' pressure borne by something else: seals, pistons
	EndsClosed             // free to move, capped: a vessel, a free line with plugged ends
)

var endsNames = [...]string{"fixed", "open", "closed"}

func (e Ends) String() string {
	if e < 0 || int(e) >= len(endsNames) {
		return "unknown"
	}
	return endsNames[e]
}

// MarshalText writes how the ends are held.
func (e Ends) MarshalText() ([]byte, error) {
	if e < 0 || int(e) >= len(endsNames) {
		return nil, fault.NewIn("confined", "", "ends are %d; must be one of %q", int(e), endsNames)
	}
	return []byte(endsNames[e]), nil
}

// UnmarshalText reads how the ends are held.
func (e *Ends) UnmarshalText(text []byte) error {
	i := slices.Index(endsNames[:], string(text))
	if i < 0 {
		return fault.NewIn("confined", "", "ends are %q; must be one of %q", text, endsNames)
	}
	*e = Ends(i)
	return nil
}

// BoreCompliance returns the relative growth of the bore's volume per pressure
// inside, 2 εθ + εz, by Lamé's thick wall. With a = ri², b = ro² and
// s = 2a/(b-a)
//
//	εθ = [(a+b)/(b-a) + ν - ν σz]/E,  εz = [σz - ν s]/E    per unit of pressure
//	σz = ν s (fixed), 0 (open), a/(b-a) (closed)
//
// A thin wall comes to D/(tE) times 1 − ν² with fixed ends, 1 − ν/2 with open
// and 5/4 − ν with closed ones.
//
// Range: 0 < ID < OD, E above zero, ν from 0 to 0.5. They aren't checked here,
// Validate does; without a wall it is infinite or NaN.
//
// Source: Timoshenko, Strength of Materials II, art. 40; Lamé 1852.
func (t Tube) BoreCompliance(ends Ends) unit.Compressibility {
	if t.Rigid {
		return 0
	}
	a, b := sq(t.ID), sq(t.OD)
	E, ν := float64(t.Young), t.Poisson
	s := 2 * a / (b - a)
	σz := axial(ends, ν, s)
	εθ := ((a+b)/(b-a) + ν - ν*σz) / E
	εz := (σz - ν*s) / E
	return unit.Compressibility(2*εθ + εz)
}

// OutsideCompliance returns the relative shrinkage of the area that the pipe
// fills, πro², per pressure around it, -2 εθ, with fixed ends or open ones,
//
//	-εθ = [(a+b)/(b-a) - ν (1 + σz)]/E,  σz = 2 ν b/(b-a) (fixed), 0 (open), b/(b-a) (closed)
//
// Range: as BoreCompliance.
//
// Source: as BoreCompliance.
func (t Tube) OutsideCompliance(ends Ends) unit.Compressibility {
	if t.Rigid {
		return 0
	}
	a, b := sq(t.ID), sq(t.OD)
	σz := axial(ends, t.Poisson, 2*b/(b-a))
	εθ := ((a+b)/(b-a) - t.Poisson*(1+σz)) / float64(t.Young)
	return unit.Compressibility(2 * εθ)
}

// axial is the axial stress per pressure, where s is the sum of the other two.
func axial(ends Ends, ν, s float64) float64 {
	switch ends {
	case EndsOpen:
		return 0
	case EndsClosed:
		return s / 2
	default:
		return ν * s
	}
}

// heating is the relative growth of areas, and of length, per temperature: a
// pipe held at its ends widens the more, by Poisson's ratio.
func (t Tube) heating(ends Ends) (area, length float64) {
	if t.Rigid {
		return 0, 0
	}
	α := float64(t.Expansion)
	if ends == EndsFixed {
		return 2 * (1 + t.Poisson) * α, 0
	}
	return 2 * α, α
}

// ThinCompliance returns D/(tE), the compliance of a thin tube's bore, from D/t.
//
// Range: D/t and E above zero, not checked; infinite where E is zero. It leaves
// Poisson's ratio out, so that even for the thinnest wall of steel it is 10 %
// more than BoreCompliance with fixed ends and 18 % more with open ones.
//
// Source: hoop strain of a thin tube; the form of API Std 521 for a trapped
// liquid.
func ThinCompliance(diameterOverWall float64, young unit.Pressure) unit.Compressibility {
	return unit.Compressibility(diameterOverWall / float64(young))
}

func sq(l unit.Length) float64 { return float64(l) * float64(l) }

// Validate reports everything that is wrong with t.
func (t Tube) Validate() error {
	f := fault.In("confined")
	f.Add(fault.Between("OD", t.OD, 0.1*unit.Millimetre, 10*unit.Metre))
	f.Add(fault.AboveTo("ID", t.ID, 0, t.OD*(1-1e-6)))
	if t.Rigid {
		return f.Err()
	}
	f.Add(fault.Between("Young", t.Young, 1*unit.Megapascal, 1e7*unit.Megapascal))
	f.Add(fault.Between("Poisson", t.Poisson, 0, 0.5))
	f.Add(fault.Between("Expansion", t.Expansion, 0, 1e-3*unit.PerKelvin))
	return f.Err()
}

// Space is the bore of a pipe, or the annulus between two.
type Space struct {
	Outer Tube `json:"outer"` // the pipe whose bore it is, or the casing outside
	// Inner is the pipe within; nil for a bore. An annulus has fixed ends:
	// two pipes of different strain have no common length otherwise.
	Inner *Tube `json:"inner"`
	Ends  Ends  `json:"ends"`
}

// Compliance returns the relative growth of the space per pressure in it,
//
//	bore      c
//	annulus   (Ao co + Ai ci)/(Ao - Ai)
//
// with the bore's compliance co over its area Ao and the inner pipe's
// OutsideCompliance ci over its area Ai. Pressures in the inner pipe and
// outside the outer one stay what they are.
//
// Range: as BoreCompliance, and an inner pipe smaller than the bore; Validate
// checks that, here it is infinite or NaN where the two touch.
//
// Source: the areas' growths added up; OutsideCompliance.
func (s Space) Compliance() unit.Compressibility {
	if s.Inner == nil {
		return s.Outer.BoreCompliance(s.Ends)
	}
	a, b := sq(s.Outer.ID), sq(s.Inner.OD)
	return unit.Compressibility((a*float64(s.Outer.BoreCompliance(EndsFixed)) + b*float64(s.Inner.OutsideCompliance(EndsFixed))) / (a - b))
}

// Expansion returns the relative growth of the space as its walls are heated,
// each by its own difference (inner counts only in an annulus),
//
//	bore      3 α ΔT with free ends, 2 (1+ν) α ΔT with fixed ones
//	annulus   [Ao 2(1+νo) αo ΔTo - Ai 2(1+νi) αi ΔTi]/(Ao - Ai)
//
// Range: any differences; the pipes as for Compliance.
//
// Source: thermal strain of the walls.
func (s Space) Expansion(outer, inner unit.TemperatureDifference) float64 {
	if s.Inner == nil {
		area, length := s.Outer.heating(s.Ends)
		return (area + length) * float64(outer)
	}
	a, b := sq(s.Outer.ID), sq(s.Inner.OD)
	o, _ := s.Outer.heating(EndsFixed)
	i, _ := s.Inner.heating(EndsFixed)
	return (a*o*float64(outer) - b*i*float64(inner)) / (a - b)
}

// Area returns the cross-section of the space.
//
//	A = π/4·(Do² − Di²)
//
// Range: any sizes; negative where the inner pipe is the wider, which Validate
// refuses.
//
// Source: geometry.
func (s Space) Area() unit.Area {
	a := sq(s.Outer.ID)
	if s.Inner != nil {
		a -= sq(s.Inner.OD)
	}
	return unit.Area(math.Pi / 4 * a)
}

// Validate reports everything that is wrong with s.
func (s Space) Validate() error {
	f := fault.In("confined")
	f.At("Outer", s.Outer.Validate())
	if s.Inner != nil {
		f.At("Inner", s.Inner.Validate())
		if !(s.Inner.OD < s.Outer.ID*(1-1e-6)) {
			f.New("Inner.OD", "is %v; must be below the bore of the outer pipe, %v", s.Inner.OD, s.Outer.ID)
		}
	}
	if s.Ends < EndsFixed || s.Ends > EndsClosed {
		f.New("Ends", "is %d; must be fixed, open or closed", int(s.Ends))
	}
	return f.Err()
}
