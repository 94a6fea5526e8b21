package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// begin puts a stated beginning together. What is certain of it becomes the start of
// the network.
func (c *compiler) begin() {
	b := c.plan.Begin
	if b == nil {
		return
	}
	n := c.Network
	x := &walk.Begin{Temperature: max(slices.Index(c.names, b.Temperature), 0), Applied: map[int]affine.Form{}, Stated: make([]bool, len(n.Compartments)),
		Rows: map[int][]walk.Progress{}, Stood: map[int]affine.Form{}}
	x.Fallen, x.Levels = map[int]affine.Form{}, map[int]affine.Form{}
	start := n.Start()
	for _, name := range b.Happened {
		i := c.by.action[name]
		x.Happened = append(x.Happened, i)
		n.Happens(i, start.Open, start.Armed)
	}
	for p, open := range start.Open {
		n.Ports[p].Open = open
	}
	for i, armed := range start.Armed {
		n.Actions[i].Disarmed = !armed
	}
	for _, name := range b.May {
		i := c.by.action[name]
		x.May = append(x.May, i)
		n.Actions[i].Watched = true // it isn't a matter of its own row alone
	}
	for _, name := range b.Open {
		n.Ports[c.by.port[name]].Open = true
	}
	for _, name := range b.Shut {
		n.Ports[c.by.port[name]].Open = false
	}
	for name, rows := range b.Progress {
		for k, r := range rows {
			p := walk.Progress{Links: r.Met, Count: r.Counted, Out: r.Rearms}
			for i, s := range r.If {
				p.Rows = append(p.Rows, c.stated(fmt.Sprintf("begin.progress.%s[%d].if[%d].pressure", name, k, i), s))
			}
			if r.Stood+r.StoodMost != "" {
				least := duration(r.Stood)
				x.Stood[c.by.action[name]] = affine.Within(least.Seconds(), max(least, duration(r.StoodMost)).Seconds())
			}
			x.Rows[c.by.action[name]] = append(x.Rows[c.by.action[name]], p)
		}
	}
	for i, s := range b.If {
		x.If = append(x.If, c.stated(fmt.Sprintf("begin.if[%d].pressure", i), s))
	}
	for _, name := range b.ShutIn {
		x.ShutIn = append(x.ShutIn, c.by.compartment[name])
	}
	for name, p := range b.Applied {
		x.Applied[c.by.compartment[name]] = c.applied(p)
	}
	for name, s := range b.Standing {
		x.Applied[c.by.compartment[name]] = c.stated("begin.standing."+name+".pressure", s)
	}
	for _, name := range b.Flowed {
		x.Live = append(x.Live, c.by.formation[name])
	}
	for i, k := range c.plan.Compartments {
		s, given := b.Trapped[k.Name]
		x.Stated[i] = given || k.Trapped.Greatest != 0
		if given {
			n.Compartments[i].Trapped = c.stated("begin.trapped."+k.Name+".pressure", s)
		}
		if layers, ok := b.Layers[k.Name]; ok {
			n.Compartments[i].Layers = c.column(layers)
			c.highPoint(i)
		}
	}
	c.levels("begin.levels", b.Levels, func(i int) []well.Layer { return n.Compartments[i].Layers }, x.Fallen, x.Levels)
	for k := range b.String {
		x.String = append(x.String, c.moment(k, &b.String[k]))
	}
	c.Begin = x
}

func (c *compiler) column(layers []Layer) []well.Layer {
	var all []well.Layer
	for _, l := range layers {
		all = append(all, well.Layer{Fluid: c.fluid(l.Fluid), Bottom: c.depth(l.ToMD)})
	}
	return all
}

func (c *compiler) moment(n int, m *StringMoment) walk.Moment {
	x := walk.Moment{Action: -1, On: c.plan.own(m.On).of, Temperature: max(slices.Index(c.names, m.Temperature), 0), Top: map[int]affine.Form{}, Layers: map[int][]well.Layer{},
		Fallen: map[int]affine.Form{}, Levels: map[int]affine.Form{}}
	if m.Does != lands {
		x.Action = c.by.action[m.Does]
	}
	for name, s := range m.Pressures {
		i := c.by.compartment[name]
		x.Top[i] = c.stated(fmt.Sprintf("begin.string[%d].pressures.%s.pressure", n, name), s)
		x.Layers[i] = c.Network.Compartments[i].Layers
		if layers, ok := m.Layers[name]; ok {
			x.Layers[i] = c.column(layers)
		}
	}
	c.levels(fmt.Sprintf("begin.string[%d].levels", n), m.Levels, func(i int) []well.Layer { return x.Layers[i] }, x.Fallen, x.Levels)
	if m.Reading != 0 {
		f := affine.Const(float64(m.Reading))
		x.Pull = &f
	}
	return x
}

// levels are the depths at which gas ends or down to which columns have fallen, and the
// pressures that the tops of the others would have.
func (c *compiler) levels(path string, all map[string]*StatedDepth, layers func(i int) []well.Layer, fallen, levels map[int]affine.Form) {
	for _, name := range sortedKeys(all) {
		i := c.by.compartment[name]
		k := &c.Network.Compartments[i]
		first := layers(i)[0]
		f := &c.Network.Fluids[first.Fluid]
		level := c.leaning(path+"."+name+".depth", all[name].leans())
		if f.Gas() {
			levels[i] = level
			continue
		}
		constant := !slices.ContainsFunc(layers(i), func(l well.Layer) bool { x := &c.Network.Fluids[l.Fluid]; return x.Columns != nil || x.Gas() })
		lacks := all[name].Lacks
		full := f.Density.Least() * well.Gravity * (first.Bottom.TVD - k.Depths[0].TVD)
		if !constant || lacks == nil && level.Greatest() > first.Bottom.MD || lacks != nil && float64(lacks.Pressure.Greatest) > full {
			c.check(path+"."+name, fmt.Errorf("a column that has fallen wants fluids of constant density, and one from its top down past its level"))
			continue
		}
		if lacks != nil {
			fallen[i] = c.stated(path+"."+name+".lacks.pressure", lacks).Times(-1)
			continue
		}
		levels[i] = level
	}
}

// stated is a pressure with what it moves with.
func (c *compiler) stated(path string, s *Stated) affine.Form { return c.leaning(path, s.leans()) }

func (c *compiler) leaning(path string, all []lean) affine.Form {
	f := c.forms[path]
	for _, l := range all {
		value := c.forms[l.quantity]
		for _, u := range uncertainties(c.plan) {
			if u.path != l.quantity {
				continue
			}
			from, e1 := c.plan.size(u, l.from)
			to, e2 := c.plan.size(u, l.to)
			c.check(path, e1)
			c.check(path, e2)
			f = f.PlusTimes(value.Shift(-from), l.change/(to-from))
		}
	}
	return f
}

// depths are the depths that a beginning names, of layers.
func (b *Begin) depths() []unit.Length {
	var all []unit.Length
	if b == nil {
		return nil
	}
	add := func(columns map[string][]Layer) {
		for _, name := range sortedKeys(columns) {
			for _, l := range columns[name] {
				all = append(all, l.ToMD)
			}
		}
	}
	add(b.Layers)
	for i := range b.String {
		add(b.String[i].Layers)
	}
	return all
}
