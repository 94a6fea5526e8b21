// Package stress tells how near a pipe is to its limits under pressure, pull, bending
// and torque.
package stress

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
	Name:     "stress",
	Question: "what are the stresses in a pipe under pressure, pull, bending and torque, and how much of its strength do they use?",
	Setup:    setup,
	Picture:  true,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var od, id unit.Length
	var weight unit.WeightPerLength
	var grade catalogue.Grade
	var l tubular.Load
	l80, _ := catalogue.FindGrade("L80")
	f := tubular.NorwegianShelf()
	flags.TextVar(&od, "od", 3.5*unit.Inch, "outside diameter")
	flags.TextVar(&weight, "weight", 9.3*unit.PoundPerFoot, "nominal weight, with the outside diameter the name of a pipe of the catalogue")
	flags.TextVar(&id, "id", unit.Length(0), "inside diameter of a pipe that is not in the catalogue; the weight is then not used")
	capped := flags.Bool("capped", false, "ends are capped: the pressures on the caps add to the axial force")
	flags.TextVar(&grade, "grade", l80, "API grade")
	flags.TextVar(&l.Axial, "axial", 80*unit.Kilopound, "real axial force, tension positive")
	flags.TextVar(&l.Inside, "inside-pressure", 5000*unit.PSI, "inside pressure")
	flags.TextVar(&l.Outside, "outside-pressure", 2000*unit.PSI, "outside pressure")
	flags.TextVar(&l.Curvature, "dogleg", unit.Curvature(0), "dogleg severity")
	flags.TextVar(&l.Torque, "torque", unit.Torque(0), "torque")
	flags.Float64Var(&f.Burst, "burst-factor", f.Burst, "design factor to internal yield; the defaults are those of NORSOK D-010, from memory")
	flags.Float64Var(&f.Collapse, "collapse-factor", f.Collapse, "design factor to collapse")
	flags.Float64Var(&f.Axial, "tension-factor", f.Axial, "design factor to body yield, tension and compression")
	flags.Float64Var(&f.Triaxial, "triaxial-factor", f.Triaxial, "design factor of the von Mises stress to the yield strength")
	return func() (calculator.Answer, error) {
		p, err := choose(od, id, weight, grade)
		if err := errors.Join(err, f.Validate(), gauge.Possible("inside", l.Inside), gauge.Possible("outside", l.Outside)); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		if *capped {
			l.Axial -= p.EffectiveForce(tubular.Load{Inside: l.Inside, Outside: l.Outside})
		}
		return answer(calculator.UnitsOf(flags), p, l, f)
	}
}

func choose(od, id unit.Length, weight unit.WeightPerLength, grade catalogue.Grade) (tubular.Pipe, error) {
	if id != 0 {
		p := tubular.Pipe{OD: od, ID: id, Material: grade.Material()}
		return p, p.Validate()
	}
	all, err := catalogue.Standard()
	if err != nil {
		return tubular.Pipe{}, err
	}
	e, err := all.Find(od, weight)
	return e.Pipe(grade), err
}
