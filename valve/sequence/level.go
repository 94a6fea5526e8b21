package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// Level is what a trigger feels or waits for: a differential, or the balance of a
// joint of the string. The zero value is a differential of nothing.
type Level struct {
	axial bool
	si    float64 // Pa, or N where axial
}

// PressureLevel is a differential.
func PressureLevel(p unit.Pressure) Level { return Level{false, float64(p)} }

// ForceLevel is the balance of a joint.
func ForceLevel(f unit.Force) Level { return Level{true, float64(f)} }

func level(axial bool, x float64) Level { return Level{axial, x} }

// Axial tells whether the level is a force.
func (l Level) Axial() bool { return l.axial }

// Pressure is the level of a trigger that isn't axial; false where it is a force.
func (l Level) Pressure() (unit.Pressure, bool) { return unit.Pressure(l.si), !l.axial }

// Force is the level of an axial trigger; false where it is a pressure.
func (l Level) Force() (unit.Force, bool) { return unit.Force(l.si), l.axial }

// Share is l as a share of another level.
//
//	l/of
//
// Range: any level, as a share of one that isn't zero: infinite or NaN there.
//
// Source: definition.
func (l Level) Share(of Level) float64 { return l.si / of.si }

// Negative tells whether the level is below nothing.
func (l Level) Negative() bool { return l.si < 0 }

// String writes a level without loss.
func (l Level) String() string {
	if l.axial {
		return unit.Force(l.si).String()
	}
	return unit.Pressure(l.si).String()
}

// Rounded writes a level for people.
func (l Level) Rounded(digits int) string {
	if l.axial {
		return unit.Force(l.si).Rounded(digits)
	}
	return unit.Pressure(l.si).Rounded(digits)
}

// MarshalText writes a level with its unit.
func (l Level) MarshalText() ([]byte, error) {
	if l.axial {
		return unit.Force(l.si).MarshalText()
	}
	return unit.Pressure(l.si).MarshalText()
}

// UnmarshalText reads a pressure or a force.
func (l *Level) UnmarshalText(text []byte) error {
	var p unit.Pressure
	err := p.UnmarshalText(text)
	if err == nil {
		*l = PressureLevel(p)
		return nil
	}
	var f unit.Force
	if f.UnmarshalText(text) == nil {
		*l = ForceLevel(f)
		return nil
	}
	return fmt.Errorf("%w, nor as a force", err)
}

// LevelBand is the band of a threshold.
type LevelBand struct {
	Least    Level `json:"least"`
	Nominal  Level `json:"nominal"`
	Greatest Level `json:"greatest"`
}

// Exact tells whether the band has no width.
func (b LevelBand) Exact() bool { return b.Least == b.Greatest }

// Rounded writes the band for people.
func (b LevelBand) Rounded(digits int) string {
	if b.Exact() {
		return b.Nominal.Rounded(digits)
	}
	return b.Least.Rounded(digits) + " to " + b.Greatest.Rounded(digits)
}
