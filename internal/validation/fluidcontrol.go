package validation

import (
	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var controlFluidSuite = Suite{
	File: "fluid-control.csv",
	Quantities: map[string]Evaluator{
		"density between two points": func(in *published.Inputs) (any, error) {
			c, t := twoPoints(in)
			in.Read("rho1", &c.Points[0].Density)
			in.Read("rho2", &c.Points[1].Density)
			return c.Density(0, t)
		},
		"viscosity between two points": func(in *published.Inputs) (any, error) {
			c, t := twoPoints(in)
			for i := range c.Points {
				c.Points[i].Density = 1050
			}
			in.Read("mu1", &c.Points[0].Viscosity)
			in.Read("mu2", &c.Points[1].Viscosity)
			return c.Viscosity(0, t)
		},
	},
}

func twoPoints(in *published.Inputs) (c fluid.ControlFluid, t unit.Temperature) {
	c.Points = make([]fluid.ControlPoint, 2)
	in.Read("t1", &c.Points[0].Temperature)
	in.Read("t2", &c.Points[1].Temperature)
	in.Read("t", &t)
	return c, t
}
