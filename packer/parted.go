package packer

import (
	"fmt"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// Parted is the moment after a mandrel has parted: tubing and annulus are joined
// at the joint, and what is under it may be open.
type Parted struct {
	Depth  unit.Length // true vertical, of the joint
	Length unit.Length // measured depth of the joint

	Tubing, Annulus               unit.Density  // of the columns, as one fluid each
	TubingSurface, AnnulusSurface unit.Pressure // held at surface

	TubingArea, AnnulusArea unit.Area // capacity per length

	// Formation is the pressure at the joint that whatever lies under it brings,
	// where the bore under the joint is open to it.
	Open      bool
	Formation unit.Pressure
	Margin    unit.Pressure // that the columns are to have over the formation
}

// Flow is which way fluid goes through the parted mandrel.
type Flow uint8

// Flows.
const (
	Still Flow = iota
	TubingToAnnulus
	AnnulusToTubing
)

// String says which way.
func (f Flow) String() string {
	switch f {
	case Still:
		return "none"
	case TubingToAnnulus:
		return "tubing to annulus"
	case AnnulusToTubing:
		return "annulus to tubing"
	}
	return fmt.Sprintf("flow %d", uint8(f))
}

// MarshalText writes the flow in words.
func (f Flow) MarshalText() ([]byte, error) {
	if f > AnnulusToTubing {
		return nil, fmt.Errorf("packer: no flow %d", uint8(f))
	}
	return []byte(f.String()), nil
}

// Aftermath is what a parted mandrel leaves to do.
type Aftermath struct {
	Inside, Outside unit.Pressure // at the joint, just before
	Differential    unit.Pressure // inside minus outside
	Flow            Flow

	// Hold is the pressure to add on the lighter side at surface that stops the
	// flow: annulus for flow out of the tubing, tubing for the other way.
	Hold unit.Pressure

	// Fall is how far the heavier column falls if both sides are open at surface,
	// measured vertically, and Spilled what the lighter side gives back at
	// surface meanwhile. Only with no pressure held.
	Fall    unit.Length
	Spilled unit.Volume

	// Fill is what to pump to have the heavier fluid on both sides to the joint:
	// into the lighter side's volume.
	Fill   unit.Volume
	Bottom unit.Volume // whole circulation: string and annulus down to the joint

	// Overbalance is the lighter column at the joint over the formation, with
	// nothing held at surface; negative lets the well flow. Kill is the density
	// of one fluid on both sides that has the margin over it. Both are zero where
	// the bore under the joint is closed.
	Overbalance unit.Pressure
	Kill        unit.Density
}

// Aftermath returns what happens when tubing and annulus are joined, and what to
// pump.
//
//	pi = ρi g H + pi(surface)    po = ρo g H + po(surface)
//	hold = |pi - po|
//	fall:  ρh (H - x) = ρh x Ah/Al + ρl (H - x Ah/Al)
//	       x = (ρh - ρl) H / (ρh + (ρh - ρl) Ah/Al)
//	kill = (formation + margin) / (g H)
//
// h is the heavier column, l the lighter, which stays full and spills at
// surface; A their areas, H the true vertical depth. The area of each side is
// taken as even from surface to joint, on a straight hole of one inclination.
//
// Errors name every field out of range. Source: hydrostatics of communicating
// columns.
func (p Parted) Aftermath() (Aftermath, error) {
	if err := p.Validate(); err != nil {
		return Aftermath{}, err
	}
	a := Aftermath{
		Inside:  hydrostatics.Pressure(p.Tubing, p.Depth) + p.TubingSurface,
		Outside: hydrostatics.Pressure(p.Annulus, p.Depth) + p.AnnulusSurface,
	}
	a.Differential = a.Inside - a.Outside
	a.Hold = unit.Pressure(math.Abs(float64(a.Differential)))
	switch {
	case a.Differential > 0:
		a.Flow = TubingToAnnulus
	case a.Differential < 0:
		a.Flow = AnnulusToTubing
	}
	ρh, ρl, Ah, Al := float64(p.Tubing), float64(p.Annulus), float64(p.TubingArea), float64(p.AnnulusArea)
	if ρh < ρl {
		ρh, ρl, Ah, Al = ρl, ρh, Al, Ah
	}
	H, L := float64(p.Depth), float64(p.Length)
	if p.TubingSurface == 0 && p.AnnulusSurface == 0 && ρh > ρl {
		x := (ρh - ρl) * H / (ρh + (ρh-ρl)*Ah/Al)
		a.Fall, a.Spilled = unit.Length(x), unit.Volume(x*L/H*Ah)
	}
	if ρh > ρl {
		a.Fill = unit.Volume(Al * L)
	}
	a.Bottom = unit.Volume((Ah + Al) * L)
	if p.Open {
		a.Overbalance = hydrostatics.Pressure(unit.Density(ρl), p.Depth) - p.Formation
		a.Kill = hydrostatics.EquivalentDensity(p.Formation+p.Margin, p.Depth)
	}
	return a, finiteResult("state after parting", float64(a.Differential), float64(a.Spilled), float64(a.Bottom), float64(a.Kill))
}

// Validate reports everything that is wrong with p.
func (p Parted) Validate() error {
	var f faults
	positive(&f, "Parted.Depth", p.Depth)
	if !finite(p.Length) || p.Length < p.Depth {
		f.add("Parted.Length = %v: want no less than the true vertical depth, %v", p.Length, p.Depth)
	}
	notNegative(&f, "Parted.Tubing", p.Tubing)
	notNegative(&f, "Parted.Annulus", p.Annulus)
	notNegative(&f, "Parted.TubingSurface", p.TubingSurface)
	notNegative(&f, "Parted.AnnulusSurface", p.AnnulusSurface)
	positive(&f, "Parted.TubingArea", p.TubingArea)
	positive(&f, "Parted.AnnulusArea", p.AnnulusArea)
	notNegative(&f, "Parted.Formation", p.Formation)
	notNegative(&f, "Parted.Margin", p.Margin)
	if !p.Open && (p.Formation != 0 || p.Margin != 0) {
		f.add("Parted.Formation = %v and Margin = %v: want 0 where Open is not set", p.Formation, p.Margin)
	}
	return f.err()
}
