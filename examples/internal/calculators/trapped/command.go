// Package trapped tells what pressure a closed annulus or pipe comes to when it is
// heated or squeezed, and what has to be bled.
package trapped

import (
	"errors"
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/fluid"
	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "trapped",
	Question: "what does a trapped volume come to when it is heated or squeezed, and how much must be bled?",
	Setup:    setup,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	steel := confined.Tube{Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 6.9e-6 * unit.PerFahrenheit}
	outer, inner := steel, steel
	var t confined.Trapped
	var brine fluid.Brine
	var place place
	var gas unit.Volume
	var from, to unit.Temperature
	var bleedTo unit.Pressure
	flags.TextVar(&outer.OD, "casing-od", 9.625*unit.Inch, "outside diameter of the outer pipe")
	flags.TextVar(&outer.ID, "casing-id", 8.681*unit.Inch, "inside diameter of the outer pipe, the casing")
	flags.BoolVar(&outer.Rigid, "cemented", false, "take the outer pipe as unmoved, backed by rock")
	flags.TextVar(&inner.OD, "od", 3.5*unit.Inch, "outside diameter of the inner pipe; 0 in for a pipe alone")
	flags.TextVar(&inner.ID, "id", 2.992*unit.Inch, "inside diameter of the inner pipe")
	flags.TextVar(&place.length, "length", 9800*unit.Foot, "length of the space along the hole; unused with -survey")
	flags.TextVar(&place.top, "top", 0*unit.Foot, "true vertical depth of the top of the space; measured with -survey")
	flags.TextVar(&place.bottom, "depth", 9000*unit.Foot, "true vertical depth of its lower end; measured with -survey")
	place.well = wellpath.Flag(flags)
	flags.TextVar(&brine.At70F, "density", 9.5*unit.PoundPerGallon, "density of the brine at 70 °F; 0 lb/gal is fresh water")
	flags.TextVar(&brine.Expansion, "expansivity", 2.54e-4*unit.PerFahrenheit, "expansivity of the brine")
	flags.TextVar(&brine.Compression, "compressibility", 1.98e-6*unit.PerPSI, "compressibility of the brine")
	flags.TextVar(&gas, "gas-volume", 0*unit.Barrel, "nitrogen in the space at the starting pressure")
	flags.TextVar(&t.Pressure, "pressure-before", 2400*unit.PSI, "pressure before, at the mean depth")
	flags.TextVar(&from, "temperature-before", unit.Fahrenheit(100), "mean temperature of the fluid before")
	flags.TextVar(&to, "temperature-after", unit.Fahrenheit(160), "mean temperature of the fluid after")
	flags.TextVar(&t.HeatOuter, "casing-heats", 50*unit.FahrenheitDifference, "warming of the outer pipe")
	flags.TextVar(&t.HeatInner, "tubing-heats", 70*unit.FahrenheitDifference, "warming of the inner pipe")
	flags.TextVar(&t.Squeeze, "squeeze", 0*unit.Barrel, "volume taken from the space")
	flags.TextVar(&bleedTo, "bleed-to", 2400*unit.PSI, "pressure to bleed down to, at the mean depth")
	return func() (calculator.Answer, error) {
		t.Space = confined.Space{Outer: outer}
		if inner.OD != 0 {
			t.Space.Inner = &inner
		}
		at, err := place.find()
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		length := at.length
		fill := confined.Fill{Name: "brine", Fluid: brine, Volume: unit.Volume(float64(t.Space.Area())*float64(length)) - gas, From: from, To: to}
		if brine.At70F == 0 {
			fill.Name, fill.Fluid = "water", fluid.Water{}
		}
		t.Fills = []confined.Fill{fill}
		if gas != 0 {
			t.Fills = append(t.Fills, confined.Fill{Name: "nitrogen", Fluid: fluid.Nitrogen{}, Volume: gas, From: from, To: to})
		}
		o, err := t.Solve()
		if errors.Is(err, confined.ErrVoid) || errors.Is(err, fluid.ErrOutsideRange) {
			return calculator.Answer{}, err
		} else if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		bleed, err := t.BleedVolume(bleedTo)
		if err != nil {
			return calculator.Answer{}, err
		}
		bled, name := bleed, "volume to bleed"
		if bleed < 0 {
			bled, name = -bleed, "volume to pump in, as it is below that pressure"
		}
		a := calculator.Answer{
			Steps: o.Steps(),
			Results: []calculator.Result{
				{Name: "volume of the space", Value: o.Volume},
				{Name: "compliance of the walls", Value: o.WallCompliance},
				{Name: "compressibility of the fluids", Value: o.Compressibility},
				{Name: "growth of the fluids, unhindered", Value: working.In(o.FluidExpansion, unit.Barrel, "bbl")},
				{Name: "growth of the space by heat", Value: working.In(o.WallExpansion, unit.Barrel, "bbl")},
				{Name: "pressure after", Value: o.After},
				{Name: "rise", Value: o.Rise},
				{Name: name, Value: working.In(bled, unit.Barrel, "bbl")},
			},
			Notes: []string{"A wall backed by rock gives less way (-cemented): the pressure is then higher. Check burst of the outer pipe and collapse of the inner one."},
		}
		density := brine.At70F
		if density == 0 {
			if density, err = (fluid.Water{}).Density(0, unit.Fahrenheit(70)); err != nil {
				return calculator.Answer{}, err
			}
		}
		at.tell(&a, density, gas != 0, t.Pressure, o.After)
		return a, nil
	}
}
