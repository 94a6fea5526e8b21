package utube

import (
	"errors"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

func (in inputs) answer() (calculator.Answer, error) {
	u, err := in.uTube()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	r, err := u.Rest()
	switch {
	case errors.Is(err, hydrostatics.ErrNoBalance):
		return calculator.Answer{}, err
	case err != nil:
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := show(r)
	a.Draw = in.picture(r)
	if in.exam() {
		a.Published = &calculator.Published{Name: "annulus at the port before it opens, with 0.052 psi/ft per lb/gal", Printed: "5681 psi", Ours: r.Annulus.Before,
			Source: "PE petroleum exam review, Pumping 2021-29"}
	}
	return a, nil
}

// uTube fills the legs.
func (in inputs) uTube() (hydrostatics.UTube, error) {
	u := in.legs
	var err1, err2 error
	u.Tubing.Fluids, err1 = in.tubing.Stretches()
	u.Annulus.Fluids, err2 = in.annulus.Stretches()
	u.Tubing.Sections = []hydrostatics.LegSection{{BottomMD: u.PortMD, Area: in.inside}}
	u.Annulus.Sections = []hydrostatics.LegSection{{BottomMD: u.PortMD, Area: in.outside}}
	return u, errors.Join(err1, err2)
}

// exam says whether the annulus is that of the published case.
func (in inputs) exam() bool {
	t, _ := in.tubing.MarshalText()
	n, _ := in.annulus.MarshalText()
	return string(t) == tubingExam && string(n) == annulusExam && in.legs.Annulus.LevelMD == 0 && in.legs.Annulus.Surface == 0 && in.legs.PortMD == 10000*unit.Foot && in.legs.Path == nil
}

// show is the answer but for the published case.
func show(r hydrostatics.AtRest) calculator.Answer {
	return calculator.Answer{
		Results: []calculator.Result{
			{Name: "leg that falls", Value: r.Falling.String()},
			{Name: "surface pressure on the other leg that holds it", Value: r.Holding},
			{Name: "volume through the port", Value: r.Moved},
			{Name: "returned at surface by the other leg", Value: r.Returned},
			{Name: "level in the tubing", Value: r.Tubing.LevelMD},
			{Name: "level in the annulus", Value: r.Annulus.LevelMD},
			{Name: "pressure at the port, at rest", Value: r.Pressure},
		},
		Steps: r.Steps(),
		Notes: []string{"at rest; in the well the columns swing past it, and fluids mix"},
	}
}
