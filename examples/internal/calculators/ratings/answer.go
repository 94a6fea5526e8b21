package ratings

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

func answer(in input, e catalogue.Entry, p tubular.Pipe, r tubular.Ratings, loaded tubular.CollapseRating, rupture unit.Pressure) calculator.Answer {
	a := calculator.Answer{Steps: r.Steps()}
	add := func(name string, v any) { a.Results = append(a.Results, calculator.Result{Name: name, Value: v}) }
	inches := func(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }
	add("bore", inches(p.ID))
	add("wall", inches(p.Wall()))
	add("drift of the new pipe", inches(e.Drift))
	if e.Coupling != 0 {
		add("coupling", inches(e.Coupling))
	}
	add("yield strength at this temperature", p.Material.Yield)
	add("collapse", r.Collapse.Pressure)
	add("collapse regime", r.Collapse.Regime.String())
	switch {
	case in.axial == 0 && in.inside == 0:
	case loaded.Pressure == 0:
		add("collapse under load, outside minus inside", "none: overloaded")
		a.Notes = append(a.Notes, "under this load so little of the yield strength is left that API gives no collapse formula")
		a.Failed = true
	default:
		add("collapse under load, outside minus inside", loaded.Pressure)
		a.Steps = append(a.Steps, loaded.Steps()...)
	}
	if math.Abs(float64(in.axial)) > float64(r.BodyYield) {
		a.Notes = append(a.Notes, "the axial force is beyond the body's yield")
		a.Failed = true
	}
	add("internal yield, Barlow", r.InternalYield)
	add("internal yield, thick wall, no axial force", r.YieldOpen)
	add("internal yield, thick wall, capped ends", r.YieldClosed)
	add("ductile rupture, capped ends: not to work to", rupture)
	add("body yield", r.BodyYield)
	if e.ShortThread != 0 {
		add("joint, short round thread", p.RoundThread(e.ShortThread).Strength())
	}
	if e.LongThread != 0 {
		long := p.RoundThread(e.LongThread)
		add("joint, long round thread", long.Strength())
		a.Steps = append(a.Steps, long.Steps()...)
	}
	if e.Finish == catalogue.NonUpset {
		add("joint, non-upset", p.NonUpset(e.ThreadHeight()))
	}
	if e.Kind == catalogue.Casing && e.Coupling != 0 {
		add("joint, buttress, pipe thread", p.Buttress())
	}
	add("mill's standard hydrostatic test, when new", e.StandardTest(in.grade))
	a.Notes = append(a.Notes, "Size, wall and drift: "+e.Source+" ("+string(e.Status)+"). Coupling, thread lengths and strengths of the grade: API 5CT and 5B from memory.",
		"API's tables print collapse and internal yield to ten psi and joints to a thousand lbf. A coupling or a proprietary connection may be weaker than the pipe.")
	if e.OD == 4.5*unit.Inch && in.weight == 11.6*unit.PoundPerFoot && in.grade.Name == "L80" && in.wear == (tubular.Allowance{}) && in.temperature == unit.Fahrenheit(70) {
		a.Published = &calculator.Published{Name: "collapse of 4-1/2 in 11.6 lb/ft L80", Printed: "6350 psi", Ours: r.Collapse.Pressure,
			Source: "casing data table, sizes 4.500 to 5.000, which cites API 5C3 and prints to 10 psi"}
	}
	return a
}
