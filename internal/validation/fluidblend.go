package validation

import (
	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

// cutOf parts a total volume into its heavier and its lighter fluid.
func cutOf(in *published.Inputs) (heavy, light unit.Volume, err error) {
	var have, with, wanted unit.Density
	var total unit.Volume
	in.Read("light", &have)
	in.Read("heavy", &with)
	in.Read("wanted", &wanted)
	in.Read("total", &total)
	a, err := fluid.Adjust(fluid.Batch{Volume: total, Density: have}, wanted, with)
	scale := total / a.After.Volume
	return a.Added.Volume * scale, a.Before.Volume * scale, err
}

func blended(in *published.Inputs) (any, error) {
	var a, b fluid.Batch
	in.Read("volume1", &a.Volume)
	in.Read("rho1", &a.Density)
	in.Read("volume2", &b.Volume)
	in.Read("rho2", &b.Density)
	c, err := fluid.Blend(a, b)
	return c.Density, err
}

func weightedUp(in *published.Inputs) (any, error) {
	var have fluid.Batch
	var wanted, with unit.Density
	in.Read("volume", &have.Volume)
	in.Read("rho", &have.Density)
	in.Read("wanted", &wanted)
	in.Read("with", &with)
	a, err := fluid.Adjust(have, wanted, with)
	return a.Added.Volume, err
}

func startingVolume(in *published.Inputs) (any, error) {
	var have fluid.Batch
	var wanted, with unit.Density
	in.Read("final", &have.Volume)
	in.Read("rho", &have.Density)
	in.Read("wanted", &wanted)
	in.Read("with", &with)
	a, err := fluid.Adjust(have, wanted, with)
	return have.Volume * (have.Volume / a.After.Volume), err
}
