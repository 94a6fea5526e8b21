package balance

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"
	"slices"

	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

func (in input) answer() (calculator.Answer, error) {
	heavy := hydrostatics.Incompressible(in.density)
	light, err := stack.Named(in.light)
	profile, err2 := hydrostatics.Geothermal{Ground: in.temperature, Gradient: in.gradient}.Profile(in.formation.TVD)
	column, err3 := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: heavy, BottomTVD: in.formation.TVD}}, nil, hydrostatics.Reference{Pressure: in.surface})
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
		Steps: slices.Concat(column.Steps(), in.formation.BalanceSteps(well), in.formation.Steps(in.margin), limit.Steps()),
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
		a.Results = append(a.Results, calculator.Result{Name: level, Value: x.LevelTVD})
		a.Steps = append(a.Steps, c.LengthSteps(x)...)
	} else {
		a.Notes = append(a.Notes, fmt.Sprint(err))
	}
	if x, err := c.Pressure(in.cushion); err == nil {
		a.Results = append(a.Results, calculator.Result{Name: cushion, Value: x.Surface})
		for _, step := range c.PressureSteps(x)[1:] { // the wanted pressure is above
			step.Name += ", cushion to " + in.units.Format(in.cushion, display.Depth)
			a.Steps = append(a.Steps, step)
		}
	} else {
		a.Notes = append(a.Notes, fmt.Sprint(err))
	}
	if in.formation == (hydrostatics.Formation{Pressure: 4690 * unit.PSI, TVD: 10000 * unit.Foot}) && in.margin == 250*unit.PSI {
		a.Published = &calculator.Published{Name: "kill density", Printed: "9.5 lb/gal", Ours: kill, Source: "Well Control for Completions and Interventions, 2018, p. 194"}
	}
	return a, nil
}
