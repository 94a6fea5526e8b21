package sequence

import (
	"cmp"
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Change is one line of a programme that is another than before.
type Change struct {
	Step   string `json:"step"`
	What   string `json:"what"`
	Before string `json:"before"` // empty: it wasn't there
	Now    string `json:"now"`    // empty: it is gone
}

// Changes compares two walks, as after a change of pins, fluid or depth on the
// rig, and returns only what is different, to the digits that a person reads.
func Changes(before, after *Programme) []Change {
	var all []Change
	was := map[string]map[string]string{}
	for i := range before.Steps {
		was[before.Steps[i].Name] = lines(&before.Steps[i]).values
	}
	seen := map[string]bool{}
	for i := range after.Steps {
		s := &after.Steps[i]
		seen[s.Name] = true
		old, existed := was[s.Name]
		if !existed {
			all = append(all, Change{Step: s.Name, What: "step", Now: "new"})
		}
		now := lines(s)
		for _, what := range now.order {
			if x := now.values[what]; old[what] != x {
				all = append(all, Change{s.Name, what, old[what], x})
			}
		}
		if !existed {
			continue
		}
		for _, what := range lines(stepOf(before, s.Name)).order {
			if _, still := now.values[what]; !still {
				all = append(all, Change{Step: s.Name, What: what, Before: old[what]})
			}
		}
	}
	for i := range before.Steps {
		if name := before.Steps[i].Name; !seen[name] {
			all = append(all, Change{Step: name, What: "step", Before: "was there"})
		}
	}
	return all
}

func stepOf(p *Programme, name string) *StepResult {
	for i := range p.Steps {
		if p.Steps[i].Name == name {
			return &p.Steps[i]
		}
	}
	return &StepResult{}
}

// sheet is a step as lines of words, in order.
type sheet struct {
	order  []string
	values map[string]string
}

func (s *sheet) put(what, value string) {
	if _, twice := s.values[what]; !twice {
		s.order = append(s.order, what)
	}
	s.values[what] = value
}

func lines(s *StepResult) sheet {
	x := sheet{values: map[string]string{}}
	x.put("verdict", map[bool]string{true: "ok", false: "fails"}[s.OK])
	for k, r := range s.Points[0].Surface {
		var values []string
		for _, p := range s.Points {
			values = append(values, psi(p.Surface[k].Pressure))
		}
		x.put("surface pressure of "+r.Compartment, strings.Join(values, " → "))
	}
	for _, t := range s.Triggers {
		x.put(t.Action, fmt.Sprintf("%s fire; margin %s", t.Firing, t.Margin.Rounded(digits)))
	}
	for i := range s.Windows {
		w := &s.Windows[i]
		x.put(fmt.Sprintf("window on %s at %s", w.name(), w.Planned.Rounded(digits)), w.Words())
	}
	for _, p := range s.Partings {
		x.put("reading at which “"+p.Action+"”", p.Least.Rounded(digits)+" to "+p.Greatest.Rounded(digits))
	}
	for _, r := range s.Ratings {
		x.put("use of "+r.Name, fmt.Sprintf("%.0f %%", 100*r.Usage))
	}
	if at := s.Points[len(s.Points)-1].String; at != nil {
		x.put("load carried by the packer", at.Packer.Rounded(digits))
		for _, seal := range at.Seals {
			x.put(seal.Name+" since landing", fmt.Sprintf("%.1f in", seal.Travel.In(unit.Inch)))
		}
	}
	for _, t := range s.Tests {
		x.put("test of "+t.Barrier+" from "+t.Side, psi(t.Differential))
	}
	for _, b := range s.Balance {
		x.put("balance of "+b.Compartment+" against "+b.Formation, balanceWords(b.Overbalance))
	}
	for _, v := range s.Volumes {
		x.put("volume into "+v.Compartment+", "+v.What, v.Volume.Rounded(digits))
	}
	for _, l := range s.Levels {
		x.put("level in "+l.Compartment, deep(l.Depth))
	}
	for _, g := range s.Gas {
		x.put("lower end of the gas in "+g.Compartment, deep(g.Depth))
	}
	for _, z := range s.Zones {
		x.put("rate of "+z.Formation, z.Rate.Rounded(digits))
	}
	x.put("unknown", cmp.Or(strings.Join(s.Unknown, ", "), "nothing"))
	return x
}
