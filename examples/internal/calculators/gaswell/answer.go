package gaswell

import (
	"errors"
	"fmt"
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
)

func (in input) well(bean unit.Length) production.GasWell {
	return production.GasWell{
		Inflow: in.zone, Choke: choke.Hole(1, bean), Discharge: in.discharge, HeatRatio: in.heat, Line: in.line, Standard: in.standard,
		Tubing: gasflow.Tubing{Gas: in.gas, Wellhead: in.wellhead, Bottom: in.bottom,
			Sections: []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: in.id, Roughness: in.roughness}, Length: in.length, BottomTVD: in.depth}}},
	}
}

func (in input) answer() (calculator.Answer, error) {
	w := in.well(in.bean)
	f, err := w.Flow()
	if errors.Is(err, production.ErrDead) {
		return calculator.Answer{}, err
	} else if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	top, bottom := f.Nodes[0], f.Nodes[len(f.Nodes)-1]
	still, err := w.Tubing.Up(0, in.zone.Reservoir)
	if err != nil {
		return calculator.Answer{}, err
	}
	erosional := choke.ErosionalVelocity(in.erosion, top.Density)
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "rate", Value: f.Rate, For: display.GasRate},
			{Name: "share of the zone's open flow", Value: fmt.Sprintf("%.1f %%", 100*float64(f.Rate/in.zone.OpenFlow))},
			{Name: "pressure in front of the zone", Value: f.Sandface},
			{Name: "drawdown", Value: in.zone.Reservoir - f.Sandface},
			{Name: "pressure at the wellhead", Value: f.Wellhead},
			{Name: "the same, shut in", Value: still[0].Pressure},
			{Name: "choke is critical", Value: f.Critical},
			{Name: "velocity at the lower end", Value: bottom.Velocity},
			{Name: "velocity at the wellhead", Value: top.Velocity},
			{Name: "erosional velocity there", Value: erosional},
		},
		Steps: in.steps(f),
	}
	if top.Velocity > erosional {
		a.Notes, a.Failed = append(a.Notes, "the velocity at the wellhead is above the erosional velocity"), true
	}
	a.Notes = append(a.Notes, "dry gas: water and condensate add weight below, and below a least rate they stay in the well; heating by friction and cooling at the choke (hydrates) are not in it")
	flows := in.table(&a)
	a.Draw = in.draw(flows, w, f)
	return a, nil
}

// flowing is the well with one size of choke.
type flowing struct {
	bean unit.Length
	flow production.GasWellFlow
}

// beans are the sizes of choke that are looked at, as shares of the tubing's bore.
var beans = []float64{0.05, 0.08, 0.1, 0.125, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.7, 0.95}

// table adds what other sizes of choke would give.
func (in input) table(a *calculator.Answer) []flowing {
	t := calculator.Table{Name: "Other sizes of choke", Header: []string{"diameter", "rate", "in front of the zone", "wellhead", "critical", "velocity at the wellhead"}, For: []display.Purpose{display.Diameter, display.GasRate}}
	var all []flowing
	for _, share := range beans {
		bean := in.id * unit.Length(share)
		f, err := in.well(bean).Flow()
		if err != nil {
			continue // no rate is found where a tiny bean passes less than the search sees
		}
		all = append(all, flowing{bean, f})
		t.Rows = append(t.Rows, []any{bean, f.Rate, f.Sandface, f.Wellhead, f.Critical, f.Nodes[0].Velocity})
	}
	a.Tables = append(a.Tables, t)
	return all
}

// draw returns the picture of what the zone and the tubing give and what the choke
// takes.
func (in input) draw(flows []flowing, w production.GasWell, f production.GasWellFlow) func(io.Writer) error {
	zone, head := chart.Curve{Name: "in front of the zone"}, chart.Curve{Name: "at the wellhead"}
	for _, x := range flows {
		zone.X, zone.Y = append(zone.X, x.flow.Rate), append(zone.Y, x.flow.Sandface)
		head.X, head.Y = append(head.X, x.flow.Rate), append(head.Y, x.flow.Wellhead)
	}
	here := chart.Curve{Name: "with the choke asked for", X: []any{f.Rate, f.Rate}, Y: []any{w.Line, f.Sandface}}
	return func(out io.Writer) error {
		return chart.Curves{Title: "What the well gives, by the size of its choke",
			X: chart.Axis{Name: "rate", For: display.GasRate}, Y: chart.Axis{Name: "pressure", For: display.Pressure},
			Curves: []chart.Curve{zone, head, here}, Levels: []chart.Level{{Name: "line", Y: w.Line}},
		}.WriteSVG(out, in.units.System)
	}
}
