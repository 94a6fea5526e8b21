package sequence

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/walk"
)

func (k *checker) balances(i int, r *StepResult) {
	g := k.Limits.Steps[i]
	for n, b := range k.plan.Steps[i].Balance {
		x := g.Balances[n]
		if x.Standstill >= len(k.standstills[i]) {
			continue
		}
		out := k.balanceOf(&k.standstills[i][x.Standstill], x.Compartment, x.At, x.Formation)
		out.Goal = &b.Overbalance
		out.OK = !k.broken(i, judge.BalanceLow, n) && !k.broken(i, judge.BalanceHigh, n) && b.Overbalance.Contains(out.Overbalance)
		r.Balance = append(r.Balance, out)
	}
	k.faces(i, r)
}

func (k *checker) balanceOf(at *standstill, i, depth, f int) BalanceResult {
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
	if len(k.standstills[i]) == 0 {
		return // the nominal values don't come to it
	}
	at := &k.standstills[i][len(k.standstills[i])-1]
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
		if x.Standstill < len(k.standstills[i]) {
			s := k.standstills[i][x.Standstill].world.State
			in, _ := s.At(x.Inside, x.AtIn)
			outside, _ := s.At(x.Outside, x.AtOut)
			out.Inside, out.Outside = unit.Pressure(in.F.C), unit.Pressure(outside.F.C)
			out.Differential = out.Inside - out.Outside
			out.Warming, out.Leak = k.whileHeld(s, x, &t, out.Differential)
		}
		out.OK = !k.broken(i, judge.TestLow, n) && !k.broken(i, judge.TestHigh, n) && !k.broken(i, judge.Held, n) && t.Differential.Contains(out.Differential)
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
		stands, column, err := k.out.Judge.BarrierStands(w, &k.Limits.Barriers[n], affine.Form{})
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
	case i < len(k.out.After):
		after = k.out.After[i]
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
		if step, ok := k.failsFirst[n]; ok && step <= i { // what has failed before stays uncertain
			doubt[d] = true
		}
	}
	for d, x := range doubt {
		if x {
			r.Unknown = append(r.Unknown, k.plan.Devices[d].Name)
		}
	}
}

// firstFailures is the first step, by action, in which it comes unwanted or may not
// come.
func (k *checker) firstFailures() map[int]int {
	first := map[int]int{}
	for key, m := range k.out.Judge.Margins {
		if (key.Kind == judge.Event || key.Kind == judge.Omission) && m.Fails() {
			if before, ok := first[key.Index]; !ok || key.Step < before {
				first[key.Index] = key.Step
			}
		}
	}
	return first
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
	if flowing := k.flowStates[i]; flowing != nil { // as it stood then
		s = flowing
	}
	zs := k.zones(s, p)
	if len(zs) == 0 {
		return nil
	}
	flow, _, err := k.flow(p, zs, func(f int) unit.Pressure { return unit.Pressure(s.Formations[f].Pressure.C) })
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
	if k.String == nil || k.plan.Holding == nil {
		return
	}
	of := k.plan.own(k.plan.holdingOn()).of
	room := k.room(of)
	if room.Envelope == nil {
		return
	}
	for n := range r.Points {
		at := r.Points[n].String
		if of == stringload.Outer {
			at = r.Points[n].OuterString
		}
		if at == nil || !at.Held {
			continue
		}
		s := k.standstills[i][n].world.State
		below, _ := s.At(room.Below, room.BelowAt)
		above, _ := s.At(room.Above, room.AboveAt)
		d := unit.Pressure(below.F.C - above.F.C)
		m := room.Envelope.Margin(packer.Load{Differential: d, Axial: at.Packer})
		r.Holding = append(r.Holding, HoldingResult{r.Points[n].Label, d, at.Packer, m.Usage, m.Limit})
	}
}
