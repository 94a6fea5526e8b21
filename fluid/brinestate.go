package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// BrineState is a brine at one place of a well.
type BrineState struct {
	Brine           Brine                `json:"brine"`
	Pressure        unit.Pressure        `json:"pressure"`
	Temperature     unit.Temperature     `json:"temperature"`
	Density         unit.Density         `json:"density"`
	Compressibility unit.Compressibility `json:"compressibility"`
	Expansivity     unit.Expansivity     `json:"expansivity"`
}

// State returns density and slopes at gauge pressure p and temperature t with
// their working. Errors: those of Density.
func (b Brine) State(p unit.Pressure, t unit.Temperature) (BrineState, error) {
	rho, err := b.Density(p, t)
	if err != nil {
		return BrineState{}, err
	}
	k, err := b.Compressibility(p, t)
	if err != nil {
		return BrineState{}, err
	}
	a, err := b.Expansivity(p, t)
	return BrineState{b, p, t, rho, k, a}, err
}

// Steps shows the working.
func (s BrineState) Steps() []working.Step {
	return []working.Step{{Name: "density in the well", Symbol: "ρ", Equation: "ρ70/((1+α*(T-T70))*(1-β*p))",
		Inputs: []working.Input{
			{Symbol: "ρ70", Value: working.Of(s.Brine.At70F)}, {Symbol: "α", Value: working.Of(s.Brine.Expansion)},
			{Symbol: "T", Value: working.Temperature(s.Temperature)}, {Symbol: "T70", Value: working.Temperature(brineBase)},
			{Symbol: "β", Value: working.Of(s.Brine.Compression)}, {Symbol: "p", Value: working.Of(s.Pressure)},
		},
		Value: working.Of(s.Density), Source: "API RP 13J, relative volumes"}}
}
