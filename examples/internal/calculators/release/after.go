package release

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// premature holds the anchored string against the pins, as landed and in the
// coldest case.
func (in inputs) premature(a *calculator.Answer, r packer.Release) error {
	section := r.Pull.Sections[0]
	section.Hole = in.casing
	still := movement.WellFluids{InsideDensity: in.tubing, OutsideDensity: in.annulus}
	cold := still
	cold.InsideSurface = in.pressured
	v := movement.Vertical{
		Sections: []movement.StringSection{section}, Seals: movement.SealBore{Bore: in.seal, Restraint: movement.Anchored},
		Initial: still, Final: cold, Warming: in.cooling, SlackOff: -in.locked,
	}
	load, err := in.anchored(v)
	if err != nil {
		return err
	}
	margins, err := packer.HoldPins(in.pins, false, []packer.PinCase{{Case: "as landed", Load: in.locked}, {Case: "cold and pressured", Load: load}})
	if err != nil {
		return err
	}
	t := calculator.Table{Name: "Premature release, string anchored", Header: []string{"case", "load on the pins", "share of their least strength", "left", "parted"}}
	for _, m := range margins {
		t.Rows = append(t.Rows, []any{m.Case, m.Load, m.Used, m.Margin, word(m.State)})
		if m.State != packer.NotActed {
			a.Failed = true
			a.Notes = append(a.Notes, m.Case+": the pins part, or may part, before they are to")
		}
	}
	a.Tables = append(a.Tables, t)
	return nil
}

// anchored is the force on the packer in the coldest case: in closed form in a vertical
// well, node by node along a survey.
func (in inputs) anchored(v movement.Vertical) (unit.Force, error) {
	if in.survey == nil {
		c, err := v.Analyse()
		return c.PackerForce, err
	}
	state := func(w movement.WellFluids, warmer unit.TemperatureDifference) movement.WellProfiles {
		column := func(rho unit.Density, surface unit.Pressure) func(unit.Length) unit.Pressure {
			return func(tvd unit.Length) unit.Pressure { return surface + hydrostatics.Pressure(rho, tvd) }
		}
		return movement.WellProfiles{Inside: column(w.InsideDensity, w.InsideSurface), Outside: column(w.OutsideDensity, w.OutsideSurface), Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(100).Add(warmer) }}
	}
	s := movement.String{Sections: v.Sections, Path: in.survey, Seals: v.Seals}
	landed, err := s.Land(state(v.Initial, 0), v.SlackOff)
	if err != nil {
		return 0, err
	}
	c, err := landed.Load(state(v.Final, v.Warming))
	return c.PackerForce, err
}

// unseat asks whether the string stays on the hook when the packer lets go.
func (in inputs) unseat(a *calculator.Answer, r packer.Release) error {
	r.Pull.Seal = in.casing
	f, err := packer.Unseating{Pull: r.Pull, Trapped: in.trapped, Reserve: in.reserve}.Freed()
	if err != nil {
		return err
	}
	a.Steps = append(a.Steps, f.Steps()...)
	a.Results = append(a.Results,
		calculator.Result{Name: "trapped under the packer, above what stands over it", Value: f.Differential},
		calculator.Result{Name: "weight on the hook when the packer lets go", Value: f.Weight},
		calculator.Result{Name: "bleed the trapped pressure to", Value: f.BleedTo})
	a.Notes = append(a.Notes, "when the packer lets go: "+f.String())
	a.Failed = a.Failed || f.Light != packer.NotActed
	return nil
}

// parted asks what the columns do once tubing and annulus are joined.
func (in inputs) parted(a *calculator.Answer, r packer.Release) error {
	leg := func(rho unit.Density, area unit.Area, held unit.Pressure) hydrostatics.Leg {
		return hydrostatics.Leg{
			Sections: []hydrostatics.LegSection{{BottomMD: in.depth, Area: area}},
			Fluids:   []hydrostatics.Stretch{{BottomMD: in.depth, Density: rho}}, Surface: held,
		}
	}
	p, err := packer.Parted{
		Legs: hydrostatics.UTube{PortMD: in.depth, Path: in.survey,
			Tubing:  leg(in.tubing, in.pipe.Capacity(), in.held),
			Annulus: leg(in.annulus, tubular.AnnularCapacity(in.casing, in.pipe.OD), 0)},
		Open: in.formation > 0, Formation: in.formation, Margin: marginOf(in),
	}.Aftermath()
	if err != nil {
		return err
	}
	a.Steps = append(a.Steps, p.Steps()...)
	a.Results = append(a.Results,
		calculator.Result{Name: "after parting, falls", Value: p.Falling.String()},
		calculator.Result{Name: "pressure on the other side that holds it", Value: p.Hold})
	if p.NoRest == nil {
		a.Results = append(a.Results, calculator.Result{Name: "through the parted mandrel, if nothing is done", Value: p.Rest.Moved})
	} else {
		a.Notes = append(a.Notes, "if nothing is done: "+p.NoRest.Error())
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "volume that makes both sides the heavier fluid", Value: p.Fill},
		calculator.Result{Name: "whole circulation", Value: p.Circulation})
	if in.formation > 0 {
		in.overbalance(a, p)
	}
	return nil
}

// overbalance holds the lighter column against what is open below.
func (in inputs) overbalance(a *calculator.Answer, p packer.Aftermath) {
	a.Results = append(a.Results,
		calculator.Result{Name: "overbalance of the lighter column", Value: p.Overbalance},
		calculator.Result{Name: "density for the overbalance wanted", Value: p.Kill})
	switch {
	case p.Overbalance < 0:
		a.Failed = true
		a.Notes = append(a.Notes, "the well flows once the mandrel has parted: kill it first")
	case p.Overbalance < in.margin:
		a.Notes = append(a.Notes, "once the mandrel has parted, the overbalance is less than is wanted")
	}
}

// marginOf leaves the margin out where nothing is open below.
func marginOf(in inputs) unit.Pressure {
	if in.formation > 0 {
		return in.margin
	}
	return 0
}

// word says whether pins have parted.
func word(s packer.Outcome) string {
	switch s {
	case packer.NotActed:
		return "no"
	case packer.Acted:
		return "yes"
	case packer.Unknown:
	}
	return "unknown"
}
