package sequence

import (
	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
)

// factor is the rating's design factor.
func (r Rating) factor() float64 {
	if r.Factor == 0 {
		return 1
	}
	return r.Factor
}

// strengths are a rating's nominal differentials before the design factor.
func (r Rating) strengths(all catalogue.Catalogue) (burst, collapse unit.Pressure, err error) {
	if r.Pipe == nil {
		return r.Burst.Nominal, r.Collapse.Nominal, nil
	}
	pipe, err := r.Pipe.find(all)
	if err != nil {
		return 0, 0, err
	}
	ratings, err := pipe.Ratings()
	return ratings.InternalYield, ratings.Collapse.Pressure, err
}

func (f Fluid) brine() hydrostatics.Fluid {
	return fluid.Brine{At70F: f.Density.Nominal, Expansion: f.Expansion, Compression: f.Compression}
}

func (f Fluid) water() fluid.Water { return fluid.Water{} }
