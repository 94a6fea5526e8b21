// Package svg writes small drawings as SVG: straight lines, areas, circles, paths
// and words, placed in pixels from the top left. Colours are CSS colours in
// attributes, never in styles, so that a page with a strict content security
// policy shows them too. Themed lets them follow the page's own colours.
package svg

import (
	"bytes"
	"fmt"
	"html"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The inks of our drawings. Lines have dashes of their own beside them, for print
// and for most colour-blind eyes.
const (
	Paper = "#ffffff"
	Ink   = "#1d2730"
	Rule  = "#d9dee2"
	Blue  = "#1b4f72"
	Rust  = "#b03a2e"
	Moss  = "#6c7a14"
	Plum  = "#7d3c98"
	Ochre = "#806020"
	Tint  = "#9ab4c6" // fills what something happens in
	Pale  = "#f4f6ee" // fills what is permitted
)

// themed are the inks that follow a page.
var themed = map[string]string{Paper: "--paper", Ink: "--ink", Rule: "--rule", Blue: "--line1", Rust: "--line2", Moss: "--line3",
	Plum: "--line4", Ochre: "--line5", Tint: "--tint", Pale: "--pale"}

// Themed turns the inks of a drawing into those of the page around it, which has
// them as custom properties: --paper, --ink, --rule, --line1 to --line5, --tint and
// --pale. The ink itself stands where the page has none.
func Themed(drawing string) string {
	pairs := make([]string, 0, 2*len(themed))
	for ink, name := range themed {
		pairs = append(pairs, `"`+ink+`"`, fmt.Sprintf(`"var(%s, %s)"`, name, ink))
	}
	return strings.NewReplacer(pairs...).Replace(drawing)
}

// Canvas is a drawing under way.
type Canvas struct {
	Wide, High float64
	Name       string // what it shows, for those who can't see it
	body       bytes.Buffer
}

// Pen is how a line is drawn.
type Pen struct {
	Ink    string
	Width  float64   // 0: 1
	Dashes []float64 // none: solid
}

// Lettering is how words are set.
type Lettering struct {
	Ink    string
	Size   float64 // 0: 12
	Anchor string  // start, middle or end; empty: start
	Turned bool    // read from below
	Bold   bool
	Halo   bool // paper around the letters, over lines
}

// XY is a point, in pixels of the canvas or in the units of a plot.
type XY struct{ X, Y float64 }

// Line draws straight lines through points.
func (c *Canvas) Line(p Pen, points ...XY) {
	c.printf(`<polyline points="%s" fill="none"%s/>`, path(points), p)
}

// Area draws an area with its outline; fill may be empty.
func (c *Canvas) Area(fill string, outline Pen, points ...XY) {
	if fill == "" {
		fill = "none"
	}
	c.printf(`<polygon points="%s" fill="%s"%s/>`, path(points), escaped(fill), outline)
}

// Box draws an area whose sides are level and plumb.
func (c *Canvas) Box(fill string, outline Pen, a, b XY) {
	c.Area(fill, outline, a, XY{b.X, a.Y}, b, XY{a.X, b.Y})
}

// Circle draws a circle; fill may be empty.
func (c *Canvas) Circle(fill string, outline Pen, at XY, radius float64) {
	if fill == "" {
		fill = "none"
	}
	c.printf(`<circle cx="%s" cy="%s" r="%s" fill="%s"%s/>`, number(at.X), number(at.Y), number(radius), escaped(fill), outline)
}

// Words sets a text with its baseline at a point.
func (c *Canvas) Words(l Lettering, at XY, text string) {
	b := &strings.Builder{}
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s" fill="%s"`, number(at.X), number(at.Y), number(l.size()), escaped(or(l.Ink, Ink)))
	if l.Anchor != "" {
		fmt.Fprintf(b, ` text-anchor="%s"`, escaped(l.Anchor))
	}
	if l.Turned {
		fmt.Fprintf(b, ` transform="rotate(-90 %s %s)"`, number(at.X), number(at.Y))
	}
	if l.Bold {
		b.WriteString(` font-weight="600"`)
	}
	if l.Halo {
		fmt.Fprintf(b, ` stroke="%s" stroke-width="3" stroke-linejoin="round" paint-order="stroke"`, Paper)
	}
	c.printf("%s>%s</text>", b, escaped(text))
}

func (l Lettering) size() float64 {
	if l.Size > 0 {
		return l.Size
	}
	return 12
}

// Room is how wide a text is set, about: letters of a sans serif are half as wide
// as they are high, some more, some less.
func (l Lettering) Room(text string) float64 {
	return 0.56 * l.size() * float64(len([]rune(text)))
}

// WriteTo writes the drawing.
func (c *Canvas) WriteTo(w io.Writer) (int64, error) {
	name := ""
	if c.Name != "" {
		name = fmt.Sprintf(` role="img" aria-label="%s"`, escaped(c.Name))
	}
	head := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %[1]s %[2]s" font-family="system-ui, 'Liberation Sans', Arial, sans-serif"%[3]s>`+"\n",
		number(c.Wide), number(c.High), name)
	n, err := io.WriteString(w, head+c.body.String()+"</svg>\n")
	return int64(n), err
}

func (c *Canvas) printf(format string, args ...any) { fmt.Fprintf(&c.body, format+"\n", args...) }

// String writes the pen as attributes.
func (p Pen) String() string {
	if p.Ink == "" {
		return ""
	}
	width := p.Width
	if width == 0 {
		width = 1
	}
	text := fmt.Sprintf(` stroke="%s" stroke-width="%s"`, escaped(p.Ink), number(width))
	if len(p.Dashes) > 0 {
		parts := make([]string, len(p.Dashes))
		for i, d := range p.Dashes {
			parts[i] = number(d)
		}
		text += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Join(parts, ","))
	}
	return text
}

func path(points []XY) string {
	b := &strings.Builder{}
	for i, at := range points {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(number(at.X) + "," + number(at.Y))
	}
	return b.String()
}

// number writes pixels to a tenth.
func number(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64) // + 0, so that -0 is 0
}

// escaped is a text as XML 1.0 takes it: what no XML document may hold becomes the sign
// for what can't be shown.
func escaped(text string) string {
	return html.EscapeString(strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0xfffe || r == 0xffff {
			return utf8.RuneError
		}
		return r
	}, text))
}

func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}
