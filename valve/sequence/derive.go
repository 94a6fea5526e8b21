package sequence

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
	"completion.example/valve/sequence/internal/assembly"
)

// Derive returns the plan that follows from p's assembly: the same well, fluids and
// steps, with the compartments, ports, devices, string, ratings and barriers that
// the tally makes, each with the rule that made it as its note. What p writes by
// hand wins, key by key, except for depths and for what a compartment or port joins,
// which the tally measures: there a different value is an error that names both. A
// plan without an assembly is returned as it is, as a copy. The error lists every fault
// of the tally, or of what follows from it.
func (p *Plan) Derive() (*Plan, error) {
	if p == nil {
		return nil, errNoPlan
	}
	if p.Assembly == nil {
		return p.Clone(), nil
	}
	pipes, err := catalogue.Standard()
	if err != nil {
		return nil, err
	}
	made, err := p.derive(pipes)
	if err != nil {
		return nil, err
	}
	if _, err := made.Clone().prepared(pipes); err != nil {
		return nil, p.follows(err)
	}
	return made, nil
}

// lower is the plan without an assembly, p itself where it has none.
func (p *Plan) lower(pipes catalogue.Catalogue) (*Plan, error) {
	if p.Assembly == nil {
		return p, nil
	}
	return p.derive(pipes)
}

func (p *Plan) derive(pipes catalogue.Catalogue) (*Plan, error) {
	q := p.Clone()
	d := &deriver{plan: q, a: q.Assembly, pipes: pipes, out: &Plan{}, piped: map[string]*tubular.Pipe{}}
	d.snap = snapper(q)
	d.written()
	if d.faults.Any() {
		return nil, d.faults.Err()
	}
	layout, err := assembly.Lay(d.well(), func(z float64) string { return d.text(unit.Length(z)) })
	if err := errors.Join(d.faults.Err(), err); err != nil {
		return nil, err
	}
	d.Layout = layout
	d.compartments()
	d.lines()
	d.ports()
	d.devices()
	d.string()
	d.ratings()
	d.barriers()
	d.without()
	d.merge()
	d.fluids()
	d.trapped()
	if err := d.faults.Err(); err != nil {
		return nil, err
	}
	q.Assembly = nil
	return q, nil
}

// deriver makes a plan of a tally.
type deriver struct {
	*assembly.Layout
	plan   *Plan // with what is written by hand; becomes the whole
	a      *Assembly
	pipes  catalogue.Catalogue
	out    *Plan // what follows from the tally
	faults fault.Faults
	piped  map[string]*tubular.Pipe // by path
	snap   func(float64) float64
	ways   []way  // what the ports are
	part   string // the action that releases the string
}

// text writes a depth as the plan's own texts would: in the unit that it is whole in.
func (d *deriver) text(x unit.Length) string {
	ft, m := unit.Length(float64(x)).In(unit.Foot), float64(x)
	if d.metric() {
		return fmt.Sprintf("%.6g m", m)
	}
	return fmt.Sprintf("%.6g ft", ft)
}

// metric tells whether the plan is written in metres: its depths are rounder in them.
func (d *deriver) metric() bool {
	x := d.plan.Well.MD
	return roundness(float64(x)) < roundness(x.In(unit.Foot))
}

// factor is the design factor of a rating.
func (d *deriver) factor(own float64) float64 {
	if own != 0 {
		return own
	}
	return d.a.Factor
}

// path is the well's, nil where it can't be made; validating says why.
func (d *deriver) path() *hydrostatics.Path {
	w := d.plan.Well
	if len(w.Path) == 0 {
		path, err := hydrostatics.Vertical(w.MD)
		if err != nil {
			return nil
		}
		return path
	}
	stations := make([]hydrostatics.Station, len(w.Path))
	for i, s := range w.Path {
		stations[i] = hydrostatics.Station(s)
	}
	path, err := hydrostatics.NewPath(stations)
	if err != nil {
		return nil
	}
	return path
}

// follows says that faults are in what follows from an assembly.
func (p *Plan) follows(err error) error {
	if p.Assembly == nil || err == nil {
		return err
	}
	return fmt.Errorf("in the plan that follows from the assembly (Plan.Derive):\n%w", err)
}
