package sketch

import (
	"errors"
	"fmt"
)

// Range is a bar on the common scale, with the value in it that is nominal, or a
// single value where From and To are the same. Ink chooses its colour.
type Range struct {
	Name     string
	From, To float64
	Nominal  float64
	Ink      int
}

// Ranges are bars under each other on one scale: what acts where.
type Ranges struct {
	Title string // in words, for those who don't see the picture
	X     Axis
	Rows  []Range
	Lines []float64 // values marked across all rows
}

// SVG draws the ranges. Its errors name what can't be drawn.
func (r Ranges) SVG() (string, error) {
	var errs []error
	var values []float64
	for _, b := range r.Rows {
		err := finite("range "+b.Name, b.From, b.To, b.Nominal)
		if err == nil && b.From > b.To {
			err = fmt.Errorf("sketch: range %s goes from %g to %g; must not end below its beginning", b.Name, b.From, b.To)
		}
		errs = append(errs, err)
		values = append(values, b.From, b.To)
	}
	errs = append(errs, finite("a line across", r.Lines...))
	if err := errors.Join(errs...); err != nil {
		return "", err
	}
	const left, right, each = 14.0, 20.0, 46.0
	x := r.X.scale(append(values, r.Lines...))
	x.from, x.to = left+6, wide-right
	foot := 12 + each*float64(len(r.Rows))
	var d canvas
	at, names := x.ticks(5)
	for i, v := range at {
		d.line(x.at(v), 8, x.at(v), foot, "grid")
		d.text(x.at(v), foot+row/2+4, "middle", names[i])
	}
	d.line(left, foot, wide-right, foot, "axis")
	d.text(wide-right, foot+2*row-2, "end", r.X.Name)
	for _, v := range r.Lines {
		d.add(`<line x1="%.1f" y1="8" x2="%.1f" y2="%.1f" class="axis" stroke-dasharray="4 3"/>`, x.at(v), x.at(v), foot)
	}
	for i, b := range r.Rows {
		y := 22 + each*float64(i)
		d.text(left, y, "start", b.Name)
		ink := b.Ink % len(dashes)
		if b.From == b.To {
			d.dot(x.at(b.From), y+row, ink)
			continue
		}
		d.box(x.at(b.From), y+row-7, x.at(b.To)-x.at(b.From), 14, fmt.Sprintf("wash f%d", ink))
		d.add(`<rect x="%.1f" y="%.1f" width="%.1f" height="14" fill="none" class="s%d"/>`, x.at(b.From), y+row-7, x.at(b.To)-x.at(b.From), ink)
		if b.Nominal > b.From && b.Nominal < b.To {
			d.line(x.at(b.Nominal), y+row-10, x.at(b.Nominal), y+row+10, fmt.Sprintf("curve s%d", ink))
		}
	}
	d.high = foot + 2*row + 10
	return d.svg(r.Title), nil
}
