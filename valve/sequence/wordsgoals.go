package sequence

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
)

func (k *checker) testWords(f *Finding, m, shown *judge.Margin) {
	t := &k.plan.Steps[m.Step].Tests[m.Index]
	d := t.Differential.Least + unit.Pressure(shown.Least)
	if m.Kind == judge.TestHigh {
		d = t.Differential.Greatest - unit.Pressure(shown.Least)
	}
	f.Kind, f.Device = TestOff, t.Barrier
	f.Says = fmt.Sprintf("the test from %s does not see its differential (%s)", t.Side, k.place(shown))
	f.Numbers = fmt.Sprintf("%q less %q is %s; wanted %s to %s", t.Inside, t.Outside, psi(nothing(d)), psi(t.Differential.Least), psi(t.Differential.Greatest))
	f.Cure = k.testCure(m, t)
}

// testCure names a side that nothing holds or vents; empty where a surface
// pressure may mend the test.
func (k *checker) testCure(m *judge.Margin, t *Test) string {
	vent := k.vents(m.Step, t)
	for n := range k.programme.Steps[m.Step].Windows {
		if w := &k.programme.Steps[m.Step].Windows[n]; w.Open() && !w.Inside && vent != "" {
			return k.windowCure(m) + "; or " + vent
		}
	}
	if vent == "" && len(k.plan.Steps[m.Step].Ramps) == 0 {
		return "change the surface pressure by what is missing"
	}
	return vent // or the step's window says it
}

// vents tells which side of a test is trapped, and what opens it.
func (k *checker) vents(step int, t *Test) string {
	s := k.standstills[step][len(k.standstills[step])-1].world.State
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
	return ""
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
	if b.Standstill >= len(k.standstills[step]) {
		return ""
	}
	s := k.standstills[step][b.Standstill].world.State
	for _, m := range s.Body(b.Compartment) {
		if !s.Surface[m] {
			continue
		}
		name, now := k.plan.Compartments[m].Name, unit.Pressure(s.Gauge(m).F.C)
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

func (k *checker) barriersStanding(step int, formation string) string {
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
