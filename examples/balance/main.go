// Balance tells over- or underbalance at a formation, the kill density, and how
// to leave a well underbalanced by a wanted pressure.
package main

import (
	"errors"
	"flag"
	"fmt"

	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

var command = calculator.Command{
	Name:     "balance",
	Question: "is the well over- or underbalanced, what kills it, and what leaves it underbalanced as wanted?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

type input struct {
	formation                     hydrostatics.Formation
	margin, underbalance, surface unit.Pressure
	density                       unit.Density
	light                         string
	cushion, shoe                 unit.Length
	fracture                      unit.Gradient
	temperature                   unit.Temperature
	gradient                      unit.TemperatureGradient
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	flags.TextVar(&in.formation.Pressure, "formation", 4690*unit.PSI, "formation pressure")
	flags.TextVar(&in.formation.TVD, "depth", 10000*unit.Foot, "TVD of the formation")
	flags.TextVar(&in.margin, "margin", 250*unit.PSI, "overbalance wanted of the kill fluid")
	flags.TextVar(&in.density, "density", 9.2*unit.PoundPerGallon, "fluid in the well")
	flags.TextVar(&in.surface, "pressure", 0*unit.PSI, "pressure at surface")
	flags.TextVar(&in.underbalance, "underbalance", 500*unit.PSI, "underbalance wanted before the well is opened")
	flags.StringVar(&in.light, "light", "empty", "what stands on the fluid: empty, a density, water, seawater, nitrogen, methane")
	flags.TextVar(&in.cushion, "cushion", 4000*unit.Foot, "TVD down to which a cushion of it reaches, for its surface pressure")
	flags.TextVar(&in.fracture, "fracture", 0.8*unit.PSIPerFoot, "fracture gradient at the shoe")
	flags.TextVar(&in.shoe, "shoe", 9000*unit.Foot, "TVD of the casing shoe")
	flags.TextVar(&in.temperature, "surface", unit.Fahrenheit(70), "temperature at surface")
	flags.TextVar(&in.gradient, "gradient", 1.5*unit.FahrenheitPer100Feet, "temperature gradient")
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in input) answer() (calculator.Answer, error) {
	heavy := hydrostatics.Incompressible(in.density)
	light, err := stack.Named(in.light)
	profile, err2 := hydrostatics.Geothermal{Ground: in.temperature, Gradient: in.gradient}.Profile(in.formation.TVD)
	column, err3 := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: heavy, Bottom: in.formation.TVD}}, nil, hydrostatics.Reference{Pressure: in.surface})
	if err := errors.Join(err, err2, err3); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	well, err := column.At(in.formation.TVD)
	if err != nil {
		return calculator.Answer{}, err
	}
	limit, err := hydrostatics.MaximumSurfacePressure(column, []hydrostatics.WeakPoint{hydrostatics.FracturePoint("shoe", in.fracture, in.shoe)})
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	over, kill := in.formation.Overbalance(well), in.formation.KillDensity(in.margin)
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "well pressure at the formation", Value: well},
			{Name: "overbalance", Value: over},
			{Name: "kill density with the margin", Value: kill},
			{Name: "greatest surface pressure the shoe allows", Value: limit.Pressure},
		},
		Steps: append(in.formation.Steps(in.margin), limit.Steps()...),
	}
	if over < 0 {
		a.Notes = append(a.Notes, "the well is underbalanced: an open formation flows")
	}
	level, cushion := "depth of "+in.light+" on the fluid that gives the underbalance", "surface pressure on a cushion of "+in.light+" that gives it"
	if in.light == "empty" {
		level, cushion = "fluid level that gives the underbalance", "surface pressure that gives it with the level at the cushion's depth"
	}
	c := hydrostatics.Cushion{Formation: in.formation, Underbalance: in.underbalance, Surface: in.surface, Light: light, Heavy: heavy, Temperature: profile}
	if x, err := c.Length(); err == nil {
		a.Results = append(a.Results, calculator.Result{Name: level, Value: x.Length})
	} else {
		a.Notes = append(a.Notes, fmt.Sprint(err))
	}
	if x, err := c.Pressure(in.cushion); err == nil {
		a.Results = append(a.Results, calculator.Result{Name: cushion, Value: x.Surface})
	} else {
		a.Notes = append(a.Notes, fmt.Sprint(err))
	}
	if in.formation == (hydrostatics.Formation{Pressure: 4690 * unit.PSI, TVD: 10000 * unit.Foot}) && in.margin == 250*unit.PSI {
		a.Published = &calculator.Published{Name: "kill density", Printed: "9.5 lb/gal", Ours: kill, Source: "Well Control for Completions and Interventions, 2018, p. 194"}
	}
	return a, nil
}
