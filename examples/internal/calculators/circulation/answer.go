package circulation

import (
	"completion.example/hydrostatics/unit/display"
	"fmt"
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

func (in input) answer() (calculator.Answer, error) {
	annulus := []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: in.hole, Inner: in.pipe}, Length: in.length, BottomTVD: in.tvd}}
	round := flow.Circulation{Liquid: in.liquid, Rate: in.rate, BackPressure: in.back, Reverse: in.reverse, Well: flow.Well{
		Pipe:    []flow.ConduitSection{{Name: "pipe", Conduit: flow.Conduit{Outer: in.bore}, Length: in.length, BottomTVD: in.tvd}},
		Annulus: annulus,
	}}
	if in.ports.Count != 0 {
		round.Well.Exit = in.ports
	}
	c, err := round.Solve()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	trip := flow.Trip{Annulus: annulus, Liquid: in.liquid, Speed: in.speed, Cling: in.cling, Peak: in.peak, Open: in.open}
	if in.open {
		trip.Bores = []unit.Length{in.bore}
	}
	s, err := trip.Solve()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	swept := s.Sections[0].Velocity
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "pressure at the bottom, at rest", Value: c.Bottom.Static},
			{Name: "pump pressure", Value: c.PumpPressure},
			{Name: "pressure at the bottom, circulating", Value: c.Bottom.Pressure},
			{Name: "equivalent circulating density", Value: c.Bottom.Equivalent},
			{Name: "velocity past the moving pipe, at its greatest speed", Value: feetPerMinute(swept)},
			{Name: "surge, and swab", Value: s.Loss},
			{Name: "equivalent density, running in", Value: s.RunningEquivalent},
			{Name: "equivalent density, pulling", Value: s.PullingEquivalent},
		},
		Tables: []calculator.Table{losses(c)},
		Draw:   in.picture(round),
		Notes:  append(in.watch(c, s), "Surge and swab are steady: breaking the gel and the inertia of a jerk come on top."),
	}
	for _, p := range c.Parts {
		for _, step := range p.Friction.Steps() {
			step.Name = p.Name + ": " + step.Name
			a.Steps = append(a.Steps, step)
		}
	}
	a.Steps = slices.Concat(a.Steps, c.Steps(), trip.Steps(s))
	if in.isExample() {
		a.Published = &calculator.Published{Name: "surge of a closed pipe, in a book that takes the annulus for a slot", Printed: "716 psi", Ours: s.Loss,
			Source: "Lapeyrouse, Formulas and Calculations, chapter 5, surge and swab"}
	}
	return a, nil
}

// isExample tells whether the moving pipe is that of the published case; in
// laminar flow density and rate don't count.
func (in input) isExample() bool {
	return in.hole == 7.875*unit.Inch && in.pipe == 4.5*unit.Inch && in.length == 14300*unit.Foot && !in.open &&
		in.speed == 270*unit.FootPerMinute && in.cling == 0.45 && in.peak == flow.PeakSpeed && in.liquid.Density == 15*unit.PoundPerGallon &&
		in.liquid.Rheology == flow.PowerLaw(0.522*unit.PoundForceSecondNPer100SquareFeet, 0.8069)
}

func feetPerMinute(v unit.Velocity) any { return working.In(v, unit.FootPerMinute, "ft/min") }

func losses(c flow.Circulating) calculator.Table {
	t := calculator.Table{Name: "Friction, in the order of flow", Header: []string{"where", "velocity", "regime", "gradient", "pressure lost"}}
	for _, p := range c.Parts {
		t.Rows = append(t.Rows, []any{p.Name, feetPerMinute(p.Friction.Velocity), p.Friction.Regime, p.Friction.Gradient, p.Loss})
		if p.Side == flow.PipeSide && c.ExitLoss > 0 {
			t.Rows = append(t.Rows, []any{"ports", nil, nil, nil, c.ExitLoss})
		}
	}
	return t
}

// watch compares the pressures at the end of the pipe with the formation's.
func (in input) watch(c flow.Circulating, s flow.Surge) (notes []string) {
	for _, x := range []struct {
		when string
		p    unit.Pressure
	}{{"at rest", c.Bottom.Static}, {"while circulating", c.Bottom.Pressure}, {"while running in", s.Running}, {"while pulling", s.Pulling}} {
		if in.fracture > 0 && x.p >= in.fracture {
			notes = append(notes, fmt.Sprintf("%s the bottom feels %s, at or above the fracture pressure of %s", x.when, in.units.Format(x.p, display.Usual), in.units.Format(in.fracture, display.Usual)))
		}
		if in.balance > 0 && x.p <= in.balance {
			notes = append(notes, fmt.Sprintf("%s the bottom feels %s, at or below the formation's %s: it can flow", x.when, in.units.Format(x.p, display.Usual), in.units.Format(in.balance, display.Usual)))
		}
	}
	return notes
}
