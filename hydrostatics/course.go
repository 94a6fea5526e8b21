package hydrostatics

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Course is the stretch of hole between two survey stations.
type Course struct {
	From           Station        `json:"from"`
	To             Station        `json:"to"`
	Length         unit.Length    `json:"length"` // along the hole
	TVD            unit.Length    `json:"tvd"`    // from one station to the other
	North          unit.Length    `json:"north"`
	East           unit.Length    `json:"east"`
	Bend           unit.Angle     `json:"bend"`
	RatioFactor    float64        `json:"ratio_factor"`
	DoglegSeverity unit.Curvature `json:"dogleg_severity"`
}

// CourseBetween returns the course between two stations by minimum curvature:
//
//	β = 2·asin √[sin²((I2−I1)/2) + sin I1·sin I2·sin²((A2−A1)/2)]
//	RF = tan(β/2)/(β/2)
//	ΔTVD = (ΔMD/2)·RF·(cos I1 + cos I2)
//	ΔN = (ΔMD/2)·RF·(sin I1·cos A1 + sin I2·cos A2)
//	ΔE = (ΔMD/2)·RF·(sin I1·sin A1 + sin I2·sin A2)
//	DLS = β/ΔMD
//
// I is inclination, A azimuth, β the bend; this form of β keeps its digits in a
// nearly straight hole. ΔMD isn't zero, and β less than half a turn. For a whole
// survey use Path.
//
// Source: Taylor and Mason, SPE Journal, February 1972; Bourgoyne et al.,
// Applied Drilling Engineering, 1986, ch. 8.
func CourseBetween(from, to Station) Course {
	l := float64(to.MD - from.MD)
	delta, xx := chord(l, direction(from.Inclination, from.Azimuth), direction(to.Inclination, to.Azimuth))
	beta := bend(xx)
	return Course{
		From: from, To: to, Length: unit.Length(l),
		TVD: unit.Length(delta.v), North: unit.Length(delta.n), East: unit.Length(delta.e),
		Bend: unit.Angle(beta), RatioFactor: ratioFactor(xx), DoglegSeverity: unit.Curvature(beta / l),
	}
}

// Steps shows the working.
func (c Course) Steps() []working.Step {
	const source = "minimum curvature, Taylor and Mason 1972"
	i1, a1 := working.Input{Symbol: "I1", Value: working.Of(c.From.Inclination)}, working.Input{Symbol: "A1", Value: working.Of(c.From.Azimuth)}
	i2, a2 := working.Input{Symbol: "I2", Value: working.Of(c.To.Inclination)}, working.Input{Symbol: "A2", Value: working.Of(c.To.Azimuth)}
	l, rf := working.Input{Symbol: "L", Value: working.Of(c.Length)}, working.Input{Symbol: "RF", Value: working.Number(c.RatioFactor)}
	b := working.Input{Symbol: "b", Value: working.Of(c.Bend)}
	steps := []working.Step{{
		Name: "bend", Symbol: "b", Equation: "2*asin(sqrt(pow(sin((I2-I1)/2),2)+sin(I1)*sin(I2)*pow(sin((A2-A1)/2),2)))",
		Inputs: []working.Input{i1, i2, a1, a2}, Value: working.Of(c.Bend), Source: source,
	}}
	if c.Bend > 0 {
		steps = append(steps, working.Step{Name: "ratio factor", Symbol: "RF", Equation: "tan(b/2)/(b/2)", Inputs: []working.Input{b}, Value: rf.Value, Source: source})
	}
	return append(steps,
		working.Step{Name: "vertical", Symbol: "dV", Equation: "L/2*RF*(cos(I1)+cos(I2))", Inputs: []working.Input{l, rf, i1, i2}, Value: working.Of(c.TVD), Source: source},
		working.Step{Name: "north", Symbol: "dN", Equation: "L/2*RF*(sin(I1)*cos(A1)+sin(I2)*cos(A2))", Inputs: []working.Input{l, rf, i1, i2, a1, a2}, Value: working.Of(c.North), Source: source},
		working.Step{Name: "east", Symbol: "dE", Equation: "L/2*RF*(sin(I1)*sin(A1)+sin(I2)*sin(A2))", Inputs: []working.Input{l, rf, i1, i2, a1, a2}, Value: working.Of(c.East), Source: source},
		working.Step{Name: "dogleg severity", Symbol: "DLS", Equation: "b/L", Inputs: []working.Input{b, l}, Value: working.Of(c.DoglegSeverity), Source: source},
	)
}
