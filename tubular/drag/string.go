package drag

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// Section is a length of one pipe of the string.
type Section struct {
	Pipe   tubular.Pipe
	Length unit.Length
}

// Zone is a length of hole, cased or open.
type Zone struct {
	Bottom   unit.Length // measured depth of its lower end: the shoe, or the end of the hole
	Friction float64     // friction factor of pipe on its wall
	Hole     unit.Length // inside diameter
}

// String is a string in a well with its lower end at Depth. What of the
// sections is longer than that stands above the rotary table.
type String struct {
	Sections        []Section // from the top down
	Depth           unit.Length
	Path            *hydrostatics.Path
	Zones           []Zone // from the top down
	Inside, Outside unit.Density
	Spacing         unit.Length // greatest distance between nodes; zero stands for 10 m
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

func (s String) check() error {
	var faults []error
	fault := func(format string, args ...any) { faults = append(faults, fmt.Errorf("drag: "+format, args...)) }
	if len(s.Sections) == 0 {
		fault("Sections is empty, permitted one section of pipe or more")
	}
	var length unit.Length
	for k, x := range s.Sections {
		if err := x.Pipe.Validate(); err != nil {
			fault("Sections[%d].Pipe: %w", k, err)
		}
		if !(x.Length > 0) || math.IsInf(float64(x.Length), 0) {
			fault("Sections[%d].Length = %v, permitted above 0 ft", k, x.Length)
		}
		length += x.Length
	}
	if !(s.Depth > 0 && s.Depth <= length*(1+1e-12)) { // lengths add up with rounding
		fault("Depth = %v, permitted above 0 ft to the string's length of %v", s.Depth, length)
	}
	if s.Path == nil {
		fault("Path is missing")
	} else if s.Depth > s.Path.TotalDepth() {
		fault("Depth = %v, permitted to the path's end at %v", s.Depth, s.Path.TotalDepth())
	}
	for _, x := range []struct {
		name string
		ρ    unit.Density
	}{{"Inside", s.Inside}, {"Outside", s.Outside}} {
		if !(x.ρ >= 0) || math.IsInf(float64(x.ρ), 0) {
			fault("%s = %v, permitted from 0 lb/gal upwards", x.name, x.ρ)
		}
	}
	faults = append(faults, s.checkZones()...)
	spacing := s.spacing()
	if !(spacing > 0) || s.Depth.In(spacing) > maxNodes {
		fault("Spacing = %v, permitted from %v upwards (%d nodes), or 0 for %v", s.Spacing, s.Depth/maxNodes, maxNodes, defaultSpacing)
	}
	return errors.Join(faults...)
}

func (s String) checkZones() []error {
	var faults []error
	fault := func(format string, args ...any) { faults = append(faults, fmt.Errorf("drag: "+format, args...)) }
	widest := unit.Length(0)
	for _, x := range s.Sections {
		widest = max(widest, x.Pipe.OD)
	}
	var top unit.Length
	for k, z := range s.Zones {
		if !(z.Bottom > top) || math.IsInf(float64(z.Bottom), 0) {
			fault("Zones[%d].Bottom = %v, permitted above %v", k, z.Bottom, top)
		}
		if !(z.Friction >= 0 && z.Friction <= mostFriction) {
			fault("Zones[%d].Friction = %g, permitted from 0 to %g", k, z.Friction, mostFriction)
		}
		if !(z.Hole >= widest) || math.IsInf(float64(z.Hole), 0) {
			fault("Zones[%d].Hole = %v, permitted from the widest pipe's %v upwards", k, z.Hole, widest)
		}
		top = z.Bottom
	}
	if !(top >= s.Depth) {
		fault("Zones end at %v, permitted no less than the string's depth of %v", top, s.Depth)
	}
	return faults
}

func (s String) spacing() unit.Length {
	if s.Spacing == 0 {
		return defaultSpacing
	}
	return s.Spacing
}
