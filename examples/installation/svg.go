package main

import (
	"fmt"
	"html"
	"strings"
)

// markup is SVG or a style that goes into a page as it is: all text in it is escaped
// where it is written.
type markup string

// canvas is a drawing by hand: its inks are the page's, so that it follows light,
// dark and print.
type canvas struct {
	strings.Builder
	wide, high float64
}

func (c *canvas) add(format string, args ...any) { fmt.Fprintf(c, format+"\n", args...) }

func (c *canvas) line(x1, y1, x2, y2 float64, class string) {
	c.add(`<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" class="%s"/>`, x1, y1, x2, y2, class)
}

func (c *canvas) box(x, y, w, h float64, class string) {
	c.add(`<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" class="%s"/>`, x, y, max(w, 0), max(h, 0), class)
}

func (c *canvas) text(x, y float64, anchor, class, format string, args ...any) {
	c.add(`<text x="%.1f" y="%.1f" text-anchor="%s" class="%s">%s</text>`, x, y, anchor, class, html.EscapeString(fmt.Sprintf(format, args...)))
}

// svg is the drawing; name tells a reader who can't see it what it shows.
func (c *canvas) svg(class, name string) string {
	return fmt.Sprintf(`<svg class="%s" viewBox="0 0 %.0f %.0f" role="img" aria-label="%s">%s%s</svg>`,
		class, c.wide, c.high, html.EscapeString(name), "\n", c.String())
}

// spread moves labels apart so that each has that much room, and keeps them in
// order and between the ends.
func spread(at []float64, room, least, greatest float64) []float64 {
	moved := append([]float64(nil), at...)
	for i := range moved {
		moved[i] = max(moved[i], least+float64(i)*room)
		if i > 0 {
			moved[i] = max(moved[i], moved[i-1]+room)
		}
	}
	for i := len(moved) - 1; i >= 0; i-- {
		moved[i] = min(moved[i], greatest-float64(len(moved)-1-i)*room)
		if i+1 < len(moved) {
			moved[i] = min(moved[i], moved[i+1]-room)
		}
	}
	return moved
}
