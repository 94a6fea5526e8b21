// Package sketch draws small pictures as SVG text, with nothing but the standard
// library: curves, bands on one scale, and columns of fluid beside each other.
//
// A picture brings its own paper and inks, for light, dark and print, so that it
// reads the same inside a page, as a file, and in a notebook. Lines differ by
// dashes as well as by ink. It is drawn for a width of 480 px and scales; what is
// 13 px high there can still be read on a phone. A value that isn't finite is an
// error. Everything is safe for concurrent use.
package sketch

import (
	"fmt"
	"html"
	"math"
	"strings"
)

// The frame that every picture has, in px of its own.
const (
	wide     = 480.0
	letter   = 7.2  // mean width of a letter, on the generous side
	row      = 18.0 // height of a line of text
	baseline = 4.5  // from the middle of a line of text down to its foot
)

// style holds the inks. They are named here once, and pictures use the classes.
const style = `<style>` +
	`.sketch{--paper:#fdfcf9;--ink:#23302b;--faint:#d9dcd3;--i0:#00667a;--i1:#b0480e;--i2:#4b6f14;--i3:#7d3a83;font:13px system-ui,sans-serif;max-width:100%;height:auto}` +
	`@media screen and (prefers-color-scheme:dark){.sketch{--paper:#1a211e;--ink:#dfe5de;--faint:#3a443f;--i0:#5cc3d6;--i1:#f0a266;--i2:#a9cf6b;--i3:#d79bdc}}` +
	`.sketch text{fill:var(--ink);paint-order:stroke;stroke:var(--paper);stroke-width:3px;stroke-linejoin:round}.sketch .paper{fill:var(--paper)}.sketch .grid{stroke:var(--faint)}.sketch .axis{stroke:var(--ink);fill:none}` +
	`.sketch .curve{fill:none;stroke-width:2}.sketch .s0{stroke:var(--i0)}.sketch .s1{stroke:var(--i1)}.sketch .s2{stroke:var(--i2)}.sketch .s3{stroke:var(--i3)}` +
	`.sketch .f0{fill:var(--i0)}.sketch .f1{fill:var(--i1)}.sketch .f2{fill:var(--i2)}.sketch .f3{fill:var(--i3)}.sketch .wash{fill-opacity:.22}` +
	`</style>`

// dashes tell curves apart where ink doesn't.
var dashes = [...]string{"", "7 3", "2 3", "9 3 2 3"}

// canvas collects the parts of a picture.
type canvas struct {
	strings.Builder
	high float64
}

func (c *canvas) add(format string, args ...any) { fmt.Fprintf(c, format+"\n", args...) }

func (c *canvas) line(x1, y1, x2, y2 float64, class string) {
	c.add(`<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" class="%s"/>`, x1, y1, x2, y2, class)
}

func (c *canvas) box(x, y, w, h float64, class string) {
	c.add(`<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" class="%s"/>`, x, y, w, h, class)
}

func (c *canvas) text(x, y float64, anchor, s string) {
	c.add(`<text x="%.1f" y="%.1f" text-anchor="%s">%s</text>`, x, y+baseline, anchor, html.EscapeString(s))
}

// dot is a mark on a point.
func (c *canvas) dot(x, y float64, ink int) {
	c.add(`<circle cx="%.1f" cy="%.1f" r="4" class="f%d"/>`, x, y, ink%len(dashes))
}

// svg closes the picture. Title is for those who don't see it.
func (c *canvas) svg(title string) string {
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" class="sketch" width="%g" height="%g" viewBox="0 0 %g %g" role="img" aria-label="%s">`+"\n%s\n"+
		`<rect width="%g" height="%g" rx="4" class="paper"/>`+"\n%s</svg>\n",
		wide, c.high, wide, c.high, html.EscapeString(title), style, wide, c.high, c.String())
}

// legend names curves below a picture, from y down, and returns where it ends.
func (c *canvas) legend(names []string, y float64, sample func(i int, x, y float64)) float64 {
	const left, room = 14.0, 30.0
	x, began := left, false
	for i, name := range names {
		if name == "" {
			continue
		}
		need := room + 6 + letter*float64(len([]rune(name))) + 14
		if began && x+need > wide {
			x, y = left, y+row
		}
		sample(i, x, y)
		c.text(x+room+6, y, "start", name)
		x, began = x+need, true
	}
	if !began {
		return y
	}
	return y + row
}

// finite says which of the named values is not a number that can be drawn.
func finite(what string, values ...float64) error {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("sketch: %s is %v; must be finite", what, v)
		}
	}
	return nil
}
