package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// standardGravity is exact by definition (3rd CGPM, 1901), in m/s².
const standardGravity = 9.80665

// PumpedFluid is a fluid with what friction and columns need of it, at the
// conditions in the well.
type PumpedFluid struct {
	Name     string       `json:"name"`
	Density  unit.Density `json:"density"`
	Rheology Rheology     `json:"rheology"`
}

// Validate reports everything that is wrong with l.
func (l PumpedFluid) Validate() error {
	f := fault.In("flow")
	f.Add(fault.Between("Density", l.Density, leastDensity, mostDensity))
	f.At("Rheology", l.Rheology.Validate())
	return f.Err()
}

// ConduitSection is a stretch of pipe or annulus of one size.
type ConduitSection struct {
	Name      string      `json:"name"`
	Conduit   Conduit     `json:"conduit"`
	Length    unit.Length `json:"length"`     // along the hole
	BottomTVD unit.Length `json:"bottom_tvd"` // true vertical depth of the lower end
	Minor     float64     `json:"minor"`      // sum of loss coefficients on the section's velocity: joints, tools
}

// Well is the way down the pipe and up the annulus, or round the other way.
// Both lists begin at surface, at vertical depth zero, and end at one depth,
// where the fluid goes round.
type Well struct {
	Pipe    []ConduitSection `json:"pipe"`
	Annulus []ConduitSection `json:"annulus"`
	// Exit is what the fluid goes through at the end of the pipe: nozzles,
	// circulating ports. A zero count is an open end.
	Exit Orifices `json:"exit"`
}

// mostSections bounds the work of one run.
const mostSections = 500

func checkSections(f *fault.Faults, name string, sections []ConduitSection) {
	if len(sections) == 0 || len(sections) > mostSections {
		f.New(name, "has %d sections; must have from 1 to %d", len(sections), mostSections)
	}
	top := unit.Length(0)
	for i, s := range sections {
		at := fault.Index(name, i)
		f.At(at+".Conduit", s.Conduit.Validate())
		f.Add(fault.AboveTo(at+".Length", s.Length, 0, 20*unit.Kilometre))
		f.Add(fault.Between(at+".BottomTVD", s.BottomTVD, 0, 15*unit.Kilometre))
		f.Add(fault.Between(at+".Minor", s.Minor, 0, 1e6))
		// A survey's rounding may put a vertical section a hair over its length.
		if drop := s.BottomTVD - top; math.Abs(float64(drop)) > float64(s.Length)*(1+1e-6)+1e-6 {
			f.New(at+".BottomTVD", "is %s, %s below the top of the section; must be at most its Length, %s, below", s.BottomTVD.Rounded(6), drop.Rounded(6), s.Length.Rounded(6))
		}
		top = s.BottomTVD
	}
}

// Validate reports everything that is wrong with w.
func (w Well) Validate() error {
	f := fault.In("flow")
	checkSections(&f, "Pipe", w.Pipe)
	checkSections(&f, "Annulus", w.Annulus)
	if len(w.Pipe) > 0 && len(w.Annulus) > 0 {
		a, b := w.Pipe[len(w.Pipe)-1].BottomTVD, w.Annulus[len(w.Annulus)-1].BottomTVD
		if !(math.Abs(float64(a-b)) <= 1e-3) {
			f.New("Annulus", "ends at %[2]s vertical depth; must end with Pipe, at %[1]s", a.Rounded(9), b.Rounded(9))
		}
	}
	f.At("Exit", w.Exit.Validate())
	return f.Err()
}

// Validate reports everything that is wrong with o.
func (o Orifices) Validate() error {
	f := fault.In("flow")
	if o == (Orifices{}) {
		return nil
	}
	f.Add(fault.Whole("Count", o.Count, 1, 10_000))
	f.Add(fault.Between("Diameter", o.Diameter, 0.1*unit.Millimetre, 1*unit.Metre))
	f.Add(fault.Between("Discharge", o.Discharge, 0.05, 1.5))
	return f.Err()
}

// PipeVolume returns the volume of the pipe side.
func (w Well) PipeVolume() unit.Volume { return volume(w.Pipe) }

// AnnulusVolume returns the volume of the annulus side.
func (w Well) AnnulusVolume() unit.Volume { return volume(w.Annulus) }

// depth is the true vertical depth where the fluid goes round.
func (w Well) depth() unit.Length { return w.Annulus[len(w.Annulus)-1].BottomTVD }

func volume(sections []ConduitSection) unit.Volume {
	var v unit.Volume
	for _, s := range sections {
		v += s.Conduit.Volume(s.Length)
	}
	return v
}

// EquivalentDensity returns the density whose column of that vertical depth
// makes the pressure, p/(g z). At no depth there is none: NaN or infinite.
//
// Source: hydrostatics.
func EquivalentDensity(p unit.Pressure, depth unit.Length) unit.Density {
	return unit.Density(float64(p) / (standardGravity * float64(depth)))
}

// GelPressure returns the pressure that breaks a gel of strength τg in a length
// of conduit, 4 τg L/(D - d), for both walls at once.
//
// Range: d below D, not checked: infinite without a gap.
//
// Source: Bourgoyne et al., Applied Drilling Engineering (1986), Eqs. 4.95-4.97
// (equation numbers from memory); a balance of forces.
func GelPressure(c Conduit, gel unit.Pressure, length unit.Length) unit.Pressure {
	return unit.Pressure(4 * float64(gel) * float64(length) / float64(c.HydraulicDiameter()))
}

// Side is the pipe's bore or the annulus around it.
type Side int

// The sides.
const (
	PipeSide Side = iota
	AnnulusSide
)

func (s Side) String() string {
	if s == AnnulusSide {
		return "annulus"
	}
	return "pipe"
}

// MarshalText writes the side's name.
func (s Side) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads a side's name.
func (s *Side) UnmarshalText(text []byte) error {
	for _, side := range [...]Side{PipeSide, AnnulusSide} {
		if side.String() == string(text) {
			*s = side
			return nil
		}
	}
	return fault.NewIn("flow", "", "side is %q; must be pipe or annulus", text)
}
