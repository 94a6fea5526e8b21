package hydrostatics

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Formation is a formation's pressure at a true vertical depth.
type Formation struct {
	Pressure unit.Pressure `json:"pressure"`
	TVD      unit.Length   `json:"tvd"`
}

// Overbalance returns how much the well's pressure at the formation is above
// the formation's:
//
//	Δp = pw − pf
//
// Negative is underbalance, and the well flows.
//
// Range: any pressures, on one datum.
//
// Source: definition.
func (f Formation) Overbalance(well unit.Pressure) unit.Pressure { return well - f.Pressure }

// BalanceSteps shows the working of Overbalance.
func (f Formation) BalanceSteps(well unit.Pressure) []working.Step {
	return []working.Step{{
		Name: "overbalance", Symbol: "dp", Equation: "pw-pf",
		Inputs: []working.Input{{Symbol: "pw", Value: working.Of(well)}, {Symbol: "pf", Value: working.Of(f.Pressure)}},
		Value:  working.Of(f.Overbalance(well)), Source: "definition",
	}}
}

// KillDensity returns the density that holds the formation with a margin of
// pressure, with nothing applied at surface:
//
//	ρk = (pf + m)/(g·h)
//
// pf is the formation's pressure, m the margin (overbalance wanted), h the true
// vertical depth, not zero. The density is the mean one over the depth, at its
// pressures and temperatures.
//
// Source: Well Control for Completions and Interventions, 2018, ch. 5, in SI.
func (f Formation) KillDensity(margin unit.Pressure) unit.Density {
	return EquivalentDensity(f.Pressure+margin, f.TVD)
}

// Steps shows the working of KillDensity.
func (f Formation) Steps(margin unit.Pressure) []working.Step {
	return []working.Step{{
		Name: "kill density", Symbol: "rk", Equation: "(pf+m)/(g*h)",
		Inputs: []working.Input{{Symbol: "pf", Value: working.Of(f.Pressure)}, {Symbol: "m", Value: working.Of(margin)}, {Symbol: "h", Value: working.Of(f.TVD)}},
		Value:  working.Of(f.KillDensity(margin)),
		Source: "Well Control for Completions and Interventions, 2018, ch. 5, in SI",
	}}
}

// ShutIn is a well that is closed on a known, uncontaminated column: as a rule
// the drill pipe or tubing side.
type ShutIn struct {
	Pressure unit.Pressure `json:"pressure"` // at surface, settled
	Density  unit.Density  `json:"density"`  // of the column
	TVD      unit.Length   `json:"tvd"`      // of the formation
}

// FormationPressure returns the formation's pressure:
//
//	pf = ps + ρ·g·h
//
// ps is the shut-in pressure, ρ the column's density, h the depth.
//
// Range: any numbers; nothing is checked.
//
// Source: Lapeyrouse 2nd ed., ch. 4, in SI.
func (s ShutIn) FormationPressure() unit.Pressure { return s.Pressure + Pressure(s.Density, s.TVD) }

// Formation returns the formation that the shut-in pressure shows.
func (s ShutIn) Formation() Formation { return Formation{s.FormationPressure(), s.TVD} }

// KillDensity returns the density that holds the formation with a margin:
//
//	ρk = ρ + (ps + m)/(g·h)
//
// m is the margin, h is not zero. With a leak-off pressure for ps and no margin
// it is the greatest density that the tested formation holds.
//
// Source: Lapeyrouse 2nd ed., ch. 4, in SI.
func (s ShutIn) KillDensity(margin unit.Pressure) unit.Density {
	return s.Density + EquivalentDensity(s.Pressure+margin, s.TVD)
}

// Steps shows the working.
func (s ShutIn) Steps(margin unit.Pressure) []working.Step {
	const source = "Lapeyrouse 2nd ed., ch. 4, in SI"
	ps := working.Input{Symbol: "ps", Value: working.Of(s.Pressure)}
	rho := working.Input{Symbol: "r", Value: working.Of(s.Density)}
	h := working.Input{Symbol: "h", Value: working.Of(s.TVD)}
	return []working.Step{
		{Name: "formation pressure", Symbol: "pf", Equation: "ps+r*g*h", Source: source,
			Inputs: []working.Input{ps, rho, h}, Value: working.Of(s.FormationPressure())},
		{Name: "kill density", Symbol: "rk", Equation: "r+(ps+m)/(g*h)", Source: source,
			Inputs: []working.Input{ps, rho, h, {Symbol: "m", Value: working.Of(margin)}}, Value: working.Of(s.KillDensity(margin))},
	}
}
