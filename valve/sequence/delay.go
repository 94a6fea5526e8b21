package sequence

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
)

// slow tells whether an action moves with a delay, and for how long it must be at its
// level, in s.
func (a *Action) slow() (bool, affine.Form) {
	least := duration(a.Delay)
	most := max(duration(a.DelayMost), least)
	if least == most {
		return least > 0, affine.Const(least.Seconds())
	}
	return true, affine.Within(least.Seconds(), most.Seconds())
}

// delay checks that of an action.
func (v *validation) delay(path string, a *Action) {
	v.span(path+".delay", a.Delay)
	v.span(path+".delay_at_most", a.DelayMost)
	switch {
	case a.Delay == "" && a.DelayMost != "":
		v.fault(path+".delay_at_most", "stands without a delay, the least that it may take")
	case a.DelayMost != "" && duration(a.DelayMost) < duration(a.Delay):
		v.fault(path+".delay_at_most", "is %q; must not be less than the delay of %q", a.DelayMost, a.Delay)
	case a.Delay == "":
	case a.Axial || len(a.All)+len(a.Any) > 0 || len(a.Triggers) != 1 || a.Triggers[0].Count > 1:
		v.fault(path+".delay", "belongs to an action of one trigger that counts once and feels pressure")
	}
}

// slow checks that the times of a step are known where a device moves with a delay.
func (v *validation) slow(path string, s Step) {
	slow := slices.ContainsFunc(v.plan.Devices, func(d Device) bool {
		return slices.ContainsFunc(d.Actions, func(a Action) bool { return a.Delay != "" })
	})
	if !slow {
		return
	}
	if len(s.Ramps) > 0 && !(s.rise(v.plan) > 0) {
		v.fault(path+".rise", "is missing: with a device that moves with a delay it must be known how long ramps take, here or in rules.rise")
	}
}

// lastStandstill is the number of the last place where a step stands still.
func (s *Step) lastStandstill() int {
	last := len(s.Ramps) + len(s.Pull)
	if len(s.PressureChange)+len(s.VolumeChange) > 0 {
		last++
	}
	return last
}

// tested is how long tests are held, by where the step stands still, and that of those
// which are held where their differential is greatest, wherever that is.
func (s *Step) tested() (at map[int]float64, anywhere float64) {
	at = map[int]float64{}
	for _, t := range s.Tests {
		switch held := duration(t.Hold).Seconds(); t.Moment {
		case AtStart:
			at[0] += held
		case AtEnd:
			at[s.lastStandstill()] += held
		default:
			anywhere += held
		}
	}
	return at, anywhere
}

// holdWords are how long a step holds after each of its ramps.
func holdWords(hold []string) string {
	var all []string
	for _, h := range hold {
		all = append(all, cmp.Or(h, "no time"))
	}
	return cmp.Or(strings.Join(all, ", "), "no time")
}

// slowWords says why a device that moves with a delay may not.
func (k *checker) slowWords(f *Finding, m *judge.Margin) {
	a := k.plan.action(k.Network.Actions[m.Index].Name)
	s := &k.plan.Steps[m.Step]
	takes := a.Delay
	if a.DelayMost != "" {
		takes += " to " + a.DelayMost
	}
	f.Numbers = fmt.Sprintf("it moves after %s at its level, %s; after its ramps the step holds %s", takes, k.bandWords(m.Index), holdWords(s.Hold))
	f.Cure = "hold the pressure for longer (hold), or bring it to the device's level"
}
