package validation

import (
	"completion.example/fluid"
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
		"volume to bleed, water in a rigid space": func(in *published.Inputs) (any, error) {
			t := rigidWater(in)
			return t.BleedVolume(t.Pressure)
		},
		"rise of water in a rigid space": func(in *published.Inputs) (any, error) {
			o, err := rigidWater(in).Solve()
			return o.Rise, err
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

func rigidWater(in *published.Inputs) confined.Trapped {
	fill := confined.Fill{Name: "water", Fluid: fluid.Water{}}
	t := confined.Trapped{Space: confined.Space{Outer: confined.Tube{OD: 7 * unit.Inch, ID: 6 * unit.Inch, Rigid: true}}}
	in.Read("p", &t.Pressure)
	in.Read("from", &fill.From)
	in.Read("to", &fill.To)
	in.Read("volume", &fill.Volume)
	t.Fills = []confined.Fill{fill}
	return t
}
