package sleeve

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/controlline"
)

// Sleeve is one sliding sleeve.
type Sleeve struct {
	Name  string
	Depth unit.Length // true vertical, under the panel

	OpenArea, CloseArea unit.Area // of the piston, on the open line's and the close line's side
	Stroke              unit.Length

	Friction        unit.Band[unit.Force] // to move it, with no differential across the sleeve
	Across          unit.Band[unit.Pressure]
	PerDifferential unit.Area // friction added per differential across the sleeve

	Inside, Outside string // the compartments it joins when open
}

// System is the sleeves of a well with their lines.
type System struct {
	Sleeves   []Sleeve
	OpenLines []controlline.Line // one for each sleeve, in the same order
	CloseLine controlline.Line   // common to all
	Liquid    controlline.Liquid // in all lines
}

// MaxSleeves is the most sleeves in a system.
const MaxSleeves = 10

// Position is where a sleeve is.
type Position uint8

// Positions.
const (
	Closed Position = iota
	Open
	Unknown // may be open, closed, or between
)

var positions = [...]string{"closed", "open", "unknown"}

// String returns "closed", "open" or "unknown".
func (p Position) String() string {
	if int(p) < len(positions) {
		return positions[p]
	}
	return fmt.Sprintf("position %d", uint8(p))
}

// MarshalText writes a position as String does.
func (p Position) MarshalText() ([]byte, error) {
	if int(p) >= len(positions) {
		return nil, fmt.Errorf("sleeve: no position %d; there are %q", uint8(p), positions)
	}
	return []byte(positions[p]), nil
}

// UnmarshalText reads a position as String writes it.
func (p *Position) UnmarshalText(text []byte) error {
	for i, s := range positions {
		if s == string(text) {
			*p = Position(i)
			return nil
		}
	}
	return fmt.Errorf("sleeve: cannot read %q as a position; write one of %q", text, positions)
}

// Mode is what the panel does with a line.
type Mode uint8

// Modes.
const (
	Vented    Mode = iota // open to the tank
	Pressured             // connected to the pump, which keeps its pressure
	Blocked               // shut in: what is in the line stays
)

var modes = [...]string{"vented", "pressured", "blocked"}

// String returns "vented", "pressured" or "blocked".
func (m Mode) String() string {
	if int(m) < len(modes) {
		return modes[m]
	}
	return fmt.Sprintf("mode %d", uint8(m))
}

// Setting is one line at the panel.
type Setting struct {
	Mode     Mode
	Pressure unit.Pressure // at the panel: of the pump, or shut in; vented lines have none
}

// Panel is the setting of every line. The zero Panel has all lines vented; Open
// may be shorter than the sleeves, the rest is vented.
type Panel struct {
	Close Setting
	Open  []Setting
}

func (p Panel) open(i int) Setting {
	if i < len(p.Open) {
		return p.Open[i]
	}
	return Setting{}
}

const (
	minArea     = 1e-9 * unit.SquareMetre // none at all
	maxArea     = 1 * unit.SquareMetre
	maxStroke   = 100 * unit.Metre
	maxPressure = 1000 * unit.Megapascal
	maxForce    = 1e9 * unit.Newton
)

// Check reports everything that is wrong with a system.
func (s System) Check() error {
	var errs []error
	add := func(format string, args ...any) { errs = append(errs, fmt.Errorf("sleeve: "+format, args...)) }
	if n := len(s.Sleeves); n < 1 || n > MaxSleeves {
		add("there are %d sleeves; there must be 1 to %d", n, MaxSleeves)
	}
	if len(s.OpenLines) != len(s.Sleeves) {
		add("there are %d open lines for %d sleeves; each has one", len(s.OpenLines), len(s.Sleeves))
	}
	if err := errors.Join(s.CloseLine.Check(), s.Liquid.Check()); err != nil {
		add("close line and liquid: %w", err)
	}
	names := map[string]bool{}
	for i, v := range s.Sleeves {
		if names[v.Name] {
			add("sleeve %d is called %q like another; names must differ", i, v.Name)
		}
		names[v.Name] = true
		if err := v.check(); err != nil {
			errs = append(errs, fmt.Errorf("sleeve: %q: %w", v.Name, err))
		}
		if !(v.Depth <= s.CloseLine.Depth) {
			add("%q is at %v, under the end of the close line at %v", v.Name, v.Depth, s.CloseLine.Depth)
		}
		if i >= len(s.OpenLines) {
			continue
		}
		if err := s.OpenLines[i].Check(); err != nil {
			add("open line of %q: %w", v.Name, err)
		}
		if s.OpenLines[i].Depth != v.Depth {
			add("open line of %q ends at %v; the sleeve is at %v", v.Name, s.OpenLines[i].Depth, v.Depth)
		}
	}
	return errors.Join(errs...)
}

func (v Sleeve) check() error {
	var errs []error
	add := func(format string, args ...any) { errs = append(errs, fmt.Errorf(format, args...)) }
	if !(v.Depth >= 0) || math.IsInf(float64(v.Depth), 0) {
		add("depth is %v; it must be zero or more, and finite", v.Depth)
	}
	if !(v.OpenArea > minArea && v.OpenArea <= maxArea) {
		add("open area is %v; it must be above %v and at most %v", v.OpenArea, minArea, maxArea)
	}
	if !(v.CloseArea > minArea && v.CloseArea <= maxArea) {
		add("close area is %v; it must be above %v and at most %v", v.CloseArea, minArea, maxArea)
	}
	if !(v.Stroke > 0 && v.Stroke <= maxStroke) {
		add("stroke is %v; it must be above zero and at most %v", v.Stroke, maxStroke)
	}
	if err := v.Friction.Check(); err != nil {
		add("friction: %w", err)
	} else if !(v.Friction.Least > 0 && v.Friction.Greatest <= maxForce) {
		add("friction is %v; it must be above zero and at most %v", v.Friction, maxForce)
	}
	if err := v.Across.Check(); err != nil {
		add("differential across: %w", err)
	} else if v.Across.Least < -maxPressure || v.Across.Greatest > maxPressure {
		add("differential across is %v; it must be within ±%v", v.Across, maxPressure)
	}
	if !(v.PerDifferential >= 0 && v.PerDifferential <= maxArea) {
		add("friction per differential is %v; it must be zero to %v", v.PerDifferential, maxArea)
	}
	return errors.Join(errs...)
}

func (s System) checkPanel(p Panel) error {
	var errs []error
	one := func(name string, t Setting) {
		if int(t.Mode) >= len(modes) {
			errs = append(errs, fmt.Errorf("sleeve: %s: no mode %d; there are %q", name, t.Mode, modes))
		}
		if !(t.Pressure >= 0 && t.Pressure <= maxPressure) {
			errs = append(errs, fmt.Errorf("sleeve: %s: pressure is %v; it must be zero to %v", name, t.Pressure, maxPressure))
		}
	}
	one("close line", p.Close)
	if len(p.Open) > len(s.Sleeves) {
		errs = append(errs, fmt.Errorf("sleeve: %d open lines are set for %d sleeves", len(p.Open), len(s.Sleeves)))
		return errors.Join(errs...)
	}
	for i, t := range p.Open {
		one("open line of "+s.Sleeves[i].Name, t)
	}
	return errors.Join(errs...)
}

func (s System) checkPositions(p []Position) error {
	if len(p) != len(s.Sleeves) {
		return fmt.Errorf("sleeve: %d positions are given for %d sleeves", len(p), len(s.Sleeves))
	}
	for i, q := range p {
		if int(q) >= len(positions) {
			return fmt.Errorf("sleeve: %q: no position %d; there are %q", s.Sleeves[i].Name, q, positions)
		}
	}
	return nil
}
