package safetyvalve

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

func (in input) answer() (calculator.Answer, error) {
	state := valve.ControlState{TVD: in.depth, Density: in.columns.Control, Backing: in.tubing}
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
		depth := any(d.TVD)
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
			{Name: "leak", Value: working.In(leak.Rate, unit.CubicFootPerMinute, "ft3/min"), For: display.SmallRate}, {Name: "leak allowed", Value: working.In(valve.LeakLimitGas, unit.CubicFootPerMinute, "ft3/min"), For: display.SmallRate},
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
	fail(!f.Governing.Anywhere && in.depth > f.Governing.TVD, fmt.Sprintf("set at %s the valve isn't fail safe: %s", in.units.Format(in.depth, display.Depth), f.Governing.Case.Name))
	fail(k.FullyOpen < 0, "the panel pressure doesn't keep it fully open at the greatest backing pressure")
	fail(leak.Rate > valve.LeakLimitGas, "the leak is above the limit (ISO 10417:1993)")
	return a, nil
}

func limit(d valve.FailSafeDepth) any {
	if d.Anywhere {
		return "any"
	}
	return d.TVD
}
