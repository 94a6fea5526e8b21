package movement

import (
	"io"

	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/tubular/movement"
)

// along is the answer in a well with a survey, node by node: the closed form is that of
// a vertical well.
func (in input) along(free, c movement.Loading, notChecked []string) calculator.Answer {
	m := free.Movement
	stroke := func(name string, v any) calculator.Result {
		return calculator.Result{Name: name, Value: v, For: display.Stroke}
	}
	end := c.Nodes[len(c.Nodes)-2] // the last is under the seals
	out := calculator.Answer{
		Results: []calculator.Result{
			stroke("piston", m.Piston), stroke("buckling", m.Buckling), stroke("ballooning", m.Ballooning), stroke("temperature", m.Thermal),
			stroke("flow friction", m.Friction), stroke("movement of free seals", free.EndMoved), stroke("movement of the seals", c.EndMoved),
			{Name: "force on the packer, tension pulls it up", Value: onPacker(c)},
			{Name: "true axial force above the packer", Value: end.True},
			{Name: "effective axial force above the packer", Value: end.Effective},
			{Name: "true axial force at the hanger", Value: c.HangerLoad},
			{Name: "neutral point at", Value: c.Neutral, For: display.Depth},
			{Name: "length buckled", Value: c.BuckledLength, For: display.Depth},
		},
		Notes: []string{"Lengthening, tension and movement downwards are positive.", "Along the survey, node by node: inclination and curvature count for weight and buckling; friction of the hole does not."},
		Draw:  func(w io.Writer) error { return in.chart(c).WriteSVG(w) },
	}
	in.limits(&out, c, notChecked)
	in.survey.Tell(&out)
	return out
}
