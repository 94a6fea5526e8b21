package sequence

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/proof"
)

// Finding is one way in which a plan fails.
type Finding struct {
	Kind    Kind     `json:"kind"`
	Step    string   `json:"step"`
	Device  string   `json:"device"`            // or formation, rating, string
	Says    string   `json:"says"`              // what happens
	Numbers string   `json:"numbers"`           // that show it
	Decided bool     `json:"decided"`           // it was shown by a walk; else it isn't known not to happen
	Witness []Choice `json:"witness,omitempty"` // a choice of values with which it happens
	Assumed string   `json:"assumed"`           // the same in words
	Cure    string   `json:"cure"`
	Until   string   `json:"until,omitempty"`   // the last of the steps through which it stays so
	Follows string   `json:"follows,omitempty"` // the step that it follows from: mend that first
}

// Kind sorts findings.
type Kind string

// The kinds of finding.
const (
	Unintended  Kind = "unintended event"
	Missing     Kind = "intended event missing"
	RatingCross Kind = "rating passed"
	StringLoad  Kind = "string overloaded"
	HoldingOff  Kind = "packer overloaded"
	HangerLift  Kind = "hanger lifted"
	PullOff     Kind = "pull off plan"
	SealTravel  Kind = "seals leave their bore"
	BalanceOff  Kind = "balance off plan"
	TestOff     Kind = "test off plan"
	FlowOff     Kind = "flow off plan"
	Fracture    Kind = "fracture pressure passed"
	ColumnFalls Kind = "column falls"
	BarrierLack Kind = "barriers lacking"
	RateOff     Kind = "rate off plan"
	ByHand      Kind = "act by hand can't be done"
)

// lasts tells whether a kind of finding is a state that goes on, and not
// something that a step does.
func lasts(k Kind) bool {
	return k == SealTravel || k == FlowOff || k == BarrierLack || k == ColumnFalls
}

// digits of a number in a sentence.
const digits = 5

func psi(p unit.Pressure) string { return p.Rounded(digits) }

// item is a limit that is passed: failure is nil where only the nominal walk shows
// it, after the plan was left.
type item struct {
	margin  *judge.Margin
	failure *proof.Failure
}

// findings says what fails: first what the proof found, step by step, and after
// the step in which the plan is left, what the nominal values show from there on.
func (k *checker) findings() {
	var all []item
	seen := map[judge.Key]bool{}
	for i := range k.out.Failures {
		f := &k.out.Failures[i]
		all = append(all, item{f.Margin, f})
		seen[f.Key] = true
	}
	for _, m := range k.nominal.Judge.Passed() {
		if !seen[m.Key] {
			all = append(all, item{m, nil})
		}
	}
	inOrder(all, func(a, b item) int {
		return cmp.Or(cmp.Compare(a.margin.Step, b.margin.Step), compare(a.failure == nil, b.failure == nil),
			cmp.Compare(a.margin.Kind, b.margin.Kind), cmp.Compare(k.nameOf(a.margin), k.nameOf(b.margin)))
	})
	// The step in which the plan is left in all values, and the first in which it may be.
	left, broken := "", ""
	said, last := map[string]int{}, map[string]int{}
	for _, x := range all {
		step := k.plan.Steps[x.margin.Step].Name
		f := k.finding(x)
		k.programme.Steps[x.margin.Step].OK = false
		if x.failure == nil {
			f.Follows = cmp.Or(left, broken, step)
		}
		if k.again(&f, said, last, x.margin.Step) {
			continue
		}
		key := string(f.Kind) + "|" + f.Device
		said[key], last[key] = len(k.programme.Findings), x.margin.Step
		k.programme.Findings = append(k.programme.Findings, f)
		if x.margin.Kind.Leaves() {
			broken = cmp.Or(broken, step)
			if k.out.Died == x.margin.Step {
				left = cmp.Or(left, step)
			}
		}
	}
	if k.out.Died >= 0 {
		for i := k.out.Died + 1; i < len(k.programme.Steps); i++ {
			k.programme.Steps[i].Follows = k.plan.Steps[k.out.Died].Name
		}
	}
}

func compare(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

// again tells whether a finding has been told: as another of its step, as a state
// that goes on, or as what an action does later that has failed before.
func (k *checker) again(f *Finding, said, last map[string]int, step int) bool {
	key := string(f.Kind) + "|" + f.Device
	n, ok := said[key]
	if !ok {
		for _, kind := range [2]Kind{Unintended, Missing} {
			if m, known := said[string(kind)+"|"+f.Device]; known && f.Follows != "" && (f.Kind == Unintended || f.Kind == Missing) {
				return k.programme.Findings[m].Follows == ""
			}
		}
		return false
	}
	was := &k.programme.Findings[n]
	switch {
	case was.Step == f.Step:
		return true
	case lasts(f.Kind) && last[key] >= step-1:
		was.Until = f.Step
		last[key] = step
		return true
	}
	return f.Follows != "" && (f.Kind == Unintended || f.Kind == Missing)
}

// nameOf is what a limit is of, so that findings stand in an order that the order
// of the file's lists doesn't matter for.
func (k *checker) nameOf(m *judge.Margin) string {
	switch m.Kind {
	case judge.Event, judge.Omission:
		return k.Network.Actions[m.Index].Name
	case judge.ByHand:
		_, names := k.plan.Steps[m.Step].Do[m.Index].verbs()
		return names[0]
	case judge.Inside, judge.Outside:
		return k.plan.Ratings[m.Index].Name
	case judge.Fracture, judge.Barriers, judge.RateLow, judge.RateHigh:
		return k.plan.Formations[m.Index].Name
	case judge.Inflow, judge.Loss, judge.Circulation, judge.Vacuum:
		return k.plan.Compartments[m.Index].Name
	}
	return fmt.Sprintf("%03d", m.Index)
}

// finding puts a limit that is passed into words.
func (k *checker) finding(x item) Finding {
	m := x.margin
	f := Finding{Step: k.plan.Steps[m.Step].Name, Decided: true}
	shown := m
	sure := k.out.Died == m.Step // no choice of values does what is intended
	switch {
	case x.failure == nil:
		f.Assumed = "every value nominal"
		sure = true
	case x.failure.Witness == nil:
		f.Decided = false
		f.Assumed = "not decided: no choice of values was found that shows it, and none of them is known to exclude it"
	default:
		shown = x.failure.Shown
		f.Witness = k.choices(x.failure.Witness)
		f.Assumed = k.assumed(f.Witness)
		sure = sure && slices.Equal(x.failure.Witness, k.Nominal())
	}
	f.Assumed += k.cases(shown)
	k.words(&f, m, shown, sure)
	f.Cure = cmp.Or(f.Cure, k.windowCure(m), "look at the order of the steps: another step has to come before or after this one")
	return f
}

// cases says in which of the cases that are walked beside each other a limit is passed:
// with what stuck, and what of that which may have happened before.
func (k *checker) cases(m *judge.Margin) string {
	text := ""
	for _, i := range m.Stuck {
		text += fmt.Sprintf("; “%s” stuck", k.Network.Actions[i].Name)
	}
	if k.Begin != nil {
		for n, i := range k.Begin.May {
			not := ""
			if m.Begun&(1<<n) == 0 {
				not = "not "
			}
			text += fmt.Sprintf("; “%s” %shappened before", k.Network.Actions[i].Name, not)
		}
	}
	return text
}

// choices are the values of all inputs at a choice.
func (k *checker) choices(e []float64) []Choice {
	var all []Choice
	for n, s := range k.Network.Symbols {
		x := s.Middle + s.Half*e[n]
		all = append(all, Choice{Path: s.Path, Name: s.Name, Value: k.symbols[n].text(x), Exact: k.symbols[n].exact(x), si: x})
	}
	return all
}

// assumed names the values that aren't nominal.
func (k *checker) assumed(all []Choice) string {
	var parts []string
	for n, c := range all {
		s := k.Network.Symbols[n]
		if d := c.si - (s.Middle + s.Half*s.Nominal); d > 1e-9*s.Half || d < -1e-9*s.Half {
			parts = append(parts, c.Name+" "+c.Value)
		}
	}
	if len(parts) == 0 {
		return "every value nominal"
	}
	if len(parts) > 8 {
		parts = append(parts[:8], fmt.Sprintf("and %d more", len(parts)-8))
	}
	return strings.Join(parts, ", ")
}

// atSurface writes the surface pressures of a moment, those that are zero left
// out.
func (k *checker) atSurface(m *judge.Margin) string {
	var parts []string
	for i, p := range k.plan.Compartments {
		if p.Surface && i < len(m.Applied) {
			if x := nothing(unit.Pressure(m.Applied[i].C)); x != 0 {
				parts = append(parts, fmt.Sprintf("%s on %q", psi(x), p.Name))
			}
		}
	}
	slices.Sort(parts)
	return cmp.Or(strings.Join(parts, ", "), "no pressure")
}

// bandWords writes the bands of an action's row.
func (k *checker) bandWords(action int) string {
	a := &k.Network.Actions[action]
	var parts []string
	for n, t := range a.Row {
		s := k.threshold(action, n).Rounded(digits)
		way := "rising"
		if t.Falling {
			way = "falling"
		}
		if t.Count > 1 {
			s += fmt.Sprintf(" %s, %d times", way, t.Count)
		} else {
			s += " " + way
		}
		parts = append(parts, s)
	}
	return strings.Join(parts, ", then ")
}
