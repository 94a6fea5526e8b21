package sketch

import (
	"errors"
	"fmt"
)

// Layer is a fluid, or a length of pipe, between two depths. Ink chooses its
// colour.
type Layer struct {
	Name        string
	Top, Bottom float64
	Ink         int
}

// Stack is what stands between surface and bottom in one place, from the top down.
type Stack struct {
	Name   string
	Layers []Layer
}

// Stacks are columns beside each other on one scale of depth.
type Stacks struct {
	Title  string // in words, for those who don't see the picture
	Y      Axis   // depth, always downwards
	Stacks []Stack
	Depths []Mark // depths named across all stacks; X doesn't matter
}

// SVG draws the stacks. Its errors name what can't be drawn.
func (s Stacks) SVG() (string, error) {
	var errs []error
	values := []float64{0}
	for _, k := range s.Stacks {
		for _, l := range k.Layers {
			err := finite(fmt.Sprintf("layer %s of %s", l.Name, k.Name), l.Top, l.Bottom)
			if err == nil && l.Top > l.Bottom {
				err = fmt.Errorf("sketch: layer %s of %s goes from %g to %g; must end below its beginning", l.Name, k.Name, l.Top, l.Bottom)
			}
			errs = append(errs, err)
			values = append(values, l.Top, l.Bottom)
		}
	}
	for _, m := range s.Depths {
		errs = append(errs, finite("depth "+m.Name, m.Y))
		values = append(values, m.Y)
	}
	if err := errors.Join(errs...); err != nil {
		return "", err
	}
	const top, left, right, foot, gap = 54.0, 66.0, 14.0, 330.0, 14.0
	y := s.Y.scale(values)
	if s.Y.Least == 0 && s.Y.Greatest == 0 {
		y.least = 0
	}
	y.from, y.to = top, foot
	var d canvas
	at, names := y.ticks(6)
	for i, v := range at {
		d.line(left, y.at(v), wide-right, y.at(v), "grid")
		d.text(left-8, y.at(v), "end", names[i])
	}
	d.text(14, 15, "start", s.Y.Name)
	across := (wide - left - right) / float64(max(1, len(s.Stacks)))
	for i, k := range s.Stacks {
		x := left + float64(i)*across + gap/2
		d.text(x+(across-gap)/2, 38, "middle", k.Name)
		for _, l := range k.Layers {
			high := y.at(l.Bottom) - y.at(l.Top)
			d.box(x, y.at(l.Top), across-gap, high, fmt.Sprintf("wash f%d", l.Ink%len(dashes)))
			d.add(`<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" fill="none" class="s%d"/>`, x, y.at(l.Top), across-gap, high, l.Ink%len(dashes))
			if high >= row {
				d.text(x+(across-gap)/2, y.at(l.Top)+high/2, "middle", l.Name)
			}
		}
	}
	for _, m := range s.Depths {
		d.add(`<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" class="axis" stroke-dasharray="4 3"/>`, left, y.at(m.Y), wide-right, y.at(m.Y))
		d.text(wide-right-4, y.at(m.Y)-9, "end", m.Name)
	}
	d.high = foot + 12
	return d.svg(s.Title), nil
}
