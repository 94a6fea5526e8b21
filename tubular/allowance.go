package tubular

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
)

// Allowance is wall that is counted as lost, evenly around the pipe: wear or
// corrosion from the bore, corrosion from outside. Wear of one side only
// collapses a pipe later than this and bursts it at the same pressure.
type Allowance struct {
	Inside, Outside unit.Length // of wall
}

// Less returns p with the wall of a taken away, its weight in air less the steel
// that is gone. It is an error when nothing of the wall is left.
func (p Pipe) Less(a Allowance) (Pipe, error) {
	faults := []error{p.Validate()}
	for _, f := range []struct {
		name string
		loss unit.Length
	}{{"Inside", a.Inside}, {"Outside", a.Outside}} {
		if !finite(f.loss) || f.loss < 0 {
			faults = append(faults, fmt.Errorf("tubular: Allowance.%s = %v: want 0 or more", f.name, f.loss))
		}
	}
	if loss := a.Inside + a.Outside; loss >= p.Wall() {
		faults = append(faults, fmt.Errorf("tubular: Allowance = %v inside and %v outside: want together below the wall of %v", a.Inside, a.Outside, p.Wall().Rounded(5)))
	}
	if err := errors.Join(faults...); err != nil {
		return Pipe{}, err
	}
	left := p
	left.OD -= 2 * a.Outside
	left.ID += 2 * a.Inside
	if p.Weight != 0 {
		left.Weight -= p.PlainEndWeight() - left.PlainEndWeight()
	}
	return left, left.Validate()
}

// Derating is the yield strength that steel loses when it is hot, linearly from
// a reference temperature on.
type Derating struct {
	From unit.Temperature
	Rate unit.Expansivity // share of the yield strength per temperature difference
}

// UsualDerating returns the derating in use for carbon and low-alloy steel:
// 0.03 % per °F above 70 °F. Common practice without a source that can be cited;
// the mill's own curve is better.
func UsualDerating() Derating {
	return Derating{From: unit.Fahrenheit(70), Rate: 0.0003 * unit.PerFahrenheit}
}

// Factor returns the share of the yield strength that is left at t, never above
// 1.
//
//	k = 1 - r (T - T0)
//
// It is an error when t is above 300 °C, where a straight line is no longer
// steel, or when nothing is left.
func (d Derating) Factor(t unit.Temperature) (float64, error) {
	var faults []error
	if !(d.Rate >= 0 && d.Rate < 0.01) {
		faults = append(faults, fmt.Errorf("tubular: Derating.Rate = %v: want 0 to below 0.01 1/K", d.Rate))
	}
	if !(d.From.Kelvin() > 200 && d.From.Kelvin() < 400) {
		faults = append(faults, fmt.Errorf("tubular: Derating.From = %v: want 200 to 400 K", d.From))
	}
	if !(t.Kelvin() > 0 && t.Celsius() <= 300) {
		faults = append(faults, fmt.Errorf("tubular: temperature = %v: want above absolute zero and up to 300 degC for derating", t))
	}
	if err := errors.Join(faults...); err != nil {
		return 0, err
	}
	k := min(1, 1-float64(d.Rate)*float64(t.Sub(d.From)))
	if k <= 0 {
		return 0, fmt.Errorf("tubular: Derating.Rate = %v: leaves no yield strength at %v", d.Rate, t)
	}
	return k, nil
}

// At returns p with its yield strength derated to the temperature t. Tensile
// strength and elastic properties stay. It is an error when p holds a number that
// isn't finite, or for what Factor doesn't take.
func (p Pipe) At(t unit.Temperature, d Derating) (Pipe, error) {
	k, err := d.Factor(t)
	if err := errors.Join(p.allFinite(), err); err != nil {
		return Pipe{}, err
	}
	p.Material.Yield *= unit.Pressure(k)
	return p, nil
}
