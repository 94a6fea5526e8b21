// Utube tells how tubing and annulus come to rest when a port between them
// opens.
package main

import (
	"errors"
	"flag"

	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

var command = calculator.Command{
	Name:     "utube",
	Question: "a port opens between tubing and annulus: which way does it flow, how much, and what holds it?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

const (
	tubingExam  = "9 lb/gal to 10000 ft"
	annulusExam = "10 lb/gal to 7000 ft, 8 lb/gal to 7500 ft, 12.5 lb/gal to 9000 ft, 16.5 lb/gal to 10000 ft"
)

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	tubing, annulus := stack.Default(tubingExam), stack.Default(annulusExam)
	var u hydrostatics.UTube
	var inside, outside unit.Area
	flags.TextVar(&u.Port, "port", 10000*unit.Foot, "depth of the port, in a vertical well")
	flags.TextVar(&tubing, "tubing", tubing, "fluids in the tubing from its level down to the port, DENSITY to DEPTH")
	flags.TextVar(&annulus, "annulus", annulus, "fluids in the annulus, likewise")
	flags.TextVar(&u.Tubing.Level, "tubing-level", 0*unit.Foot, "liquid level in the tubing")
	flags.TextVar(&u.Annulus.Level, "annulus-level", 0*unit.Foot, "liquid level in the annulus")
	flags.TextVar(&u.Tubing.Surface, "tubing-pressure", 0*unit.PSI, "pressure held on the tubing")
	flags.TextVar(&u.Annulus.Surface, "annulus-pressure", 0*unit.PSI, "pressure held on the annulus")
	flags.TextVar(&inside, "tubing-capacity", 0.0773*unit.BarrelPerFoot, "capacity of the tubing")
	flags.TextVar(&outside, "annulus-capacity", 0.0558*unit.BarrelPerFoot, "capacity of the annulus")
	return func() (calculator.Answer, error) {
		var err1, err2 error
		u.Tubing.Fluids, err1 = tubing.Stretches()
		u.Annulus.Fluids, err2 = annulus.Stretches()
		if err := errors.Join(err1, err2); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		u.Tubing.Sections = []hydrostatics.Section{{Bottom: u.Port, Area: inside}}
		u.Annulus.Sections = []hydrostatics.Section{{Bottom: u.Port, Area: outside}}
		r, err := u.Rest()
		if err != nil && !errors.Is(err, hydrostatics.ErrNoBalance) {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		if err != nil {
			return calculator.Answer{}, err
		}
		a := answer(r)
		t, _ := tubing.MarshalText()
		n, _ := annulus.MarshalText()
		if string(t) == tubingExam && string(n) == annulusExam && u.Annulus.Level == 0 && u.Annulus.Surface == 0 && u.Port == 10000*unit.Foot {
			a.Published = &calculator.Published{Name: "annulus at the port before it opens, with 0.052 psi/ft per lb/gal", Printed: "5681 psi", Ours: r.Annulus.Before,
				Source: "PE petroleum exam review, Pumping 2021-29"}
		}
		return a, nil
	}
}

func answer(r hydrostatics.AtRest) calculator.Answer {
	return calculator.Answer{
		Results: []calculator.Result{
			{Name: "leg that falls", Value: r.Falling.String()},
			{Name: "surface pressure on the other leg that holds it", Value: r.Holding},
			{Name: "volume through the port", Value: r.Moved},
			{Name: "returned at surface by the other leg", Value: r.Returned},
			{Name: "level in the tubing", Value: r.Tubing.Level},
			{Name: "level in the annulus", Value: r.Annulus.Level},
			{Name: "pressure at the port, at rest", Value: r.Pressure},
		},
		Steps: r.Steps(),
		Notes: []string{"at rest; in the well the columns swing past it, and fluids mix"},
	}
}
