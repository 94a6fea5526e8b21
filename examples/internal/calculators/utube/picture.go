package utube

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// picture draws both legs before the port opens and at rest.
func (in inputs) picture(r hydrostatics.AtRest) func(io.Writer) error {
	port := unit.Length(0) // true vertical depth, down to which the fuller leg stands
	for _, leg := range []hydrostatics.LegAtRest{r.Tubing, r.Annulus} {
		port = max(port, leg.LevelTVD+height(leg.Settled))
	}
	bar := func(name string, fluids []hydrostatics.Standing) chart.Bar {
		b := chart.Bar{Name: name}
		top := port - height(fluids)
		for _, f := range fluids {
			b.Parts = append(b.Parts, chart.Filled{Name: in.units.Format(f.Density, display.Usual), Top: top, Bottom: top + f.Height, Density: f.Density})
			top += f.Height
		}
		return b
	}
	return func(w io.Writer) error {
		return chart.Stacks{Title: "Tubing and annulus, before the port opens and at rest", Depth: "true vertical depth", Bottom: port, Bars: []chart.Bar{
			bar("tubing before", r.Tubing.Filled), bar("annulus before", r.Annulus.Filled), bar("tubing at rest", r.Tubing.Settled), bar("annulus at rest", r.Annulus.Settled),
		}}.WriteSVG(w, in.units.System)
	}
}

func height(fluids []hydrostatics.Standing) unit.Length {
	h := unit.Length(0)
	for _, f := range fluids {
		h += f.Height
	}
	return h
}
