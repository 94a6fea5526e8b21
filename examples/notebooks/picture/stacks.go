package picture

import (
	"errors"
	"fmt"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
)

// Layer is a fluid between two depths. Ink chooses its colour: 0 light, 1 dense.
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
	const half = 0.4
	errs := []error{s.Y.fault()}
	p := &chart.Plot{X: chart.Scale{NoGrid: true, Names: []string{}}, Y: chart.Scale{Name: s.Y.Name, Down: true}}
	for i, k := range s.Stacks {
		p.X.Names = append(p.X.Names, k.Name)
		for _, l := range k.Layers {
			if l.Top > l.Bottom {
				errs = append(errs, fmt.Errorf("picture: layer %q of %q goes from %g to %g; must end below its beginning", l.Name, k.Name, l.Top, l.Bottom))
			}
			x, fill := float64(i), [...]string{svg.Pale, svg.Tint}[l.Ink&1]
			p.Area("", fill, svg.Pen{Ink: svg.Ink}, svg.XY{X: x - half, Y: l.Top}, svg.XY{X: x + half, Y: l.Top}, svg.XY{X: x + half, Y: l.Bottom}, svg.XY{X: x - half, Y: l.Bottom})
			p.Words(svg.Lettering{Size: 13, Anchor: "middle"}, svg.XY{X: x, Y: (l.Top + l.Bottom) / 2}, 0, 4, l.Name)
		}
	}
	if err := errors.Join(errs...); err != nil {
		return "", err
	}
	left, right := -0.6, float64(len(s.Stacks))-0.4
	for _, m := range s.Depths {
		p.Line("", svg.Pen{Ink: svg.Ink, Width: 1, Dashes: []float64{4, 3}}, svg.XY{X: left, Y: m.Y}, svg.XY{X: right, Y: m.Y})
		p.Words(svg.Lettering{Size: 13, Anchor: "end", Halo: true}, svg.XY{X: right, Y: m.Y}, -2, 15, m.Name)
	}
	s.Y.end(&p.Y)
	p.X.Least, p.X.Greatest = left, right
	return finished(p, s.Title, 370)
}
