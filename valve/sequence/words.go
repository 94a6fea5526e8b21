package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/well"
)

// place says when in a step something is seen.
func (k *checker) place(m *judge.Margin) string {
	text := m.Label
	if text == "" {
		text = "start"
	}
	if m.Action >= 0 {
		when := "just before"
		if m.After {
			when = "just after"
		}
		text += fmt.Sprintf(", %s “%s”", when, k.Network.Actions[m.Action].Name)
	}
	return text
}

// words says what a limit that is passed means. m is the margin over all values,
// shown that of the witness.
func (k *checker) words(f *Finding, m, shown *judge.Margin, sure bool) {
	by := -shown.Least
	switch m.Kind {
	case judge.Event:
		k.eventWords(f, m.Index, shown, sure)
	case judge.Omission:
		k.omissionWords(f, m, sure)
	case judge.Inside, judge.Outside:
		k.ratingWords(f, m, shown)
	case judge.Fracture:
		x := &k.plan.Formations[m.Index]
		f.Kind, f.Device = Fracture, x.Name
		f.Says = fmt.Sprintf("the pressure at the formation passes its fracture pressure (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("%s too much at %s; fracture pressure %s", psi(unit.Pressure(by)), deep(x.MD), x.Fracture.Rounded(digits))
		f.Cure = fmt.Sprintf("take %s off at surface while the formation is open", psi(unit.Pressure(by)))
	case judge.Inflow, judge.Loss, judge.Circulation:
		k.flowWords(f, m, shown)
	case judge.Vacuum:
		f.Kind, f.Device = ColumnFalls, k.plan.Compartments[m.Index].Name
		f.Says = fmt.Sprintf("the pressure at its top would be less than nothing: its fluid falls (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("%s at the top", psi(unit.Pressure(shown.Least-101325)))
		f.Cure = "a lighter fluid, or more pressure on what holds its bottom"
	case judge.Barriers:
		x := k.plan.Formations[m.Index].Name
		f.Kind, f.Device = BarrierLack, x
		f.Says = fmt.Sprintf("fewer than %d barriers stand between the formation and surface (%s)", k.plan.Rules.Barriers, k.place(shown))
		f.Numbers = "standing at the end of the step: " + k.barriersStanding(m.Step, x)
		f.Cure = "put another barrier in place, and test it, before this step"
	case judge.TestLow, judge.TestHigh:
		k.testWords(f, m, shown)
	case judge.Held:
		k.heldWords(f, m, shown)
	case judge.BalanceLow, judge.BalanceHigh:
		k.balanceWords(f, m, shown)
	case judge.ByHand:
		k.handWords(f, m, shown)
	case judge.NoFlow:
		f.Kind, f.Device = RateOff, k.plan.Steps[m.Step].Produce.Compartment
		f.Says, f.Numbers, f.Cure = "no formation that can flow is joined to it", "open ports: "+k.openPorts(m.Step), "open a way to a zone before this step"
		if m.Depth == 1 {
			f.Says, f.Numbers = "the zones do not flow", "their pressures don't carry the column in the string at this wellhead pressure"
			f.Cure = "a lower wellhead pressure, a lighter fluid in the string, or a zone with more pressure"
		}
	case judge.RateLow, judge.RateHigh:
		k.rateWords(f, m, shown)
	case judge.Unwalkable:
		f.Kind, f.Device = Unintended, "plan"
		f.Says = fmt.Sprintf("devices keep moving each other without an end (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("with %s at surface", k.atSurface(shown))
		f.Cure = "two devices arm each other and are both due at one pressure: part their thresholds"
	default:
		k.stringWords(f, m, shown)
	}
}

func (k *checker) eventWords(f *Finding, action int, shown *judge.Margin, sure bool) {
	a := &k.Network.Actions[action]
	f.Kind, f.Device = Unintended, a.Name
	f.Numbers = fmt.Sprintf("it feels %s at %s with %s at surface; its threshold is %s",
		level(a.Axial, shown.Value.C).Rounded(digits), deep(unit.Length(a.Depth.MD)), k.atSurface(shown), k.bandWords(action))
	if shown.Pull != nil {
		f.Numbers += fmt.Sprintf("; weight indicator %s", unit.Force(shown.Pull.C).Rounded(digits))
	}
	switch {
	case k.expected(shown.Step, a.Name) && sure:
		f.Says = "happens out of turn, or more often than this step intends"
	case k.expected(shown.Step, a.Name):
		f.Says = "can happen out of turn, or more often than this step intends"
	case sure:
		f.Says = "happens, and is not intended in this step"
	default:
		f.Says = "can happen, and is not intended in this step"
	}
}

func (k *checker) expected(step int, action string) bool {
	for _, name := range k.plan.Steps[step].Expect {
		if name == action {
			return true
		}
	}
	return false
}

func (k *checker) omissionWords(f *Finding, m *judge.Margin, sure bool) {
	a := &k.Network.Actions[m.Index]
	f.Kind, f.Device = Missing, a.Name
	x := k.nominal.Judge.SensedBy(m.Step, m.Index)
	if y := k.out.Judge.SensedBy(m.Step, m.Index); y.Seen {
		x = y
	}
	for _, n := range a.With { // of several conditions, one that was felt and not met
		if y := k.out.Judge.SensedBy(m.Step, n); y.Seen && (!x.Seen || y.Left > x.Left) {
			x = y
		}
	}
	f.Says = "may not happen, and is intended in this step"
	if sure {
		f.Says = "does not happen, and is intended in this step"
	}
	if a.Slow {
		k.slowWords(f, m)
		return
	}
	if !x.Seen {
		f.Numbers = "it is not armed: it has happened before, or what arms it has not"
		f.Cure = "take it out of what this step expects, or let first happen what arms it"
		return
	}
	f.Numbers = fmt.Sprintf("it feels from %s to %s at %s; its threshold is %s",
		level(a.Axial, x.Least).Rounded(digits), level(a.Axial, x.Greatest).Rounded(digits), deep(unit.Length(a.Depth.MD)), k.bandWords(m.Index))
	if a.Axial && len(k.plan.Steps[m.Step].Pull) > 0 {
		f.Cure = k.pullCure(m.Step, m.Index)
	}
}

func (k *checker) ratingWords(f *Finding, m, shown *judge.Margin) {
	p := &k.plan.Ratings[m.Index]
	r := &k.Limits.Ratings[m.Index]
	side, limit := "inside", r.Burst
	if m.Kind == judge.Outside {
		side, limit = "outside", r.Collapse
	}
	d := limit.Least() - shown.Least
	depth := k.Network.Compartments[r.Inside].Depths[shown.Depth]
	f.Kind, f.Device = RatingCross, p.Name
	f.Says = fmt.Sprintf("the pressure %s is more than the rating allows (%s)", side, k.place(shown))
	f.Numbers = fmt.Sprintf("%s more %s at %.0f ft true vertical depth; allowed %s with its design factor",
		psi(unit.Pressure(d)), side, unit.Length(depth.TVD).In(unit.Foot), psi(unit.Pressure(limit.Least())))
	f.Cure = fmt.Sprintf("take %s off, or put as much on the other side", psi(unit.Pressure(-shown.Least)))
}

func (k *checker) flowWords(f *Finding, m, shown *judge.Margin) {
	const none = 0.5 * unit.PSI
	d := unit.Pressure(-shown.Least) + none
	here := k.plan.Compartments[m.Index].Name
	kind, from, to := Circulation, "another surface", here
	if n := k.Network.Compartments[m.Index].Formation; n >= 0 && m.Kind != judge.Circulation {
		formation := k.plan.Formations[n].Name
		kind, from, to = FlowIn, formation, k.fixes(m.Step, m.Index)
		if m.Kind == judge.Loss {
			kind, from, to = FlowOut, to, from
		}
	} else {
		from = k.fixes(m.Step, m.Index)
		if shown.Depth == 1 {
			from, to = to, from
		}
	}
	f.Kind, f.Device = FlowOff, from+" to "+to
	f.Says = fmt.Sprintf("%s that the step does not allow (%s)", kind, k.place(shown))
	f.Numbers = fmt.Sprintf("%s drive fluid from %s to %s", psi(d), from, to)
	switch {
	case kind != Circulation && !k.joinedToSurface(m.Step, m.Index):
		f.Cure = fmt.Sprintf("no surface pressure reaches it: shut the port between them, or let the step allow %q", string(kind))
	case kind == FlowIn:
		f.Cure = fmt.Sprintf("hold %s more at surface, or shut the port between them", psi(d))
	case kind == FlowOut:
		f.Cure = fmt.Sprintf("hold %s less at surface, or shut the port between them", psi(d))
	default:
		f.Cure = fmt.Sprintf("hold %s more on %q, shut it in, or shut the port between them", psi(d), to)
	}
}

// fixes names what else fixes the body of a compartment, with the nominal values.
func (k *checker) fixes(step, i int) string {
	for n := len(k.standstills[step]) - 1; n >= 0; n-- {
		if m := k.standstills[step][n].world.State.SecondReference(i); m.With >= 0 {
			return k.plan.Compartments[m.With].Name
		}
	}
	return "the well"
}

// deep writes a depth: in feet, or in metres where the plan must have it in them.
func deep(d unit.Length) string {
	if roundness(float64(d)) < roundness(d.In(unit.Foot)) {
		return fmt.Sprintf("%.6g m", float64(d))
	}
	return fmt.Sprintf("%.0f ft", d.In(unit.Foot))
}

// joinedToSurface tells whether a compartment is joined to one that pressure is held on at
// surface, by ports that stand open in the nominal well in a step.
func (k *checker) joinedToSurface(step, compartment int) bool {
	if step >= len(k.standstills) {
		return true
	}
	for _, at := range k.standstills[step] {
		if slices.ContainsFunc(k.joined(at.world.State, compartment), func(i int) bool { return k.plan.Compartments[i].Surface }) {
			return true
		}
	}
	return len(k.standstills[step]) == 0
}

// joined are the compartments that open ports join to one, itself among them.
func (k *checker) joined(s *well.State, compartment int) []int {
	all := []int{compartment}
	for n := 0; n < len(all); n++ {
		for p := range k.Network.Ports {
			x := &k.Network.Ports[p]
			for _, side := range [2][2]int{{x.A, x.B}, {x.B, x.A}} {
				if s.Open[p] && side[0] == all[n] && !slices.Contains(all, side[1]) {
					all = append(all, side[1])
				}
			}
		}
	}
	return all
}
