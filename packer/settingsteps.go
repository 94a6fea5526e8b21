package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps works every stage at both ends of its band, by itself, and the
// differential on the plug.
func (p Pressures) Steps() []working.Step {
	if len(p.Stages) == 0 {
		return nil
	}
	var steps []working.Step
	for _, s := range p.Stages {
		for _, end := range [...]struct {
			name                  string
			acts, standing, alone unit.Pressure
		}{
			{"least", s.Differential.Least, s.standing.Least, s.Alone.Least},
			{"nominal", s.Differential.Nominal, s.standing.Nominal, s.Alone.Nominal},
			{"greatest", s.Differential.Greatest, s.standing.Greatest, s.Alone.Greatest},
		} {
			steps = append(steps, working.Step{
				Name: s.Name + ", " + end.name, Symbol: "p", Equation: "dp - d0",
				Inputs: []working.Input{{Symbol: "dp", Value: working.Of(end.acts)}, {Symbol: "d0", Value: working.Of(end.standing)}},
				Value:  working.Of(end.alone), Source: "balance of the setting piston",
			})
		}
	}
	return append(steps, working.Step{
		Name: "differential on the plug, at the greatest pressure needed", Symbol: "dpp", Equation: "p + d0p",
		Inputs: []working.Input{{Symbol: "p", Value: working.Of(p.Complete.Greatest)}, {Symbol: "d0p", Value: working.Of(p.plug)}},
		Value:  working.Of(p.Plug), Source: "hydrostatics",
	})
}
