package sequence

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
)

// Otherwise is what is done where an action that a step expects isn't seen, because
// the device doesn't move, whatever it feels. Every branch is walked and judged, with
// the device as it then is: it stays stuck until a tool or a turn moves it, or a later
// step expects it. An action that its own bands leave in doubt is a finding, as without
// a branch.
type Otherwise struct {
	Not   []string `json:"not,omitempty"` // actions that the step expects and that may not be seen: each by itself, and all of them; all that it expects where left out
	Steps []Step   `json:"steps,omitempty"`
	Then  string   `json:"then,omitzero"` // the step of the plan to go on with; the next where left out, "end" for none
}

// theEnd is where a branch goes that doesn't go on.
const theEnd = "end"

// flow says where a step of the list of all steps leads.
type course struct {
	path  string   // in the file
	not   []string // actions that may not be seen
	next  int      // step after it
	fail  int      // first step of its branch, or -1
	of    int      // of a branch: the step that it is of, or -1
	then  string
	first bool // of its branch
}

// branches checks what can only be seen before the branches stand in one list.
func (p *Plan) branches() error {
	var faults []error
	add := func(path, format string, args ...any) { faults = append(faults, fault.New(path, format, args...)) }
	for i, s := range p.Steps {
		o := s.Otherwise
		if o == nil || s.flow != nil {
			continue
		}
		path := fmt.Sprintf("steps[%d].otherwise", i)
		if len(s.Expect) == 0 {
			add(path, "belongs to a step that expects something")
		}
		for k, name := range o.Not {
			if !slices.Contains(s.Expect, name) {
				add(fmt.Sprintf("%s.not[%d]", path, k), "%q is not among what the step expects: %q", name, s.Expect)
			}
		}
		if len(o.Steps) == 0 {
			add(path+".steps", "is empty; it says what is done")
		}
		for k, x := range o.Steps {
			if x.Otherwise != nil {
				add(fmt.Sprintf("%s.steps[%d].otherwise", path, k), "a branch has no branches of its own")
			}
		}
		later := slices.ContainsFunc(p.Steps[i+1:], func(x Step) bool { return x.Name == o.Then })
		if o.Then != "" && o.Then != theEnd && !later {
			add(path+".then", "no later step %q", o.Then)
		}
	}
	return fault.Join("", faults...)
}

// flat is the list of all steps: each with its branch behind it.
func (p *Plan) flat() []Step {
	if !slices.ContainsFunc(p.Steps, func(s Step) bool { return s.Otherwise != nil }) {
		return p.Steps
	}
	var all []Step
	for i, s := range p.Steps {
		o := s.Otherwise
		s.Otherwise = nil
		f := &course{path: fmt.Sprintf("steps[%d]", i), fail: -1, of: -1, next: len(all) + 1}
		s.flow = f
		at := len(all)
		all = append(all, s)
		if o == nil {
			continue
		}
		f.not, f.fail, f.next, f.then = o.Not, at+1, at+1+len(o.Steps), o.Then
		if len(f.not) == 0 {
			f.not = slices.Compact(slices.Sorted(slices.Values(s.Expect)))
		}
		for k, x := range o.Steps {
			x.flow = &course{path: fmt.Sprintf("steps[%d].otherwise.steps[%d]", i, k), fail: -1, of: at, next: len(all) + 1, first: k == 0}
			all = append(all, x)
		}
	}
	for i := range all { // now that it is known where they stand
		f := all[i].flow
		if f.fail < 0 || f.then == "" {
			continue
		}
		last := all[f.next-1].flow
		last.next = len(all)
		if f.then != theEnd {
			last.next = slices.IndexFunc(all, func(s Step) bool { return s.Name == f.then && s.flow.of < 0 })
		}
	}
	return all
}

// path of a step in the file.
func (p *Plan) stepPath(i int) string {
	if f := p.Steps[i].flow; f != nil {
		return f.path
	}
	return fmt.Sprintf("steps[%d]", i)
}

// flows puts the order of the steps together.
func (c *compiler) flows() {
	if len(c.plan.Steps) == 0 || c.plan.Steps[0].flow == nil {
		return
	}
	for i, s := range c.plan.Steps {
		c.Flow = append(c.Flow, proof.Flow{Next: s.flow.next, Fail: s.flow.fail})
		for _, name := range s.flow.not {
			c.Steps[i].Not = append(c.Steps[i].Not, c.by.action[name])
		}
	}
}

// Branch is what a step's branch is for, and what tells the cases apart.
type Branch struct {
	Not   []string `json:"not"`   // actions that may not be seen
	First string   `json:"first"` // step with which the branch begins
	Then  string   `json:"then"`  // step with which the plan goes on; empty: it ends
	Tells []Tell   `json:"tells"` // at surface, with the nominal values; none: nothing does
}

// Tell is a reading at surface that differs between the case in which an action is
// seen and that in which its device is stuck.
type Tell struct {
	Not   string `json:"not"`
	Point string `json:"point"` // of the step
	What  string `json:"what"`
	Seen  string `json:"seen"`  // where it is seen
	Stuck string `json:"stuck"` // where it isn't
}

// branch writes what tells the cases of a step apart.
func (k *checker) branch(i int, r *StepResult) {
	f := k.plan.Steps[i].flow
	if f == nil {
		return
	}
	if f.of >= 0 {
		r.BranchOf = k.plan.Steps[f.of].Name
	}
	if f.fail < 0 {
		return
	}
	b := &Branch{Not: f.not, First: k.plan.Steps[f.fail].Name}
	if last := k.plan.Steps[f.next-1].flow; last.next < len(k.plan.Steps) {
		b.Then = k.plan.Steps[last.next].Name
	}
	for _, name := range f.not {
		b.Tells = append(b.Tells, k.tells(i, name)...)
	}
	r.Otherwise = b
}

// flowWords says what flows.
func flowWords(all []FlowAt) string {
	var parts []string
	for _, f := range all {
		parts = append(parts, fmt.Sprintf("%s from %s to %s", f.Kind, f.From, f.To))
	}
	slices.Sort(parts)
	return cmp.Or(strings.Join(parts, ", "), "none")
}

// tells compares a step in which an action happens with the same in which it alone is
// stuck.
func (k *checker) tells(i int, name string) []Tell {
	var all []Tell
	a := k.by.action[name]
	stuck := k.stuck[i][a]
	for n := range stuck {
		if n >= len(k.standstills[i]) {
			break
		}
		s, t := k.standstills[i][n].world, stuck[n].world
		label := stuck[n].label
		if stuck[n].place.Drive < 0 {
			label = "start"
		}
		add := func(what string, seen, is float64, least float64, text func(float64) string) {
			if math.Abs(seen-is) >= least {
				all = append(all, Tell{name, label, what, text(seen), text(is)})
			}
		}
		for c, p := range k.plan.Compartments {
			if !p.Surface {
				continue
			}
			reading := func(w *walk.World) float64 {
				if w.State.Surface[c] {
					return w.State.Applied[c].F.C
				}
				return w.State.Top[c].F.C
			}
			add("pressure of "+p.Name, reading(s), reading(t), float64(unit.PSI), func(x float64) string { return unit.Pressure(x).Rounded(digits) })
		}
		if a, b := flowWords(k.flows(s.State)), flowWords(k.flows(t.State)); a != b {
			all = append(all, Tell{name, label, "flow", a, b})
		}
		if n == 0 || n > len(k.plan.Steps[i].Ramps) {
			continue
		}
		ramp := k.plan.Steps[i].Ramps[n-1]
		volumes := func(all []standstill) map[string]float64 {
			v := map[string]float64{}
			for _, x := range k.rampVolumes(all[n-1].world.State, all[n].world.State, ramp) {
				v[x.Compartment] = float64(x.Volume)
			}
			return v
		}
		seen, is := volumes(k.standstills[i]), volumes(stuck)
		for _, c := range sortedKeys(ramp) {
			what, sign := "volume into "+c, 1.0
			if seen[c] <= 0 && is[c] <= 0 {
				what, sign = "volume back out of "+c, -1
			}
			add(what, seen[c], is[c], float64(0.001*unit.Gallon)+tankShows*max(math.Abs(seen[c]), math.Abs(is[c])), func(x float64) string { return unit.Volume(sign * x).Rounded(3) })
		}
	}
	inOrder(all, func(a, b Tell) int { return cmp.Compare(a.Not, b.Not) })
	return all
}

// tankShows is by which share of it two volumes must differ for a tank to show it: common
// practice, without a source.
const tankShows = 0.05
