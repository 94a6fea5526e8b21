package sequence

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// state is how things stand in one world.
type state struct {
	*network
	thresholds  []valve.Row // sharp, by action
	layers      [][]layer   // by compartment
	columns     []*hydrostatics.Column
	top         []unit.Pressure // by compartment, at its top
	surface     []bool          // by compartment: a surface pressure is applied
	applied     []unit.Pressure // that pressure
	open        []bool          // by port
	armed       []bool          // by action
	rows        []valve.State   // by action
	completed   []int           // actions that have happened
	temperature string
	hold        stringState

	// scratch of solve and loadString
	order   []int
	visited []bool
	scratch *cases
}

// layer is one fluid between true vertical depths.
type layer struct {
	fluid       string
	top, bottom unit.Length
}

// start is the well as the programme finds it, with nominal thresholds.
func (n *network) start() *state {
	s := &state{network: n, temperature: Undisturbed}
	for i, c := range n.plan.Compartments {
		k := n.compartments[i]
		var layers []layer
		if c.Fluid != "" {
			layers = []layer{{c.Fluid, k.top, k.bottom}}
		} else {
			top := k.top
			for _, l := range c.Layers {
				bottom, _ := n.path.TVD(l.To) // the depth was checked with the plan
				if bottom > top {
					layers = append(layers, layer{l.Fluid, top, bottom})
					top = bottom
				}
			}
		}
		s.layers = append(s.layers, layers)
		s.columns = append(s.columns, nil)
		s.top = append(s.top, c.Trapped)
		s.surface = append(s.surface, c.Surface)
		s.applied = append(s.applied, 0)
	}
	for _, p := range n.plan.Ports {
		s.open = append(s.open, p.Open)
	}
	for _, a := range n.actions {
		s.armed = append(s.armed, !a.disarmed)
		s.rows = append(s.rows, valve.State{})
		s.thresholds = append(s.thresholds, sharp(a.row, atNominal))
	}
	s.visited = make([]bool, len(n.compartments))
	return s
}

// clone copies what a walk changes.
func (s *state) clone() *state {
	c := *s
	c.layers = append([][]layer(nil), s.layers...) // a swap makes new slices
	c.columns = append([]*hydrostatics.Column(nil), s.columns...)
	c.top = append([]unit.Pressure(nil), s.top...)
	c.surface = append([]bool(nil), s.surface...)
	c.applied = append([]unit.Pressure(nil), s.applied...)
	c.open = append([]bool(nil), s.open...)
	c.armed = append([]bool(nil), s.armed...)
	c.rows = append([]valve.State(nil), s.rows...)
	c.thresholds = append([]valve.Row(nil), s.thresholds...)
	c.completed = append([]int(nil), s.completed...)
	c.scratch = nil
	c.order, c.visited = nil, make([]bool, len(s.visited))
	return &c
}

// column prepares a compartment's column after its layers or the temperature
// have changed.
func (s *state) column(i int) (*hydrostatics.Column, error) {
	if s.columns[i] != nil {
		return s.columns[i], nil
	}
	layers := make([]hydrostatics.Layer, len(s.layers[i]))
	for k, l := range s.layers[i] {
		layers[k] = hydrostatics.Layer{Fluid: s.fluids[l.fluid], Top: l.top, Bottom: l.bottom}
	}
	c, err := hydrostatics.NewColumn(layers, s.temperatures[s.temperature], hydrostatics.Reference{Pressure: s.top[i], TVD: s.compartments[i].top})
	if err != nil {
		return nil, fmt.Errorf("compartment %q: %w", s.plan.Compartments[i].Name, err)
	}
	s.columns[i] = c
	return c, nil
}

// carry takes a pressure through a compartment from one depth to another.
func (s *state) carry(i int, p unit.Pressure, from, to unit.Length) (unit.Pressure, error) {
	c, err := s.column(i)
	if err != nil {
		return 0, err
	}
	var q unit.Pressure
	if s.uniform {
		// Then the difference of two depths is the same at every pressure.
		var a, b unit.Pressure
		if a, err = c.At(from); err == nil {
			b, err = c.At(to)
		}
		q = p + (b - a)
	} else {
		q, err = c.Carry(p, from, to)
	}
	if err != nil {
		return 0, fmt.Errorf("compartment %q: %w", s.plan.Compartments[i].Name, err)
	}
	return q, nil
}

// at is the pressure in a compartment at a depth.
func (s *state) at(i int, tvd unit.Length) (unit.Pressure, error) {
	return s.carry(i, s.top[i], s.compartments[i].top, tvd)
}

// differential is what the triggers of an action feel, other than an axial one:
// inside less outside, or less the chamber.
func (s *state) differential(a *action) (unit.Pressure, error) {
	in, err := s.at(a.inside, a.tvd)
	if err != nil {
		return 0, err
	}
	out := a.chamber
	if a.outside >= 0 {
		out, err = s.at(a.outside, a.tvd)
	}
	return in - out, err
}
