package envelope

import (
	"fmt"
	"io"

	"completion.example/internal/calculator"
	"completion.example/packer"
)

func (in inputs) answer() (calculator.Answer, error) {
	if err := in.check(); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	bearing := in.seat.Bearing(in.tubing, in.below, in.above)
	loads, err := in.cases(bearing.Load)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	polygon, err := in.polygon()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	e, err := polygon.Envelope()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{
		Steps:   bearing.Steps(),
		Tables:  []calculator.Table{outline(polygon)},
		Results: []calculator.Result{{Name: "force of the packer on the casing, positive up", Value: bearing.Casing}},
		Draw:    func(w io.Writer) error { return picture(w, in.units.System, polygon, loads) },
	}
	margins(&a, e, loads)
	in.tests(&a, e)
	a.Notes = append(a.Notes, "distances are in half the envelope's span of each load; positive is inside")
	return a, nil
}

// outline shows the polygon.
func outline(polygon packer.Polygon) calculator.Table {
	t := calculator.Table{Name: "Envelope", Header: []string{"differential, below minus above", "axial, tubing on packer", "then along"}}
	for i, v := range polygon.Vertices {
		limit := ""
		if len(polygon.Limits) > 0 {
			limit = polygon.Limits[i]
		}
		t.Rows = append(t.Rows, []any{v.Differential, v.Axial, limit})
	}
	return t
}

// margins adds how every load stands to the envelope.
func margins(a *calculator.Answer, e *packer.Envelope, loads []namedLoad) {
	t := calculator.Table{Name: "Loads", Header: []string{"load", "differential", "axial", "held", "share used", "limit", "distance to the edge", "nearest edge at", ""}}
	for _, l := range loads {
		m := e.Margin(packer.Load{Differential: l.Differential, Axial: l.Axial})
		t.Rows = append(t.Rows, []any{l.Name, l.Differential, l.Axial, m.Inside(), m.Usage, m.Limit, m.Distance, m.Nearest.Differential, m.Nearest.Axial})
		if !m.Inside() {
			a.Failed = true
			a.Notes = append(a.Notes, fmt.Sprintf("%s is outside the envelope: %s", l.Name, m.NearestLimit))
		}
	}
	a.Tables = append(a.Tables, t)
}

// tests adds what the packer can be tested to, or why to nothing.
func (in inputs) tests(a *calculator.Answer, e *packer.Envelope) {
	above, below, err := e.Tests(in.tubing, in.hand)
	if err != nil {
		a.Notes, a.Failed = append(a.Notes, err.Error()), true
		return
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "test from above, with the tubing's force and the share in hand", Value: above},
		calculator.Result{Name: "test from below", Value: below})
}
