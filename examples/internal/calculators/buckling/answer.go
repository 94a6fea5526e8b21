package buckling

import (
	"fmt"
	"io"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular/movement"
)

func (in input) answer() calculator.Answer {
	c, h := in.c, movement.Helix{Pipe: in.c.Pipe, Hole: in.c.Hole, Compression: in.load}
	lies := c.Under(-in.load)
	a := calculator.Answer{
		Steps: append(c.Steps(), h.Steps()...),
		Draw:  func(w io.Writer) error { return in.picture(w) },
	}
	add := func(name string, v any) { a.Results = append(a.Results, calculator.Result{Name: name, Value: v}) }
	if in.survey != nil {
		add("inclination there", c.Inclination)
		add("build there", c.Build)
		add("turn there", c.Turn)
	}
	add("effective weight", perFoot(c.Weight))
	if in.upright() {
		add("bends from, at its lower end", c.VerticalSinusoidal())
		add("a helix from, at its lower end", c.VerticalHelical())
	} else {
		add("snakes from (sinusoidal)", c.Sinusoidal())
		add("helix possible from", c.HelicalLeast())
		add("helix full from", c.Helical())
		add("helix at the latest from", c.HelicalMost())
	}
	add("at this compression it lies", mode(lies.Mode))
	add("contact with the wall", perFoot(lies.Contact))
	add("shortening by buckling per 1,000 ft", working.In(unit.Length(math.Abs(lies.Strain))*1000*unit.Foot, unit.Inch, "in"))
	add("bending stress, curve of the hole counted", lies.Bending)
	add("as a helix: pitch", h.Pitch())
	add("as a helix: contact", perFoot(h.Contact()))
	add("as a helix: shortening per 1,000 ft", working.In(unit.Length(-h.Strain())*1000*unit.Foot, unit.Inch, "in"))
	add("as a helix: bending stress", h.BendingStress())
	in.limit(add)
	add(fmt.Sprintf("as a helix: longest stiff tool of %v to pass", in.tool), in.passes(h))
	if lies.Mode != movement.Helical {
		a.Notes = append(a.Notes, "at this compression it is no helix yet: the lines of the helix are the worst case")
	}
	if !in.upright() && in.load > c.HelicalLeast() && lies.Mode == movement.Sinusoidal {
		a.Notes = append(a.Notes, "authors differ on where between possible and at the latest the helix comes; how it lies here is Mitchell's answer, the latest")
	}
	if in.upright() && in.load < c.VerticalHelical() {
		a.Notes = append(a.Notes, "so near the onset a vertical string is stiffer than Lubinski's helix without weight, which is what is taken here")
	}
	a.Notes = append(a.Notes, "Loads are effective compressions. The formulas' constants are the literature's, recalled and not read again: see examples/validation.")
	return a
}

// limit adds the compression at which friction locks a long helix up, in a straight
// hole that drops.
func (in input) limit(add func(string, any)) {
	if in.c.Build != 0 || in.c.Turn != 0 || !(math.Cos(float64(in.c.Inclination)) > 1e-9) {
		return
	}
	if f := in.c.FrictionLimit(in.friction); !math.IsInf(float64(f), 0) {
		add("as a helix: locked up by friction from", f)
		add("as a helix: longest stiff tool to pass then", in.passes(movement.Helix{Pipe: in.c.Pipe, Hole: in.c.Hole, Compression: f}))
	}
}

// upright tells whether the hole is vertical and straight, where weight doesn't
// press the pipe to a wall.
func (in input) upright() bool {
	return math.Sin(float64(in.c.Inclination)) == 0 && in.c.Build == 0 && in.c.Turn == 0
}

func mode(m movement.Mode) string {
	switch m {
	case movement.Straight:
		return "straight along the hole"
	case movement.Sinusoidal:
		return "snaking, sinusoidal"
	}
	return "a helix"
}

func (in input) passes(h movement.Helix) any {
	l, limited := h.LongestTool(in.tool)
	switch {
	case !limited:
		return "any length"
	case l == 0:
		return "none: as wide as the bore, or wider"
	}
	return working.In(l, unit.Foot, "ft")
}

func perFoot(w unit.WeightPerLength) working.Value {
	return working.In(w, unit.PoundPerFoot, "lb/ft")
}
