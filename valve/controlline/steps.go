package controlline

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

func given[Q unit.Scalar](symbol string, q Q) working.Input {
	return working.Input{Symbol: symbol, Value: working.Of(q)}
}

func litres(symbol string, v unit.Volume) working.Input {
	return working.Input{Symbol: symbol, Value: working.In(v, unit.Litre, "L")}
}

func inches(symbol string, l unit.Length) working.Input {
	return working.Input{Symbol: symbol, Value: working.In(l, unit.Inch, "in")}
}

// Steps shows how the ratings come about.
func (r Ratings) Steps() []working.Step {
	Y, D, tw := given("Y", r.line.Yield), inches("D", r.line.OD), inches("tw", r.ThinWall)
	x := working.Input{Symbol: "x", Value: working.Number(r.Slenderness)}
	return []working.Step{
		{Name: "thinnest wall", Symbol: "tw", Equation: "(1 - a)*t", Value: tw.Value, Source: "wall tolerance",
			Inputs: []working.Input{{Symbol: "a", Value: working.Number(r.line.WallTolerance)}, inches("t", r.line.Wall)}},
		{Name: "working pressure", Symbol: "pw", Equation: "0.875*2*Y*tw/D", Value: working.Of(r.Working), Source: "API Bul 5C3 (1985), 3.1.1",
			Inputs: []working.Input{Y, tw, D}},
		{Name: "first yield of the bore, no axial force", Symbol: "po", Equation: "Y*(D*D - pow(D - 2*tw, 2))/sqrt(3*pow(D, 4) + pow(D - 2*tw, 4))",
			Value: working.Of(r.YieldOpen), Source: "von Mises with Lamé's stresses", Inputs: []working.Input{Y, D, tw}},
		{Name: "slenderness", Symbol: "x", Equation: "D/tw", Value: x.Value, Source: "definition", Inputs: []working.Input{D, tw}},
		{Name: "collapse pressure", Symbol: "pcl", Equation: "2*Y*(x - 1)/(x*x)", Value: working.Of(r.Collapse), Source: "API Bul 5C3 (1985), 2.2",
			Inputs: []working.Input{Y, x}},
	}
}

// Steps shows how the storage comes about.
func (s Storage) Steps() []working.Step {
	V, dp := litres("V", s.Line), given("dp", s.rise)
	return []working.Step{
		{Name: "volume of the line", Symbol: "V", Equation: "pi/4*d*d*L", Value: V.Value, Source: "geometry",
			Inputs: []working.Input{inches("d", s.line.ID()), given("L", s.line.Length)}},
		{Name: "taken up by the liquid", Symbol: "dVf", Equation: "V*c*dp", Value: working.In(s.Fluid, unit.Litre, "L"), Source: "definition of compressibility",
			Inputs: []working.Input{V, given("c", s.c), dp}},
		{Name: "taken up by the wall", Symbol: "dVw", Equation: "V*cw*dp", Value: working.In(s.Wall, unit.Litre, "L"), Source: "Lamé's thick cylinder",
			Inputs: []working.Input{V, given("cw", s.walls), dp}},
	}
}

// Steps shows how the rise of pressure comes about.
func (w Warming) Steps() []working.Step {
	return []working.Step{{Name: "rise of pressure in the blocked line", Symbol: "dp", Equation: "(αf - 3*αw)*dT/(c + cw)", Value: working.Of(w.Rise),
		Source: "trapped liquid, form of API Std 521", Inputs: []working.Input{given("αf", w.liquid), given("αw", w.wall), given("dT", w.warming),
			given("c", w.c), given("cw", w.walls)}}}
}

// Steps shows the volumes and the travel of a shift; times of arrival come from
// Response.
func (p ShiftPlan) Steps() []working.Step {
	swept, rate := litres("Vs", p.shift.Swept), working.Input{Symbol: "Q", Value: working.In(p.Rate, unit.LitrePerMinute, "L/min")}
	return append(p.Storage.Steps(), []working.Step{
		{Name: "drive over what keeps it moving", Symbol: "dp0", Equation: "dpf + dpv", Value: working.Of(p.Drive), Source: "friction of both lines",
			Inputs: []working.Input{given("dpf", p.FeedLoss), given("dpv", p.VentLoss)}},
		{Name: "time to travel the stroke", Symbol: "t", Equation: "Vs/Q", Value: working.Duration(p.Travel), Source: "continuity",
			Inputs: []working.Input{swept, rate}},
		{Name: "volume to pump", Symbol: "Vp", Equation: "dVf + dVw + Vs", Value: working.In(p.Pumped, unit.Litre, "L"), Source: "balance of volumes",
			Inputs: []working.Input{litres("dVf", p.Storage.Fluid), litres("dVw", p.Storage.Wall), swept}},
	}...)
}
