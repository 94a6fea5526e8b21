// Package stack reads fluids standing upon each other from a flag, from the top
// down: "8.6 lb/gal to 2000 ft, water to 7000 ft".
package stack

import (
	"errors"
	"fmt"
	"strings"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// Stack is fluids from the top down.
type Stack []Part

// Part is a fluid down to a depth.
type Part struct {
	Name   string // a density, or one of Names
	Fluid  hydrostatics.Fluid
	Bottom unit.Length
}

// UnmarshalText reads parts from the top down, parted by commas.
func (s *Stack) UnmarshalText(text []byte) error {
	var read Stack
	var errs []error
	for part := range strings.SplitSeq(string(text), ",") {
		name, depth, found := strings.Cut(part, " to ")
		if !found {
			errs = append(errs, fmt.Errorf("%q is not FLUID to DEPTH", strings.TrimSpace(part)))
			continue
		}
		p := Part{Name: strings.TrimSpace(name)}
		var err error
		p.Fluid, err = Named(p.Name)
		errs = append(errs, err, p.Bottom.UnmarshalText([]byte(depth)))
		read = append(read, p)
	}
	if err := errors.Join(errs...); err != nil {
		return err
	}
	*s = read
	return nil
}

// MarshalText writes the parts as they are read.
func (s Stack) MarshalText() ([]byte, error) {
	parts := make([]string, len(s))
	for i, p := range s {
		parts[i] = p.Name + " to " + p.Bottom.String()
	}
	return []byte(strings.Join(parts, ", ")), nil
}

// Layers returns the parts as layers of a column that begins at top.
func (s Stack) Layers(top unit.Length) []hydrostatics.Layer {
	layers := make([]hydrostatics.Layer, len(s))
	for i, p := range s {
		layers[i] = hydrostatics.Layer{Fluid: p.Fluid, TopTVD: top, BottomTVD: p.Bottom}
		top = p.Bottom
	}
	return layers
}

// Stretches returns the parts as stretches of a leg, which takes constant
// densities only.
func (s Stack) Stretches() ([]hydrostatics.Stretch, error) {
	stretches := make([]hydrostatics.Stretch, len(s))
	for i, p := range s {
		u, ok := p.Fluid.(hydrostatics.Uniform)
		if ok {
			stretches[i].Density, ok = u.UniformDensity()
		}
		if !ok {
			return nil, fmt.Errorf("%s has no constant density; give the density", p.Name)
		}
		stretches[i].BottomMD = p.Bottom
	}
	return stretches, nil
}

// Bottom is where the last fluid ends.
func (s Stack) Bottom() unit.Length {
	if len(s) == 0 {
		return 0
	}
	return s[len(s)-1].Bottom
}

// Default reads a default that is written in the source; nil if it is wrong,
// which the calculator's golden test shows.
func Default(text string) Stack {
	var s Stack
	if err := s.UnmarshalText([]byte(text)); err != nil {
		return nil
	}
	return s
}
