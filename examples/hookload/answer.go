package main

import (
	"errors"
	"fmt"
	"io"

	"completion.example/examples/internal/depthchart"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular/drag"
)

// prepare lays the string into the well.
func (in input) prepare() (*drag.Prepared, error) {
	stations := []hydrostatics.Station{{MD: in.kickOff}}
	if in.inclination != 0 {
		if !(in.build > 0) {
			return nil, fmt.Errorf("build is %v; permitted above 0 deg/100ft where the hole is inclined", in.build)
		}
		stations = append(stations, hydrostatics.Station{MD: in.kickOff + unit.Length(float64(in.inclination)/float64(in.build)), Inclination: in.inclination})
	}
	stations = append(stations, hydrostatics.Station{MD: in.depth, Inclination: in.inclination})
	path, err := hydrostatics.NewPath(stations)
	if err != nil {
		return nil, fmt.Errorf("the well: %w", err)
	}
	zones := []drag.Zone{{Bottom: in.shoe, Friction: in.cased, Hole: in.casing}}
	if in.shoe < in.depth {
		zones = append(zones, drag.Zone{Bottom: in.depth, Friction: in.open, Hole: in.hole})
	}
	return drag.String{
		Sections: []drag.Section{{Pipe: in.pipe, Length: in.depth}}, Depth: in.depth, Path: path, Zones: zones, Inside: in.fluid, Outside: in.fluid,
	}.Prepare()
}

func (in input) answer() (calculator.Answer, error) {
	p, err := in.prepare()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	pulled, err1 := p.EndForce(drag.Pulled, in.pull-in.block)
	setDown, err2 := p.EndForce(drag.RunIn, in.setDown-in.block)
	if err := errors.Join(err1, err2); err != nil {
		return calculator.Answer{}, err
	}
	l := p.Loads()
	w := in.pipe.BuoyedWeight(in.fluid, in.fluid)
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "buoyed weight", Value: working.In(w, unit.PoundPerFoot, "lb/ft")},
			{Name: "running in", Value: l.RunIn + in.block},
			{Name: "rotating", Value: l.Rotating + in.block},
			{Name: "pulling", Value: l.Pulled + in.block},
			{Name: "drag on the way out", Value: l.Drag()},
			{Name: "torque to rotate", Value: l.Torque},
			{Name: "reading that brings the wanted pull to the lower end", Value: p.HookLoad(drag.Pulled, in.end) + in.block},
			{Name: "pull at the lower end for -indicator", Value: pulled},
			{Name: "force at the lower end for -set-down", Value: setDown},
		},
		Steps: []working.Step{{
			Name: "buoyed weight", Symbol: "we", Equation: "w + g*(ρi*Ai - ρo*Ao)", Source: "Lubinski, Althouse & Logan 1962",
			Inputs: []working.Input{{Symbol: "w", Value: working.In(in.pipe.WeightInAir(), unit.PoundPerFoot, "lb/ft")}, {Symbol: "ρi", Value: working.Of(in.fluid)}, {Symbol: "Ai", Value: working.Of(in.pipe.InnerArea())},
				{Symbol: "ρo", Value: working.Of(in.fluid)}, {Symbol: "Ao", Value: working.Of(in.pipe.OuterArea())}},
			Value: working.In(w, unit.PoundPerFoot, "lb/ft"),
		}},
		Notes: []string{"Effective forces: at surface without pressure what the indicator shows. Soft string after Johancsik, Friesen & Dawson 1984."},
		Draw:  func(w io.Writer) error { return in.chart(p).WriteSVG(w) },
	}
	if l.Buckles {
		a.Notes = append(a.Notes, "the string buckles somewhere on the way in: it then drags more than is said here")
	}
	if buckles(p.Profile(drag.RunIn, setDown)) {
		a.Notes = append(a.Notes, "set down like this the string buckles: less of the weight gets down than is said here")
	}
	return a, nil
}

func buckles(nodes []drag.Node) bool {
	for _, n := range nodes {
		if n.Buckles {
			return true
		}
	}
	return false
}

// chart is the effective force along the string in each motion, and its contact.
func (in input) chart(p *drag.Prepared) depthchart.Chart {
	c := depthchart.Chart{Panels: []depthchart.Panel{
		{Title: "Effective axial force", Label: "klbf, tension to the right"},
		{Title: "Contact with the wall while rotating", Label: "lb/ft"},
	}}
	for _, m := range []drag.Motion{drag.RunIn, drag.Rotating, drag.Pulled} {
		curve := depthchart.Curve{Name: m.String()}
		contact := depthchart.Curve{Name: "contact"}
		c.Depth = c.Depth[:0]
		for _, n := range p.Profile(m, 0) {
			c.Depth = append(c.Depth, n.MD)
			curve.Values = append(curve.Values, n.Force.In(unit.Kilopound))
			contact.Values = append(contact.Values, n.Contact.In(unit.PoundPerFoot))
		}
		c.Panels[0].Curves = append(c.Panels[0].Curves, curve)
		if m == drag.Rotating {
			c.Panels[1].Curves = append(c.Panels[1].Curves, contact)
		}
	}
	return c
}
