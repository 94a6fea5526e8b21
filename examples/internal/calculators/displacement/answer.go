package displacement

import (
	"completion.example/hydrostatics/unit/display"
	"fmt"

	"completion.example/fluid/flow"
	"completion.example/internal/calculator"
)

func (in inputs) answer() (calculator.Answer, error) {
	if !(in.pump.Efficiency > 0 && in.pump.Efficiency <= 1) {
		return calculator.Answer{}, calculator.BadInput{Err: fmt.Errorf("efficiency is %g; it must be above 0 and at most 1", in.pump.Efficiency)}
	}
	d := in.d
	section := func(name string, c flow.Conduit) []flow.ConduitSection {
		return []flow.ConduitSection{{Name: name, Conduit: c, Length: in.length, BottomTVD: in.tvd}}
	}
	d.Well = flow.Well{Pipe: section("tubing", flow.Conduit{Outer: in.tubingID}), Annulus: section("annulus", flow.Conduit{Outer: in.casingID, Inner: in.tubingOD})}
	d.InPipe = flow.PumpedFluid{Name: "old fluid", Density: in.mud, Rheology: flow.Bingham(in.pv, in.yp)}
	d.InAnnulus = d.InPipe
	if in.spacerVolume != 0 {
		d.Stages = append(d.Stages, flow.Stage{Liquid: flow.PumpedFluid{Name: "spacer", Density: in.spacer, Rheology: flow.Bingham(in.spacerPV, in.spacerYP)}, Volume: in.spacerVolume, Rate: in.rate})
	}
	d.Stages = append(d.Stages, flow.Stage{Liquid: flow.PumpedFluid{Name: "new fluid", Density: in.new, Rheology: flow.Newtonian(in.newPV)}, Volume: in.newVolume, Rate: in.rate})
	d.Output = in.pump.Output()
	s, err := d.Schedule()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "volume of the tubing", Value: d.Well.PipeVolume()},
			{Name: "volume of the annulus", Value: d.Well.AnnulusVolume()},
			{Name: "length of the spacer in the tubing", Value: d.Well.Pipe[0].Conduit.Length(in.spacerVolume)},
			{Name: "length of the spacer in the annulus", Value: d.Well.Annulus[0].Conduit.Length(in.spacerVolume)},
			{Name: "greatest pump pressure", Value: s.GreatestPump.PumpPressure},
			{Name: "when this has been pumped", Value: s.GreatestPump.Volume},
			{Name: "greatest pressure at the bottom", Value: s.GreatestBottom.Bottom},
			{Name: "least pressure at the bottom", Value: s.LeastBottom.Bottom},
			{Name: "strokes in all", Value: s.Strokes},
			{Name: "time in all", Value: s.Duration},
		},
		Steps:  append(in.pump.Steps(), s.Steps()...),
		Tables: tables(s),
		Draw:   draw(in.units.System, s),
	}
	show := func(v any) string { return in.units.Format(v, display.Usual) }
	for _, u := range s.UTubes {
		note := fmt.Sprintf("U-tubing from %s to %s pumped: the inlet would need %s; hold %s more on the returns to stay with the pump",
			show(u.From), show(u.To), show(u.Least), show(s.HoldBack))
		if q, err := s.FallRate(u.At); err == nil {
			note += fmt.Sprintf("; left alone, the returns can run at %s", show(q))
		}
		a.Notes = append(a.Notes, note)
	}
	if last := s.Returns[len(s.Returns)-1].Name; last != "new fluid" {
		a.Notes = append(a.Notes, "the new fluid hasn't come round: the last returns are "+last)
	}
	return a, nil
}

func tables(s flow.Schedule) []calculator.Table {
	curve := calculator.Table{Name: "Pressure against volume pumped: straight lines between these", Header: []string{"pumped", "strokes", "time", "pump", "bottom", "equivalent density", "pump off, shut in"}}
	for _, p := range s.Points {
		curve.Rows = append(curve.Rows, []any{p.Volume, p.Strokes, p.Time, p.PumpPressure, p.Bottom, p.Equivalent, p.Static})
	}
	events := calculator.Table{Name: "Fronts", Header: []string{"event", "pumped", "strokes", "time"}}
	for _, e := range s.Events {
		events.Rows = append(events.Rows, []any{e.What, e.Volume, e.Strokes, e.Time})
	}
	returns := calculator.Table{Name: "Returns, in order", Header: []string{"fluid", "volume"}}
	for _, r := range s.Returns {
		returns.Rows = append(returns.Rows, []any{r.Name, r.Volume})
	}
	return []calculator.Table{curve, events, returns}
}
