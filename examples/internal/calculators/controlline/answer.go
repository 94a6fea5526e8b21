package controlline

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve/controlline"
)

func (in input) answer() (calculator.Answer, error) {
	in.shift.Feed, in.shift.Vent = in.line, in.line
	full, err := in.line.Load(in.shift.Liquid, in.shift.Pump, in.around)
	vented, err2 := in.line.Load(in.shift.Liquid, 0, in.around)
	head, err3 := in.line.Head(in.shift.Liquid)
	warm, err4 := in.line.Warming(in.shift.Liquid, in.metal, in.warming)
	for _, err := range []error{err, err2, err3, err4} {
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
	}
	plan, err := in.shift.Plan()
	if errors.Is(err, controlline.ErrNoShift) {
		return calculator.Answer{}, err
	} else if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	d, err := in.shift.Diagnose(plan, in.reading)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	blocked, err := in.line.Load(in.shift.Liquid, max(0, in.shift.Pump+warm.Rise), in.around)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	r := full.Ratings
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "working pressure of the line", Value: r.Working}, {Name: "collapse pressure of the line", Value: r.Collapse},
			{Name: "share of the working pressure used", Value: full.Burst}, {Name: "share of collapse used when vented", Value: vented.Collapse},
			{Name: "head at the device", Value: head}, {Name: "rise when blocked and warmed", Value: warm.Rise},
			{Name: "share of the working pressure used, blocked under the pump's pressure and warmed", Value: blocked.Burst},
			{Name: "pumped if nothing moves", Value: working.In(plan.Held, unit.Litre, "L")}, {Name: "pumped for a good shift", Value: working.In(plan.Pumped, unit.Litre, "L")},
			{Name: "returned for a good shift", Value: working.In(plan.Returned, unit.Litre, "L")},
			{Name: "rate while moving", Value: working.In(plan.Rate, unit.LitrePerMinute, "L/min"), For: display.SmallRate}, {Name: "flow in the line", Value: plan.Regime},
			{Name: "pressure arrives after", Value: plan.Delay}, {Name: "shift done after", Value: plan.Total},
			{Name: "the reading says", Value: d.Finding.String()},
		},
		Steps: append(append(r.Steps(), plan.Steps()...), warm.Steps()...),
	}
	for _, note := range []string{r.Beyond, plan.Beyond} {
		if note != "" {
			a.Notes = append(a.Notes, note)
		}
	}
	if warm.Rise < -in.shift.Pump {
		a.Notes = append(a.Notes, "blocked under the pump's pressure and cooled so far, the line falls to no pressure and the liquid boils or parts")
	}
	if blocked.Burst > 1 {
		a.Failed = true
		a.Notes = append(a.Notes, fmt.Sprintf("blocked under the pump's pressure and warmed, the line is at %.0f %% of its working pressure: bleed it as it warms", 100*blocked.Burst))
	}
	if d.Finding != controlline.Shifted {
		a.Failed = true
		litres := func(v unit.Volume) string { return in.units.Format(v, display.SmallVolume) }
		a.Notes = append(a.Notes, fmt.Sprintf("%s: %s went in beyond the line's storage, %.0f %% of a stroke came back, %s of it unaccounted for",
			d.Finding, litres(d.Past), 100*d.Stroke, litres(d.Unbalance)))
	}
	if full.Burst > 1 || vented.Collapse > 1 {
		a.Failed = true
		a.Notes = append(a.Notes, fmt.Sprintf("the line is loaded beyond its rating: %.0f %% of burst, %.0f %% of collapse", 100*full.Burst, 100*vented.Collapse))
	}
	if in.line.OD == 0.25*unit.Inch && in.line.Wall == 0.049*unit.Inch && in.line.Yield == 30000*unit.PSI && in.line.WallTolerance == 0.1 {
		a.Published = &calculator.Published{Name: "working pressure of 1/4 x 0.049 in line", Printed: "9260 psi", Ours: r.Working,
			Source: "table of TP316L control line at 100 degF; yield strength inferred from it"}
	}
	return a, nil
}
