package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// results writes what the nominal values show of every step, and the margins over
// all values.
func (k *checker) results() error {
	tested := map[string][]string{}
	for i := range k.plan.Steps {
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
	step := &k.plan.Steps[i]
	r := &StepResult{Name: step.Name, Note: step.Note, Pull: step.Pull, OK: true, Unknown: []string{}}
	if step.Produce != nil {
		r.Wellhead = &step.Produce.Surface
	}
	for n := range k.stands[i] {
		p, err := k.point(&k.stands[i][n])
		if err != nil {
			return nil, err
		}
		r.Points = append(r.Points, *p)
	}
	end := k.ends[i]
	for _, e := range events(end, i) {
		r.Events = append(r.Events, k.event(e))
	}
	for n, p := range k.plan.Ports {
		r.Ports = append(r.Ports, PortState{p.Name, end.State.Open[n]})
	}
	r.Volumes = k.volumes(i)
	k.triggers(i, r)
	k.ratings(i, r)
	k.holdings(i, r)
	k.balances(i, r)
	k.partings(i, r)
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
	slices.SortStableFunc(all, func(a, b walk.Event) int {
		switch {
		case a.Drive != b.Drive:
			return a.Drive - b.Drive
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

func (k *checker) point(at *stand) (*Point, error) {
	s := at.world.State
	p := &Point{Label: at.label, Surface: k.readings(func(i int) float64 {
		if s.Surface[i] {
			return s.Applied[i].F.C
		}
		return s.Top[i].F.C
	}, s.Surface)}
	if at.place.Drive < 0 {
		p.Label = "start"
	}
	for _, d := range k.plan.Devices {
		depth := well.Depth{MD: float64(d.Depth)}
		tvd, _ := k.path.TVD(d.Depth) // checked with the plan
		for i, x := range k.plan.Compartments {
			if !(x.Top <= d.Depth && d.Depth <= x.Bottom) {
				continue
			}
			for n, y := range s.Compartments[i].Depths {
				if y.MD != depth.MD {
					continue
				}
				q, err := s.At(i, n)
				if err != nil {
					return nil, err
				}
				p.Pressures = append(p.Pressures, PressureAt{d.Name, d.Depth, tvd, x.Name, unit.Pressure(q.F.C)})
			}
		}
	}
	for i := range s.Compartments {
		for n, d := range s.Compartments[i].Depths {
			q, err := s.At(i, n)
			if err != nil {
				return nil, err
			}
			p.Profiles = append(p.Profiles, ProfilePoint{k.plan.Compartments[i].Name, unit.Length(d.TVD), unit.Pressure(q.F.C)})
		}
	}
	p.Flows = k.flows(s)
	var err error
	p.String, err = k.stringAt(at)
	return p, err
}

// flows are the bodies whose pressure is fixed more than once.
func (k *checker) flows(s *well.State) []FlowAt {
	var all []FlowAt
	const none = 0.5 * unit.PSI
	for i, m := range s.Meets {
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

func (k *checker) event(e walk.Event) Event {
	a := &k.Network.Actions[e.Action]
	r := Event{Action: a.Name, Ramp: e.Drive + 1, Surface: k.readings(func(i int) float64 { return e.Applied[i].C }, nil)}
	if e.Pull != nil {
		r.Pull = unit.Force(e.Pull.C)
	}
	if a.Axial {
		f := unit.Force(e.Felt.C)
		r.Balance = &f
	} else {
		d := unit.Pressure(e.Felt.C)
		r.Differential = &d
	}
	for _, x := range e.Across {
		port := &k.Network.Ports[x.Port]
		y := Across{port.Name, k.plan.Compartments[port.A].Name, k.plan.Compartments[port.B].Name, nothing(unit.Pressure(x.Differential.C))}
		if y.Differential < 0 || y.Differential == 0 && y.From > y.To {
			y.From, y.To, y.Differential = y.To, y.From, -y.Differential
		}
		r.Across = append(r.Across, y)
	}
	if !e.Complete {
		r.Partial = fmt.Sprintf("trigger %d of %d", min(e.Links+1, len(a.Row)), len(a.Row))
		if e.Links < len(a.Row) && a.Row[e.Links].Count > 1 {
			r.Partial += fmt.Sprintf(", counted %d of %d", e.Count, a.Row[e.Links].Count)
		} else if e.Links > 0 {
			r.Partial = fmt.Sprintf("trigger %d of %d met", e.Links, len(a.Row))
		}
	}
	return r
}

// triggers writes every action that was armed, with its margin over all values.
func (k *checker) triggers(i int, r *StepResult) {
	for n := range k.Network.Actions {
		a := &k.Network.Actions[n]
		f := k.out.Judge.Felts[i][n]
		if !f.Seen {
			f = k.nominal.Judge.Felts[i][n]
		}
		if !f.Seen {
			continue
		}
		t := TriggerResult{Action: a.Name, Intended: slices.Contains(k.plan.Steps[i].Expect, a.Name),
			Least: level(a.Axial, f.Least), Greatest: level(a.Axial, f.Greatest)}
		link := f.Link
		if t.Intended && f.HasReach {
			link = f.ReachLink
		}
		link = min(link, len(a.Row)-1)
		t.Threshold, t.Direction = k.threshold(n, link), valve.Rising
		if a.Row[link].Falling {
			t.Direction = valve.Falling
		}
		t.Margin = level(a.Axial, f.Left)
		if t.Intended {
			t.Margin = level(a.Axial, f.Reach)
			if !f.HasReach {
				t.Margin = level(a.Axial, -f.Left)
			}
		}
		happens, fails := k.broken(i, judge.Event, n), k.broken(i, judge.Omission, n)
		switch {
		case t.Intended && !fails:
			t.Firing = MustFire
		case t.Intended && k.happened(i, n), happens:
			t.Firing = MayFire
		case f.CameOn:
			t.Firing = ComesOnOnly
		default:
			t.Firing = CannotFire
		}
		r.Triggers = append(r.Triggers, t)
	}
}

func (k *checker) broken(step int, kind judge.Kind, index int) bool {
	m := k.out.Judge.Margins[judge.Key{Step: step, Kind: kind, Index: index}]
	return m != nil && (len(m.Points) > 0 || len(m.Regions) > 0)
}

// happened tells whether an action is completed with the nominal values.
func (k *checker) happened(step, action int) bool {
	for _, e := range events(k.ends[step], step) {
		if e.Action == action && e.Complete {
			return true
		}
	}
	return false
}

// threshold is the band of a trigger.
func (k *checker) threshold(action, link int) LevelBand {
	a := &k.Network.Actions[action]
	f := a.Row[link].Level
	mid := f.C
	for _, t := range f.T {
		mid += t.C * k.Network.Symbols[t.Symbol].Nominal
	}
	return LevelBand{level(a.Axial, f.Least()), level(a.Axial, mid), level(a.Axial, f.Greatest())}
}

func (k *checker) ratings(i int, r *StepResult) {
	for n, p := range k.plan.Ratings {
		x := &k.Limits.Ratings[n]
		out := RatingResult{Name: p.Name}
		at := func(kind judge.Kind) (float64, bool) {
			m := k.margin(i, kind, n)
			if m == nil {
				return 0, false
			}
			return m.Least, true
		}
		if left, ok := at(judge.Inside); ok {
			limit := x.Burst.Least()
			out.Burst = unit.Pressure(max(limit-left, 0))
			out.Usage = max(out.Usage, float64(out.Burst)/limit)
		}
		if left, ok := at(judge.Outside); ok {
			limit := x.Collapse.Least()
			out.Collapse = unit.Pressure(max(limit-left, 0))
			out.Usage = max(out.Usage, float64(out.Collapse)/limit)
		}
		r.Ratings = append(r.Ratings, out)
	}
}

// margin is the least of a limit in a step over all values, or with the nominal
// ones where no world came so far.
func (k *checker) margin(step int, kind judge.Kind, index int) *judge.Margin {
	key := judge.Key{Step: step, Kind: kind, Index: index}
	if m := k.out.Judge.Margins[key]; m != nil {
		return m
	}
	return k.nominal.Judge.Margins[key]
}

func (k *checker) balances(i int, r *StepResult) {
	g := k.Limits.Steps[i]
	for n, b := range k.plan.Steps[i].Balance {
		x := g.Balances[n]
		if x.Stand >= len(k.stands[i]) {
			continue
		}
		out := k.balanceOf(&k.stands[i][x.Stand], x.Compartment, x.At, x.Formation)
		out.Goal = &b.Overbalance
		out.OK = !k.broken(i, judge.BalanceLow, n) && !k.broken(i, judge.BalanceHigh, n) && b.Overbalance.Contains(out.Overbalance)
		r.Balance = append(r.Balance, out)
	}
	k.faces(i, r)
}

func (k *checker) balanceOf(at *stand, i, depth, f int) BalanceResult {
	q, _ := at.world.State.At(i, depth)
	pore := at.world.State.Formations[f].Pressure.C
	label := at.label
	if at.place.Drive < 0 {
		label = "start"
	}
	return BalanceResult{Compartment: k.plan.Compartments[i].Name, Formation: k.plan.Formations[f].Name, Point: label,
		Well: unit.Pressure(q.F.C), Pore: unit.Pressure(pore), Overbalance: unit.Pressure(q.F.C - pore), OK: true}
}

// faces reports what stands open to each formation at the end of a step.
func (k *checker) faces(i int, r *StepResult) {
	at := &k.stands[i][len(k.stands[i])-1]
	s := at.world.State
	for f, x := range s.Formations {
		if x.Face < 0 {
			continue
		}
		members := s.Body(x.Face)
		if !slices.ContainsFunc(members, func(m int) bool { return s.Surface[m] }) {
			continue // the formation itself fixes the pressure
		}
		slices.Sort(members)
		for _, m := range members {
			name := k.plan.Compartments[m].Name
			known := slices.ContainsFunc(r.Balance, func(b BalanceResult) bool { return b.Compartment == name && b.Formation == x.Name })
			if m == x.Face || known {
				continue
			}
			for n, d := range s.Compartments[m].Depths {
				if d.MD == x.Depth.MD {
					r.Balance = append(r.Balance, k.balanceOf(at, m, n, f))
				}
			}
		}
	}
}

func (k *checker) tests(i int, r *StepResult, tested map[string][]string) {
	for n, t := range k.plan.Steps[i].Tests {
		x := &k.Limits.Steps[i].Tests[n]
		out := TestResult{Barrier: t.Barrier, Side: t.Side, Goal: t.Differential, Hold: t.Hold, Criterion: t.Criterion}
		if x.Stand < len(k.stands[i]) {
			s := k.stands[i][x.Stand].world.State
			in, _ := s.At(x.Inside, x.AtIn)
			outside, _ := s.At(x.Outside, x.AtOut)
			out.Inside, out.Outside = unit.Pressure(in.F.C), unit.Pressure(outside.F.C)
			out.Differential = out.Inside - out.Outside
		}
		out.OK = !k.broken(i, judge.TestLow, n) && !k.broken(i, judge.TestHigh, n) && t.Differential.Contains(out.Differential)
		out.Floor = out.Differential * unit.Pressure(1-t.Decline)
		if out.OK {
			tested[t.Barrier] = append(tested[t.Barrier], t.Side)
		}
		r.Tests = append(r.Tests, out)
	}
}

// barriers keeps the ledger.
func (k *checker) barriers(i int, r *StepResult, tested map[string][]string) {
	w := k.ends[i]
	for n, b := range k.plan.Barriers {
		stands, column, err := k.out.Judge.Standing(w, &k.Limits.Barriers[n], affine.Form{})
		if column != nil && err == nil {
			stands = column.C >= -float64(0.5*unit.PSI)
		}
		sides := slices.Clone(tested[b.Name])
		slices.Sort(sides)
		before := i > 0 && k.programme.Steps[i-1].Barriers[n].Stands
		r.Barriers = append(r.Barriers, BarrierResult{Name: b.Name, Formation: b.Formation, Stands: stands,
			Tested: slices.Compact(sides), Lost: before && !stands})
	}
}

// unknown lists the devices whose state isn't certain after a step.
func (k *checker) unknown(i int, r *StepResult) {
	var after []*walk.World
	switch {
	case i+1 < len(k.out.Before):
		after = k.out.Before[i+1]
	case k.out.Died < 0 && i == len(k.Steps)-1:
		after = k.out.Last
	}
	doubt := make([]bool, len(k.plan.Devices))
	for n := range k.Network.Actions {
		d := k.Network.Actions[n].Device
		for _, w := range after {
			if len(w.Rows[n]) > 1 && w.State.Armed[n] || w.State.Armed[n] != after[0].State.Armed[n] ||
				w.State.Armed[n] && len(w.Rows[n]) == 1 && !slices.EqualFunc(w.Rows[n], after[0].Rows[n], sameProgress) {
				doubt[d] = true
			}
		}
		for step := range i + 1 { // what has gone astray stays in doubt
			if k.broken(step, judge.Event, n) || k.broken(step, judge.Omission, n) {
				doubt[d] = true
			}
		}
	}
	for d, x := range doubt {
		if x {
			r.Unknown = append(r.Unknown, k.plan.Devices[d].Name)
		}
	}
}

func sameProgress(a, b walk.Progress) bool {
	return a.Links == b.Links && a.Count == b.Count && a.Out == b.Out && a.Done == b.Done
}

func (k *checker) zoneRates(i int, r *StepResult) error {
	p := k.plan.Steps[i].Produce
	if p == nil {
		return nil
	}
	s := k.ends[i].State
	zs := k.zones(s, p)
	if len(zs) == 0 {
		return nil
	}
	flow, err := k.production(p, zs, func(f int) unit.Pressure { return unit.Pressure(s.Formations[f].Pressure.C) }).Flow()
	if err != nil {
		return nil // the finding says it
	}
	for n, z := range zs {
		x := flow.Zones[n]
		r.Zones = append(r.Zones, ZoneRate{Formation: k.plan.Formations[z.formation].Name, Rate: x.Rate, Water: x.Water,
			Sandface: x.Sandface, Tubing: x.Tubing, Takes: x.Takes})
	}
	return nil
}

func (k *checker) holdings(i int, r *StepResult) {
	room := k.String
	if room == nil || room.Envelope == nil {
		return
	}
	for n := range r.Points {
		at := r.Points[n].String
		if at == nil || !at.Held {
			continue
		}
		s := k.stands[i][n].world.State
		below, _ := s.At(room.Below, room.BelowAt)
		above, _ := s.At(room.Above, room.AboveAt)
		d := unit.Pressure(below.F.C - above.F.C)
		m := room.Envelope.Margin(packer.Load{Differential: d, Axial: at.Packer})
		r.Holding = append(r.Holding, HoldingResult{r.Points[n].Label, d, at.Packer, m.Used, m.Limit})
	}
}
