// Package freepoint tells where a string is stuck, from its stretch under a pull.
package freepoint

import (
	"errors"
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "freepoint",
	Question: "at what depth is a string stuck that stretches so much under a pull?",
	Setup:    setup,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	test := tubular.FreePoint{}
	var tally catalogue.Tally
	flags.TextVar(&tally, "string", catalogue.Tally{{OD: 3.5 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Length: 9000 * unit.Foot}},
		"the string from the top: size, weight, length; …")
	flags.TextVar(&test.Stretch, "stretch", 20*unit.Inch, "stretch between the two marks")
	well := wellpath.Flag(flags)
	flags.TextVar(&test.Pull, "pull-difference", 25_000*unit.PoundForce, "higher pull less the lower one; the lower one at least the string's weight")
	return func() (calculator.Answer, error) {
		all, err := catalogue.Standard()
		if err != nil {
			return calculator.Answer{}, err
		}
		if test.Sections, err = all.Sections(tally, catalogue.Grade{}); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		d, err := test.Find()
		var free *tubular.FreeError
		switch {
		case errors.As(err, &free):
			return calculator.Answer{}, err
		case err != nil:
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		depth, err := deep(well, d.Depth)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		a := calculator.Answer{
			Results: []calculator.Result{
				{Name: "stuck depth along the string", Value: d.Depth},
				{Name: "in part", Value: tally[d.Section : d.Section+1].String()},
				{Name: "below the top of that part", Value: d.Into},
			},
			Steps: d.Steps(),
			Notes: []string{"Friction above the stuck point makes it look shallower than it is, and so do couplings and tool joints, which stretch less than the body."},
		}
		a.Results = append(a.Results, depth...)
		if well.Path() != nil {
			a.Notes = append(a.Notes, "Pull down a deviated hole is lost to its walls: take the stretch from turns or a second pull as well. The string is measured from the survey's first station.")
		}
		if len(tally) == 1 && test.Sections[0].Pipe.OD == 3.5*unit.Inch && tally[0].Weight == 9.3*unit.PoundPerFoot && test.Stretch == 20*unit.Inch && test.Pull == 25_000*unit.PoundForce {
			a.Published = &calculator.Published{Name: "free length of 3-1/2 in tubing", Printed: "5180 ft", Ours: d.Depth,
				Source: "Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, 2nd ed., as worked on the web"}
		}
		return a, nil
	}
}

// deep is where a stuck depth is in a well with a survey.
func deep(well *wellpath.Survey, md unit.Length) ([]calculator.Result, error) {
	p := well.Path()
	if p == nil {
		return nil, nil
	}
	at, err := p.At(md)
	return []calculator.Result{{Name: "true vertical depth there", Value: at.TVD, For: display.Depth}, {Name: "inclination there", Value: at.Inclination}}, err
}
