package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// Treatment is what brings a brine of one salt to another density with dry salt
// or fresh water.
type Treatment struct {
	Before      Batch       `json:"before"`
	After       Batch       `json:"after"`
	Salt        Salt        `json:"salt"`
	Fractions   [2]float64  `json:"fractions"`    // mass fraction of salt before and after
	SaltAdded   unit.Mass   `json:"salt_added"`   // pure and without crystal water
	WaterAdded  unit.Mass   `json:"water_added"`  // fresh
	WaterVolume unit.Volume `json:"water_volume"` // of WaterAdded at the same temperature
}

// Treat returns how much dry salt weights a brine of one salt up, or how much
// fresh water cuts it back, to a wanted density at temperature t:
//
//	salt   ms = m·(w' − w)/(1 − w')
//	water  mw = m·(w/w' − 1)
//	V'     = (m + ms + mw)/ρ'
//
//	m      mass of the brine, V·ρ
//	w, w'  mass fraction of salt before and after, by composition (Solution)
//
// Volumes do not add up here: the new volume follows from mass and density, and
// both salt and water are balanced to rounding. Salt is counted pure and dry: of
// a product with 95 % CaCl2 take 1/0.95 as much, and of its water so much less.
//
// Errors: as SolutionOfDensity for either density; a volume that isn't positive;
// salt of 100 % (no cut-back reaches water itself).
//
// Source: conservation of mass; composition after Laliberté and Cooper (2004).
func Treat(salt Salt, have Batch, wanted unit.Density, t unit.Temperature) (Treatment, error) {
	err := fault.At("have", have.Validate())
	before, e1 := SolutionOfDensity(salt, have.Density, t)
	after, e2 := SolutionOfDensity(salt, wanted, t)
	if err = fault.Join(scope, err, e1, e2); err != nil {
		return Treatment{}, err
	}
	tr := Treatment{Before: have, Salt: salt, Fractions: [2]float64{before.Fraction, after.Fraction}}
	m, w, v := float64(have.Mass()), before.Fraction, after.Fraction
	switch {
	case v > w:
		tr.SaltAdded = unit.Mass(m * (v - w) / (1 - v))
	case v == 0 && w > 0:
		return Treatment{}, outside("cutting back "+salt.String()+" brine with water", "wanted", number(0), number(1e-6), number(w))
	case v < w:
		tr.WaterAdded = unit.Mass(m * (w/v - 1))
		tr.WaterVolume = unit.Volume(float64(tr.WaterAdded) / kellWater(t.Celsius()))
	}
	tr.After = Batch{unit.Volume((m + float64(tr.SaltAdded+tr.WaterAdded)) / float64(wanted)), wanted}
	if err := fault.At("after treatment", tr.After.Validate()); err != nil {
		return Treatment{}, err
	}
	return tr, nil
}

// Steps shows the working.
func (t Treatment) Steps() []working.Step {
	m := working.Of(t.Before.Mass())
	inputs := []working.Input{{Symbol: "m", Value: m}, {Symbol: "w1", Value: working.Number(t.Fractions[0])}, {Symbol: "w2", Value: working.Number(t.Fractions[1])}}
	steps := []working.Step{{Name: "mass of the brine", Symbol: "m", Equation: "V*ρ",
		Inputs: []working.Input{{Symbol: "V", Value: working.Of(t.Before.Volume)}, {Symbol: "ρ", Value: working.Of(t.Before.Density)}},
		Value:  m, Source: "mass"}}
	switch {
	case t.SaltAdded > 0:
		steps = append(steps, working.Step{Name: "dry salt to add", Symbol: "ms", Equation: "m*(w2-w1)/(1-w2)", Inputs: inputs,
			Value: working.Of(t.SaltAdded), Source: "salt balance"})
	case t.WaterAdded > 0:
		steps = append(steps, working.Step{Name: "fresh water to add", Symbol: "mw", Equation: "m*(w1/w2-1)", Inputs: inputs,
			Value: working.Of(t.WaterAdded), Source: "salt balance"})
	}
	return append(steps, working.Step{Name: "volume after", Symbol: "V2", Equation: "(m+ms+mw)/ρ2",
		Inputs: []working.Input{{Symbol: "m", Value: m}, {Symbol: "ms", Value: working.Of(t.SaltAdded)}, {Symbol: "mw", Value: working.Of(t.WaterAdded)},
			{Symbol: "ρ2", Value: working.Of(t.After.Density)}},
		Value: working.Of(t.After.Volume), Source: "mass over density by composition"})
}
