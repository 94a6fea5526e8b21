package movement

import (
	"slices"
	"sync"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Landed is a string landed at its hanger and sealed in its packer. It
// remembers the state in which the packer was set or the seals were stabbed:
// weights, pressures, temperatures, and the weight set down or pulled. It
// never changes, so it is safe for concurrent use.
//
// It is an Assembly with nothing but the seals at its lower end.
type Landed struct {
	made     *MadeUp
	standing Standing
	end      unit.Length // true vertical depth of the lower end
	anchored bool
	setDown  Shortening // shortening by the slack-off
	asSet    Case
	scratch  sync.Pool
}

// totals are the lengths that the axial forces, pressures and temperatures of
// one state add to the string, in m, by cause. Weight is left out: it is the
// same in every state.
type totals struct{ piston, ballooning, buckling, thermal, friction float64 }

func (t totals) minus(u totals) Movement {
	return Movement{
		Piston: unit.Length(t.piston - u.piston), Ballooning: unit.Length(t.ballooning - u.ballooning),
		Buckling: unit.Length(t.buckling - u.buckling), Thermal: unit.Length(t.thermal - u.thermal),
		Friction: unit.Length(t.friction - u.friction),
	}
}

// work is what a load needs and leaves nothing of.
type work struct {
	loading    Loading
	state      WellProfiles
	below      unit.Pressure // under the seals
	conditions Conditions
}

func newWork() any {
	w := new(work)
	w.conditions.Inside = func(_ int, tvd unit.Length) unit.Pressure { return w.state.Inside(tvd) }
	w.conditions.Outside = func(part int, tvd unit.Length) unit.Pressure {
		if part > 0 {
			return w.below
		}
		return w.state.Outside(tvd)
	}
	return w
}

// Land hangs the string off in the reference state, in which the packer takes
// hold, with a weight set down on it; negative is a pull. What the string is
// like then is locked in: a packer set by pressure in tubing that is plugged
// below and then bled off keeps (1 - 2ν)*p*Ai of tension in a uniform vertical
// string, because the pressure had made the string longer.
//
// It checks the string and the state first and reports all faults.
func (s String) Land(reference WellProfiles, slackOff unit.Force) (*Landed, error) {
	a := Assembly{Sections: s.Sections, Path: s.Path, Hanger: s.Hanger, Spacing: s.Spacing, HelicalOnset: s.HelicalOnset, Design: s.Design}
	faults := s.Seals.faults()
	if n := len(s.Sections); n > 0 && faultless(faults) {
		a.seal(s.Seals, s.Sections[n-1].BottomMD)
	}
	m, err := a.MakeUp()
	if err := fault.Join(scope, append(faults, err)...); err != nil {
		return nil, err
	}
	if err := fault.Join(scope, s.Seals.slackOff(slackOff)); err != nil {
		return nil, err
	}
	l := &Landed{made: m, end: unit.Length(m.points[len(m.points)-1].tvd), anchored: s.Seals.Restraint == Anchored, scratch: sync.Pool{New: newWork}}
	if err := l.land(reference, slackOff); err != nil {
		return nil, fault.Join(scope, fault.At("reference", err))
	}
	return l, l.LoadInto(&l.asSet, reference)
}

// seal adds the seals at the lower end.
func (a *Assembly) seal(s SealBore, end unit.Length) {
	switch s.Restraint {
	case Anchored:
		a.Holds = []Hold{{MD: end, Bore: s.Bore}}
	case Limited:
		a.Seals = []Seal{{MD: end, Bore: s.Bore, Up: s.Up, Down: s.Down, Latch: true, Locator: true}}
	case Free:
		a.Seals = []Seal{{MD: end, Bore: s.Bore}}
	}
}

func faultless(errs []error) bool {
	for _, err := range errs {
		if err != nil {
			return false
		}
	}
	return true
}

// land lands the string with a weight set down: the top is lowered as much.
func (l *Landed) land(reference WellProfiles, slackOff unit.Force) error {
	w := newWork().(*work)
	if err := l.give(w, reference); err != nil {
		return err
	}
	var err error
	if l.standing, err = l.made.Land(w.conditions); err != nil {
		return err
	}
	if l.anchored {
		if l.standing, err = l.made.TakeHold(l.standing, 0, w.conditions); err != nil {
			return err
		}
	}
	if err := l.made.load(&w.loading, l.standing, w.conditions, false); err != nil {
		return err
	}
	down, sp := -float64(slackOff), &l.made.spans[0]
	buckled := l.made.buckled(w.loading.Nodes, sp.from, sp.to, down).shortening - l.made.buckled(w.loading.Nodes, sp.from, sp.to, 0).shortening
	l.setDown = Shortening{Stretch: unit.Length(sp.compliance * down), Buckling: unit.Length(buckled)}
	l.standing.top = -float64(l.setDown.Total())
	return nil
}

// give puts a state into a work's conditions.
func (l *Landed) give(w *work, state WellProfiles) error {
	if err := l.made.check(state); err != nil {
		return err
	}
	c := &w.conditions
	w.state, c.Temperature, c.Friction, c.OutsideFriction = state, state.Temperature, state.Friction, state.OutsideFriction
	lostIn, lostOut := 0.0, 0.0
	if c.flows() {
		for k := range l.made.elements {
			lostIn += l.made.lost(state.Friction, k)
			lostOut += l.made.lost(state.OutsideFriction, k)
		}
	}
	// What flow has lost outside is taken off again where the pressure acts.
	switch state.Tail {
	case Open:
		w.below = state.Inside(l.end) - unit.Pressure(lostIn) + unit.Pressure(lostOut)
	case Plugged:
		w.below = state.Below + unit.Pressure(lostOut)
	case Hanging:
		w.below = state.Outside(l.end)
	}
	return nil
}

// AsSet returns the string in the reference state, with the slack-off.
func (l *Landed) AsSet() Case {
	if l == nil {
		return Case{}
	}
	c := l.asSet
	c.Nodes = slices.Clone(c.Nodes)
	return c
}

// Size returns the number of nodes of the string.
func (l *Landed) Size() int {
	if l == nil {
		return 0
	}
	return l.made.Size() - 1
}

// Load computes the string in another state.
func (l *Landed) Load(state WellProfiles) (Case, error) {
	var c Case
	err := l.LoadInto(&c, state)
	return c, err
}

// LoadInto is Load into a case that is used again: it then allocates nothing.
// After an error the case holds nothing of use.
func (l *Landed) LoadInto(c *Case, state WellProfiles) error {
	if l == nil {
		return errNotMadeUp
	}
	if c == nil {
		return errNoLoading
	}
	w, _ := l.scratch.Get().(*work)
	defer l.scratch.Put(w)
	w.loading.Nodes = c.Nodes // which the case keeps
	err := l.give(w, state)
	if err == nil {
		err = l.made.LoadInto(&w.loading, l.standing, w.conditions)
	}
	if err != nil {
		return fault.Join(scope, err)
	}
	l.read(c, &w.loading)
	w.loading.Nodes, w.state = nil, WellProfiles{}
	return nil
}

// read makes a case of a loading.
func (l *Landed) read(c *Case, x *Loading) {
	m := l.made
	last := m.marks[0].element // the node above the seals
	g, sp, landed := &x.segments[0], &x.spans[0], &l.standing.landed[0]
	*c = Case{
		SlackOff: l.setDown, PackerForce: unit.Force(g.force), HangerLoad: x.HangerLoad,
		EndForce: x.Nodes[last].True - unit.Force(g.force), TrueForce: x.Nodes[last].True, EffectiveForce: x.Nodes[last].Effective,
		BuckledLength: x.BuckledLength, HelicalLength: x.HelicalLength, BuckledShortening: x.BuckledShortening,
		Snapping: x.Snapping, Governing: x.Limits.Governing(), Nodes: x.Nodes[:last+1],
	}
	c.Neutral = neutralDepth(c.Nodes)
	free := sp.causes
	if g.fitted {
		free.buckling = g.loose
	}
	c.Movement = free.minus(landed.causes)
	if len(x.Holds) > 0 {
		c.SealMovement = x.Holds[0].Moved
	} else {
		c.SealMovement = x.Seals[0].Travel
	}
}
