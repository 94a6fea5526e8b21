package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
)

// lifts are what a pull hangs on, by index.
var lifts = [...]string{"rig", "hanger"}

// most is the greatest reading that one of them bears; zero: not known.
func (s *String) most(lift int) unit.Force {
	switch {
	case lift == 0:
		return s.Rig
	case s.HangerRating == 0:
		return 0
	}
	return s.HangerRating + s.Block
}

// limitNames of the string's limits, by index.
var limitNames = [...]string{"internal pressure", "collapse", "axial", "triaxial", "connection"}

func (k *checker) stringWords(f *Finding, m, shown *judge.Margin) {
	left := shown.Least / judge.Parts
	own, index := k.plan.whose(m.Index)
	switch m.Kind {
	case judge.String:
		f.Kind, f.Device = StringLoad, own.title
		f.Says = fmt.Sprintf("the %s passes its %s limit (%s)", own.title, limitNames[index], k.place(shown))
		f.Numbers = fmt.Sprintf("%.1f %% of what the design factor allows", 100*(1-left))
		f.Cure = "less pressure, less cooling or less pull in this step, or a stronger pipe at that depth"
	case judge.SealUp, judge.SealDown:
		s := own.seals()[index]
		way, limit, cure := "up", s.Up, "warmer"
		if m.Kind == judge.SealDown {
			way, limit, cure = "down", s.Down, "cooler"
		}
		f.Kind, f.Device = SealTravel, s.name(index)
		f.Says = fmt.Sprintf("the seals move %s further than their bore allows (%s)", way, k.place(shown))
		f.Numbers = fmt.Sprintf("%.1f in %s of %.1f in", limit.In(unit.Inch)-unit.Length(left).In(unit.Inch), way, limit.In(unit.Inch))
		f.Cure = fmt.Sprintf("space out with %.1f in more to go %s, or keep the string %s and its pressure nearer that at landing",
			-unit.Length(left).In(unit.Inch), way, cure)
	case judge.Holding:
		f.Kind, f.Device = HoldingOff, "packer"
		f.Says = fmt.Sprintf("its load is outside its holding envelope (%s)", k.place(shown))
		f.Numbers = fmt.Sprintf("%.1f %% of the way to the edge", 100*(1-left))
		if len(k.plan.Steps[m.Step].Ramps) == 0 {
			f.Cure = "less differential, less pull, or a packer that holds more"
		}
	case judge.Lift:
		f.Kind, f.Device = HangerLift, "hanger"+own.ofOuter()
		f.Says = fmt.Sprintf("the %s is pushed up out of its hanger (%s)", own.title, k.place(shown))
		f.Numbers = fmt.Sprintf("%s up, beyond the %s that locks it down", unit.Force(-shown.Least).Rounded(digits), own.LockDown.Rounded(digits))
		f.Cure = "lock the hanger down, or less pressure"
	case judge.PullFree:
		f.Kind, f.Device = PullOff, own.title
		f.Says = fmt.Sprintf("nothing holds the %s: it comes up (%s)", own.title, k.place(shown))
		f.Numbers = fmt.Sprintf("the weight indicator shows %s less than planned", unit.Force(-shown.Least).Rounded(digits))
		f.Cure = "set what holds the string before this step, or pull no more than its own weight and the drag"
	case judge.Rig:
		f.Kind, f.Device = PullOff, lifts[index]
		f.Says = fmt.Sprintf("the weight indicator shows more than the %s's rating (%s)", lifts[index], k.place(shown))
		f.Numbers = fmt.Sprintf("%s more than %s", unit.Force(-shown.Least).Rounded(digits), own.most(index).Rounded(digits))
		if index > 0 {
			f.Numbers += fmt.Sprintf(", its %s and the block's %s", own.HangerRating.Rounded(digits), own.Block.Rounded(digits))
		}
		f.Cure = "pull less, or use a " + lifts[index] + " that bears it"
	}
}

// ofOuter is what tells the outer string's from the string's.
func (x ownString) ofOuter() string {
	if x.on() == OnString {
		return ""
	}
	return " of the " + x.title
}

// sure is the reading from which on a pull that falls short moves what it is meant to,
// whatever the values.
func (k *checker) sure(step, action int) unit.Force {
	return k.pulledTo(step, action) + unit.Force(max(-k.out.Judge.SensedBy(step, action).Reach, 0))
}

// pulledTo is the reading of a step that brings an action furthest: the highest, or the
// lowest where setting down does it.
func (k *checker) pulledTo(step, action int) unit.Force {
	pulls, row := k.plan.Steps[step].Pull, k.Network.Actions[action].Row
	switch {
	case len(pulls) == 0:
		return 0
	case row[len(row)-1].Falling:
		return slices.Min(pulls)
	}
	return slices.Max(pulls)
}

func (k *checker) pullCure(step, action int) string {
	for n := range k.programme.Steps[step].Windows {
		if w := &k.programme.Steps[step].Windows[n]; w.Planned.Axial() && w.Open() && !w.Inside && handy(w).si > w.Planned.si {
			return "pull until the weight indicator shows " + handy(w).Rounded(4)
		}
	}
	f := k.out.Judge.SensedBy(step, action)
	if f.Falling && f.Seen && !f.Pulled {
		return fmt.Sprintf("slack off until the weight indicator shows %s", (k.pulledTo(step, action) - unit.Force(max(f.Left, 0))).Rounded(4))
	}
	if !f.Pulled && !f.HasReach {
		return "pull more; or, if nothing holds the string, so that no pull reaches it, set what holds it before this step"
	}
	text := fmt.Sprintf("pull until the weight indicator shows %s", k.sure(step, action).Rounded(4))
	if f.Pulled {
		text += fmt.Sprintf("; it parts from %s on", unit.Force(f.PullLeast).Rounded(4))
	}
	return text
}
