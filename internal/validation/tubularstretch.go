package validation

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

var tubularStretchSuite = Suite{
	File: "tubular-stretch.csv",
	Quantities: map[string]Evaluator{
		"plain-end weight": ofPipeAlone(tubular.Pipe.PlainEndWeight),
		"free length": func(in *published.Inputs) (any, error) {
			p, _, err := pipeOf(in)
			var e unit.Length
			var pull unit.Force
			in.Read("stretch", &e)
			in.Read("pull", &pull)
			return p.FreeLength(e, pull), err
		},
		"stretch by weight": func(in *published.Inputs) (any, error) {
			p := tubular.Pipe{Material: tubular.Steel()}
			var length unit.Length
			var pull unit.Force
			in.Read("weight", &p.Weight)
			in.Read("length", &length)
			in.Read("pull", &pull)
			return tubular.Elongation(pull, length, p.Displacement(), p.Material.Young), nil
		},
		"stretch by area": func(in *published.Inputs) (any, error) {
			p, _, err := pipeOf(in)
			var length unit.Length
			var pull unit.Force
			in.Read("length", &length)
			in.Read("pull", &pull)
			return p.Stretch(pull, length), err
		},
		"thermal stretch": func(in *published.Inputs) (any, error) {
			var length unit.Length
			var warming unit.TemperatureDifference
			in.Read("length", &length)
			in.Read("warming", &warming)
			return tubular.Pipe{Material: tubular.Steel()}.ThermalStretch(length, warming), nil
		},
		"buoyancy factor": func(in *published.Inputs) (any, error) {
			var fluid, steel unit.Density
			in.Read("fluid", &fluid)
			in.Read("steel", &steel)
			return tubular.BuoyancyFactor(fluid, steel), nil
		},
		"hook load in fluid": func(in *published.Inputs) (any, error) {
			var w unit.WeightPerLength
			var length unit.Length
			var fluid, steel unit.Density
			in.Read("weight", &w)
			in.Read("length", &length)
			in.Read("fluid", &fluid)
			in.Read("steel", &steel)
			return unit.Force(float64(w)*float64(length)) * unit.Force(tubular.BuoyancyFactor(fluid, steel)), nil
		},
		"margin of overpull": func(in *published.Inputs) (any, error) {
			var limit, load unit.Force
			var share float64
			in.Read("limit", &limit)
			in.Read("share", &share)
			in.Read("load", &load)
			return tubular.MarginOfOverpull(limit, share, load), nil
		},
		"weight in air of two sections": func(in *published.Inputs) (any, error) {
			var od unit.Length
			var s [2]struct {
				weight unit.WeightPerLength
				length unit.Length
			}
			in.Read("od", &od)
			in.Read("weight", &s[0].weight)
			in.Read("length", &s[0].length)
			in.Read("weight2", &s[1].weight)
			in.Read("length2", &s[1].length)
			all, err := catalogue.Standard()
			if err != nil {
				return nil, err
			}
			sections, err := all.Sections(catalogue.Tally{{OD: od, Weight: s[0].weight, Length: s[0].length}, {OD: od, Weight: s[1].weight, Length: s[1].length}}, catalogue.Grade{})
			if err != nil {
				return nil, err
			}
			r, err := tubular.Hanging{Sections: sections}.Stretch()
			if err != nil {
				return nil, err
			}
			// What hangs below the upper section, and the upper section itself.
			return r.Sections[0].Hung + unit.Force(float64(s[0].weight)*float64(s[0].length)), nil
		},
		"sum of causes": func(in *published.Inputs) (any, error) {
			var c tubular.Causes
			in.Read("thermal", &c.Thermal)
			in.Read("ballooning", &c.Ballooning)
			in.Read("weight", &c.Weight)
			in.Read("pressure", &c.Pressure)
			return c.Total(), nil
		},
		"stretch by own weight in air": func(in *published.Inputs) (any, error) {
			p, _, err := pipeOf(in)
			if err != nil {
				return nil, err
			}
			var length unit.Length
			in.Read("length", &length)
			s, err := tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: p, Length: length}}}.Stretch()
			return s.Total(), err
		},
	},
}

var tubularExpansionSuite = Suite{
	File: "tubular-expansion.csv",
	Quantities: map[string]Evaluator{
		"mean expansion": func(in *published.Inputs) (any, error) {
			var to unit.Temperature
			in.Read("to", &to)
			return tubular.CarbonSteel().Mean(unit.Fahrenheit(70), to)
		},
		"expansion": func(in *published.Inputs) (any, error) {
			var to unit.Temperature
			var length unit.Length
			in.Read("to", &to)
			in.Read("length", &length)
			ε, err := tubular.CarbonSteel().Strain(unit.Fahrenheit(70), to)
			return unit.Length(ε) * length, err
		},
	},
}
