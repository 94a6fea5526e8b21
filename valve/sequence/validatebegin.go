package sequence

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/sequence/internal/well"
)

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// begin checks the parts of a stated beginning.
func (v *validation) begin() {
	b := v.plan.Begin
	if b == nil {
		return
	}
	v.temperature("begin.temperature", b.Temperature)
	for _, l := range []struct {
		key  string
		list []string
	}{{"happened", b.Happened}, {"may_have_happened", b.May}} {
		for k, name := range l.list {
			at := fmt.Sprintf("begin.%s[%d]", l.key, k)
			v.actionExists(at, name)
			if slices.Contains(l.list[:k], name) {
				v.fault(at, "%q stands twice; its last time alone counts", name)
			}
		}
	}
	if len(b.May) > mostMay {
		v.fault(`begin.may_have_happened`, "holds %d actions; no more than %d can be proved in all cases", len(b.May), mostMay)
	}
	for _, name := range sortedKeys(b.Progress) {
		v.progress("begin.progress."+name, name, b.Progress[name])
	}
	for _, l := range []struct {
		key  string
		list []string
	}{{"open", b.Open}, {"shut", b.Shut}} {
		for k, name := range l.list {
			at := fmt.Sprintf("begin.%s[%d]", l.key, k)
			known(v, at, "port", name, v.plan.Ports, portName)
			if l.key == "shut" && slices.Contains(b.Open, name) {
				v.fault(at, "%q is open, too", name)
			}
		}
	}
	for k, name := range b.ShutIn {
		v.surface(fmt.Sprintf(`begin.shut_in[%d]`, k), name)
	}
	for _, name := range sortedKeys(b.Applied) {
		p := b.Applied[name]
		v.surface("begin.applied."+name, name)
		v.chamber("begin.applied."+name, p)
		v.notNegative("begin.applied."+name, p, float64(p))
		if slices.Contains(b.ShutIn, name) && p != 0 {
			v.fault("begin.applied."+name, "is %v, but the compartment is shut in: state its pressure as trapped", p)
		}
	}
	for _, name := range sortedKeys(b.Standing) {
		at := "begin.standing." + name
		v.surface(at, name)
		if _, twice := b.Applied[name]; twice || slices.Contains(b.ShutIn, name) {
			v.fault(at, "stands beside applied or shut_in; one of them")
		}
	}
	b.stated(func(path, _ string, s *Stated) { v.stated(strings.TrimSuffix(path, ".pressure"), s) })
	for _, name := range sortedKeys(b.Trapped) {
		v.compartment("begin.trapped."+name, name)
	}
	v.columns("begin.layers", b.Layers)
	v.levels("begin.levels", b.Levels, b.Layers)
	for _, name := range sortedKeys(b.Levels) {
		if v.plan.gasOnTop(name, b.Layers) {
			continue
		}
		at := "begin.levels." + name
		v.surface(at, name)
		if slices.Contains(b.ShutIn, name) || b.Applied[name] != 0 || b.Standing[name] != nil {
			v.fault(at, "has fallen, so that the compartment is open to the air: it isn't shut in, and nothing is applied")
		}
	}
	for k, name := range b.Flowed {
		known(v, fmt.Sprintf("begin.flowed[%d]", k), "formation", name, v.plan.Formations, formationName)
	}
	for k := range b.String {
		v.moment2(fmt.Sprintf("begin.string[%d]", k), k, &b.String[k])
	}
}

func (v *validation) temperature(path, name string) {
	if _, ok := v.plan.Well.Temperatures[name]; name != "" && !ok {
		v.fault(path, "no temperature %q in well.temperatures", name)
	}
}

func (v *validation) progress(path, name string, all []RowAt) {
	v.actionExists(path, name)
	a := v.plan.action(name)
	if a == nil {
		return
	}
	if len(a.All) > 1 || len(a.Any) > 1 {
		v.fault(path, "has several conditions: how far they have come can't be stated")
		return
	}
	row := a.triggers(0)
	if len(all) == 0 {
		v.fault(path, "is empty; leave it out where the row is at its beginning")
	}
	for k, r := range all {
		at := fmt.Sprintf("%s[%d]", path, k)
		if r.Met < 0 || r.Met >= len(row) {
			v.fault(at+".met", "is %d; must be from 0 to below the %d triggers of the row", r.Met, len(row))
			continue
		}
		if most := max(row[r.Met].Count, 1); r.Counted < 0 || r.Counted >= most {
			v.fault(at+".counted", "is %d; must be from 0 to below the %d times that the trigger wants", r.Counted, most)
		}
		if r.Rearms && r.Counted == 0 {
			v.fault(at+".rearms", "is true, but nothing has been counted")
		}
		v.span(at+".stood", r.Stood)
		v.span(at+".stood_at_most", r.StoodMost)
		switch {
		case r.Stood == "" && r.StoodMost == "":
		case a.Delay == "":
			v.fault(at+".stood", "belongs to an action with a delay")
		case r.StoodMost != "" && duration(r.StoodMost) < duration(r.Stood):
			v.fault(at+".stood_at_most", "is %q; must be no less than stood, %q", r.StoodMost, r.Stood)
		case len(all) > 1:
			v.fault(at+".stood", "wants one entry: from stood to stood_at_most is all that it may be")
		}
	}
}

// action finds an action by "device: action"; nil: there is none.
func (p *Plan) action(full string) *Action {
	device, action, _ := strings.Cut(full, ": ")
	for i := range p.Devices {
		for k := range p.Devices[i].Actions {
			if p.Devices[i].Name == device && p.Devices[i].Actions[k].Name == action {
				return &p.Devices[i].Actions[k]
			}
		}
	}
	return nil
}

func (v *validation) stated(path string, s *Stated) {
	if s == nil {
		v.fault(path, "is null; write its pressure")
		return
	}
	v.faultIf(path+".pressure", s.Pressure.Validate())
	v.chamber(path+".pressure", s.Pressure.Least)
	v.chamber(path+".pressure", s.Pressure.Greatest)
	v.leans(path, s.leans())
}

// columns checks what stands in compartments.
func (v *validation) columns(path string, all map[string][]Layer) {
	for _, name := range sortedKeys(all) {
		if !v.compartment(path+"."+name, name) {
			continue
		}
		c := *v.plan.compartment(name)
		c.Fluid, c.Layers = "", all[name]
		v.layers(path+"."+name, c)
	}
}

func (p *Plan) compartment(name string) *Compartment {
	for i := range p.Compartments {
		if p.Compartments[i].Name == name {
			return &p.Compartments[i]
		}
	}
	return nil
}

func (v *validation) moment2(path string, k int, m *StringMoment) {
	if v.plan.String == nil {
		v.fault(path, "needs the plan's string")
		return
	}
	v.temperature(path+".temperature", m.Temperature)
	if m.Does != lands {
		v.actionExists(path+".does", m.Does)
	}
	v.which(path+".on", m.On)
	if (m.Does == lands) != (k == 0) && !(m.Does == lands && m.On == OnString && v.plan.OuterString != nil) {
		v.fault(path+".does", "is %q; the string lands first, and once: then come the actions that held or released it", m.Does)
	}
	v.columns(path+".layers", m.Layers)
	then := map[string][]Layer{}
	maps.Copy(then, v.plan.Begin.Layers)
	maps.Copy(then, m.Layers)
	v.levels(path+".levels", m.Levels, then)
	for _, name := range sortedKeys(m.Pressures) {
		v.compartment(path+".pressures."+name, name)
	}
	for _, name := range v.plan.sensedByString() {
		if _, ok := m.Pressures[name]; !ok {
			v.fault(path+".pressures", "compartment %q is missing: the string feels it", name)
		}
	}
}

// sensedByString are the compartments that the string feels.
func (p *Plan) sensedByString() []string {
	var all []string
	for _, x := range p.strings() {
		all = append(all, append([]string{x.Inside, x.Below}, x.Around...)...)
	}
	if h := p.Holding; h != nil {
		all = append(all, h.Below, h.Above)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// unstated finds bodies that nothing fixes at the beginning, and whose pressure isn't
// stated just once.
func (c *compiled) unstated(stated func(i int) bool, path string) error {
	s := c.Network.Start()
	if b := c.plan.Begin; b != nil {
		for _, name := range b.ShutIn {
			s.Surface[c.by.compartment[name]] = false
		}
	}
	var faults []error
	seen := make([]bool, len(s.Compartments))
	for i := range s.Compartments {
		if seen[i] {
			continue
		}
		fixed, given, names := false, []string{}, []string{}
		first := i
		for _, m := range s.Body(i) {
			seen[m] = true
			fixed = fixed || s.Surface[m] || s.Compartments[m].Formation >= 0
			if stated(m) {
				given = append(given, s.Compartments[m].Name)
			}
			if s.Compartments[m].Name < s.Compartments[first].Name {
				first = m
			}
			names = append(names, s.Compartments[m].Name)
		}
		slices.Sort(names)
		switch {
		case fixed || len(given) == 1:
		case len(given) == 0:
			k := c.plan.Compartments[first]
			faults = append(faults, fault.New(path, "%s: nothing fixes the pressure, and it isn't stated; as much as a column of %s from surface has is %s at the top of %q",
				strings.Join(names, ", "), c.topFluid(first), c.hydrostatic(first), k.Name))
		case c.plan.Begin != nil:
			slices.Sort(given)
			faults = append(faults, fault.New(path, "%s are joined: state the pressure of one of them", strings.Join(given, ", ")))
		}
	}
	return fault.Join("", faults...)
}

func (c *compiled) topFluid(i int) string {
	return c.plan.Fluids[c.Network.Compartments[i].Layers[0].Fluid].Name
}

// hydrostatic is the pressure that a column from surface of what stands at the top of
// a compartment has there.
func (c *compiled) hydrostatic(i int) string {
	k := &c.Network.Compartments[i]
	f := &c.Network.Fluids[k.Layers[0].Fluid]
	d := k.Depths[0].TVD
	if f.Columns == nil {
		return unit.Pressure(f.Density.C * well.Gravity * d).Rounded(digits)
	}
	p, err := f.Columns[0].Carry(0, 0, unit.Length(d))
	if err != nil {
		return "not known"
	}
	return (p * unit.Pressure(f.Scale.C)).Rounded(digits)
}
