package sequence

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// mechanics is the string put together three ways: whole, from the hanger to
// where it is held, and from there to its lower end.
type mechanics struct {
	inside, below      int
	around             []int
	end                unit.Length // TVD of the lower end
	held               unit.Length // measured
	heldTVD            unit.Length
	whole, upper, tail *movement.String // tail is nil where the string is held at its lower end
	bodies             []tubular.Body
	sections           []movement.Section
	design             tubular.DesignFactors
}

// nodeSpacing keeps a programme quick. Forces and lengths are straight or
// quadratic between changes of section and survey stations, which are nodes
// anyway; only the small share of buckling feels the spacing.
const nodeSpacing = 250 * unit.Foot

func (c *compiler) string() {
	p := c.plan.String
	if p == nil {
		return
	}
	m := &mechanics{
		inside: c.byName.compartment[p.Inside], below: c.byName.compartment[p.Below],
		held: p.Held, heldTVD: c.tvd(`string."held at"`, p.Held),
		design: c.plan.Rules.design(),
	}
	for _, name := range p.Around {
		m.around = append(m.around, c.byName.compartment[name])
	}
	for i, x := range p.Sections {
		pipe, err := x.Pipe.find(c.pipes)
		c.check(fmt.Sprintf("string.sections[%d].pipe", i), err)
		body, err := pipe.Prepare()
		c.check(fmt.Sprintf("string.sections[%d].pipe", i), err)
		m.bodies = append(m.bodies, body)
		m.sections = append(m.sections, movement.Section{Pipe: pipe, Bottom: x.Bottom, Hole: x.Hole, Joint: x.Joint})
	}
	lower := m.sections[len(m.sections)-1].Bottom
	m.end = c.tvd("string.sections", lower)
	free := movement.Seals{Bore: p.Bore, Restraint: movement.Free}
	m.whole = &movement.String{Sections: m.sections, Path: c.network.path, Hanger: p.Hanger, Seals: free, Spacing: nodeSpacing, Design: m.design}
	var upper, tail []movement.Section
	for _, x := range m.sections {
		if len(upper) == 0 || upper[len(upper)-1].Bottom < p.Held {
			u := x
			u.Bottom = min(u.Bottom, p.Held)
			upper = append(upper, u)
		}
		if x.Bottom > p.Held {
			tail = append(tail, x)
		}
	}
	m.upper = &movement.String{Sections: upper, Path: c.network.path, Hanger: p.Hanger, Spacing: nodeSpacing, Design: m.design,
		Seals: movement.Seals{Bore: upper[len(upper)-1].Pipe.OD, Restraint: movement.Anchored}}
	if len(tail) > 0 {
		m.tail = &movement.String{Sections: tail, Path: c.network.path, Hanger: p.Held, Seals: free, Spacing: nodeSpacing, Design: m.design}
	}
	c.network.string = m
}

// design are the factors of the plan; those left out are 1.
func (r Rules) design() tubular.DesignFactors {
	one := func(f float64) float64 {
		if f == 0 {
			return 1
		}
		return f
	}
	return tubular.DesignFactors{Name: "plan", Burst: one(r.Burst), Collapse: one(r.Collapse), Axial: one(r.Axial), Triaxial: one(r.Triaxial), Source: r.Source}
}

// stringState is how the string stands in one world.
type stringState struct {
	landed *movement.Landed // the whole string, as landed
	held   *movement.Landed // from hanger to packer, as it was when the packer took hold
	tail   *movement.Landed // below, as it was then
	moved  unit.Length      // how far the seals had moved by then
	drag   unit.Force       // of this world
}

// load is the string under the present pressures and temperature.
type load struct {
	held      bool
	free      bool        // on a pull, and nothing holds it: it comes up
	atHeld    unit.Force  // tension just above where the string is or will be held
	packer    unit.Force  // what the string pulls on what holds it, up positive: the true force above less that below
	top       unit.Force  // at the hanger, or on the hook
	seals     unit.Length // movement of the seals since landing, down positive
	governing movement.Governing
	buckled   unit.Length
	more      unit.Force     // tension at every depth above that of upper, from a pull
	upper     *movement.Case // from the hanger down to where the string is held, or to its end
}

// tension is the axial force in the string at a depth not below where it is
// held.
func (l *load) tension(md unit.Length) (unit.Force, error) {
	n, err := l.upper.At(md)
	return n.True + l.more, err
}

// conditions are the state's pressures and temperature as the string sees them.
// The first error of a column is kept in err.
func (s *state) conditions(err *error) movement.State {
	m := s.string
	at := func(i int, tvd unit.Length) unit.Pressure {
		p, e := s.at(i, tvd)
		if e != nil && *err == nil {
			*err = e
		}
		return p
	}
	below := at(m.below, m.end)
	return movement.State{
		Inside: func(tvd unit.Length) unit.Pressure { return at(m.inside, tvd) },
		Outside: func(tvd unit.Length) unit.Pressure {
			for _, i := range m.around {
				if tvd <= s.compartments[i].bottom {
					return at(i, tvd)
				}
			}
			last := m.around[len(m.around)-1]
			return at(last, s.compartments[last].bottom)
		},
		Temperature: s.temperatures[s.temperature].At,
		Tail:        movement.Plugged,
		Below:       below,
	}
}

// land remembers the string as it is now: later movements count from here.
func (s *state) land() error {
	if s.string == nil {
		return nil
	}
	if s.hold.held != nil {
		return errors.New("the string can't land: it is held at its packer")
	}
	var fault error
	state := s.conditions(&fault)
	landed, err := s.string.whole.Land(state, 0)
	if fault != nil {
		return fault
	}
	s.hold.landed = landed
	return err
}

// takeHold fixes the string at its packer as it stands now.
func (s *state) takeHold() error {
	m := s.string
	if m == nil {
		return nil
	}
	var fault error
	state := s.conditions(&fault)
	c, err := s.hold.landed.Load(state)
	if err != nil || fault != nil {
		return first(fault, err)
	}
	node, err := c.At(m.held)
	if err != nil {
		return err
	}
	s.hold.moved = c.SealMovement
	// What hangs below pulls on the upper part with its effective weight.
	state.Tail, state.Below = movement.Hanging, 0
	if s.hold.held, err = m.upper.Land(state, -node.Effective); err != nil {
		return err
	}
	if m.tail != nil {
		state = s.conditions(&fault)
		s.hold.tail, err = m.tail.Land(state, 0)
	}
	return first(fault, err)
}

// letGo frees the string from its packer.
func (s *state) letGo() {
	s.hold.held, s.hold.tail = nil, nil
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// cases are used again for every load: what a load holds of them is good until
// the next one.
type cases struct{ upper, tail movement.Case }

func (s *state) cases() *cases {
	if s.scratch == nil {
		s.scratch = new(cases)
	}
	return s.scratch
}

// loadString computes the string under the present pressures, landed in its
// hanger.
func (s *state) loadString() (load, error) {
	m := s.string
	var fault error
	state := s.conditions(&fault)
	var l load
	if s.hold.held == nil {
		c := &s.cases().upper
		if err := s.hold.landed.LoadInto(c, state); err != nil || fault != nil {
			return l, first(fault, err)
		}
		node, err := c.At(m.held)
		l = load{atHeld: node.True, top: c.HangerLoad, seals: c.SealMovement, governing: c.Governing, buckled: c.BuckledLength, upper: c}
		return l, err
	}
	state.Tail, state.Below = movement.Hanging, 0
	c := &s.cases().upper
	if err := s.hold.held.LoadInto(c, state); err != nil || fault != nil {
		return l, first(fault, err)
	}
	l = load{held: true, atHeld: c.TrueForce, top: c.HangerLoad, seals: s.hold.moved,
		governing: c.Governing, buckled: c.BuckledLength, upper: c}
	end := m.sections[len(m.sections)-1].Pipe
	beneath := movement.End{Bore: s.plan.String.Bore, OD: end.OD, ID: end.ID,
		Inside: state.Inside(m.heldTVD), Outside: state.Outside(m.heldTVD), Below: s.conditions(&fault).Below}.Force()
	if s.hold.tail != nil {
		t := &s.cases().tail
		if err := s.hold.tail.LoadInto(t, s.conditions(&fault)); err != nil || fault != nil {
			return l, first(fault, err)
		}
		l.seals += t.SealMovement
		beneath = t.HangerLoad
		if t.Governing.Usage > l.governing.Usage {
			l.governing = t.Governing
		}
	}
	l.packer = l.atHeld - beneath
	return l, fault
}

// pullString computes the string on the hook with a weight-indicator reading:
// the hook carries it instead of the hanger, and drag takes its share before
// the pull arrives. A string that nothing holds comes up as soon as its own weight
// and the drag are pulled: the reading can't be more than that.
func (s *state) pullString(reading unit.Force) (load, error) {
	l, err := s.loadString()
	if err != nil {
		return l, err
	}
	m := s.string
	top := reading - s.plan.String.Block
	if !l.held && top > l.top+s.hold.drag {
		top, l.free = l.top+s.hold.drag, true
	}
	l.more = top - s.hold.drag - l.top
	l.atHeld += l.more
	if l.held {
		l.packer += l.more
	}
	l.top = top
	l.governing = movement.Governing{}
	for _, n := range l.upper.Nodes {
		axial := n.True + l.more + s.hold.drag // the upper part feels the drag too
		u := m.bodies[n.Section].Usage(tubular.Load{Axial: axial, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}, m.design)
		if joint := m.sections[n.Section].Joint; joint > 0 && axial > 0 {
			u.Axial = max(u.Axial, m.design.Axial*float64(axial/joint))
		}
		if limit, most := u.Governing(); most > l.governing.Usage {
			l.governing = movement.Governing{MD: n.MD, Limit: limit, Usage: most}
		}
	}
	return l, nil
}
