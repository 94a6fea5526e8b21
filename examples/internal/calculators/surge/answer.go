package surge

import (
	"errors"
	"fmt"
	"io"
	"time"

	"completion.example/examples/internal/chart"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

// positions of the lower end that are looked at.
const positions = 12

// row is the trip with the lower end at one depth.
type row struct {
	md, tvd    unit.Length
	surge      flow.Surge
	running    unit.Velocity // fastest
	pulling    unit.Velocity
	runs, puls bool // there is such a speed
}

func (in input) answer() (calculator.Answer, error) {
	static := hydrostatics.Pressure(in.trip.Liquid.Density, in.depth)
	fracture := hydrostatics.PressureOf(in.fracture, in.depth)
	up, down := fracture-in.margin-static, static-in.formation-in.margin
	a := calculator.Answer{Results: []calculator.Result{
		{Name: "pressure at the formation, at rest", Value: static},
		{Name: "surge allowed, margin kept", Value: up},
		{Name: "swab allowed, margin kept", Value: down},
	}}
	if up < 0 || down < 0 {
		a.Failed = true
		a.Notes = append(a.Notes, "at rest the formation is nearer to its limits than the margin: change the fluid first")
		return a, nil
	}
	rows, err := in.rows(up, down)
	if err != nil {
		return a, calculator.BadInput{Err: err}
	}
	last := rows[len(rows)-1]
	a.Results = append(a.Results,
		calculator.Result{Name: "surge and swab at the speed planned, landed", Value: last.surge.Loss},
		calculator.Result{Name: "fastest running, landed", Value: speed(last.running, last.runs)},
		calculator.Result{Name: "fastest pulling, landed", Value: speed(last.pulling, last.puls)},
		calculator.Result{Name: "least time for a stand, running", Value: perStand(in.stand, last.running)},
		calculator.Result{Name: "least time for a stand, pulling", Value: perStand(in.stand, last.pulling)})
	a.Tables = []calculator.Table{in.table(rows)}
	landed := in.at(in.length, last.tvd)
	a.Steps = landed.Steps(last.surge)
	a.Draw = in.draw(rows)
	a.Notes = append(a.Notes, "steady: breaking the gel and the inertia of a jerk come on top; start and stop each stand slowly")
	for _, r := range rows {
		if r.surge.Loss > up || r.surge.Loss > down {
			a.Failed = true
			a.Notes = append(a.Notes, fmt.Sprintf("at the speed planned surge or swab is too much from %s on", in.units.Format(r.md, display.Depth)))
			break
		}
	}
	if in.isExample() {
		a.Published = &calculator.Published{Name: "surge of a closed pipe, in a book that takes the annulus for a slot", Printed: "716 psi", Ours: last.surge.Loss,
			Source: "Lapeyrouse, Formulas and Calculations, chapter 5, surge and swab"}
	}
	return a, nil
}

// rows works the trip out from surface to landed.
func (in input) rows(up, down unit.Pressure) ([]row, error) {
	if !(in.length > 0) {
		return nil, fmt.Errorf("length is %v; it must be above zero", in.length)
	}
	var rows []row
	for i := range positions {
		r := row{md: in.length * unit.Length(i+1) / positions}
		r.tvd = r.md
		if p := in.survey.Path(); p != nil {
			var err error
			if r.tvd, err = p.TVD(r.md); err != nil {
				return nil, err
			}
		}
		trip := in.at(r.md, r.tvd)
		var err error
		if r.surge, err = trip.Solve(); err != nil {
			return nil, err
		}
		if r.running, r.runs, err = fastest(trip, up); err != nil {
			return nil, err
		}
		if r.pulling, r.puls, err = fastest(trip, down); err != nil {
			return nil, err
		}
		rows = append(rows, r)
	}
	return rows, nil
}

func fastest(t flow.Trip, allowed unit.Pressure) (v unit.Velocity, ok bool, err error) {
	v, err = t.Fastest(allowed)
	if errors.Is(err, flow.ErrNoSpeed) {
		return 0, false, nil
	}
	return v, err == nil, err
}

// at is the trip with the lower end at a depth.
func (in input) at(md, tvd unit.Length) flow.Trip {
	t := in.trip
	section := func(name string, od, from, to unit.Length) {
		if to <= from {
			return
		}
		// Surge knows vertical depth at the pipe's end alone; the sections share it by length.
		t.Annulus = append(t.Annulus, flow.ConduitSection{Name: name, Conduit: flow.Conduit{Outer: in.casing, Inner: od}, Length: to - from, BottomTVD: tvd * to / md})
		if t.Open {
			bore := in.id
			if name == "assembly" {
				bore = in.assemblyID
			}
			t.Bores = append(t.Bores, bore)
		}
	}
	top := md
	if in.assembly > 0 {
		top = max(0, md-in.assemblyLength)
	}
	section("pipe", in.od, 0, top)
	section("assembly", in.assembly, top, md)
	return t
}

// isExample tells whether the moving pipe is that of the published case.
func (in input) isExample() bool {
	t := in.trip
	return in.casing == 7.875*unit.Inch && in.od == 4.5*unit.Inch && in.length == 14300*unit.Foot && in.assembly == 0 && !t.Open && t.Speed == 270*unit.FootPerMinute &&
		t.Cling == 0.45 && t.Peak == flow.PeakSpeed && t.Liquid.Rheology == flow.PowerLaw(0.522*unit.PoundForceSecondNPer100SquareFeet, 0.8069)
}

func speed(v unit.Velocity, ok bool) any {
	if !ok {
		return "none"
	}
	return working.In(v, unit.FootPerMinute, "ft/min")
}

func perStand(stand unit.Length, v unit.Velocity) any {
	if v <= 0 {
		return "none"
	}
	return time.Duration(float64(stand) / float64(v) * float64(time.Second))
}

func (in input) table(rows []row) calculator.Table {
	t := calculator.Table{Name: "On the way", Header: []string{"lower end at", "true vertical", "surge, swab at the speed planned", "formation sees, running", "pulling", "fastest running", "fastest pulling"}}
	static := hydrostatics.Pressure(in.trip.Liquid.Density, in.depth)
	for _, r := range rows {
		t.Rows = append(t.Rows, []any{r.md, r.tvd, r.surge.Loss, static + r.surge.Loss, static - r.surge.Loss, speed(r.running, r.runs), speed(r.pulling, r.puls)})
	}
	return t
}

// draw returns the picture of the speeds against depth.
func (in input) draw(rows []row) func(io.Writer) error {
	curve := func(name string, value func(row) unit.Velocity) chart.Curve {
		c := chart.Curve{Name: name}
		for _, r := range rows {
			c.X, c.Y = append(c.X, value(r)), append(c.Y, r.md)
		}
		return c
	}
	return func(w io.Writer) error {
		return chart.Curves{
			Title: "How fast the string may move", Downwards: true,
			X: chart.Axis{Name: "mean speed", For: display.PipeSpeed}, Y: chart.Axis{Name: "lower end at", For: display.Depth},
			Curves: []chart.Curve{
				curve("fastest running", func(r row) unit.Velocity { return min(r.running, most) }),
				curve("fastest pulling", func(r row) unit.Velocity { return min(r.pulling, most) }),
				curve("planned", func(row) unit.Velocity { return in.trip.Speed }),
			},
		}.WriteSVG(w, in.units.System)
	}
}

// most is the greatest speed that is drawn.
const most = 300 * unit.FootPerMinute
