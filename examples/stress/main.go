// Stress tells how near a pipe is to its limits under pressure, pull, bending
// and torque.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

var command = calculator.Command{
	Name:     "stress",
	Question: "what are the stresses in a pipe under pressure, pull, bending and torque, and how much of its strength do they use?",
	Setup:    setup,
	Picture:  true,
}

func main() { calculator.Main(command) }

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var od unit.Length
	var weight unit.WeightPerLength
	var grade catalogue.Grade
	var l tubular.Load
	p110, _ := catalogue.FindGrade("P110")
	f := tubular.NorwegianShelf()
	flags.TextVar(&od, "od", 9.625*unit.Inch, "outside diameter")
	flags.TextVar(&weight, "weight", 53.5*unit.PoundPerFoot, "nominal weight")
	flags.TextVar(&grade, "grade", p110, "API grade")
	flags.TextVar(&l.Axial, "axial", 500*unit.Kilopound, "real axial force, tension positive")
	flags.TextVar(&l.Inside, "inside", 8000*unit.PSI, "inside pressure")
	flags.TextVar(&l.Outside, "outside", 2000*unit.PSI, "outside pressure")
	flags.TextVar(&l.Curvature, "dogleg", unit.Curvature(0), "dogleg severity")
	flags.TextVar(&l.Torque, "torque", unit.Torque(0), "torque")
	flags.Float64Var(&f.Burst, "burst", f.Burst, "design factor to internal yield; the defaults are those of NORSOK D-010, from memory")
	flags.Float64Var(&f.Collapse, "collapse", f.Collapse, "design factor to collapse")
	flags.Float64Var(&f.Axial, "tension", f.Axial, "design factor to body yield, tension and compression")
	flags.Float64Var(&f.Triaxial, "triaxial", f.Triaxial, "design factor of the von Mises stress to the yield strength")
	return func() (calculator.Answer, error) {
		all, err := catalogue.Standard()
		if err != nil {
			return calculator.Answer{}, err
		}
		e, err := all.Find(od, weight)
		if err := errors.Join(err, f.Validate()); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		return answer(e.Pipe(grade), l, f)
	}
}

func answer(p tubular.Pipe, l tubular.Load, f tubular.DesignFactors) (calculator.Answer, error) {
	b, err1 := p.Prepare()
	envelope, err2 := p.Envelope(tubular.Outline{Backing: min(l.Inside, l.Outside), Factors: f})
	if err := errors.Join(err1, err2); err != nil {
		return calculator.Answer{}, err
	}
	s, u := p.Stresses(l), b.Usage(l, f)
	limit, most := u.Governing()
	row := func(name string, w tubular.WallStress) []any {
		return []any{name, w.Radial, w.Hoop, w.Axial, w.Bending, w.Shear, w.VonMises}
	}
	use := func(name string, factor, usage float64) []any {
		reserve := any("no load")
		if usage > 0 {
			reserve = factor / usage
		}
		return []any{name, factor, fmt.Sprintf("%.1f %%", 100*usage), reserve}
	}
	return calculator.Answer{
		Steps: s.Steps(),
		Tables: []calculator.Table{
			{Name: "stresses", Header: []string{"wall", "radial", "hoop", "axial", "bending", "shear", "von Mises"}, Rows: [][]any{row("inner", s.Inner), row("outer", s.Outer)}},
			{Name: "use of the strength", Header: []string{"limit", "design factor", "used", "factor there is"}, Rows: [][]any{
				use("burst", f.Burst, u.Burst), use("collapse", f.Collapse, u.Collapse), use("axial", f.Axial, u.Axial), use("triaxial", f.Triaxial, u.Triaxial)}},
		},
		Results: []calculator.Result{{Name: "von Mises stress", Value: s.VonMises()}, {Name: "effective force", Value: p.EffectiveForce(l)},
			{Name: "governing limit", Value: fmt.Sprintf("%v, %.1f %% used", limit, 100*most)}},
		Notes:  []string{"Of the pipe body with its nominal wall; a connection may be weaker."},
		Failed: !u.Within(),
		Draw:   func(w io.Writer) error { return picture(w, envelope, l) },
	}, nil
}
