package sleeve

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/controlline"
)

// Sleeve is one sliding sleeve.
type Sleeve struct {
	Name string      `json:"name"`
	TVD  unit.Length `json:"tvd"` // true vertical, under the panel

	OpenArea  unit.Area   `json:"open_area"` // of the piston, on the open line's and the close line's side
	CloseArea unit.Area   `json:"close_area"`
	Stroke    unit.Length `json:"stroke"`

	Friction        unit.Band[unit.Force]    `json:"friction"` // to move it, with no differential across the sleeve
	Across          unit.Band[unit.Pressure] `json:"across"`
	PerDifferential unit.Area                `json:"per_differential"` // friction added per differential across the sleeve

	Inside  string `json:"inside"` // the compartments it joins when open
	Outside string `json:"outside"`
}

// System is the sleeves of a well with their lines.
type System struct {
	Sleeves   []Sleeve              `json:"sleeves"`
	OpenLines []controlline.Line    `json:"open_lines"` // one for each sleeve, in the same order
	CloseLine controlline.Line      `json:"close_line"` // common to all
	Liquid    controlline.LineFluid `json:"liquid"`     // in all lines
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
		return nil, fault.NewIn(scope, "", "position is %d; must be one of %q", uint8(p), positions)
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
	return fault.NewIn(scope, "", "position is %q; must be one of %q", text, positions)
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
	Mode     Mode          `json:"mode"`
	Pressure unit.Pressure `json:"pressure"` // at the panel: of the pump, or shut in; vented lines have none
}

// Panel is the setting of every line. The zero Panel has all lines vented; Open
// may be shorter than the sleeves, the rest is vented.
type Panel struct {
	Close Setting   `json:"close"`
	Open  []Setting `json:"open"`
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

// Validate reports everything that is wrong with a system.
func (s System) Validate() error {
	f := fault.In(scope)
	f.At("Sleeves", fault.Whole("", len(s.Sleeves), 1, MaxSleeves))
	if len(s.OpenLines) != len(s.Sleeves) {
		f.New("OpenLines", "has %d lines for %d sleeves; must have one for each", len(s.OpenLines), len(s.Sleeves))
	}
	f.Add(fault.At("CloseLine", s.CloseLine.Validate()), fault.At("Liquid", s.Liquid.Validate()))
	names := map[string]bool{}
	for i, v := range s.Sleeves {
		if names[v.Name] {
			f.New(fault.Index("Sleeves", i)+".Name", "is %q like another; must differ", v.Name)
		}
		names[v.Name] = true
		f.AtIndex("Sleeves", i, v.Validate())
		if !(v.TVD <= s.CloseLine.TVD) {
			f.New(fault.Index("Sleeves", i)+".Depth", "is %v; must be at most the end of the close line, %v", v.TVD, s.CloseLine.TVD)
		}
		if i >= len(s.OpenLines) {
			continue
		}
		f.AtIndex("OpenLines", i, s.OpenLines[i].Validate())
		if s.OpenLines[i].TVD != v.TVD {
			f.New(fault.Index("OpenLines", i)+".Depth", "is %v; must be its sleeve's, %v", s.OpenLines[i].TVD, v.TVD)
		}
	}
	return f.Err()
}

// Validate reports everything that is wrong with v.
func (v Sleeve) Validate() error {
	f := fault.In(scope)
	f.Add(fault.AtLeast("TVD", v.TVD, 0), fault.AboveTo("OpenArea", v.OpenArea, minArea, maxArea), fault.AboveTo("CloseArea", v.CloseArea, minArea, maxArea),
		fault.AboveTo("Stroke", v.Stroke, 0, maxStroke))
	if err := v.Friction.Validate(); err != nil {
		f.At("Friction", err)
	} else if !(v.Friction.Least > 0 && v.Friction.Greatest <= maxForce) {
		f.New("Friction", "is %v; must be above %v and at most %v", v.Friction, unit.Force(0), maxForce)
	}
	if err := v.Across.Validate(); err != nil {
		f.At("Across", err)
	} else if v.Across.Least < -maxPressure || v.Across.Greatest > maxPressure {
		f.New("Across", "is %v; must be from %v to %v", v.Across, -maxPressure, maxPressure)
	}
	f.Add(fault.Between("PerDifferential", v.PerDifferential, 0, maxArea))
	return f.Err()
}

func (s System) checkPanel(p Panel) error {
	f := fault.In(scope)
	f.At("Close", p.Close.Validate())
	if len(p.Open) > len(s.Sleeves) {
		f.New("Open", "has %d lines for %d sleeves; must have at most one for each", len(p.Open), len(s.Sleeves))
		return f.Err()
	}
	for i, t := range p.Open {
		f.AtIndex("Open", i, t.Validate())
	}
	return f.Err()
}

// Validate reports an unknown mode, or a pressure out of range.
func (t Setting) Validate() error {
	f := fault.In(scope)
	if int(t.Mode) >= len(modes) {
		f.New("Mode", "is %d; must be one of %q", t.Mode, modes)
	}
	f.Add(fault.Between("Pressure", t.Pressure, 0, maxPressure))
	return f.Err()
}

func (s System) checkPositions(p []Position) error {
	f := fault.In(scope)
	if len(p) != len(s.Sleeves) {
		f.New("", "has %d positions for %d sleeves; must have one for each", len(p), len(s.Sleeves))
		return f.Err()
	}
	for i, q := range p {
		if int(q) >= len(positions) {
			f.New(fault.Index("", i), "is %d; must be one of %q", q, positions)
		}
	}
	return f.Err()
}

// scope stands before every fault of this package.
const scope = "sleeve"
