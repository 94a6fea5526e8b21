// Safetyvalve tells how deep a surface-controlled safety valve may be set, what
// opens and keeps it open, and whether its leak is within the limit.
package main

import (
	"errors"
	"flag"
	"fmt"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

var command = calculator.Command{
	Name:     "safetyvalve",
	Question: "how deep may a safety valve be set, what opens and closes it, and does it leak too much?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

type input struct {
	valve         valve.SafetyValve
	columns       valve.FailSafeColumns
	depth         unit.Length
	margin, panel unit.Pressure
	tubing        unit.Band[unit.Pressure]
	leak          valve.GasLeak
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{leak: valve.GasLeak{Standard: valve.StandardUS()}}
	flags.TextVar(&in.valve.Backing, "backing", valve.TubingBacked, "what backs the piston: tubing, second line, annulus or none")
	flags.TextVar(&in.valve.Opens, "opens", unit.Band[unit.Pressure]{Least: 1710 * unit.PSI, Nominal: 1800 * unit.PSI, Greatest: 1890 * unit.PSI}, "differential, control minus backing, at which it is fully open")
	flags.TextVar(&in.valve.Closes, "closes", unit.Band[unit.Pressure]{Least: 950 * unit.PSI, Nominal: 1000 * unit.PSI, Greatest: 1050 * unit.PSI}, "differential at which it is fully closed")
	flags.TextVar(&in.columns.Control, "control", 7.26*unit.PoundPerGallon, "control fluid")
	flags.TextVar(&in.columns.Annulus, "annulus", 9.5*unit.PoundPerGallon, "heaviest annulus fluid, that a leak can put into the line")
	flags.TextVar(&in.columns.Second, "second", 7.26*unit.PoundPerGallon, "fluid in the second line, if there is one")
	flags.TextVar(&in.columns.Backing, "lightest", 8.4*unit.PoundPerGallon, "lightest annulus, if it backs the piston")
	flags.TextVar(&in.depth, "depth", 1500*unit.Foot, "true vertical depth of the valve under the panel")
	flags.TextVar(&in.margin, "margin", 100*unit.PSI, "margin on closing")
	flags.TextVar(&in.panel, "panel", 5000*unit.PSI, "control pressure held at the panel")
	flags.TextVar(&in.tubing, "backing-pressure", unit.Band[unit.Pressure]{Least: 500 * unit.PSI, Nominal: 1500 * unit.PSI, Greatest: 3000 * unit.PSI}, "what backs the piston, at the valve: least, usual and greatest")
	flags.TextVar(&in.leak.Start, "leak-start", 85*unit.PSI, "build-up test: pressure at its start")
	flags.TextVar(&in.leak.End, "leak-end", 107*unit.PSI, "pressure at its end")
	flags.Float64Var(&in.leak.StartFactor, "z-start", 0.985, "gas deviation factor at the start")
	flags.Float64Var(&in.leak.EndFactor, "z-end", 0.982, "gas deviation factor at the end")
	flags.DurationVar(&in.leak.Duration, "leak-time", 30*time.Minute, "duration of the test")
	flags.TextVar(&in.leak.Volume, "leak-volume", 50*unit.Barrel, "gas space above the valve")
	flags.TextVar(&in.leak.Temperature, "leak-temperature", unit.Fahrenheit(100), "of that space")
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in input) answer() (calculator.Answer, error) {
	state := valve.ControlState{Depth: in.depth, Density: in.columns.Control, Backing: in.tubing}
	p, err1 := in.valve.Pressures(state)
	k, err2 := in.valve.KeepOpen(in.panel, state)
	leak, err3 := in.leak.Rate()
	if err := errors.Join(err1, err3); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	if err2 != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err2}
	}
	f, err := in.valve.FailSafe(in.margin, in.valve.FailSafeCases(in.columns))
	if errors.Is(err, valve.ErrNotFailSafe) {
		return calculator.Answer{}, err
	} else if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	t := calculator.Table{Name: "Deepest setting that closes with the line vented", Header: []string{"case", "depth", "spare at the depth set"}}
	for _, d := range f.Cases {
		spare := d.Available - hydrostatics.Pressure(d.Case.Control-d.Case.BackingDensity, in.depth)
		depth := any(d.Depth)
		if d.Anywhere {
			depth = "any"
		}
		t.Rows = append(t.Rows, []any{d.Case.Name, depth, spare})
	}
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "fail-safe depth", Value: limit(f.Governing)},
			{Name: "fully open at the panel", Value: p.Open}, {Name: "recommended over the opening pressure seen", Value: valve.ReopenMargin},
			{Name: "fully closed at the panel", Value: p.Closed},
			{Name: "margin while held open", Value: k.FullyOpen}, {Name: "greatest backing pressure that leaves it open", Value: k.Backing},
			{Name: "leak", Value: working.In(leak.Rate, unit.CubicFootPerMinute, "ft3/min")}, {Name: "leak allowed", Value: working.In(valve.LeakLimitGas, unit.CubicFootPerMinute, "ft3/min")},
		},
		Tables: []calculator.Table{t},
		Steps:  append(append(append(f.Steps(), p.Steps()...), k.Steps()...), leak.Steps()...),
	}
	fail := func(bad bool, note string) {
		if bad {
			a.Failed = true
			a.Notes = append(a.Notes, note)
		}
	}
	fail(!f.Governing.Anywhere && in.depth > f.Governing.Depth, fmt.Sprintf("set at %s the valve isn't fail safe: %s", in.depth.Rounded(5), f.Governing.Case.Name))
	fail(k.FullyOpen < 0, "the panel pressure doesn't keep it fully open at the greatest backing pressure")
	fail(leak.Rate > valve.LeakLimitGas, "the leak is above the limit (ISO 10417:1993)")
	return a, nil
}

func limit(d valve.FailSafeDepth) any {
	if d.Anywhere {
		return "any"
	}
	return d.Depth
}
