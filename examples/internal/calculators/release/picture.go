package release

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/packer"
)

// picture draws on the scale of the weight indicator what it shows with no load on
// the joint, where the pins part, and what bears the pull.
func (in inputs) picture(p packer.Parting) func(io.Writer) error {
	rows := []chart.Range{
		{Name: "no load on the joint", From: p.Neutral.Least, To: p.Neutral.Greatest},
		{Name: "the pins part", From: p.Reading.Least, To: p.Reading.Greatest},
		{Name: "within the shares", From: unit.Force(0), To: p.MostReading, Permitted: true},
	}
	return func(w io.Writer) error {
		return chart.Ranges{Title: "What the weight indicator shows", Scale: chart.Axis{Name: "reading", For: display.Force}, Rows: rows, Here: in.remedy.tried, Named: "tried so far"}.WriteSVG(w, in.units.System)
	}
}
