package sequence

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
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
		f.Numbers = fmt.Sprintf("%s too much at %.0f ft; fracture pressure %s", psi(unit.Pressure(by)), x.Depth.In(unit.Foot), x.Fracture.Rounded(digits))
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
		f.Numbers = "standing at the end of the step: " + k.standing(m.Step, x)
		f.Cure = "put another barrier in place, and test it, before this step"
	case judge.TestLow, judge.TestHigh:
		k.testWords(f, m, shown)
	case judge.BalanceLow, judge.BalanceHigh:
		k.balanceWords(f, m, shown)
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
	f.Numbers = fmt.Sprintf("it feels %s at %.0f ft with %s at surface; its threshold is %s",
		level(a.Axial, shown.Value.C).Rounded(digits), unit.Length(a.Depth.MD).In(unit.Foot), k.atSurface(shown), k.bandWords(action))
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
	x := k.nominal.Judge.Felts[m.Step][m.Index]
	if y := k.out.Judge.Felts[m.Step][m.Index]; y.Seen {
		x = y
	}
	f.Says = "may not happen, and is intended in this step"
	if sure {
		f.Says = "does not happen, and is intended in this step"
	}
	if !x.Seen {
		f.Numbers = "it is not armed: it has happened before, or what arms it has not"
		f.Cure = "take it out of what this step expects, or let first happen what arms it"
		return
	}
	f.Numbers = fmt.Sprintf("it feels from %s to %s at %.0f ft; its threshold is %s",
		level(a.Axial, x.Least).Rounded(digits), level(a.Axial, x.Greatest).Rounded(digits), unit.Length(a.Depth.MD).In(unit.Foot), k.bandWords(m.Index))
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
	switch kind {
	case FlowIn:
		f.Cure = fmt.Sprintf("hold %s more at surface, or shut the port between them", psi(d))
	case FlowOut:
		f.Cure = fmt.Sprintf("hold %s less at surface, or shut the port between them", psi(d))
	default:
		f.Cure = fmt.Sprintf("hold %s more on %q, shut it in, or shut the port between them", psi(d), to)
	}
}

// fixes names what else fixes the body of a compartment, with the nominal values.
func (k *checker) fixes(step, i int) string {
	for n := len(k.stands[step]) - 1; n >= 0; n-- {
		if m := k.stands[step][n].world.State.Meets[i]; m.With >= 0 {
			return k.plan.Compartments[m.With].Name
		}
	}
	return "the well"
}

func (k *checker) testWords(f *Finding, m, shown *judge.Margin) {
	t := &k.plan.Steps[m.Step].Tests[m.Index]
	d := t.Differential.Least + unit.Pressure(shown.Least)
	if m.Kind == judge.TestHigh {
		d = t.Differential.Greatest - unit.Pressure(shown.Least)
	}
	f.Kind, f.Device = TestOff, t.Barrier
	f.Says = fmt.Sprintf("the test from %s does not see its differential (%s)", t.Side, k.place(shown))
	f.Numbers = fmt.Sprintf("%q less %q is %s; wanted %s to %s", t.Inside, t.Outside, psi(d), psi(t.Differential.Least), psi(t.Differential.Greatest))
	f.Cure = k.testCure(m.Step, t)
}

// testCure names a side that nothing holds or vents; empty where a surface
// pressure may mend the test.
func (k *checker) testCure(step int, t *Test) string {
	s := k.stands[step][len(k.stands[step])-1].world.State
	for _, name := range []string{t.Inside, t.Outside} {
		i := k.by.compartment[name]
		fixed := false
		for _, m := range s.Body(i) {
			fixed = fixed || s.Surface[m] || s.Compartments[m].Formation >= 0
		}
		if fixed {
			continue
		}
		for p, port := range s.Ports {
			if (port.A == i || port.B == i) && !s.Open[p] {
				return fmt.Sprintf("%q is trapped: open %q, or another port of it, and vent it before the test", name, port.Name)
			}
		}
		return fmt.Sprintf("%q is trapped and has no port to vent it", name)
	}
	if len(k.plan.Steps[step].Ramps) > 0 {
		return "" // the step's window says it
	}
	return "change the surface pressure by what is missing"
}

func (k *checker) balanceWords(f *Finding, m, shown *judge.Margin) {
	b := &k.plan.Steps[m.Step].Balance[m.Index]
	d := b.Overbalance.Least + unit.Pressure(shown.Least)
	if m.Kind == judge.BalanceHigh {
		d = b.Overbalance.Greatest - unit.Pressure(shown.Least)
	}
	f.Kind, f.Device = BalanceOff, b.Formation
	f.Says = fmt.Sprintf("%q is not balanced against it as planned (%s)", b.Compartment, k.place(shown))
	f.Numbers = fmt.Sprintf("%s; planned %s to %s", balanceWords(d), balanceWords(b.Overbalance.Least), balanceWords(b.Overbalance.Greatest))
	f.Cure = k.balanceCure(m.Step, m.Index, d, b.Overbalance)
}

func balanceWords(d unit.Pressure) string {
	if d < 0 {
		return psi(-d) + " underbalance"
	}
	return psi(d) + " overbalance"
}

// balanceCure says what surface pressure brings the balance into its band, or
// that none can because it would have to be below zero.
func (k *checker) balanceCure(step, n int, d unit.Pressure, goal unit.Band[unit.Pressure]) string {
	b := &k.Limits.Steps[step].Balances[n]
	if b.Stand >= len(k.stands[step]) {
		return ""
	}
	s := k.stands[step][b.Stand].world.State
	for _, m := range s.Body(b.Compartment) {
		if !s.Surface[m] {
			continue
		}
		name, now := k.plan.Compartments[m].Name, unit.Pressure(s.Applied[m].F.C)
		least, greatest := now+goal.Least-d, now+goal.Greatest-d
		if greatest < 0 {
			return fmt.Sprintf("no surface pressure does it: %q would need %s; a lighter fluid is wanted", name, psi(greatest))
		}
		return fmt.Sprintf("hold %s to %s on %q", psi(max(least, 0)), psi(greatest), name)
	}
	return "nothing at surface fixes this compartment's pressure; its fluid has to change"
}

func (k *checker) openPorts(step int) string {
	var all []string
	for i, p := range k.plan.Ports {
		if k.ends[step].State.Open[i] {
			all = append(all, p.Name)
		}
	}
	if len(all) == 0 {
		return "none"
	}
	return strings.Join(all, ", ")
}

func (k *checker) standing(step int, formation string) string {
	var all []string
	for _, b := range k.programme.Steps[step].Barriers {
		if b.Formation == formation && b.Stands {
			all = append(all, b.Name)
		}
	}
	if len(all) == 0 {
		return "none"
	}
	return strings.Join(all, ", ")
}

func (k *checker) rateWords(f *Finding, m, shown *judge.Margin) {
	x := &k.plan.Formations[m.Index]
	want := k.plan.Steps[m.Step].Produce.Want[x.Name]
	q := want.Least + unit.FlowRate(shown.Least/rateParts)
	if m.Kind == judge.RateHigh {
		q = want.Greatest - unit.FlowRate(shown.Least/rateParts)
	}
	f.Kind, f.Device = RateOff, x.Name
	f.Says = "the zone does not give what is planned"
	f.Numbers = fmt.Sprintf("%s; wanted %s to %s", q.Rounded(4), want.Least.Rounded(4), want.Greatest.Rounded(4))
	f.Cure = "another choke, another wellhead pressure, or another zone shut"
	if q < 0 {
		f.Says, f.Numbers = "the zone takes fluid from the others", (-q).Rounded(4)+" cross over into it"
	}
}

// limitNames of the string's limits, by index.
var limitNames = [...]string{"internal pressure", "collapse", "axial", "triaxial", "connection"}

func (k *checker) stringWords(f *Finding, m, shown *judge.Margin) {
	left := shown.Least / judge.Parts
	switch m.Kind {
	case judge.String:
		f.Kind, f.Device = StringLoad, "string"
		f.Says = fmt.Sprintf("the string passes its %s limit (%s)", limitNames[m.Index], k.place(shown))
		f.Numbers = fmt.Sprintf("%.1f %% of what the design factor allows%s", 100*(1-left), shown.Where)
		f.Cure = "less pressure, less cooling or less pull in this step, or a stronger pipe at that depth"
	case judge.SealUp, judge.SealDown:
		s := k.plan.String.seals()[m.Index]
		way, limit, cure := "up", s.Up, "warmer"
		if m.Kind == judge.SealDown {
			way, limit, cure = "down", s.Down, "cooler"
		}
		f.Kind, f.Device = SealTravel, s.name(m.Index)
		f.Says = fmt.Sprintf("the seals move %s further than their bore allows (%s)", way, k.place(shown))
		f.Numbers = fmt.Sprintf("%.1f in %s of %.1f in", limit.In(unit.Inch)-unit.Length(left).In(unit.Inch), way, limit.In(unit.Inch))
		f.Cure = fmt.Sprintf("space out with %.1f in more to go %s, or keep the string %s and its pressure nearer that at landing",
			-unit.Length(left).In(unit.Inch), way, cure)
	case judge.Holding:
		f.Kind, f.Device = HoldingOff, "packer"
		f.Says = fmt.Sprintf("its load is outside its holding envelope (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("%.1f %% of the way to the edge%s", 100*(1-left), shown.Where)
		if len(k.plan.Steps[m.Step].Ramps) == 0 {
			f.Cure = "less differential, less pull, or a packer that holds more"
		}
	case judge.Lift:
		f.Kind, f.Device = HangerLift, "hanger"
		f.Says = fmt.Sprintf("the string is pushed up out of its hanger (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("%s up, beyond the %s that locks it down", unit.Force(-shown.Least).Rounded(digits), k.plan.String.LockDown.Rounded(digits))
		f.Cure = "lock the hanger down, or less pressure"
	case judge.PullFree:
		f.Kind, f.Device = PullOff, "string"
		f.Says = fmt.Sprintf("nothing holds the string: it comes up (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("the weight indicator shows %s less than planned", unit.Force(-shown.Least).Rounded(digits))
		f.Cure = "set what holds the string before this step, or pull no more than its own weight and the drag"
	case judge.Rig:
		f.Kind, f.Device = PullOff, "rig"
		f.Says = fmt.Sprintf("the weight indicator shows more than the rig's rating (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("%s more than %s", unit.Force(-shown.Least).Rounded(digits), k.plan.String.Rig.Rounded(digits))
		f.Cure = "pull less, or use a rig that bears it"
	}
}

func (k *checker) pullCure(step, action int) string {
	f := &k.out.Judge.Felts[step][action]
	if !f.Pulled && !f.HasReach {
		return "nothing holds the string, so that no pull reaches it: set what holds it before this step"
	}
	more := unit.Force(max(-f.Reach, 0))
	planned := unit.Force(0)
	for _, p := range k.plan.Steps[step].Pull {
		planned = max(planned, p)
	}
	text := fmt.Sprintf("pull until the weight indicator shows %s", (planned + more).Rounded(4))
	if f.Pulled {
		text += fmt.Sprintf("; it parts from %s on", unit.Force(f.PullLeast).Rounded(4))
	}
	return text
}
