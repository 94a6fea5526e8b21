package seals

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular/movement"
)

func (in inputs) answer() (calculator.Answer, error) {
	var a calculator.Answer
	in.landed.OutsideDensity = in.landed.InsideDensity
	cases := in.cases()
	for _, c := range cases {
		travel, err := in.travel(c)
		if err != nil {
			return a, calculator.BadInput{Err: err}
		}
		in.plan.Cases = append(in.plan.Cases, travel)
	}
	if err := in.plan.Validate(); err != nil {
		return a, calculator.BadInput{Err: err}
	}
	stroke, err := packer.StrokeOf(in.plan.Cases)
	if err != nil {
		return a, calculator.BadInput{Err: err}
	}
	a.Results = []calculator.Result{{Name: "travel up", Value: stroke.Up, For: display.Stroke}, {Name: "travel down", Value: stroke.Down, For: display.Stroke}, {Name: "whole stroke", Value: stroke.Total(), For: display.Stroke}}
	height, where, err := in.space(&a)
	if err != nil {
		return a, err
	}
	if err := in.tables(&a, cases, height, where); err != nil {
		return a, err
	}
	if err := in.weights(&a); err != nil {
		return a, err
	}
	if in.survey.Path() != nil {
		a.Notes = append(a.Notes, "Along the survey, node by node: inclination and curvature count for weight and buckling; friction of the hole does not.")
	}
	return a, nil
}

// cases are the string landed and then cold, and then warm.
func (in inputs) cases() []packer.Case {
	section := in.section
	section.Hole = in.seat.Casing
	of := func(final movement.WellFluids, warming unit.TemperatureDifference) movement.Vertical {
		final.OutsideDensity = in.landed.OutsideDensity
		return movement.Vertical{Sections: []movement.StringSection{section}, Seals: movement.SealBore{Bore: in.seat.Bore}, Initial: in.landed, Final: final, Warming: warming}
	}
	return []packer.Case{{Name: "cold", String: of(in.cold, in.cooling)}, {Name: "warm", String: of(in.warm, in.warming)}}
}

// space adds where the locator may land, and returns its height above the
// shoulder and how it gets there.
func (in inputs) space(a *calculator.Answer) (height unit.Length, where string, err error) {
	s, err := in.plan.SpaceOut()
	if err != nil {
		a.Notes, a.Failed = append(a.Notes, err.Error()), true
		return 0, "on its shoulder", nil
	}
	a.Results = append(a.Results, calculator.Result{Name: "locator above its shoulder, least: " + s.LeastBy, Value: s.Least, For: display.PipeLength},
		calculator.Result{Name: "locator above its shoulder, greatest: " + s.GreatestBy, Value: s.Greatest, For: display.PipeLength},
		calculator.Result{Name: "middle of the range", Value: s.Middle(), For: display.PipeLength})
	height, err = in.spacing.add(a, s)
	return height, "with those pups", err
}

// tables adds how the seals stand in every case, and what each way of joining
// string and packer would do to the packer.
func (in inputs) tables(a *calculator.Answer, cases []packer.Case, height unit.Length, where string) error {
	engaged, err := in.plan.Engage(height)
	if err != nil {
		return calculator.BadInput{Err: err}
	}
	stand := calculator.Table{Name: "Seals, locator landed " + where, Header: []string{"case", "movement if free", "seals in the bore", "more than needed", "locator above its shoulder", "stopped"},
		For: []display.Purpose{display.Usual, display.Stroke, display.PipeLength, display.PipeLength, display.PipeLength}}
	for _, e := range engaged {
		stand.Rows = append(stand.Rows, []any{e.Case, e.Free, e.Engaged, e.Margin, e.Height, e.Stopped})
	}
	joined := calculator.Table{Name: "Packer, with a landed locator on its shoulder (limited) and with an anchor", Header: []string{"case", "seals", "movement", "tubing on packer", "packer on casing", "real force above the packer"},
		For: []display.Purpose{display.Usual, display.Usual, display.Stroke}}
	for _, c := range cases {
		all, err := in.connections(c)
		if err != nil {
			return calculator.BadInput{Err: err}
		}
		for _, k := range all {
			joined.Rows = append(joined.Rows, []any{c.Name, k.Restraint.String(), k.Movement, k.Bearing.Tubing, k.Bearing.Casing, k.Force})
		}
	}
	a.Tables = append(a.Tables, stand, joined)
	a.Draw = in.picture(engaged)
	return nil
}

// weights adds what the weight indicator shows going in and coming out, with the
// fluids and pressures of landing.
func (in inputs) weights(a *calculator.Answer) error {
	pipe, depth := in.section.Pipe, in.section.BottomMD
	if p := in.survey.Path(); p != nil {
		var err error
		if depth, err = p.TVD(depth); err != nil {
			return calculator.BadInput{Err: err}
		}
	}
	end := movement.End{Bore: in.seat.Bore, OD: pipe.OD, ID: pipe.ID, Outside: in.landed.Outside(depth), Inside: in.landed.Inside(depth), Below: in.landed.Inside(depth)}
	in.stab.End = end
	w, err := in.stab.Weights()
	if err != nil {
		return calculator.BadInput{Err: err}
	}
	a.Steps = append(a.Steps, w.Steps()...)
	a.Results = append(a.Results,
		calculator.Result{Name: "set-down that stabs in", Value: w.SetDown},
		calculator.Result{Name: "reading going in", Value: w.In},
		calculator.Result{Name: "reading that pulls out", Value: w.Out})
	return nil
}
