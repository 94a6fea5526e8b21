package sequence

import (
	"fmt"
	"slices"

	"completion.example/valve/sequence/internal/stringload"
)

// unchecked lists what a plan says too little of to be checked: silence isn't
// consent.
func (k *checker) unchecked() []string {
	p := k.plan
	all := []string{}
	add := func(format string, args ...any) { all = append(all, fmt.Sprintf(format, args...)) }
	rated := map[string]bool{}
	for _, r := range p.Ratings {
		rated[r.Inside], rated[r.Outside] = true, true
	}
	if p.String != nil {
		for _, x := range p.strings() {
			rated[x.Inside] = true // the limits of the string's own pipe do
		}
	}
	for _, c := range p.Compartments {
		if !rated[c.Name] && c.Formation == "" {
			add("compartment %q: no rating bounds its pressure", c.Name)
		}
	}
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			for _, c := range a.conditions() {
				if c.Areas != nil && c.Areas.Friction.Exact() && c.Areas.Spring.Exact() {
					add("%s: %s: spring and friction without tolerance are taken as exact", d.Name, a.Name)
				}
				if c.Areas != nil {
					continue
				}
				for _, t := range c.Triggers {
					if t.Pins != nil && t.Pins.Tolerance == 0 || t.Pins == nil && t.Threshold.Exact() && t.Tension.Exact() {
						add("%s: %s: a threshold without tolerance is taken as exact", d.Name, a.Name)
						break
					}
				}
			}
		}
	}
	for _, f := range p.Formations {
		if f.Fracture.Nominal == 0 {
			add("formation %q: no fracture pressure", f.Name)
		}
		if f.Pressure.Exact() {
			add("formation %q: its pressure has no tolerance", f.Name)
		}
	}
	for _, f := range p.Fluids {
		if f.Density.Exact() && f.Kind != FreshWater && !f.Kind.Gas() {
			add("fluid %q: its density has no tolerance", f.Name)
		}
	}
	for _, s := range p.Steps {
		for n := range s.Do {
			if a := &s.Do[n]; a.notJudged() {
				add("step %q: %s: nothing says what may stand across it", s.Name, a)
			}
		}
	}
	for _, c := range k.unwalled() {
		add(`compartment %q: heat doesn't change its trapped pressure, as the walls of its bores aren't given; "walls": true in an assembly takes them from the tally`, c)
	}
	told := map[string]bool{}
	for i := range p.Steps {
		for _, x := range k.pockets(i) {
			if !told[x] {
				add("after step %q: %s", p.Steps[i].Name, x)
				told[x] = true
			}
		}
	}
	for i := range p.Steps {
		for _, x := range k.keptFull(i) {
			add("step %q: %s", p.Steps[i].Name, x)
		}
	}
	if p.Rules.Gauge.Exact() {
		add("gauges are taken as exact")
	}
	if p.Rules.Barriers == 0 && len(p.Barriers) > 0 {
		add("barriers aren't counted: rules.barriers is not given")
	}
	if s := p.String; s != nil {
		if s.Rig == 0 {
			add("the rig's rating isn't given")
		}
		for _, x := range p.strings() {
			x.unchecked(k.plan, add)
			if k.String != nil {
				for _, y := range k.room(x.of).Up.NotChecked() {
					add("%s: %s", x.title, y)
				}
			}
			if x.of != stringload.Main && x.Rig == 0 {
				add("%s: the rig's rating isn't given", x.title)
			}
		}
		if p.Holding == nil {
			add("the packer has no holding envelope")
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}
