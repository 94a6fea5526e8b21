package hydrostatics

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/working"
)

// Steps shows the working, layer by layer from the top down:
//
//	p2 = p1 + ρ·g·h
//
// with the layer's own density where it is constant, and else its mean one, by
// which a person can check the pressures against a density chart.
func (c *Column) Steps() []working.Step {
	var steps []working.Step
	for i, l := range c.Layers() {
		p1, err1 := c.At(l.TopTVD)
		p2, err2 := c.At(l.BottomTVD)
		if errors.Join(err1, err2) != nil {
			return nil // unreachable: a column holds its layers' ends
		}
		h := l.BottomTVD - l.TopTVD
		name := fmt.Sprintf("bottom of layer %d", i+1)
		rho, ok := uniform(l.Fluid)
		if !ok {
			name, rho = name+", by its mean density", Density(GradientOf(p2-p1, h))
		}
		from := fmt.Sprintf("p%d", i)
		steps = append(steps, working.Step{
			Name: name, Symbol: fmt.Sprintf("p%d", i+1), Equation: from + "+r*g*h",
			Inputs: []working.Input{
				{Symbol: from, Value: working.Of(p1)}, {Symbol: "r", Value: working.Of(rho)}, {Symbol: "h", Value: working.Of(h)},
			},
			Value: working.Of(p2), Source: "Bourgoyne et al., Applied Drilling Engineering, 1986, ch. 4, in SI",
		})
	}
	return steps
}
