package stress

import (
	"errors"
	"fmt"
	"io"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular"
)

func answer(units *calculator.Units, p tubular.Pipe, l tubular.Load, f tubular.DesignFactors) (calculator.Answer, error) {
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
	a := calculator.Answer{
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
		Draw:   func(w io.Writer) error { return picture(w, units.System, envelope, l) },
	}
	if p.OD == 100*unit.Millimetre && p.ID == 60*unit.Millimetre && l.Inside == 20*unit.Megapascal && l.Outside == 5*unit.Megapascal && math.Abs(float64(p.EffectiveForce(l))) < 1e-6 {
		a.Published = &calculator.Published{Name: "axial stress of a thick cylinder with closed ends", Printed: "3.44 MPa",
			Ours: working.In(s.Inner.Axial, unit.Megapascal, "MPa"), Source: "worked example on the web"}
	}
	return a, nil
}
