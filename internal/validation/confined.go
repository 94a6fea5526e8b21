package validation

import (
	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var confinedSuite = Suite{
	File: "confined.csv",
	Quantities: map[string]Evaluator{
		"rise for one kelvin": func(in *published.Inputs) (any, error) {
			var liquid, wall unit.Expansivity
			var c unit.Compressibility
			var young unit.Pressure
			var slender float64
			in.Read("liquid", &liquid)
			in.Read("wall", &wall)
			in.Read("c", &c)
			in.Read("young", &young)
			in.Read("D over t", &slender)
			return unit.Pressure(confined.PressurePerDegree(liquid, wall, c, confined.ThinCompliance(slender, young))), nil
		},
		"compressibility of a mixture": func(in *published.Inputs) (any, error) {
			var water, oil, solids float64
			in.Read("water", &water)
			in.Read("oil", &oil)
			in.Read("solids", &solids)
			return confined.Mixed([]float64{water, oil, solids},
				[]unit.Compressibility{3.0e-6 * unit.PerPSI, 5.0e-6 * unit.PerPSI, 0.2e-6 * unit.PerPSI}), nil
		},
		"rise for one barrel": func(in *published.Inputs) (any, error) {
			return system(in).RiseFor(1 * unit.Barrel), nil
		},
		"volume to pump": func(in *published.Inputs) (any, error) {
			var rise unit.Pressure
			in.Read("rise", &rise)
			return system(in).VolumeFor(rise), nil
		},
	},
}

func system(in *published.Inputs) confined.System {
	var p confined.Part
	in.Read("c", &p.Fluid)
	in.Read("volume", &p.Volume)
	return confined.System{p}
}
