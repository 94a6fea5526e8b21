package kill

import (
	"errors"
	"fmt"
	"io"
	"math"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/stack"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
)

func (in input) answer() (calculator.Answer, error) {
	k := in.k
	k.InWell.Name, k.Liquid.Name, k.Liquid.Rheology = "fluid of the well", "kill fluid", k.InWell.Rheology
	section := func(name string, c flow.Conduit) []flow.ConduitSection {
		return []flow.ConduitSection{{Name: name, Conduit: c, Length: in.length, BottomTVD: in.depth}}
	}
	k.Well = flow.Well{Pipe: section("tubing", flow.Conduit{Outer: in.id}), Annulus: section("annulus", flow.Conduit{Outer: in.casing, Inner: in.od})}
	k.WeakTVD, k.Fracture = in.shoe, hydrostatics.PressureOf(in.fracture, in.shoe)
	influx, err := stack.Named(in.influx)
	k.Influx.Fluid = influx
	if !(in.pump.Efficiency > 0 && in.pump.Efficiency <= 1) {
		err = errors.Join(err, fmt.Errorf("efficiency is %g; it must be above 0 and at most 1", in.pump.Efficiency))
	}
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	s, err := k.Schedule()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	kill := hydrostatics.Formation{Pressure: k.Formation, TVD: in.depth}
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "shut-in pressure on the way in", Value: s.ShutIn.Pump},
			{Name: "shut-in pressure on the way out", Value: s.ShutIn.Choke},
			{Name: "least density that holds the formation", Value: kill.KillDensity(0)},
			{Name: "pump pressure at the start", Value: s.Initial()},
			{Name: "pump pressure with kill fluid at the end of the way in", Value: s.Final()},
			{Name: "pumped until then", Value: s.Through},
			{Name: "greatest choke pressure", Value: s.GreatestChoke.Choke},
			{Name: "when this has been pumped", Value: s.GreatestChoke.Pumped},
			{Name: "greatest pressure at the weakest point", Value: s.GreatestWeak.Weak},
			{Name: "its fracture pressure", Value: k.Fracture},
			{Name: "pumped for both sides", Value: s.Whole},
			{Name: "time for both sides", Value: flow.PumpingTime(s.Whole, k.Rate)},
		},
		Tables: []calculator.Table{in.table(s)},
		Steps:  k.Steps(s),
		Draw:   in.draw(s, k.Fracture),
		Notes:  []string{"the bubble is taken as one that doesn't slip: in the well gas comes earlier and strung out, so that the choke's peak is earlier and lower"},
	}
	in.judge(&a, k, s)
	return a, nil
}

// judge holds the job against what it must not do.
func (in input) judge(a *calculator.Answer, k flow.Kill, s flow.Killing) {
	say := func(v any) string { return in.units.Format(v, display.Usual) }
	fail := func(bad bool, text string) {
		if bad {
			a.Notes, a.Failed = append(a.Notes, text), true
		}
	}
	fail(s.GreatestWeak.Weak >= k.Fracture, fmt.Sprintf("with %s pumped the weakest point sees %s, at or above its fracture pressure", say(s.GreatestWeak.Pumped), say(s.GreatestWeak.Weak)))
	fail(max(s.GreatestChoke.Choke, s.Initial(), s.Final()) > in.limit, "pump or choke pass the limit of "+say(in.limit))
	least := s.Points[0]
	for _, p := range s.Points {
		if p.Choke < least.Choke {
			least = p
		}
	}
	over := hydrostatics.Pressure(k.Liquid.Density, in.depth) - k.Formation
	fail(over < 0, "the kill fluid doesn't hold the formation: "+say(-over)+" are missing")
	if least.Choke < 0 {
		a.Notes = append(a.Notes, fmt.Sprintf("from about %s pumped the choke has nothing to hold: column and friction are more than the margin asks for, by up to %s", say(in.open(s)), say(-least.Choke)))
	}
	if final := s.Final(); final < 0 {
		a.Notes = append(a.Notes, "the kill fluid falls by itself on the way in: hold more on the choke to stay with the pump")
	}
}

// open is the volume from which the choke has nothing to hold.
func (in input) open(s flow.Killing) unit.Volume {
	for _, p := range s.Points {
		if p.Choke < 0 {
			return p.Pumped
		}
	}
	return unit.Volume(math.NaN())
}

// rows of the table, about.
const rows = 20

func (in input) table(s flow.Killing) calculator.Table {
	t := calculator.Table{Name: "Schedule", Header: []string{"pumped", "strokes", "pump", "choke", "weakest point", "influx takes", "its top at"}}
	every := max(1, len(s.Points)/rows)
	for i, p := range s.Points {
		if i%every != 0 && i != len(s.Points)-1 && p.Pumped != s.Through && p.Pumped != s.AtSurface {
			continue
		}
		top := any(p.TopTVD)
		if p.Bubble == 0 {
			top = nil
		}
		t.Rows = append(t.Rows, []any{p.Pumped, fmt.Sprintf("%.0f", float64(p.Pumped/in.pump.Output())), p.Pump, p.Choke, p.Weak, p.Bubble, top})
	}
	return t
}

// draw returns the picture that pump and choke are held against.
func (in input) draw(s flow.Killing, fracture unit.Pressure) func(io.Writer) error {
	curve := func(name string, value func(flow.KillPoint) unit.Pressure) chart.Curve {
		c := chart.Curve{Name: name}
		for _, p := range s.Points {
			c.X, c.Y = append(c.X, p.Pumped), append(c.Y, value(p))
		}
		return c
	}
	return func(w io.Writer) error {
		return chart.Curves{
			Title: "Circulating the well dead: pressure against volume pumped",
			X:     chart.Axis{Name: "pumped", For: display.Volume}, Y: chart.Axis{Name: "pressure", For: display.Pressure},
			Curves: []chart.Curve{
				curve("pump", func(p flow.KillPoint) unit.Pressure { return p.Pump }),
				curve("choke", func(p flow.KillPoint) unit.Pressure { return p.Choke }),
				curve("weakest point", func(p flow.KillPoint) unit.Pressure { return p.Weak }),
			},
			Levels: []chart.Level{{Name: "it fractures", Y: fracture}},
		}.WriteSVG(w, in.units.System)
	}
}
