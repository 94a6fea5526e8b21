package trapped

import (
	"errors"
	"fmt"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
)

// place is where the space is: by true vertical depths and its length, or with a survey by
// measured depths.
type place struct {
	top, bottom, length unit.Length
	well                *wellpath.Survey
}

// found is where it is: true vertical depths, and the mean of them along the hole.
type found struct{ top, bottom, mean, length unit.Length }

func (p place) find() (found, error) {
	if !(p.top >= 0 && p.bottom > p.top) {
		return found{}, fmt.Errorf("top is %v and depth %v; the space must end below its top, and that below surface", p.top, p.bottom)
	}
	path := p.well.Path()
	if path == nil {
		if !(p.length >= (p.bottom-p.top)*(1-1e-9)) {
			return found{}, fmt.Errorf("length is %v; permitted from the %v between top and depth upwards", p.length, p.bottom-p.top)
		}
		return found{p.top, p.bottom, (p.top + p.bottom) / 2, p.length}, nil
	}
	f := found{length: p.bottom - p.top}
	var err1, err2, err3 error
	f.top, err1 = path.TVD(p.top)
	f.bottom, err2 = path.TVD(p.bottom)
	f.mean, err3 = path.MeanTVD(p.top, p.bottom)
	if err := errors.Join(err1, err2); err != nil {
		return f, err
	}
	return f, err3
}

// tell adds what a gauge shows at both ends, by the weight of the fluid at 70 °F.
func (f found) tell(a *calculator.Answer, density unit.Density, gas bool, before, after unit.Pressure) {
	add := func(name string, v any, p display.Purpose) {
		a.Results = append(a.Results, calculator.Result{Name: name, Value: v, For: p})
	}
	add("mean depth, true vertical", f.mean, display.Depth)
	if gas {
		a.Notes = append(a.Notes, "Pressures hold at the mean depth; with gas in the space what stands at its ends depends on where the gas is, and isn't told.")
		return
	}
	up, down := hydrostatics.Pressure(density, f.mean-f.top), hydrostatics.Pressure(density, f.bottom-f.mean)
	add("at the top of the space before", before-up, display.Usual)
	add("at the top of the space after", after-up, display.Usual)
	add("at its lower end before", before+down, display.Usual)
	add("at its lower end after", after+down, display.Usual)
	if before < up {
		a.Notes = append(a.Notes, "-pressure-before is less than the column from the top of the space to its mean depth weighs: the space isn't full then, and gives way first")
	}
}
