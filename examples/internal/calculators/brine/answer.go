package brine

import (
	"errors"
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

func answer(in input) (calculator.Answer, error) {
	b, err := in.brine()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	bottom, err := b.State(in.pressure, in.bottom)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	mix, err := b.SurfaceWeight(fluid.WellAverage{Wanted: in.wanted, Surface: in.surface, Bottom: in.bottom, BottomPressure: in.pressure})
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "density at the bottom of the well", Value: bottom.Density},
			{Name: "compressibility there", Value: bottom.Compressibility},
			{Name: "thermal expansion there", Value: bottom.Expansivity},
			{Name: "mean correction for temperature", Value: mix.Thermal},
			{Name: "mean correction for pressure", Value: mix.Squeeze},
			{Name: "weight to mix at surface", Value: mix.Weight},
			{Name: "the same counted at 70 degF", Value: mix.At70F},
		},
		Steps: append(bottom.Steps(), mix.Steps()...),
	}
	if in.at70F == 9.5*unit.PoundPerGallon && in.wanted == in.at70F && in.table == "bridges" && in.system == fluid.SystemNaCl && in.bottom == unit.Fahrenheit(260) && in.surface == unit.Fahrenheit(80) {
		a.Published = &calculator.Published{Name: "mean correction for temperature", Printed: "0.3474 lb/gal", Ours: mix.Thermal,
			Source: "Well Control for Completions and Interventions (2018), pp. 194-195"}
	}
	have := fluid.Batch{Volume: in.volume, Density: in.at70F}
	if _, err := fluid.Blend(have); err != nil {
		return a, calculator.BadInput{Err: err}
	}
	if in.with != 0 {
		if err := in.adjust(&a, have, mix.At70F); err != nil {
			return a, calculator.BadInput{Err: err}
		}
	}
	if in.salt != "none" {
		err = in.dissolve(&a, have, mix.At70F)
	}
	return a, err
}

// adjust brings the pits to weight with another fluid.
func (in input) adjust(a *calculator.Answer, have fluid.Batch, weight unit.Density) error {
	d, err := fluid.Adjust(have, weight, in.with)
	if err != nil {
		return err
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "fluid to add if volumes add up", Value: barrels(d.Added.Volume)},
		calculator.Result{Name: "volume then", Value: barrels(d.After.Volume)})
	a.Steps = append(a.Steps, d.Steps()...)
	return nil
}

func barrels(v unit.Volume) any { return working.In(v, unit.Barrel, "bbl") }

// dissolve brings the pits to weight with dry salt or water, and asks when the
// brine crystallises. What has no data is a note, not a failure.
func (in input) dissolve(a *calculator.Answer, have fluid.Batch, weight unit.Density) error {
	var salt fluid.Salt
	if err := salt.UnmarshalText([]byte(in.salt)); err != nil {
		return calculator.BadInput{Err: err}
	}
	pits := unit.Fahrenheit(70) // the stated density's
	s, err := fluid.SolutionOfDensity(salt, in.at70F, pits)
	if err := note(a, err); err != nil {
		return err
	} else if s.Salt == 0 {
		return nil
	}
	a.Results = append(a.Results, calculator.Result{Name: "salt in the brine, per cent by weight", Value: 100 * s.Fraction})
	in.crystallise(a, s, "the brine in the pits")
	tr, err := fluid.Treat(salt, have, weight, pits)
	if err != nil {
		return note(a, err)
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "dry " + in.salt + " to add", Value: tr.SaltAdded},
		calculator.Result{Name: "fresh water to add", Value: barrels(tr.WaterVolume)},
		calculator.Result{Name: "volume with it", Value: barrels(tr.After.Volume)})
	a.Steps = append(a.Steps, tr.Steps()...)
	in.crystallise(a, fluid.Solution{Salt: salt, Fraction: tr.Fractions[1]}, "the brine at weight")
	return nil
}

func (in input) crystallise(a *calculator.Answer, s fluid.Solution, of string) {
	c, err := fluid.Crystallisation(s.Salt, s.Fraction, 0)
	if err != nil {
		a.Notes = append(a.Notes, fmt.Sprintf("Crystallisation of %s: %v.", of, err))
		return
	}
	a.Results = append(a.Results, calculator.Result{Name: fmt.Sprintf("crystallisation of %s (%v first)", of, c.Solid), Value: c.Temperature})
}

// note turns a want of data, or a state outside it, into a note.
func note(a *calculator.Answer, err error) error {
	if errors.Is(err, fluid.ErrNoData) || errors.Is(err, fluid.ErrOutsideRange) {
		a.Notes = append(a.Notes, err.Error())
		return nil
	}
	return err
}
