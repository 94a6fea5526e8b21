// Seals tells how far the seals of a string travel, where to space them out, and
// what weights stab them in and pull them out.
package main

import (
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

var command = calculator.Command{
	Name:     "seals",
	Question: "how far do the seals travel, where is their locator to be landed, and what weights stab them in and pull them out?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

// inputs are the flags: the well of the worked example of Lubinski, Althouse &
// Logan 1962 by default, with a second, warm case and an invented receptacle.
type inputs struct {
	section movement.Section
	seat    packer.Seat
	landed  movement.Condition
	cold    movement.Condition
	cooling unit.TemperatureDifference
	warm    movement.Condition
	warming unit.TemperatureDifference
	plan    packer.SealPlan
	stab    packer.Stab
	spacing spacing
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in inputs
	in.section.Pipe.Material = tubular.Steel()
	flags.TextVar(&in.section.Pipe.OD, "od", 2.875*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.section.Pipe.ID, "id", 2.441*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.section.Pipe.Weight, "weight", 6.5*unit.PoundPerFoot, "weight of the tubing in air, couplings included")
	flags.TextVar(&in.section.Bottom, "depth", 10000*unit.Foot, "depth of the packer, vertical")
	flags.TextVar(&in.seat.Casing, "casing", 6.094*unit.Inch, "bore of the casing")
	flags.TextVar(&in.seat.Bore, "bore", 3.25*unit.Inch, "diameter of the seal bore")
	flags.TextVar(&in.landed.InsideDensity, "landed", 7.31*unit.PoundPerGallon, "fluid on both sides when landed, and in the annulus throughout")
	flags.TextVar(&in.cold.InsideDensity, "cold-tubing", 15*unit.PoundPerGallon, "fluid in the tubing in the cold case")
	flags.TextVar(&in.cold.InsideSurface, "cold-inside", 5000*unit.PSI, "tubing pressure at surface in the cold case")
	flags.TextVar(&in.cold.OutsideSurface, "cold-outside", 1000*unit.PSI, "annulus pressure at surface in the cold case")
	flags.TextVar(&in.cooling, "cold", -20*unit.FahrenheitDifference, "change of mean temperature in the cold case")
	flags.TextVar(&in.warm.InsideDensity, "warm-tubing", 6*unit.PoundPerGallon, "fluid in the tubing in the warm case")
	flags.TextVar(&in.warm.InsideSurface, "warm-inside", 500*unit.PSI, "tubing pressure at surface in the warm case")
	flags.TextVar(&in.warming, "warm", 60*unit.FahrenheitDifference, "change of mean temperature in the warm case")
	flags.TextVar(&in.plan.Bore.Shoulder, "shoulder", 10000*unit.Foot, "measured depth of the shoulder that the locator stops on")
	flags.TextVar(&in.plan.Bore.Top, "bore-top", 10001*unit.Foot, "measured depth of the top of the seal bore")
	flags.TextVar(&in.plan.Bore.Bottom, "bore-bottom", 10031*unit.Foot, "measured depth of the bottom of the seal bore")
	flags.TextVar(&in.plan.Seals.First, "first", 1*unit.Foot, "uppermost seal below the locator")
	flags.TextVar(&in.plan.Seals.Last, "last", 29*unit.Foot, "lowest seal below the locator")
	flags.TextVar(&in.plan.Engaged, "engaged", 3*unit.Foot, "least length of seals in the bore in any case")
	flags.TextVar(&in.plan.Clearance, "clearance", 1*unit.Foot, "least height of the locator above its shoulder in any case")
	flags.TextVar(&in.stab.Down, "down", 54*unit.Kilopound, "weight indicator going down, just above the bore")
	flags.TextVar(&in.stab.Up, "up", 62*unit.Kilopound, "weight indicator pulling up, just above the bore")
	flags.TextVar(&in.stab.Friction, "friction", unit.Within(1500*unit.PoundForce, 0.5), "friction of all seals")
	flags.TextVar(&in.stab.Latch, "latch", unit.Band[unit.Force]{}, "what a latch adds to the pull")
	in.spacing.setup(flags)
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in inputs) answer() (calculator.Answer, error) {
	in.landed.OutsideDensity, in.cold.OutsideDensity, in.warm.OutsideDensity = in.landed.InsideDensity, in.landed.InsideDensity, in.landed.InsideDensity
	in.section.Hole = in.seat.Casing
	base := movement.Vertical{Sections: []movement.Section{in.section}, Seals: movement.Seals{Bore: in.seat.Bore}, Initial: in.landed}
	cold, warm := base, base
	cold.Final, cold.Warming = in.cold, in.cooling
	warm.Final, warm.Warming = in.warm, in.warming
	cases := []packer.Case{{Name: "cold", String: cold}, {Name: "warm", String: warm}}
	a := calculator.Answer{}
	for _, c := range cases {
		m, err := c.String.Analyse()
		if err != nil {
			return a, calculator.BadInput{Err: err}
		}
		in.plan.Cases = append(in.plan.Cases, packer.TravelOf(c.Name, m.Movement))
	}
	if err := in.plan.Validate(); err != nil {
		return a, calculator.BadInput{Err: err}
	}
	stroke, err := packer.StrokeOf(in.plan.Cases)
	if err != nil {
		return a, calculator.BadInput{Err: err}
	}
	a.Results = []calculator.Result{{Name: "travel up", Value: stroke.Up}, {Name: "travel down", Value: stroke.Down}, {Name: "whole stroke", Value: stroke.Total()}}
	height, where := unit.Length(0), "on its shoulder"
	if s, err := in.plan.SpaceOut(); err != nil {
		a.Notes, a.Failed = append(a.Notes, err.Error()), true
	} else {
		a.Results = append(a.Results, calculator.Result{Name: "locator above its shoulder, least: " + s.LeastBy, Value: s.Least},
			calculator.Result{Name: "locator above its shoulder, greatest: " + s.GreatestBy, Value: s.Greatest},
			calculator.Result{Name: "middle of the range", Value: s.Middle()})
		if height, err = in.spacing.add(&a, s); err != nil {
			return a, err
		}
		where = "with those pups"
	}
	if err := in.tables(&a, cases, height, where); err != nil {
		return a, err
	}
	return a, in.weights(&a)
}

// tables adds how the seals stand in every case, and what each way of joining
// string and packer would do to the packer.
func (in inputs) tables(a *calculator.Answer, cases []packer.Case, height unit.Length, where string) error {
	engaged, err := in.plan.Engage(height)
	if err != nil {
		return calculator.BadInput{Err: err}
	}
	stand := calculator.Table{Name: "Seals, locator landed " + where, Header: []string{"case", "movement if free", "seals in the bore", "more than needed", "locator above its shoulder", "stopped"}}
	for _, e := range engaged {
		stand.Rows = append(stand.Rows, []any{e.Case, e.Free, e.Engaged, e.Margin, e.Height, e.Stopped})
	}
	joined := calculator.Table{Name: "Packer, with a landed locator on its shoulder (limited) and with an anchor", Header: []string{"case", "seals", "movement", "tubing on packer", "packer on casing", "real force above the packer"}}
	for _, c := range cases {
		c.String.Seals = packer.Restraint(in.seat.Bore, 0)
		c.Below = c.String.Final.Inside(in.section.Bottom)
		all, err := in.seat.Connections(c)
		if err != nil {
			return calculator.BadInput{Err: err}
		}
		for _, k := range all {
			joined.Rows = append(joined.Rows, []any{c.Name, k.Restraint.String(), k.Movement, k.Bearing.Tubing, k.Bearing.Casing, k.Force})
		}
	}
	a.Tables = append(a.Tables, stand, joined)
	return nil
}

// weights adds what the weight indicator shows going in and coming out, with the
// fluids and pressures of landing.
func (in inputs) weights(a *calculator.Answer) error {
	pipe, depth := in.section.Pipe, in.section.Bottom
	end := movement.End{Bore: in.seat.Bore, OD: pipe.OD, ID: pipe.ID, Outside: in.landed.Outside(depth), Inside: in.landed.Inside(depth), Below: in.landed.Inside(depth)}
	in.stab.End = end
	w, err := in.stab.Weights()
	if err != nil {
		return calculator.BadInput{Err: err}
	}
	a.Steps = append(a.Steps, w.Steps()...)
	a.Results = append(a.Results,
		calculator.Result{Name: "set-down that stabs in", Value: w.SetDown},
		calculator.Result{Name: "reading going in", Value: w.In},
		calculator.Result{Name: "reading that pulls out", Value: w.Out})
	return nil
}
