package bullhead

import (
	"errors"
	"fmt"
	"slices"

	"completion.example/examples/internal/stack"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

// steps of the schedule.
const steps = 10

func (in input) answer() (calculator.Answer, error) {
	b, losses, err := in.job()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	points, err := b.Schedule(steps)
	if err != nil {
		return calculator.Answer{}, err
	}
	gas, err := b.Influx.Density(in.formation, in.bottom)
	if err != nil {
		return calculator.Answer{}, err
	}
	tubing := flow.Conduit{Outer: in.id}
	rise, below := flow.BubbleRise(in.id, in.kill.Density, gas), flow.BubbleRise(in.casing, in.kill.Density, gas)
	least := max(tubing.Rate(rise), flow.Conduit{Outer: in.casing}.Rate(below))
	last := points[len(points)-1]
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "shut-in pressure at surface before pumping", Value: points[0].Shut},
			{Name: "greatest surface pressure then, pump off, for the fracture", Value: points[0].Greatest},
			{Name: "volume to the end of the tubing", Value: in.toPacker()},
			{Name: "volume to the perforations", Value: last.Pumped},
			{Name: "time at the rate", Value: flow.PumpingTime(last.Pumped, in.rate)},
			{Name: "shut-in pressure at surface at the end", Value: last.Shut},
			{Name: "least density that holds the formation", Value: b.Formation.KillDensity(0)},
			{Name: "velocity of the kill fluid in the tubing", Value: working.In(tubing.Velocity(in.rate), unit.FootPerMinute, "ft/min")},
			{Name: "a bubble rises in it at", Value: working.In(rise, unit.FootPerMinute, "ft/min")},
			{Name: "least rate that takes the gas along", Value: tubing.Rate(rise)},
			{Name: "the same in the casing below the packer", Value: flow.Conduit{Outer: in.casing}.Rate(below)},
		},
		Tables: []calculator.Table{table(points)},
		Steps:  slices.Concat(losses[0].Steps(), b.Steps(last)),
		Draw:   in.draw(points),
		Notes: []string{"friction of what is pushed ahead is left out; stop and think when the pressure does not follow the table: a plugged perforation, a leak, gas past the fluid",
			"the sheet is for one bore full of one fluid; what the formation takes, and whether it may be pumped into, is for the plan"},
	}
	in.judge(&a, points, in.rate < least)
	if in.formation == 4895*unit.PSI && in.fracture == 0.645*unit.PSIPerFoot && in.depth == 11000*unit.Foot {
		a.Published = &calculator.Published{Name: "fracture pressure at the perforations", Printed: "7095 psi", Ours: b.Fracture, Source: "bullheading worked example, drilling formulas site"}
	}
	return a, nil
}

// job puts the well together, with what the kill fluid loses in each bore.
func (in input) job() (hydrostatics.Bullhead, []flow.Friction, error) {
	influx, err := stack.Named(in.influx)
	profile, err2 := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: in.surface}, {TVD: in.depth, Temperature: in.bottom}})
	b := hydrostatics.Bullhead{Formation: hydrostatics.Formation{Pressure: in.formation, TVD: in.depth}, Injection: in.injection,
		Fracture: hydrostatics.PressureOf(in.fracture, in.depth), Path: in.path, Influx: influx, Kill: in.kill.Density, Temperature: profile,
		Sections: []hydrostatics.LegSection{{BottomMD: in.measuredPacker, Area: flow.Conduit{Outer: in.id}.Area()}, {BottomMD: in.measuredFormation, Area: flow.Conduit{Outer: in.casing}.Area()}}}
	faults := []error{err, err2}
	var losses []flow.Friction
	for _, d := range []unit.Length{in.id, in.casing} {
		f, err := flow.Stream{Conduit: flow.Conduit{Outer: d, Roughness: in.roughness}, Rheology: in.kill.Rheology, Density: in.kill.Density, Rate: in.rate}.Friction()
		faults = append(faults, err)
		losses = append(losses, f)
		b.Friction = append(b.Friction, f.Gradient)
	}
	if !(in.share > 0 && in.share <= 1) {
		faults = append(faults, fmt.Errorf("share is %g; it must be above 0 and at most 1", in.share))
	}
	if !(in.rate > 0) {
		faults = append(faults, fmt.Errorf("rate is %v; it must be above zero", in.rate))
	}
	return b, losses, errors.Join(faults...)
}

func (in input) toPacker() unit.Volume {
	return flow.Conduit{Outer: in.id}.Volume(in.measuredPacker)
}

func table(points []hydrostatics.BullheadPoint) calculator.Table {
	t := calculator.Table{Name: "Surface pressure against volume pumped", Header: []string{"pumped", "front at", "shut in, no less than", "at the pump", "pump off, less than", "while pumping, less than"}}
	for _, p := range points {
		t.Rows = append(t.Rows, []any{p.Pumped, p.FrontMD, p.Shut, p.Pump, p.Greatest, p.GreatestPumping})
	}
	return t
}

// judge holds the pump's pressure against every limit.
func (in input) judge(a *calculator.Answer, points []hydrostatics.BullheadPoint, slow bool) {
	say := func(v any) string { return in.units.Format(v, display.Usual) }
	worst := map[string]bool{}
	fail := func(why, text string) {
		if !worst[why] {
			a.Notes, a.Failed, worst[why] = append(a.Notes, text), true, true
		}
	}
	used := unit.Pressure(0)
	for _, p := range points {
		atFront := p.AtFront - in.annulus - hydrostatics.Pressure(in.outside, p.FrontTVD)
		if p.FrontTVD > in.packer {
			atFront = 0 // below the packer there is no tubing
		}
		used = max(used, p.Pump-in.annulus, atFront)
		if p.Pump > p.GreatestPumping {
			fail("fracture", fmt.Sprintf("with %s pumped the formation sees more than its fracture pressure", say(p.Pumped)))
		}
		if p.Pump > in.limit {
			fail("limit", fmt.Sprintf("with %s pumped the pump needs %s, above the limit of %s", say(p.Pumped), say(p.Pump), say(in.limit)))
		}
	}
	a.Results = append(a.Results, calculator.Result{Name: "most of the tubing's rating that is used", Value: fmt.Sprintf("%.1f %%", 100*float64(used/in.rating))})
	if used > unit.Pressure(in.share)*in.rating {
		fail("burst", fmt.Sprintf("the tubing sees %s, more than %.0f %% of its rating: hold pressure on the annulus or pump slower", say(used), 100*in.share))
	}
	if slow {
		fail("slow", "the kill fluid is slower than a gas bubble rises: gas comes back past it; pump faster, or a more viscous fluid ahead")
	}
	if end := points[len(points)-1]; end.Shut > 0 {
		fail("light", fmt.Sprintf("the kill fluid doesn't hold the formation: %s stay at surface", say(end.Shut)))
	}
}
