package pins

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/valve"
)

func steps(p valve.Pins, area unit.Area, full unit.Band[unit.Pressure]) []working.Step {
	step := func(name, sign string, value unit.Pressure) working.Step {
		return working.Step{Name: name, Symbol: "dp", Equation: "n*S*k*(1 " + sign + " t)/A", Source: "definition", Value: working.Of(value),
			Inputs: []working.Input{{Symbol: "n", Value: working.Number(float64(p.Count))}, {Symbol: "S", Value: working.Of(p.Strength)},
				{Symbol: "k", Value: working.Number(p.TemperatureFactor)}, {Symbol: "t", Value: working.Number(p.Tolerance)}, {Symbol: "A", Value: working.Of(area)}}}
	}
	return []working.Step{step("least differential", "-", full.Least), step("greatest differential", "+", full.Greatest)}
}
