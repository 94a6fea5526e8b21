package hookload

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"
	"io"
	"slices"

	"completion.example/examples/internal/depthchart"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular/drag"
)

// prepare lays the string into the well, whose inclination is held from a depth
// on, with friction factors as given and at both ends of their spread.
func (in input) prepare() (p drag.Spread, path *hydrostatics.Path, held unit.Length, err error) {
	stations := []hydrostatics.Station{{MD: in.kickOff}}
	held = in.kickOff
	if in.inclination != 0 && in.survey == nil {
		if !(in.build > 0) {
			return p, nil, 0, fmt.Errorf("build is %v; permitted above 0 deg/100ft where the hole is inclined", in.build)
		}
		held += unit.Length(float64(in.inclination) / float64(in.build))
		stations = append(stations, hydrostatics.Station{MD: held, Inclination: in.inclination})
	}
	// The hole goes on below a string that ends above or in the build.
	stations = append(stations, hydrostatics.Station{MD: max(in.depth, held+unit.Metre), Inclination: in.inclination})
	if path = in.survey; path == nil {
		if path, err = hydrostatics.NewPath(stations); err != nil {
			return p, nil, 0, fmt.Errorf("the well: %w", err)
		}
	}
	zones := []drag.HoleSection{{BottomMD: in.shoe, Friction: in.cased, Hole: in.casing}}
	if in.shoe < in.depth {
		zones = append(zones, drag.HoleSection{BottomMD: in.depth, Friction: in.open, Hole: in.hole})
	}
	if !(in.spread >= 0 && in.spread < 1) {
		return p, nil, 0, fmt.Errorf("friction-spread is %g; permitted from 0 to below 1", in.spread)
	}
	least, greatest := make([]float64, len(zones)), make([]float64, len(zones))
	for k, z := range zones {
		least[k], greatest[k] = z.Friction*(1-in.spread), z.Friction*(1+in.spread)
	}
	p, err = drag.String{
		Sections: []drag.PipeSection{{Pipe: in.pipe, Length: in.depth}}, BottomMD: in.depth, Path: path, HoleSections: zones, Inside: in.fluid, Outside: in.fluid,
	}.PrepareSpread(least, greatest)
	return p, path, held, err
}

func (in input) answer() (calculator.Answer, error) {
	spread, path, held, err := in.prepare()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	p := spread.Nominal
	pulled, err1 := p.EndForce(drag.Pulled, in.pull-in.block)
	if err1 != nil {
		return calculator.Answer{}, err1
	}
	tvd, err := path.TVD(in.depth)
	if err != nil {
		return calculator.Answer{}, err
	}
	l := p.Loads()
	w := in.pipe.BuoyedWeight(in.fluid, in.fluid)
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "buoyed weight", Value: working.In(w, unit.PoundPerFoot, "lb/ft")},
			{Name: "running in", Value: readings(spread, drag.RunIn, 0).Shift(in.block)},
			{Name: "rotating", Value: l.Rotating + in.block},
			{Name: "pulling", Value: readings(spread, drag.Pulled, 0).Shift(in.block)},
			{Name: "drag on the way in", Value: l.Rotating - l.RunIn},
			{Name: "drag on the way out", Value: l.Drag()},
			{Name: "torque to rotate", Value: l.Torque},
			{Name: "reading that brings the wanted pull to the lower end", Value: readings(spread, drag.Pulled, in.end).Shift(in.block)},
			{Name: "pull that gets to the lower end at the reading of -indicator", Value: pulled},
		},
		Steps:  in.steps(w, tvd, l),
		Tables: []calculator.Table{in.along(p, in.marks(held)...)},
		Notes:  []string{"Effective forces: at surface without pressure what the indicator shows. Soft string after Johancsik, Friesen & Dawson 1984."},
		Draw:   func(w io.Writer) error { return in.chart(p).WriteSVG(w) },
	}
	if pulled < 0 {
		a.Notes = append(a.Notes, "at the reading of -indicator the string doesn't come up: it is less than pulling takes with nothing held below")
	}
	if l.Buckles {
		a.Notes = append(a.Notes, "the string buckles somewhere on the way in: it then drags more than is said here")
	}
	return a, in.setWeightDown(&a, p)
}

// marks are the depths where the hole changes, as far as they are known.
func (in input) marks(held unit.Length) []unit.Length {
	if in.survey != nil {
		return []unit.Length{0, in.shoe, in.depth}
	}
	return []unit.Length{0, in.kickOff, held, in.shoe, in.depth}
}

// readings are the hook loads at the ends of the friction factors' spread, least
// first.
func readings(s drag.Spread, m drag.Motion, end unit.Force) unit.Band[unit.Force] {
	low, nominal, high := s.Least.HookLoad(m, end), s.Nominal.HookLoad(m, end), s.Greatest.HookLoad(m, end)
	return unit.Band[unit.Force]{Least: min(low, high), Nominal: nominal, Greatest: max(low, high)}
}

// setWeightDown adds what weight arrives at the lower end, the wall's force of
// what buckles counted.
func (in input) setWeightDown(a *calculator.Answer, p *drag.Prepared) error {
	free := p.SetDown(0).HookLoad
	s, err := p.Arrives(in.setDown)
	if errors.Is(err, drag.ErrNotSlack) {
		return calculator.BadInput{Err: fmt.Errorf("set-down is %v; permitted from nothing to the %s that hang: more can't be slacked off", in.setDown, in.units.Format(free, display.Usual))}
	} else if err != nil {
		return err
	}
	most, err := p.MostSetDown()
	if err != nil {
		return err
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "reading when the weight of -set-down is slacked off", Value: free - in.setDown + in.block},
		calculator.Result{Name: "weight that arrives at the lower end", Value: s.Weight},
		calculator.Result{Name: "share of the next weight slacked off that would arrive", Value: s.Passes},
		calculator.Result{Name: "length buckled then", Value: working.In(s.Buckled, unit.Foot, "ft")},
		calculator.Result{Name: "of it a helix", Value: working.In(s.Helical, unit.Foot, "ft")},
		calculator.Result{Name: "most that can be set down, with all slacked off", Value: most.Weight})
	if most.Locked() {
		a.Notes = append(a.Notes, "with all slacked off the string is locked up: hardly more arrives, whatever is added at surface")
	}
	return nil
}

// steps works what has a closed form: the weight that turns freely. Drag is a march
// along the string, whose force stands in the table.
func (in input) steps(w unit.WeightPerLength, tvd unit.Length, l drag.Loads) []working.Step {
	of := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	we := of("we", working.In(w, unit.PoundPerFoot, "lb/ft"))
	return []working.Step{
		{Name: "buoyed weight", Symbol: "we", Equation: "w + g*(ρi*Ai - ρo*Ao)", Source: "Lubinski, Althouse & Logan 1962", Value: we.Value,
			Inputs: []working.Input{of("w", working.In(in.pipe.WeightInAir(), unit.PoundPerFoot, "lb/ft")), of("ρi", working.Of(in.fluid)), of("Ai", working.Of(in.pipe.InnerArea())),
				of("ρo", working.Of(in.fluid)), of("Ao", working.Of(in.pipe.OuterArea()))}},
		{Name: "rotating, without the block", Symbol: "Fr", Equation: "we*tvd", Source: "weight over the true vertical depth of the lower end", Value: working.Of(l.Rotating),
			Inputs: []working.Input{we, of("tvd", working.In(tvd, unit.Foot, "ft"))}},
		{Name: "drag on the way out", Symbol: "Fd", Equation: "Fp - Fr", Source: "Johancsik, Friesen & Dawson 1984; Fp from the march along the string", Value: working.Of(l.Drag()),
			Inputs: []working.Input{of("Fp", working.Of(l.Pulled)), of("Fr", working.Of(l.Rotating))}},
	}
}

// along is the force along the string where the hole changes.
func (in input) along(p *drag.Prepared, marks ...unit.Length) calculator.Table {
	t := calculator.Table{Name: "effective force along the string, with nothing held at its lower end", Header: []string{"depth", "run in", "rotating", "pulled", "contact below, rotating"}}
	down, still, up := p.Profile(drag.RunIn, 0), p.Profile(drag.Rotating, 0), p.Profile(drag.Pulled, 0)
	slices.Sort(marks)
	i := 0
	for _, mark := range slices.Compact(marks) {
		for i < len(still) && still[i].MD < mark*(1-1e-12) {
			i++
		}
		if i == len(still) {
			break
		}
		t.Rows = append(t.Rows, []any{working.In(still[i].MD, unit.Foot, "ft"), down[i].Force, still[i].Force, up[i].Force, working.In(still[i].Contact, unit.PoundPerFoot, "lb/ft")})
	}
	return t
}

// chart is the effective force along the string in each motion, and its contact.
func (in input) chart(p *drag.Prepared) depthchart.Chart {
	u := in.units.System
	c := depthchart.Chart{Units: u, Panels: []depthchart.Panel{
		{Title: "Effective axial force", Label: u.Unit(display.Force) + ", tension to the right"},
		{Title: "Contact with the wall while rotating", Label: u.Unit(display.PipeWeight)},
	}}
	for _, m := range []drag.Motion{drag.RunIn, drag.Rotating, drag.Pulled} {
		curve := depthchart.Curve{Name: m.String()}
		contact := depthchart.Curve{Name: "contact"}
		c.Depth = c.Depth[:0]
		for _, n := range p.Profile(m, 0) {
			c.Depth = append(c.Depth, n.MD)
			curve.Values = append(curve.Values, u.In(n.Force, display.Force))
			contact.Values = append(contact.Values, u.In(n.Contact, display.PipeWeight))
		}
		c.Panels[0].Curves = append(c.Panels[0].Curves, curve)
		if m == drag.Rotating {
			c.Panels[1].Curves = append(c.Panels[1].Curves, contact)
		}
	}
	return c
}
