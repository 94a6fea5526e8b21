// Controlline tells what a control line stands and takes, how long a shift lasts,
// and what volumes tell a good shift from a leak.
package main

import (
	"errors"
	"flag"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve/controlline"
)

var command = calculator.Command{
	Name:     "controlline",
	Question: "what does a control line stand and take up, and how is a shift told from a leak?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

type input struct {
	line    controlline.Line
	shift   controlline.Shift
	around  controlline.Outside
	warming unit.TemperatureDifference
	metal   unit.Expansivity
	reading controlline.Reading
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	l, q, s := &in.line, &in.shift.Liquid, &in.shift
	flags.TextVar(&l.OD, "od", 0.25*unit.Inch, "outside diameter of the line")
	flags.TextVar(&l.Wall, "wall", 0.049*unit.Inch, "wall, nominal")
	flags.TextVar(&l.Length, "length", 10000*unit.Foot, "measured length from the panel")
	flags.TextVar(&l.Depth, "depth", 9800*unit.Foot, "true vertical depth of the device")
	flags.TextVar(&l.Yield, "yield", 30000*unit.PSI, "yield strength of the line")
	flags.TextVar(&l.Young, "young", 28e6*unit.PSI, "Young's modulus of the line")
	flags.Float64Var(&l.Poisson, "poisson", 0.3, "Poisson's ratio of the line")
	flags.Float64Var(&l.WallTolerance, "wall-tolerance", 0.1, "share by which the wall may be thinner")
	flags.TextVar(&q.Density, "density", 7.26*unit.PoundPerGallon, "density of the control fluid")
	flags.TextVar(&q.Viscosity, "viscosity", 10*unit.Centipoise, "viscosity of the control fluid at its temperature in the line")
	flags.TextVar(&q.Compressibility, "compressibility", 3.8e-6*unit.PerPSI, "compressibility of the control fluid")
	flags.TextVar(&q.Expansivity, "expansivity", 0.0004*unit.PerFahrenheit, "volume expansivity of the control fluid")
	flags.TextVar(&s.Pump, "pump", 3000*unit.PSI, "pressure held at the panel")
	flags.TextVar(&s.Move, "move", 500*unit.PSI, "differential at the device that keeps it moving")
	flags.TextVar(&s.Swept, "swept", 0.13*unit.Gallon, "volume of the stroke on the feed side")
	flags.TextVar(&s.Displaced, "displaced", 0.13*unit.Gallon, "volume of the stroke on the vent side")
	flags.TextVar(&in.around.Bottom, "annulus", 4400*unit.PSI, "pressure around the line at the device")
	flags.TextVar(&in.warming, "warming", 50*unit.FahrenheitDifference, "warming of a blocked line")
	flags.TextVar(&in.metal, "metal", 9e-6*unit.PerFahrenheit, "linear expansivity of the line")
	flags.TextVar(&in.reading.Pumped, "pumped", 0.245*unit.Gallon, "volume pumped, as measured")
	flags.TextVar(&in.reading.Returned, "returned", 0.128*unit.Gallon, "volume returned, as measured")
	flags.TextVar(&in.reading.Uncertainty, "uncertainty", 0.01*unit.Gallon, "uncertainty of each")
	return func() (calculator.Answer, error) { return in.answer() }
}

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
	r := full.Ratings
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "working pressure of the line", Value: r.Working}, {Name: "collapse pressure of the line", Value: r.Collapse},
			{Name: "share of the working pressure used", Value: full.Burst}, {Name: "share of collapse used when vented", Value: vented.Collapse},
			{Name: "head at the device", Value: head}, {Name: "rise when blocked and warmed", Value: warm.Rise},
			{Name: "pumped if nothing moves", Value: working.In(plan.Held, unit.Litre, "L")}, {Name: "pumped for a good shift", Value: working.In(plan.Pumped, unit.Litre, "L")},
			{Name: "returned for a good shift", Value: working.In(plan.Returned, unit.Litre, "L")},
			{Name: "rate while moving", Value: working.In(plan.Rate, unit.LitrePerMinute, "L/min")}, {Name: "flow in the line", Value: plan.Regime},
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
