package tubular

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Allowance is wall that is counted as lost, evenly around the pipe: wear or
// corrosion from the bore, corrosion from outside. Wear of one side only
// collapses a pipe later than this and bursts it at the same pressure.
type Allowance struct {
	Inside  unit.Length `json:"inside"` // of wall
	Outside unit.Length `json:"outside"`
}

// Less returns p with the wall of a taken away, its weight in air less the steel
// that is gone. It is an error when nothing of the wall is left.
//
//	w' = w − ρ·g·(As − As')
//
// Source: geometry.
func (p Pipe) Less(a Allowance) (Pipe, error) {
	f := fault.In("tubular")
	f.Add(p.Validate())
	f.Add(fault.AtLeast("Allowance.Inside", a.Inside, 0), fault.AtLeast("Allowance.Outside", a.Outside, 0))
	if loss := a.Inside + a.Outside; loss >= p.Wall() {
		f.New("Allowance", "is %v inside and %v outside; must be below the wall of %v together", a.Inside, a.Outside, p.Wall().Rounded(5))
	}
	if err := f.Err(); err != nil {
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
	From unit.Temperature `json:"from"`
	Rate unit.Expansivity `json:"rate"` // share of the yield strength per temperature difference
}

// UsualDerating returns the derating in use for carbon and low-alloy steel:
// 0.03 % per °F above 70 °F. Common practice without a source that can be cited;
// the mill's own curve is better.
//
//	k = 1 − r·(T − T0)
//
// Source: of the figures stands beside them.
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
//
// Source: a straight line through the maker's figures, as Derating says.
func (d Derating) Factor(t unit.Temperature) (float64, error) {
	f := fault.In("tubular")
	if !(d.Rate >= 0 && d.Rate < 0.01) {
		f.New("Rate", "is %v; must be at least 0 and below 0.01 1/K", d.Rate)
	}
	if !(d.From.Kelvin() > 200 && d.From.Kelvin() < 400) {
		f.New("From", "is %v; must be above 200 K and below 400 K", d.From)
	}
	if !(t.Kelvin() > 0 && t.Celsius() <= 300) {
		f.New("temperature", "is %v; must be above absolute zero and at most 300 degC, for derating", t)
	}
	if err := f.Err(); err != nil {
		return 0, err
	}
	k := min(1, 1-float64(d.Rate)*float64(t.Sub(d.From)))
	if k <= 0 {
		return 0, fault.NewIn("tubular", "Rate", "is %v; must leave some yield strength at %v", d.Rate, t)
	}
	return k, nil
}

// At returns p with its yield strength derated to the temperature t. Tensile
// strength and elastic properties stay. It is an error when p holds a number that
// isn't finite, or for what Factor doesn't take.
func (p Pipe) At(t unit.Temperature, d Derating) (Pipe, error) {
	k, err := d.Factor(t)
	if err := fault.Join("tubular", p.allFinite(), err); err != nil {
		return Pipe{}, err
	}
	p.Material.Yield *= unit.Pressure(k)
	return p, nil
}
