package drag

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// PipeSection is a length of one pipe of the string.
type PipeSection struct {
	Pipe   tubular.Pipe `json:"pipe"`
	Length unit.Length  `json:"length"`
}

// HoleSection is a length of hole, cased or open.
type HoleSection struct {
	BottomMD unit.Length `json:"bottom_md"` // measured depth of its lower end: the shoe, or the end of the hole
	Friction float64     `json:"friction"`  // friction factor of pipe on its wall
	Hole     unit.Length `json:"hole"`      // inside diameter
}

// String is a string in a well with its lower end at BottomMD. What of the
// sections is longer than that stands above the rotary table.
type String struct {
	Sections     []PipeSection      `json:"sections"` // from the top down
	BottomMD     unit.Length        `json:"bottom_md"`
	Path         *hydrostatics.Path `json:"path"`
	HoleSections []HoleSection      `json:"hole_sections"` // from the top down
	Inside       unit.Density       `json:"inside"`
	Outside      unit.Density       `json:"outside"`
	Spacing      unit.Length        `json:"spacing"` // greatest distance between nodes; zero stands for 10 m
}

const (
	defaultSpacing = 10 * unit.Metre
	maxNodes       = 1_000_000
)

// Usual friction factors: common practice, without a source of its own. They
// are matched to hook loads seen on the way in.
const (
	UsualCased = 0.20
	UsualOpen  = 0.30
)

// mostFriction is the greatest friction factor taken for one.
const mostFriction = 1.0

// Validate reports everything that is wrong with s.
func (s String) Validate() error {
	f := fault.In(scope)
	if len(s.Sections) == 0 {
		f.New("Sections", "is empty; must be one section of pipe or more")
	}
	var length unit.Length
	for k, x := range s.Sections {
		f.AtIndex("Sections", k, fault.Join("", fault.At("Pipe", x.Pipe.Validate()), fault.Above("Length", x.Length, 0)))
		length += x.Length
	}
	if !(s.BottomMD > 0 && s.BottomMD <= length*(1+1e-12)) { // lengths add up with rounding
		f.New("BottomMD", "is %v; must be above 0 ft and at most the string's length of %v", s.BottomMD, length)
	}
	if s.Path == nil {
		f.New("Path", "is missing")
	} else if s.BottomMD > s.Path.TotalDepth() {
		f.New("BottomMD", "is %v; must be at most the path's end at %v", s.BottomMD, s.Path.TotalDepth())
	}
	f.Add(fault.AtLeast("Inside", s.Inside, 0), fault.AtLeast("Outside", s.Outside, 0), s.checkZones())
	spacing := s.spacing()
	if !(spacing > 0) || s.BottomMD.In(spacing) > maxNodes {
		f.New("Spacing", "is %v; must be at least %v (%d nodes), or 0 for %v", s.Spacing, s.BottomMD/maxNodes, maxNodes, defaultSpacing)
	}
	return f.Err()
}

func (s String) checkZones() error {
	f := fault.In(scope)
	var top unit.Length
	for k, z := range s.HoleSections {
		widest := s.widest(top, z.BottomMD)
		f.AtIndex("HoleSections", k, fault.Join("", fault.Above("BottomMD", z.BottomMD, top), fault.Between("Friction", z.Friction, 0, mostFriction),
			fault.AtLeast("Hole", z.Hole, widest)))
		top = z.BottomMD
	}
	if !(top >= s.BottomMD) {
		f.New("HoleSections", "end at %v; must reach the string's depth of %v", top, s.BottomMD)
	}
	return f.Err()
}

// widest is the greatest outside diameter between two depths.
func (s String) widest(top, bottom unit.Length) unit.Length {
	most, end := unit.Length(0), s.BottomMD
	for i := len(s.Sections) - 1; i >= 0; i-- {
		begin := end - s.Sections[i].Length
		if begin < bottom && end > top {
			most = max(most, s.Sections[i].Pipe.OD)
		}
		end = begin
	}
	return most
}

func (s String) spacing() unit.Length {
	if s.Spacing == 0 {
		return defaultSpacing
	}
	return s.Spacing
}

// scope stands before every fault of this package.
const scope = "drag"
