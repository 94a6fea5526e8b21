package setting

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/packer"
	"completion.example/valve"
)

// picture draws on one scale of surface pressure where each stage acts, what must
// not be passed, the window, and the pressure applied.
func (in inputs) picture(p packer.Pressures, s packer.Setting) func(io.Writer) error {
	var rows []chart.Range
	for _, st := range p.Stages {
		rows = append(rows, chart.Range{Name: st.Name, From: st.Surface.Least, To: st.Surface.Greatest})
	}
	other := valve.Demand{Name: "other device", Trigger: valve.Trigger{Threshold: in.other}, Columns: s.Columns}
	columns := s.Columns.Applied.Nominal - s.Columns.Opposing.Nominal // at the other device, with nothing applied
	rows = append(rows, chart.Range{Name: other.Name, From: in.other.Least - columns, To: in.other.Greatest - columns})
	if w, err := s.Window(packer.Set, valve.SurfaceRange{Greatest: in.pump}, []valve.Demand{other}, in.margin); err == nil {
		rows = append(rows, chart.Range{Name: "window, margin kept", From: w.Least, To: w.Greatest, Permitted: true})
	}
	plug := s.Plug.Columns.Applied.Nominal - s.Plug.Columns.Opposing.Nominal
	rows = append(rows, chart.Range{Name: "plug's rating", From: in.rating - plug, To: in.rating - plug}, chart.Range{Name: "pump, lines, wellhead", From: unit.Pressure(0), To: in.pump, Permitted: true})
	return func(w io.Writer) error {
		return chart.Ranges{Title: "Surface pressure that sets the packer", Scale: chart.Axis{Name: "surface pressure", For: display.Pressure}, Rows: rows, Here: in.surface, Named: "applied"}.WriteSVG(w, in.units.System)
	}
}
