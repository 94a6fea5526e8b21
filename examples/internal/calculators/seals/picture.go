package seals

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit/display"
	"completion.example/packer"
)

// picture draws where the seals stand in every case, beside the seal bore.
func (in inputs) picture(engaged []packer.Engagement) func(io.Writer) error {
	bore := in.plan.Bore
	rows := []chart.Range{{Name: "seal bore", From: bore.TopMD, To: bore.BottomMD, Permitted: true}}
	for _, e := range engaged {
		locator := bore.ShoulderMD - e.Height
		rows = append(rows, chart.Range{Name: "seals, " + e.Case, From: locator + in.plan.Seals.FirstMD, To: locator + in.plan.Seals.LastMD})
	}
	return func(w io.Writer) error {
		return chart.Ranges{Title: "Seals in their bore", Scale: chart.Axis{Name: "measured depth", For: display.PipeLength}, Rows: rows, Here: bore.ShoulderMD, Named: "shoulder"}.WriteSVG(w, in.units.System)
	}
}
