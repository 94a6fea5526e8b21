package chart

import (
	"fmt"
	"io"
	"math"

	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// Stacks draws fluids that stand upon each other, side by side on one depth scale.
type Stacks struct {
	Title  string
	Depth  string // of the scale
	Bottom unit.Length
	Bars   []Bar
}

// Bar is one column of fluids, with what is said under it.
type Bar struct {
	Name  string
	Parts []Filled
	Marks []Mark
}

// Filled is a fluid from one depth to another; the denser, the darker.
type Filled struct {
	Name        string
	Top, Bottom unit.Length
	Density     unit.Density
}

// Mark is a level in a bar, with words.
type Mark struct {
	Name  string
	Depth unit.Length
}

const (
	barHalf  = 0.32 // of the room of a bar
	heaviest = 2200 // kg/m³: drawn darkest
)

// shade is the fill of a fluid: light ones light, no colour that means anything.
func shade(rho unit.Density) string {
	share := math.Max(0, math.Min(1, float64(rho)/heaviest))
	mix := func(light, dark float64) uint8 { return uint8(light + (dark-light)*share) }
	return fmt.Sprintf("#%02x%02x%02x", mix(246, 96), mix(240, 140), mix(222, 160))
}

// WriteSVG draws the picture in the units of s.
func (c Stacks) WriteSVG(w io.Writer, s display.System) error {
	p := &Plot{Title: c.Title, X: Scale{NoGrid: true, Names: []string{}}, Y: Scale{Name: c.Depth + ", " + s.UnitOf(c.Bottom, display.Depth), Down: true}}
	for i, b := range c.Bars {
		p.X.Names = append(p.X.Names, b.Name)
		c.bar(p, s, float64(i), b)
	}
	p.X.Least, p.X.Greatest = -0.6, float64(len(c.Bars))-0.4
	p.Y.Least, p.Y.Greatest = 0, s.In(c.Bottom, display.Depth)
	return p.WriteSVG(w)
}

func (c Stacks) bar(p *Plot, s display.System, x float64, b Bar) {
	outline := svg.Pen{Ink: "#3c3c3c"}
	box := func(top, bottom unit.Length, fill string) {
		p.area(b.Name, fill, outline, svg.XY{X: x - barHalf, Y: s.In(top, display.Depth)}, svg.XY{X: x + barHalf, Y: s.In(bottom, display.Depth)})
	}
	say := func(text string, depth unit.Length) {
		p.Words(svg.Lettering{Ink: "#111111", Size: 13, Anchor: "middle"}, svg.XY{X: x, Y: s.In(depth, display.Depth)}, 0, 4, text)
	}
	box(0, c.Bottom, "#fefefe")
	for _, f := range b.Parts {
		if f.Bottom <= f.Top {
			continue
		}
		box(f.Top, f.Bottom, shade(f.Density))
		if f.Bottom-f.Top > c.Bottom/25 { // room for its name
			say(f.Name, f.Top+(f.Bottom-f.Top)/2)
		}
	}
	for _, m := range b.Marks {
		say(m.Name, m.Depth)
	}
}
