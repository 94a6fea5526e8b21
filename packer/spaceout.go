package packer

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// ErrNoSpaceOut says that no height of the locator keeps the seals engaged and
// the locator off its shoulder in every case.
var ErrNoSpaceOut = errors.New("packer: no space-out satisfies all cases")

// SealPlan is a string of seals that is to be landed in a receptacle.
type SealPlan struct {
	Bore  Receptacle `json:"bore"`
	Seals SealStack  `json:"seals"`
	Cases []Travel   `json:"cases"`

	Engaged   unit.Length `json:"engaged"`   // least length of seal stack in the bore, in any case
	Clearance unit.Length `json:"clearance"` // least height of the locator over its shoulder, in any case
}

// SpaceOut is the range of heights at which the locator may be landed above its
// shoulder.
type SpaceOut struct {
	Least    unit.Length `json:"least"`
	Greatest unit.Length `json:"greatest"`
	// What sets the ends: a case and what happens in it.
	LeastBy    string `json:"least_by"`
	GreatestBy string `json:"greatest_by"`
	Stroke     Stroke `json:"stroke"`
}

// Middle returns the height farthest from both ends.
//
//	(least + greatest)/2
//
// Range: any heights; that least is below greatest isn't checked.
//
// Source: definition.
func (s SpaceOut) Middle() unit.Length { return (s.Least + s.Greatest) / 2 }

// NoSpaceOutError carries the two demands that contradict each other. It is
// ErrNoSpaceOut.
type NoSpaceOutError struct {
	SpaceOut // Least is above Greatest
}

func (e *NoSpaceOutError) Error() string {
	return fmt.Sprintf("%v: the locator must be at least %s up (%s) and at most %s (%s): %s of seal or bore are lacking",
		ErrNoSpaceOut, e.Least.Rounded(4), e.LeastBy, e.Greatest.Rounded(4), e.GreatestBy, (e.Least - e.Greatest).Rounded(4))
}

// Is makes errors.Is(err, ErrNoSpaceOut) true.
func (e *NoSpaceOutError) Is(target error) bool { return target == ErrNoSpaceOut }

// SpaceOut returns the heights of the locator above its shoulder, when landed,
// for which every case keeps the clearance and the engagement.
//
//	h ≥ m + clearance                              locator off its shoulder
//	h ≥ m + S + FirstMD - BottomMD + engaged           seals don't leave the bore below
//	h ≤ m + S + LastMD - TopMD - engaged               seals don't leave it above
//
// for the movement m of every case and for none. S is the measured depth of the
// shoulder. With a set-down on the locator in mind use Engage with a height of
// zero instead.
//
// It returns a *NoSpaceOutError with both demands where they contradict each
// other. Source: geometry.
func (p SealPlan) SpaceOut() (SpaceOut, error) {
	if err := p.Validate(); err != nil {
		return SpaceOut{}, err
	}
	stroke, err := StrokeOf(p.Cases)
	if err != nil {
		return SpaceOut{}, err
	}
	s := SpaceOut{Least: 0, LeastBy: "the shoulder", Greatest: unit.Length(math.Inf(1)), Stroke: stroke}
	for _, c := range append([]Travel{{Case: "as landed"}}, p.Cases...) {
		for _, floor := range [...]struct {
			h  unit.Length
			by string
		}{
			{c.Movement + p.Clearance, c.Case + ", locator off its shoulder"},
			{c.Movement + p.Bore.ShoulderMD + p.Seals.FirstMD - p.Bore.BottomMD + p.Engaged, c.Case + ", seals past the bottom of the bore"},
		} {
			if floor.h > s.Least {
				s.Least, s.LeastBy = floor.h, floor.by
			}
		}
		if h := c.Movement + p.Bore.ShoulderMD + p.Seals.LastMD - p.Bore.TopMD - p.Engaged; h < s.Greatest {
			s.Greatest, s.GreatestBy = h, c.Case+", seals out of the top of the bore"
		}
	}
	if err := finiteResult("space-out", float64(s.Least), float64(s.Greatest), float64(stroke.Total()), float64(s.Middle()), float64(s.Least-s.Greatest)); err != nil {
		return SpaceOut{}, err
	}
	if s.Least > s.Greatest {
		return SpaceOut{}, &NoSpaceOutError{s}
	}
	return s, nil
}
