package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// results writes what the nominal values show of every step, and the margins over
// all values.
func (k *checker) results() error {
	k.failsFirst = k.firstFailures()
	tested := map[string][]string{}
	for i := range k.plan.Steps {
		if err := k.ctx.Err(); err != nil {
			return err
		}
		r, err := k.step(i)
		if err != nil {
			return err
		}
		k.tests(i, r, tested)
		k.barriers(i, r, tested)
		k.programme.Steps = append(k.programme.Steps, *r)
	}
	return nil
}

func (k *checker) step(i int) (*StepResult, error) {
	var err error
	step := &k.plan.Steps[i]
	r := &StepResult{Name: step.Name, Note: step.Note, Pull: step.Pull, OK: true, Unknown: []string{}}
	if step.Produce != nil {
		r.Wellhead = &step.Produce.Surface
	}
	for n := range k.standstills[i] {
		p, err := k.point(&k.standstills[i][n])
		if err != nil {
			return nil, err
		}
		r.Points = append(r.Points, *p)
	}
	end := k.ends[i]
	k.acts(i, r)
	k.branch(i, r)
	for _, e := range events(end, i) {
		if e.Act > 0 && e.Action < 0 {
			continue
		}
		r.Events = append(r.Events, k.event(e))
	}
	for n, p := range k.plan.Ports {
		r.Ports = append(r.Ports, PortState{p.Name, end.State.Open[n]})
	}
	r.Volumes = k.volumes(i)
	if i < len(k.flowResults) {
		r.Flowing = k.flowResults[i]
	}
	if i < len(k.pumpResults) {
		r.Pumps = k.pumpResults[i]
	}
	if r.Gas, err = k.gasAt(i); err != nil {
		return nil, err
	}
	r.Levels = k.levels(i)
	r.Rises = k.rises(i)
	k.triggers(i, r)
	k.ratings(i, r)
	k.holdings(i, r)
	k.balances(i, r)
	k.partings(i, r)
	k.forces(i, r)
	if err := k.passages(i, r); err != nil {
		return nil, err
	}
	k.unknown(i, r)
	return r, k.zoneRates(i, r)
}

// events of a step, in their order.
func events(w *walk.World, step int) []walk.Event {
	var all []walk.Event
	for t := w.Trail; t != nil; t = t.Before {
		if t.Step == step {
			all = append(all, t.Event)
		}
	}
	slices.Reverse(all)
	// Parts of the well that don't feel each other were walked one after the other.
	inOrder(all, func(a, b walk.Event) int {
		switch {
		case a.Drive != b.Drive:
			return a.Drive - b.Drive
		case a.Leg != b.Leg:
			return a.Leg - b.Leg
		case a.Place.C < b.Place.C-walk.Reach:
			return -1
		case a.Place.C > b.Place.C+walk.Reach:
			return 1
		}
		return 0
	})
	return all
}

// nothing takes the last bits off a pressure that is zero but for rounding.
func nothing(p unit.Pressure) unit.Pressure {
	if p > -0.001*unit.PSI && p < 0.001*unit.PSI {
		return 0
	}
	return p
}

func (k *checker) readings(applied func(i int) float64, surface []bool) []Reading {
	var all []Reading
	for i, p := range k.plan.Compartments {
		if p.Surface {
			all = append(all, Reading{p.Name, nothing(unit.Pressure(applied(i))), surface != nil && !surface[i]})
		}
	}
	return all
}

// shown is what gauges at surface show.
func (k *checker) shown(s *well.State) []Reading {
	return k.readings(func(i int) float64 {
		return s.Gauge(i).F.C
	}, s.Surface)
}

func (k *checker) point(at *standstill) (*Point, error) {
	s := at.world.State
	p := &Point{Label: at.label, Surface: k.shown(s)}
	if at.place.Drive < 0 {
		p.Label = "start"
	}
	var err error
	if p.Pressures, err = k.atDevices(s); err != nil {
		return nil, err
	}
	p.well = s
	p.Flows = k.flows(s)
	p.String, p.OuterString, err = k.stringAt(at)
	return p, err
}

// Profile is the pressure of every compartment at all depths where anything is, from
// its top down, compartment by compartment: for pictures, and made when it is asked
// for. The points of all places of a step are of the same depths. The error says why
// a pressure can't be told.
func (p *Point) Profile() ([]ProfilePoint, error) {
	if p == nil || p.well == nil {
		return nil, nil
	}
	var all []ProfilePoint
	for i := range p.well.Compartments {
		c := &p.well.Compartments[i]
		for n, d := range c.Depths {
			q, err := p.well.At(i, n)
			if err != nil {
				return nil, fmt.Errorf("%s at %v: %w", c.Name, unit.Length(d.TVD), err)
			}
			all = append(all, ProfilePoint{c.Name, unit.Length(d.TVD), unit.Pressure(q.F.C)})
		}
	}
	return all, nil
}

// deviceDepth is a device's depth in a compartment that reaches it.
type deviceDepth struct {
	PressureAt
	compartment, at int
}

// deviceDepths are those of all devices.
func (c *compiled) deviceDepths() []deviceDepth {
	var all []deviceDepth
	for _, d := range c.plan.Devices {
		tvd, _ := c.path.TVD(d.MD) // checked with the plan
		for i, x := range c.plan.Compartments {
			if !(x.TopMD <= d.MD && d.MD <= x.BottomMD) {
				continue
			}
			for n, y := range c.Network.Compartments[i].Depths {
				if y.MD == float64(d.MD) {
					all = append(all, deviceDepth{PressureAt{Device: d.Name, MD: d.MD, TVD: tvd, Compartment: x.Name}, i, n})
				}
			}
		}
	}
	return all
}

// atDevices are the pressures of every compartment that reaches a device.
func (k *checker) atDevices(s *well.State) ([]PressureAt, error) {
	all := make([]PressureAt, len(k.devices))
	for n, d := range k.devices {
		q, err := s.At(d.compartment, d.at)
		if err != nil {
			return nil, err
		}
		all[n] = d.PressureAt
		all[n].Pressure = unit.Pressure(q.F.C)
	}
	return all, nil
}

// flows are the bodies whose pressure is fixed more than once.
func (k *checker) flows(s *well.State) []FlowAt {
	var all []FlowAt
	const none = 0.5 * unit.PSI
	for i := range s.Compartments {
		m := s.SecondReference(i)
		d := unit.Pressure(m.Excess.F.C)
		if m.With < 0 || d > -none && d < none {
			continue
		}
		here, there := k.plan.Compartments[i].Name, k.plan.Compartments[m.With].Name
		f := FlowAt{Kind: Circulation, From: there, To: here, Differential: d}
		if n := s.Compartments[i].Formation; n >= 0 && !s.Surface[i] {
			f = FlowAt{Kind: FlowOut, From: there, To: k.plan.Formations[n].Name, Differential: d}
			if d < 0 {
				f.Kind = FlowIn
			}
		}
		if d < 0 {
			f.From, f.To, f.Differential = f.To, f.From, -d
		}
		all = append(all, f)
	}
	return all
}

// overPorts writes what stands across ports.
func (k *checker) overPorts(all []walk.Across) []Across {
	var out []Across
	for _, x := range all {
		port := &k.Network.Ports[x.Port]
		y := Across{port.Name, k.plan.Compartments[port.A].Name, k.plan.Compartments[port.B].Name, nothing(unit.Pressure(x.Differential.C))}
		if y.Differential < 0 || y.Differential == 0 && y.From > y.To {
			y.From, y.To, y.Differential = y.To, y.From, -y.Differential
		}
		out = append(out, y)
	}
	return out
}

func (k *checker) event(e walk.Event) Event {
	a := &k.Network.Actions[e.Action]
	r := Event{Action: a.Name, ByHand: e.Act > 0, Ramp: e.Drive + 1, Surface: k.readings(func(i int) float64 { return e.Applied[i].C }, nil)}
	if e.Pull != nil {
		r.Pull = unit.Force(e.Pull.C)
	}
	switch {
	case r.ByHand:
	case a.Axial:
		f := unit.Force(e.Felt.C)
		r.Balance = &f
	default:
		d := unit.Pressure(e.Felt.C)
		r.Differential = &d
	}
	r.Across = k.overPorts(e.Across)
	if !e.Complete {
		r.Partial = fmt.Sprintf("trigger %d of %d", min(e.Links+1, len(a.Row)), len(a.Row))
		if e.Links == len(a.Row) && len(a.With) > 0 {
			r.Partial = fmt.Sprintf("condition %d of %d met", e.Action-a.Of+1, len(a.With))
		} else if e.Links < len(a.Row) && a.Row[e.Links].Count > 1 {
			r.Partial += fmt.Sprintf(", counted %d of %d", e.Count, a.Row[e.Links].Count)
		} else if e.Links > 0 {
			r.Partial = fmt.Sprintf("trigger %d of %d met", e.Links, len(a.Row))
		}
	}
	return r
}
