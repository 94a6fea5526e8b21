// Package column tells the pressure in a column of layered fluids at every depth.
package column

import (
	"completion.example/examples/internal/wellpath"
	"errors"
	"flag"
	"fmt"

	"completion.example/examples/internal/stack"
	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "column",
	Question: "what is the pressure in a column of layered fluids, and what mud weight is it worth?",
	Setup:    setup,
	Picture:  true,
}

const exam = "10 lb/gal to 7000 ft, 8 lb/gal to 7500 ft, 12.5 lb/gal to 9000 ft, 16.5 lb/gal to 10000 ft"

// usual is base oil on brine, before a well is opened.
const usual = "6.8 lb/gal to 4000 ft, 9.2 lb/gal to 9000 ft"

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	layers := stack.Default(usual)
	var pressure, wanted unit.Pressure
	var at, depth unit.Length
	var surface unit.Temperature
	var gradient unit.TemperatureGradient
	flags.TextVar(&layers, "layers", layers, "fluids from surface down by TVD, FLUID to DEPTH, ...; FLUID is "+stack.Usage())
	flags.TextVar(&pressure, "pressure", 0*unit.PSI, "known pressure")
	flags.TextVar(&at, "at", 0*unit.Foot, "true vertical depth where the pressure is known")
	flags.TextVar(&depth, "depth", 9000*unit.Foot, "true vertical depth where the pressure is asked")
	flags.TextVar(&wanted, "wanted-pressure", 3000*unit.PSI, "pressure whose depth is asked")
	flags.TextVar(&surface, "surface-temperature", unit.Fahrenheit(70), "temperature at surface")
	flags.TextVar(&gradient, "temperature-gradient", 1.5*unit.FahrenheitPer100Feet, "temperature gradient")
	well := wellpath.Flag(flags)
	return func() (calculator.Answer, error) {
		bottoms := []*unit.Length{&at, &depth}
		published := well.Path() == nil
		for i := range layers {
			bottoms = append(bottoms, &layers[i].Bottom)
		}
		if err := well.Vertical(bottoms...); err != nil {
			return calculator.Answer{}, err
		}
		profile, err := hydrostatics.Geothermal{Ground: surface, Gradient: gradient}.Profile(layers.Bottom())
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		c, err := hydrostatics.NewColumn(layers.Layers(0), profile, hydrostatics.Reference{Pressure: pressure, TVD: at})
		if errors.Is(err, fluid.ErrOutsideRange) {
			return calculator.Answer{}, err
		} else if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		p, err := c.At(depth)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		a := calculator.Answer{Results: []calculator.Result{{Name: "pressure at the depth asked", Value: p}}, Steps: c.Steps()}
		if rho, err := c.EquivalentDensity(depth); err == nil {
			a.Results = append(a.Results, calculator.Result{Name: "equivalent mud weight there", Value: rho})
		}
		if z, err := c.Depth(wanted); err == nil {
			a.Results = append(a.Results, calculator.Result{Name: "depth of the pressure wanted", Value: z})
		} else {
			a.Notes = append(a.Notes, fmt.Sprint(err))
		}
		if a.Tables, err = table(c); err != nil {
			return calculator.Answer{}, err
		}
		if text, _ := layers.MarshalText(); published && string(text) == exam && pressure == 0 && at == 0 && depth == 10000*unit.Foot {
			a.Published = &calculator.Published{Name: "annulus of a cementing exercise, with 0.052 psi/ft per lb/gal", Printed: "5681 psi", Ours: p,
				Source: "PE petroleum exam review, Pumping 2021-29"}
		}
		a.Draw = picture(calculator.UnitsOf(flags).System, c, layers)
		well.Tell(&a)
		return a, nil
	}
}
