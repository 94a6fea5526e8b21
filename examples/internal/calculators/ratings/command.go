// Package ratings tells what pressures and forces a pipe of the catalogue bears.
package ratings

import (
	"errors"
	"flag"

	"completion.example/examples/internal/gauge"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "ratings",
	Question: "what inside and outside pressure and what pull does a pipe bear, hot, worn and under load?",
	Setup:    setup,
}

type input struct {
	od                        unit.Length
	weight                    unit.WeightPerLength
	grade                     catalogue.Grade
	axial                     unit.Force
	inside                    unit.Pressure
	temperature               unit.Temperature
	wear                      tubular.Allowance
	imperfection, burstFactor float64
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	l80, _ := catalogue.FindGrade("L80")
	flags.TextVar(&in.od, "od", 4.5*unit.Inch, "outside diameter")
	flags.TextVar(&in.weight, "weight", 12.6*unit.PoundPerFoot, "nominal weight")
	flags.TextVar(&in.grade, "grade", l80, "API grade")
	flags.TextVar(&in.axial, "axial", unit.Force(0), "axial force for collapse under load, tension positive")
	flags.TextVar(&in.inside, "inside-pressure", unit.Pressure(0), "inside pressure for collapse under load")
	flags.TextVar(&in.temperature, "temperature", unit.Fahrenheit(70), "temperature; above 70 degF it takes 0.03 % per degF off the yield strength (common practice)")
	flags.TextVar(&in.wear.Inside, "wear", unit.Length(0), "wall lost from the bore")
	flags.TextVar(&in.wear.Outside, "corrosion", unit.Length(0), "wall lost from outside")
	flags.Float64Var(&in.imperfection, "imperfection", 0.05, "imperfection that inspection misses, share of the wall, for rupture")
	flags.Float64Var(&in.burstFactor, "rupture-factor", 2, "ka of ISO/TR 10400 for rupture: 1 for quenched and tempered steel, 2 if not known")
	return func() (calculator.Answer, error) { return rate(in) }
}

func rate(in input) (calculator.Answer, error) {
	all, err := catalogue.Standard()
	if err != nil {
		return calculator.Answer{}, err
	}
	e, err := all.Find(in.od, in.weight)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	p, err1 := e.Pipe(in.grade).Less(in.wear)
	hot, err2 := p.At(in.temperature, tubular.UsualDerating())
	if err := errors.Join(err1, err2, gauge.Possible("inside", in.inside)); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	r, err1 := hot.Ratings()
	loaded, err2 := hot.CollapseUnderLoad(unit.Pressure(float64(in.axial)/float64(hot.SteelArea())), in.inside)
	rupture, err3 := hot.DuctileRupture(tubular.Rupture{Imperfection: unit.Length(in.imperfection) * hot.Wall(), BurstFactor: in.burstFactor})
	if errors.Is(err2, tubular.ErrNoCollapse) {
		err2 = nil // one line of the answer, not the whole of it
	}
	if err := errors.Join(err1, err2, err3); err != nil {
		return calculator.Answer{}, err
	}
	return answer(in, e, hot, r, loaded, rupture), nil
}
