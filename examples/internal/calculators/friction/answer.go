package friction

import (
	"completion.example/hydrostatics/unit/display"
	"fmt"
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

func answer(s flow.Stream, dials readings, model flow.Model, length unit.Length) (calculator.Answer, error) {
	var a calculator.Answer
	if len(dials) > 0 {
		fit, err := flow.Fit(model, dials)
		if err != nil {
			return a, calculator.BadInput{Err: err}
		}
		s.Rheology = fit.Rheology
		if fit.Freedom > 0 {
			a.Results = append(a.Results, calculator.Result{Name: "worst miss of the fit", Value: working.In(fit.Worst, unit.PoundForcePer100SquareFeet, "lbf/100ft2")})
		} else {
			a.Notes = append(a.Notes, fmt.Sprintf("%d readings make a curve through every point, and no test of the law", len(dials)))
		}
		if fit.AtBound {
			a.Notes = append(a.Notes, "a physical bound holds a constant of the fit: the law doesn't suit the readings")
		}
	}
	f, err := s.Friction()
	if err != nil {
		return a, calculator.BadInput{Err: err}
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "yield stress", Value: working.In(s.Rheology.Yield, unit.PoundForcePer100SquareFeet, "lbf/100ft2")},
		calculator.Result{Name: "consistency index", Value: s.Rheology.Consistency},
		calculator.Result{Name: "flow index", Value: s.Rheology.Index},
		calculator.Result{Name: "velocity", Value: working.In(f.Velocity, unit.FootPerMinute, "ft/min")},
		calculator.Result{Name: "generalised Reynolds number", Value: f.Reynolds},
		calculator.Result{Name: "regime", Value: f.Regime},
		calculator.Result{Name: "Fanning friction factor", Value: f.Factor},
		calculator.Result{Name: "friction gradient", Value: f.Gradient},
		calculator.Result{Name: "pressure lost", Value: f.Loss(length)})
	if k, err := flow.CriticalRates(s.Conduit, s.Rheology, s.Density); err == nil {
		a.Results = append(a.Results, calculator.Result{Name: "laminar up to", Value: working.In(k.Laminar, unit.GallonPerMinute, "gal/min"), For: display.PumpRate},
			calculator.Result{Name: "turbulent from", Value: working.In(k.Turbulent, unit.GallonPerMinute, "gal/min"), For: display.PumpRate})
	} else {
		a.Notes = append(a.Notes, err.Error())
	}
	if f.Beyond != "" {
		a.Notes = append(a.Notes, f.Beyond)
	}
	a.Steps = f.Steps()
	loss, ok := sheet(&a, s, length)
	if ok && isExample(s, dials, model, length) {
		a.Published = &calculator.Published{Name: "casing annulus of a worked set, which takes it as a slot", Printed: "178.44 psi", Ours: loss,
			Source: "API RP 13D (3rd/4th edition) worked set, 12.8 lb/gal, 335 gal/min, readings 53/34/21/8"}
	}
	return a, nil
}

// isExample tells whether the inputs are those of the published case.
func isExample(s flow.Stream, dials readings, model flow.Model, length unit.Length) bool {
	return slices.Equal(dials, readings{{Speed: 100, Dial: 21}, {Speed: 3, Dial: 8}}) && model == flow.ModelPowerLaw &&
		s.Conduit == flow.Conduit{Outer: 8.835 * unit.Inch, Inner: 4.5 * unit.Inch} &&
		s.Density == 12.8*unit.PoundPerGallon && s.Rate == 335*unit.GallonPerMinute && length == 10786*unit.Foot
}

// sheet adds the figures of the usual rig sheet where the fluid is a power law.
func sheet(a *calculator.Answer, s flow.Stream, length unit.Length) (loss unit.Pressure, ok bool) {
	f, err := s.APIFigures()
	if err != nil || s.Conduit.Roughness != 0 {
		return 0, false // neither yield stress nor roughness is in those figures
	}
	loss = unit.Pressure(float64(f.Gradient) * float64(length))
	a.Results = append(a.Results, calculator.Result{Name: "pressure lost as API RP 13D's third edition has it", Value: loss})
	return loss, true
}
