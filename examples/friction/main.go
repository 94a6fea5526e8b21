// Friction tells what a fluid loses in pipe or annulus, by its viscometer
// readings or by its constants.
package main

import (
	"flag"
	"fmt"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

var command = calculator.Command{
	Name:     "friction",
	Question: "what pressure does a fluid lose in pipe or annulus, and when does it turn turbulent?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var s flow.Stream
	var length unit.Length
	dials := readings{{Speed: 100, Dial: 21}, {Speed: 3, Dial: 8}}
	model := flow.ModelPowerLaw
	flags.TextVar(&s.Conduit.Outer, "outer", 8.835*unit.Inch, "inside diameter of the pipe, casing or hole")
	flags.TextVar(&s.Conduit.Inner, "inner", 4.5*unit.Inch, "outside diameter of the pipe within; 0 in for a pipe alone")
	flags.TextVar(&s.Conduit.Roughness, "roughness", 0*unit.Millimetre, "roughness of the walls")
	flags.TextVar(&s.Density, "density", 12.8*unit.PoundPerGallon, "density of the fluid")
	flags.TextVar(&s.Rate, "rate", 335*unit.GallonPerMinute, "rate")
	flags.TextVar(&length, "length", 10786*unit.Foot, "length")
	flags.TextVar(&dials, "readings", dials, "viscometer readings, SPEED=DIAL in rev/min and degrees; none takes the constants below")
	flags.TextVar(&model, "model", model, "law fitted to the readings: newtonian, bingham, power-law, herschel-bulkley")
	flags.TextVar(&s.Rheology.Yield, "yield", unit.Pressure(0), "yield stress, without readings")
	flags.TextVar(&s.Rheology.Consistency, "consistency", 0.001*unit.PascalSecondN, "consistency index, without readings")
	flags.Float64Var(&s.Rheology.Index, "index", 1, "flow index, without readings")
	return func() (calculator.Answer, error) {
		a, s := calculator.Answer{}, s // the inputs stay as they were given
		if len(dials) > 0 {
			fit, err := flow.Fit(model, dials)
			if err != nil {
				return a, calculator.BadInput{Err: err}
			}
			s.Rheology = fit.Rheology
			a.Results = append(a.Results, calculator.Result{Name: "worst miss of the fit", Value: working.In(fit.Worst, unit.Pascal, "Pa")})
			if fit.Freedom == 0 {
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
			calculator.Result{Name: "yield stress", Value: working.In(s.Rheology.Yield, unit.Pascal, "Pa")},
			calculator.Result{Name: "consistency index", Value: working.In(s.Rheology.Consistency, unit.PascalSecondN, "Pa.s^n")},
			calculator.Result{Name: "flow index", Value: s.Rheology.Index},
			calculator.Result{Name: "velocity", Value: working.In(f.Velocity, unit.FootPerMinute, "ft/min")},
			calculator.Result{Name: "generalised Reynolds number", Value: f.Reynolds},
			calculator.Result{Name: "regime", Value: f.Regime},
			calculator.Result{Name: "Fanning friction factor", Value: f.Factor},
			calculator.Result{Name: "friction gradient", Value: f.Gradient},
			calculator.Result{Name: "pressure lost", Value: f.Loss(length)})
		if k, err := flow.CriticalRates(s.Conduit, s.Rheology, s.Density); err == nil {
			a.Results = append(a.Results, calculator.Result{Name: "laminar up to", Value: working.In(k.Laminar, unit.GallonPerMinute, "gal/min")},
				calculator.Result{Name: "turbulent from", Value: working.In(k.Turbulent, unit.GallonPerMinute, "gal/min")})
		} else {
			a.Notes = append(a.Notes, err.Error())
		}
		if f.Beyond != "" {
			a.Notes = append(a.Notes, f.Beyond)
		}
		a.Steps = f.Steps()
		sheet(&a, s, length)
		return a, nil
	}
}

// sheet adds the figures of the usual rig sheet where the fluid is a power law.
func sheet(a *calculator.Answer, s flow.Stream, length unit.Length) {
	f, err := s.APIFigures()
	if err != nil || s.Conduit.Roughness != 0 {
		return // neither yield stress nor roughness is in those figures
	}
	loss := unit.Pressure(float64(f.Gradient) * float64(length))
	a.Results = append(a.Results, calculator.Result{Name: "pressure lost as API RP 13D's third edition has it", Value: loss})
	if s.Conduit.Inner == 4.5*unit.Inch && s.Rate == 335*unit.GallonPerMinute && length == 10786*unit.Foot {
		a.Published = &calculator.Published{Name: "casing annulus of a worked set, which takes it as a slot", Printed: "178.44 psi", Ours: loss,
			Source: "API RP 13D (3rd/4th edition) worked set, 12.8 lb/gal, 335 gal/min, readings 53/34/21/8"}
	}
}
