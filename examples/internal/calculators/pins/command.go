// Package pins tells at what pressure shear pins part, and how many of the pins at hand
// suit a wanted window.
package pins

import (
	"errors"
	"flag"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "pins",
	Question: "at what pressure do shear pins part, and how many suit a wanted window?",
	Setup:    setup,
	Picture:  true,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var pins valve.Pins
	var area unit.Area
	var window unit.Band[unit.Pressure]
	flags.IntVar(&pins.Count, "pins", 6, "number of pins installed")
	flags.TextVar(&pins.Strength, "strength", 4500*unit.PoundForce, "strength of one pin, nominal")
	flags.Float64Var(&pins.Tolerance, "tolerance", 0.05, "tolerance: largest relative deviation of one pin; ±5 to ±10 % is common practice")
	flags.Float64Var(&pins.TemperatureFactor, "factor", 1, "strength at temperature over the strength tested")
	flags.TextVar(&pins.Correlation, "correlation", valve.Independent, "how the deviations go together: lot or independent")
	flags.TextVar(&area, "area", 8*unit.SquareInch, "area that the pressure acts on")
	flags.TextVar(&window, "window", unit.Band[unit.Pressure]{Least: 3000 * unit.PSI, Nominal: 3300 * unit.PSI, Greatest: 3600 * unit.PSI},
		"differential below which the pins must hold, and at which they must have parted")
	stock := flags.Int("stock", 12, "number of such pins at hand, or of holes for them")
	u := calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		full, err1 := pins.PressureOn(area)
		likely, err2 := pins.LikelyPressureOn(area)
		force, _ := pins.Force() // its faults are those of PressureOn
		if err := errors.Join(err1, window.Validate()); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		} else if err2 != nil {
			return calculator.Answer{}, err2
		}
		a := calculator.Answer{
			Results: []calculator.Result{
				{Name: "pins part at", Value: full},
				{Name: "that is a force of", Value: force},
				{Name: "likely band, not a bound", Value: likely},
			},
			Steps: steps(pins, area, full),
			Draw:  picture(u.System, pins, area, window, *stock),
		}
		if err := installed(u, &a, pins, area, window); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		kind := pins
		kind.Count = *stock
		fits, err := valve.PinCounts([]valve.Pins{kind}, valve.ForceOn(window, area))
		var none *valve.NoPinCountError
		switch {
		case errors.As(err, &none):
			a.Failed = true
			a.Notes = append(a.Notes, nearest(u, none, area)...)
		case err != nil:
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		t := calculator.Table{Name: "Counts that suit the window", Header: []string{"pins", "part at", "force", "hold by", "have parted by"}}
		for _, f := range fits {
			b, err := f.Pins.PressureOn(area)
			if err != nil {
				return calculator.Answer{}, err
			}
			t.Rows = append(t.Rows, []any{fmt.Sprint(f.Pins.Count), b, f.Force, over(f.Holds, area), over(f.Parts, area)})
		}
		if t.Rows != nil {
			a.Tables = append(a.Tables, t)
		}
		return a, nil
	}
}
