// Package picture is what the lessons draw with: curves, bands on one scale, and
// columns of fluid beside each other. A picture is described by plain numbers and
// shown once:
//
//	picture.Show("balance", picture.Chart{Title: "…", Lines: []picture.Line{…}})
//
// A picture brings its own paper and inks, for light, dark and print, so that it
// reads the same in a page, as a file and in a notebook. It is drawn 480 px wide,
// so that its words can still be read on a phone. A value that isn't finite is an
// error. Everything is safe for concurrent use, but that pictures of one name
// overwrite each other.
package picture

import (
	"fmt"
	"os"
	"strings"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit"
)

// Drawing is what can be shown.
type Drawing interface{ SVG() (string, error) }

// Inline is the environment variable that has Show write the picture into the
// output of the program, as the lessons' pages are made, and not into a file.
const Inline = "LESSON_PICTURES_INLINE"

// Show draws the picture into the file name.svg in the working directory and says
// so. What can't be drawn is said in place of it.
func Show(name string, d Drawing) {
	drawing, err := d.SVG()
	switch {
	case err != nil:
		fmt.Println("no picture:", err)
	case os.Getenv(Inline) != "":
		fmt.Print(drawing)
	default:
		if err := os.WriteFile(name+".svg", []byte(drawing), 0o644); err != nil { //nolint:gosec // a picture for everybody
			fmt.Println("no picture:", err)
			return
		}
		fmt.Println("picture:", name+".svg")
	}
}

// Band is a band as a bar, in the unit given: picture.Band("piston", b, unit.PSI, 0).
func Band[T unit.Scalar](name string, b unit.Band[T], in T, ink int) Range {
	return Range{Name: name, From: float64(b.Least / in), Nominal: float64(b.Nominal / in), To: float64(b.Greatest / in), Ink: ink}
}

// Axis is one side of a picture: what it shows with its unit, and its ends. Ends
// that are both zero are taken from what is drawn. Down turns it round, as for a
// depth.
type Axis struct {
	Name            string
	Least, Greatest float64
	Down            bool
}

// end sets the ends of a scale to which everything was drawn.
func (a Axis) end(s *chart.Scale) {
	switch {
	case a.Least != 0 || a.Greatest != 0:
		s.Least, s.Greatest = a.Least, a.Greatest
	case s.Least >= 0 && s.Least < s.Span()/2: // nothing is near: begin there
		s.Least, s.Greatest = 0, s.Greatest+s.Span()/25
	default:
		s.Room(0.04)
	}
}

func (a Axis) fault() error {
	if !(a.Least <= a.Greatest) { // or not a number
		return fmt.Errorf("picture: axis %q goes from %g to %g; must end above its beginning", a.Name, a.Least, a.Greatest)
	}
	return nil
}

const wide = 480

// inks are the colours of a picture, on its own element, so that no page takes them
// away; themes are light, and dark where the reader's screen is.
const inks = `<style>.lesson{max-width:100%;height:auto;--paper:#fdfcf9;--ink:#23302b;--rule:#d9dcd3;--line1:#00667a;--line2:#b0480e;--line3:#4b6f14;--line4:#7d3a83;--line5:#806020;--tint:#b9d3d6;--pale:#e9ecd9}` +
	`@media screen and (prefers-color-scheme:dark){.lesson{--paper:#1a211e;--ink:#dfe5de;--rule:#3a443f;--line1:#5cc3d6;--line2:#f0a266;--line3:#a9cf6b;--line4:#d79bdc;--line5:#d8b56a;--tint:#2c4a50;--pale:#2c3526}}</style>`

// finished draws the plot in its own inks.
func finished(p *chart.Plot, title string, high float64) (string, error) {
	var out strings.Builder
	if err := chart.Row(&out, wide, high, title, p); err != nil {
		return "", err
	}
	head, body, _ := strings.Cut(svg.Themed(out.String()), ">\n")
	return strings.Replace(head, "<svg ", `<svg class="lesson" `, 1) + ">\n" + inks + "\n" + body, nil
}

// ink is the colour with that number.
func ink(i int) string { return chart.PenOf(i).Ink }
