// Package picture is what the lessons draw with: curves, bands on one scale, and
// columns of fluid beside each other. A picture is described by its values and
// shown once:
//
//	picture.Show("balance", picture.Chart{Title: "…", Lines: []picture.Line{…}})
//
// It is safe for concurrent use, but that pictures of one name overwrite each other.
package picture

import (
	"fmt"
	"os"

	"completion.example/examples/internal/sketch"
	"completion.example/hydrostatics/unit"
)

// The parts of pictures.
type (
	Chart  = sketch.Chart  // curves, shaded areas and marks on two axes
	Axis   = sketch.Axis   // what a side of a chart shows, and its ends
	Line   = sketch.Line   // a curve
	Area   = sketch.Area   // a shaded polygon
	Mark   = sketch.Mark   // a point with a name
	Point  = sketch.Point  // a place in a chart
	Ranges = sketch.Ranges // bars under each other on one scale
	Range  = sketch.Range  // one of them
	Stacks = sketch.Stacks // columns beside each other
	Stack  = sketch.Stack  // one of them
	Layer  = sketch.Layer  // what stands in it between two depths
)

// Drawing is what can be shown.
type Drawing interface{ SVG() (string, error) }

// Inline is the environment variable that has Show write the picture into the
// output of the program, as the lessons' pages are made, and not into a file.
const Inline = "LESSON_PICTURES_INLINE"

// Show draws the picture into the file name.svg in the working directory and says
// so. What can't be drawn is said in place of it.
func Show(name string, d Drawing) {
	svg, err := d.SVG()
	switch {
	case err != nil:
		fmt.Println("no picture:", err)
	case os.Getenv(Inline) != "":
		fmt.Print(svg)
	default:
		if err := os.WriteFile(name+".svg", []byte(svg), 0o644); err != nil { //nolint:gosec // a picture for everybody
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
