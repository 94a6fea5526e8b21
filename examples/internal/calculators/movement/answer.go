package movement

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"
	"io"

	"completion.example/examples/internal/depthchart"
	"completion.example/examples/internal/gauge"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

func answer(in input) (calculator.Answer, error) {
	w := in.well
	in.section.Pipe.Material.Yield = in.yield
	w.Sections = []movement.StringSection{in.section}
	a, err := w.Analyse()
	if err := errors.Join(err, in.design.Validate(), in.rateable(), gauge.Possible("pi-before", w.Initial.InsideSurface), gauge.Possible("po-before", w.Initial.OutsideSurface),
		gauge.Possible("pi", w.Final.InsideSurface), gauge.Possible("po", w.Final.OutsideSurface)); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	free, c, notChecked, err := nodes(w, in.design, in.survey.Path())
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	if in.survey.Path() != nil {
		return in.along(free, c, notChecked), nil
	}
	inch := func(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }
	m := a.Movement
	out := calculator.Answer{
		Results: []calculator.Result{
			{Name: "piston", Value: inch(m.Piston)},
			{Name: "buckling", Value: inch(m.Buckling)},
			{Name: "ballooning", Value: inch(m.Ballooning)},
			{Name: "temperature", Value: inch(m.Thermal)},
			{Name: "flow friction", Value: inch(m.Friction)},
			{Name: "movement of free seals", Value: inch(m.Total())},
			{Name: "the same, node by node", Value: inch(free.EndMoved)},
			{Name: "shortening by slack-off", Value: inch(a.SlackOff.Total())},
			{Name: "movement of the seals", Value: inch(a.SealMovement)},
			{Name: "force on the packer, tension pulls it up", Value: a.PackerForce},
			{Name: "that force, node by node", Value: onPacker(c)},
			{Name: "true axial force above the packer", Value: a.TrueForce},
			{Name: "effective axial force above the packer", Value: a.EffectiveForce},
			{Name: "true axial force at the hanger", Value: c.HangerLoad},
			{Name: "neutral point at", Value: c.Neutral},
			{Name: "length buckled", Value: c.BuckledLength},
		},
		Steps: a.Steps(),
		Notes: []string{"Lengthening, tension and movement downwards are positive."},
		Draw:  func(w io.Writer) error { return in.chart(c).WriteSVG(w) },
	}
	in.limits(&out, c, notChecked)
	if published(w, in.section) {
		out.Published = &calculator.Published{Name: "movement of free seals", Printed: "-165.2 in", Ours: inch(m.Total()),
			Source: "Lubinski, Althouse & Logan, JPT June 1962, worked example; the printed figure from memory"}
	}
	return out, nil
}

// limits adds what the pipe bears.
func (in input) limits(out *calculator.Answer, c movement.Loading, notChecked []string) {
	for _, what := range notChecked {
		out.Notes = append(out.Notes, "not checked: "+what)
	}
	if in.yield != 0 || in.section.Joint != 0 {
		out.Results = append(out.Results, governing(c, in.design)...)
	}
	if g := c.Limits.Governing(); g.Usage > 1 {
		out.Notes = append(out.Notes, fmt.Sprintf("the pipe is beyond its %v limit at %v", g.Limit, g.MD.Rounded(4)))
		out.Failed = true
	}
}

// rateable tells why the pipe's limits can't be given.
func (in input) rateable() error {
	p := in.section.Pipe
	if p.Material.Yield = in.yield; in.yield == 0 || p.Validate() != nil {
		return nil // Analyse says what is wrong
	}
	left, err := p.Less(in.section.Wear)
	if err != nil {
		return err
	}
	_, err = left.Ratings()
	return err
}

// governing is the limit that is used most, the whole string over.
func governing(c movement.Loading, f tubular.DesignFactors) []calculator.Result {
	g := c.Limits.Governing()
	asked := map[tubular.Limit]float64{tubular.BurstLimit: f.Burst, tubular.CollapseLimit: f.Collapse, tubular.AxialLimit: f.Axial, tubular.TriaxialLimit: f.Triaxial, tubular.ConnectionLimit: f.Axial}[g.Limit]
	results := []calculator.Result{
		{Name: "most used limit of the pipe", Value: g.Limit.String()},
		{Name: "share of it used, design factor in it", Value: fmt.Sprintf("%.1f %%", 100*g.Usage)},
	}
	if g.Usage > 0 {
		results = append(results, calculator.Result{Name: "factor there is", Value: g.DesignFactor(asked)}, calculator.Result{Name: "at a depth of", Value: working.In(g.MD, unit.Foot, "ft")})
	}
	return results
}

// chart is the axial force and the use of the pipe along the string.
func (in input) chart(c movement.Loading) depthchart.Chart {
	u := in.units.System
	d := depthchart.Chart{Units: u}
	var real, effective, burst, collapse, axial, triaxial []float64
	for _, n := range c.Nodes[:len(c.Nodes)-1] { // the last is under the seals
		d.Depth = append(d.Depth, n.MD)
		real, effective = append(real, u.In(n.True, display.Force)), append(effective, u.In(n.Effective, display.Force))
		burst, collapse = append(burst, n.Usage.Burst), append(collapse, n.Usage.Collapse)
		axial, triaxial = append(axial, n.Usage.Axial), append(triaxial, n.Usage.Triaxial)
	}
	d.Panels = []depthchart.Panel{
		{Title: "Axial force", Label: u.Unit(display.Force) + ", tension to the right", Curves: []depthchart.Curve{{Name: "true", Values: real}, {Name: "effective", Values: effective}}},
		{Title: "Use of the pipe body", Label: "share of the limit used, design factor in it", Curves: []depthchart.Curve{
			{Name: "triaxial", Values: triaxial}, {Name: "axial", Values: axial}, {Name: "burst", Values: burst}, {Name: "collapse", Values: collapse},
		}},
	}
	return d
}

// published tells whether the case is the worked example.
func published(w movement.Vertical, s movement.StringSection) bool {
	p := s.Pipe
	return p.OD == 2.875*unit.Inch && p.ID == 2.441*unit.Inch && p.Weight == 6.5*unit.PoundPerFoot && p.Material.Young == tubular.Steel().Young &&
		s.BottomMD == 10000*unit.Foot && s.Hole == 6.094*unit.Inch && w.Seals.Bore == 3.25*unit.Inch && w.Warming == -20*unit.FahrenheitDifference &&
		w.Initial == movement.WellFluids{InsideDensity: 7.31 * unit.PoundPerGallon, OutsideDensity: 7.31 * unit.PoundPerGallon} &&
		w.Final == movement.WellFluids{InsideDensity: 15 * unit.PoundPerGallon, OutsideDensity: 7.31 * unit.PoundPerGallon, InsideSurface: 5000 * unit.PSI, OutsideSurface: 1000 * unit.PSI}
}
