package isolation

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

func (in input) answer() (calculator.Answer, error) {
	if !(in.off >= 0) {
		return calculator.Answer{}, calculator.BadInput{Err: fmt.Errorf("uncertainty is %v; it must be zero or more", in.off)}
	}
	around := func(p unit.Pressure) unit.Band[unit.Pressure] {
		return unit.Band[unit.Pressure]{Least: p - in.off, Nominal: p, Greatest: p + in.off}
	}
	inside, outside := hydrostatics.Pressure(in.tubing, in.depth), hydrostatics.Pressure(in.annulus, in.depth)
	c := valve.Columns{Applied: around(inside), Opposing: around(outside)}
	var events []valve.PressureEvent
	for _, e := range in.earlier {
		events = append(events, valve.PressureEvent{Name: e.name, Columns: c, To: e.to}, valve.PressureEvent{Name: "bled off", Columns: c, From: e.to})
	}
	h, err := in.valve.After(events)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Results: []calculator.Result{{Name: "the valve is now", Value: condition(in.valve, h)}}}
	if h.Condition == valve.Unknown {
		a.Failed = true
		a.Notes = append(a.Notes, "an earlier pressure lies in the band: find out whether the valve is open before going on")
	}
	if h.Condition == valve.Fired {
		a.Failed = true
		a.Notes = append(a.Notes, "an earlier pressure has opened it for certain; the pressures below are those of a valve not yet open")
	}
	t := calculator.Table{Name: "Earlier pressures", Header: []string{"event", "to", "differential reached", "margin to moving", "afterwards"}}
	for _, r := range h.Records {
		t.Rows = append(t.Rows, []any{r.Event.Name, r.Event.To, r.To.Greatest, -r.Outcome.Margin.Near, r.Condition.String()})
	}
	if t.Rows != nil {
		a.Tables = append(a.Tables, t)
	}
	others := valve.Demand{Name: "other device", Trigger: valve.Trigger{Threshold: in.hold}, Columns: c}
	window := func(name string, w valve.SurfaceWindow, err error) error {
		switch {
		case errors.Is(err, valve.ErrNoSurfacePressure):
			a.Failed = true
			a.Notes = append(a.Notes, name+": "+err.Error())
			return nil
		case err != nil:
			return calculator.BadInput{Err: err}
		}
		a.Results = append(a.Results, calculator.Result{Name: name, Value: in.units.Format(w.Least, display.Usual) + " to " + in.units.Format(w.Greatest, display.Usual)})
		return nil
	}
	up, err := in.valve.PressureUp(c, in.surface, others)
	faults := []error{window(rise(in.valve.Kind), up, err)}
	if in.valve.Kind != valve.OpensUnderPressure {
		down, err := in.valve.BleedOff(c, in.surface)
		faults = append(faults, window("surface pressure to bleed to", down, err))
	}
	still, err := in.valve.Hold(c, in.surface)
	faults = append(faults, window("surface pressure that can't move it", still, err))
	a.Steps = in.steps(inside, outside, c)
	return a, errors.Join(faults...)
}

// rise names what a rise of pressure does to a valve.
func rise(k valve.IsolationKind) string {
	switch k {
	case valve.OpensAtBleedOff:
		return "surface pressure that unlocks it"
	case valve.OpensAfterCycles:
		return "surface pressure that counts a cycle"
	case valve.OpensUnderPressure:
	}
	return "surface pressure that opens it"
}

func condition(v valve.IsolationValve, h valve.IsolationHistory) string {
	most, least := v.CyclesLeft(h)
	switch {
	case h.Condition == valve.Fired:
		return "open"
	case h.Condition == valve.Unknown:
		return "unknown: it may have opened"
	case most == 0 && v.Kind != valve.OpensUnderPressure:
		return "closed, with no pressure cycle to go: it opens at the next bleed-off"
	case most == least:
		return fmt.Sprintf("closed; pressure cycles to go: %d", most)
	}
	return fmt.Sprintf("closed; pressure cycles to go: %d to %d", least, most)
}

func (in input) steps(inside, outside unit.Pressure, c valve.Columns) []working.Step {
	given := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	pi, po, u := given("pin", working.Of(inside)), given("pout", working.Of(outside)), given("u", working.Of(in.off))
	d0 := c.Differential()
	far := in.valve.Unlock.Greatest - d0.Least
	return []working.Step{
		{Name: "column in the tubing", Symbol: "pin", Equation: "ρ*g*D", Source: "hydrostatics", Value: pi.Value,
			Inputs: []working.Input{given("ρ", working.Of(in.tubing)), given("D", working.Of(in.depth))}},
		{Name: "column on the other side", Symbol: "pout", Equation: "ρ*g*D", Source: "hydrostatics", Value: po.Value,
			Inputs: []working.Input{given("ρ", working.Of(in.annulus)), given("D", working.Of(in.depth))}},
		{Name: "least differential without surface pressure", Symbol: "d0", Equation: "pin - pout - 2*u", Source: "definition", Value: working.Of(d0.Least),
			Inputs: []working.Input{pi, po, u}},
		{Name: "least surface pressure that does it for certain", Symbol: "ps", Equation: "A - d0", Source: "definition", Value: working.Of(far),
			Inputs: []working.Input{given("A", working.Of(in.valve.Unlock.Greatest)), given("d0", working.Of(d0.Least))}},
	}
}
