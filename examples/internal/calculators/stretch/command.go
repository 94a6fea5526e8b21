// Package stretch tells how much longer a string hangs than it was measured, in a vertical
// well or along a survey, and what pull stretches it.
package stretch

import (
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "stretch",
	Question: "how much longer does a string hang than it was measured, and what pull stretches it further?",
	Setup:    setup,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var tally catalogue.Tally
	var fluid unit.Density
	var warming unit.TemperatureDifference
	var pull unit.Force
	var wanted unit.Length
	flags.TextVar(&tally, "string", catalogue.Tally{{OD: 3.5 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Length: 9800 * unit.Foot}},
		"the string from the top: size, weight, length; …")
	flags.TextVar(&fluid, "density", 9.5*unit.PoundPerGallon, "density of the fluid inside and around it")
	flags.TextVar(&warming, "warming", 60*unit.FahrenheitDifference, "mean warming since it was measured")
	flags.TextVar(&pull, "pull", unit.Force(0), "pull on the lower end; weight set down is negative")
	flags.TextVar(&wanted, "wanted-stretch", 12*unit.Inch, "stretch wanted from a pull at the top, stuck at the lower end")
	plain := flags.Bool("plain-end", false, "take the weight of plain-end pipe; else couplings count")
	well := wellpath.Flag(flags)
	return func() (calculator.Answer, error) {
		sections, err := look(tally, warming, *plain)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		s, err := tubular.Hanging{Path: well.Path(), Sections: sections, Fluid: fluid, Pull: pull}.Stretch()
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		force, err := tubular.PullToStretch(sections, wanted)
		a := calculator.Answer{Steps: s.Steps(), Results: []calculator.Result{
			{Name: "by its own weight in air", Value: inches(s.Weight)},
			{Name: "by pressure on its end and shoulders", Value: inches(s.Pressure)},
			{Name: "by ballooning", Value: inches(s.Ballooning)},
			{Name: "by temperature", Value: inches(s.Thermal)},
			{Name: "by the pull on its lower end", Value: inches(s.Pull)},
			{Name: "stretch", Value: inches(s.Total())},
			{Name: "pull at the top for the stretch wanted", Value: force},
		}}
		if well.Path() != nil {
			a.Notes = append(a.Notes, "Along the survey the hole bears what of the weight is across it; its friction, which holds back the stretch, isn't counted. The lengths of the string are measured from the survey's first station.")
		}
		if well.Path() == nil && len(sections) == 1 && sections[0].Length == 10_000*unit.Foot && fluid == 0 && warming == 0 && pull == 0 && *plain {
			a.Published = &calculator.Published{Name: "10,000 ft of steel by its own weight in air", Printed: "5.67 ft", Ours: working.In(s.Total(), unit.Foot, "ft"),
				Source: "casing and tubing design manual, October 2005, Table 9-4"}
		}
		return a, err
	}
}

func inches(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }

// look finds the string in the catalogue; stretch doesn't depend on the grade.
func look(tally catalogue.Tally, warming unit.TemperatureDifference, plain bool) ([]tubular.HangingSection, error) {
	all, err := catalogue.Standard()
	if err != nil {
		return nil, err
	}
	sections, err := all.Sections(tally, catalogue.Grade{})
	for i := range sections {
		sections[i].Warming = warming
		if plain {
			sections[i].Pipe.Weight = 0
		}
	}
	return sections, err
}
