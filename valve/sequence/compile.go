package sequence

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/catalogue"
	"completion.example/valve"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// compiled is a plan put together: names are indices, bands are symbols.
type compiled struct {
	proof.Problem
	plan    *Plan
	by      struct{ compartment, port, action, formation, device map[string]int }
	path    *hydrostatics.Path
	symbols []uncertain // of the network's symbols: those of the plan, then the shares
	names   []string    // of temperatures
	gauge   affine.Form // error of the gauges
}

// compile puts a sound plan together.
func compile(p *Plan, pipes catalogue.Catalogue) (*compiled, error) {
	c := &compiler{compiled: &compiled{plan: p}, pipes: pipes, forms: map[string]affine.Form{}}
	c.Network = &well.Network{Devices: len(p.Devices)}
	c.well()
	if c.err() != nil {
		return nil, c.err()
	}
	c.uncertain()
	c.fluids()
	c.names2indices()
	c.formations()
	c.compartments()
	c.ports()
	c.actions()
	c.shares()
	c.Network.Prepare()
	c.limits()
	c.steps()
	c.string()
	return c.compiled, c.err()
}

type compiler struct {
	*compiled
	pipes  catalogue.Catalogue
	forms  map[string]affine.Form // by path
	wanted [][]well.Depth         // by compartment: the depths that are asked for
	faults []error
	bottom float64
}

func (c *compiler) err() error { return errors.Join(c.faults...) }

func (c *compiler) check(path string, err error) {
	if err != nil {
		c.faults = append(c.faults, fault.At(path, err))
	}
}

func (c *compiler) well() {
	w := c.plan.Well
	var err error
	if len(w.Path) == 0 {
		c.path, err = hydrostatics.Vertical(w.Depth)
	} else {
		stations := make([]hydrostatics.Station, len(w.Path))
		for i, s := range w.Path {
			stations[i] = hydrostatics.Station(s)
		}
		c.path, err = hydrostatics.NewPath(stations)
	}
	c.check("well.path", err)
	for _, name := range slices.Sorted(maps.Keys(w.Temperatures)) {
		points := w.Temperatures[name]
		at := make([]hydrostatics.TemperaturePoint, len(points))
		for i, m := range points {
			at[i] = hydrostatics.TemperaturePoint(m)
		}
		profile, err := hydrostatics.NewTemperatureProfile(at)
		c.check("well.temperatures."+name, err)
		if name == Undisturbed { // the first
			c.Network.Temperatures = slices.Insert(c.Network.Temperatures, 0, profile)
			c.names = slices.Insert(c.names, 0, name)
		} else {
			c.Network.Temperatures = append(c.Network.Temperatures, profile)
			c.names = append(c.names, name)
		}
	}
	if c.path != nil {
		for _, p := range c.path.Positions() {
			c.bottom = max(c.bottom, float64(p.TVD))
		}
	}
}

// uncertain gives every band a symbol.
func (c *compiler) uncertain() {
	for _, u := range uncertainties(c.plan) {
		half := u.greatest/2 - u.least/2
		middle := u.least + half
		f := affine.Const(u.nominal)
		if half > 0 {
			k := len(c.Network.Symbols)
			c.Network.Symbols = append(c.Network.Symbols, well.Symbol{Name: u.name, Path: u.path, Middle: middle, Half: half,
				Nominal: min(max((u.nominal-middle)/half, -1), 1)})
			c.symbols = append(c.symbols, u)
			f = affine.Form{C: middle, T: []affine.Term{{Symbol: k, C: half}}}
		}
		c.forms[u.path] = f
	}
	c.gauge = c.forms["rules.gauge"]
	var heat []affine.Form
	for _, name := range c.names {
		heat = append(heat, c.forms["well.temperature errors."+name])
	}
	c.Network.SetHeat(heat)
}

func (c *compiler) fluids() {
	for _, f := range c.plan.Fluids {
		x := well.Fluid{Name: f.Name, Density: c.forms["fluids."+f.Name+".density"], Compression: float64(f.Compression)}
		var feels hydrostatics.Fluid
		switch f.Kind {
		case ClearBrine:
			feels = f.brine()
			x.Scale = x.Density.Times(1 / float64(f.Density.Nominal))
		case FreshWater:
			feels = f.water()
			x.Scale = affine.Const(1)
		}
		if feels != nil {
			for k, t := range c.Network.Temperatures {
				col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: feels, Top: 0, Bottom: unit.Length(c.bottom)}}, t, hydrostatics.Reference{})
				c.check(fmt.Sprintf("fluid %q at temperature %q", f.Name, c.names[k]), err)
				x.Feels = append(x.Feels, col)
				cold, warm := c.ends(feels, k)
				x.Cold, x.Warm = append(x.Cold, cold), append(x.Warm, warm)
			}
		}
		c.Network.Fluids = append(c.Network.Fluids, x)
	}
}

// ends are the columns of a fluid at the ends of what a temperature may be off; nil
// where it isn't.
func (c *compiler) ends(f hydrostatics.Fluid, k int) (cold, warm *hydrostatics.Column) {
	h := c.Network.Heat[k]
	if h.Radius() == 0 {
		return nil, nil
	}
	at := func(by float64) *hydrostatics.Column {
		points := slices.Clone(c.Network.Temperatures[k].Points())
		for i := range points {
			points[i].Temperature = points[i].Temperature.Add(unit.TemperatureDifference(by))
		}
		t, err := hydrostatics.NewTemperatureProfile(points)
		c.check(`well."temperature errors"`, err)
		col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, Top: 0, Bottom: unit.Length(c.bottom)}}, t, hydrostatics.Reference{})
		c.check(`well."temperature errors"`, err)
		return col
	}
	return at(h.Least()), at(h.Greatest())
}

func (c *compiler) fluid(name string) int {
	return slices.IndexFunc(c.plan.Fluids, func(f Fluid) bool { return f.Name == name })
}

func index[T any](items []T, name func(T) string) map[string]int {
	m := map[string]int{}
	for i, x := range items {
		m[name(x)] = i
	}
	return m
}

func (c *compiler) names2indices() {
	c.by.compartment = index(c.plan.Compartments, compartmentName)
	c.by.port = index(c.plan.Ports, portName)
	c.by.formation = index(c.plan.Formations, formationName)
	c.by.device = index(c.plan.Devices, deviceName)
	c.by.action = map[string]int{}
	for _, d := range c.plan.Devices {
		for _, a := range d.Actions {
			c.by.action[d.Name+": "+a.Name] = len(c.by.action)
		}
	}
}

// depth is a measured depth, which was checked, with its true vertical one.
func (c *compiler) depth(md unit.Length) well.Depth {
	tvd, err := c.path.TVD(md)
	c.check("well.path", err)
	return well.Depth{MD: float64(md), TVD: float64(tvd)}
}

func (c *compiler) formations() {
	for _, f := range c.plan.Formations {
		c.Network.Formations = append(c.Network.Formations, well.Formation{
			Name: f.Name, Depth: c.depth(f.Depth), Face: -1, Flows: f.Inflow != nil,
			Pressure: c.forms["formations."+f.Name+".pressure"], Fracture: c.forms["formations."+f.Name+".fracture"], Cracks: f.Fracture.Nominal > 0,
		})
	}
}

func (c *compiler) ports() {
	for _, p := range c.plan.Ports {
		d := c.depth(p.Depth)
		a, b := c.by.compartment[p.Joins[0]], c.by.compartment[p.Joins[1]]
		c.Network.Ports = append(c.Network.Ports, well.Port{Name: p.Name, A: a, B: b, AtA: c.at(a, d), AtB: c.at(b, d), Open: p.Open})
	}
}

func (c *compiler) actions() {
	joints := 0
	for i, d := range c.plan.Devices {
		depth := c.depth(d.Depth)
		off := c.forms["devices."+d.Name+".depth error"].Times(c.fall(d.Depth))
		for _, a := range d.Actions {
			x := well.Action{Name: d.Name + ": " + a.Name, Device: i, Depth: depth, Off: off, Axial: a.Axial,
				Inside: -1, Outside: -1, Bites: -1, Disarmed: a.Disarmed, Holds: a.Holds, Releases: a.Releases}
			if a.Axial {
				x.Joint = joints
				joints++
			} else {
				x.Inside = c.by.compartment[a.Inside]
				x.AtIn = c.at(x.Inside, depth)
				if a.Chamber != nil {
					x.Chamber = affine.Const(float64(*a.Chamber))
				} else {
					x.Outside = c.by.compartment[a.Outside]
					x.AtOut = c.at(x.Outside, depth)
				}
			}
			for n, t := range a.Triggers {
				x.Row = append(x.Row, c.trigger(t, fmt.Sprintf("devices.%s.actions.%s.triggers[%d]", d.Name, a.Name, n), a.Axial))
			}
			for _, name := range a.Opens {
				x.Opens = append(x.Opens, c.by.port[name])
			}
			for _, name := range a.Closes {
				x.Closes = append(x.Closes, c.by.port[name])
			}
			for _, name := range a.Arms {
				x.Arms = append(x.Arms, c.by.action[d.Name+": "+name])
			}
			c.Network.Actions = append(c.Network.Actions, x)
		}
	}
}

// fall is how much true vertical depth a metre of hole makes at a depth.
func (c *compiler) fall(md unit.Length) float64 {
	p, err := c.path.At(md)
	c.check("well.path", err)
	return math.Cos(float64(p.Inclination))
}

func (c *compiler) trigger(t Trigger, path string, axial bool) well.Trigger {
	x := well.Trigger{Falling: t.Direction == valve.Falling, Count: max(t.Count, 1), Rearm: c.forms[path+".rearm"]}
	switch {
	case t.Pins != nil && axial:
		x.Level = c.forms[path+".pins"]
	case t.Pins != nil:
		x.Level = c.forms[path+".pins"].Times(1 / float64(t.Pins.Area))
	case axial:
		x.Level = c.forms[path+".tension"]
	default:
		x.Level = c.forms[path+".threshold"]
	}
	return x
}

// shares gives every two compartments whose references may come to fix one body a
// symbol of how the difference between them is shared out.
func (c *compiler) shares() {
	n := c.Network
	parent := make([]int, len(n.Compartments))
	for i := range parent {
		parent[i] = i
	}
	var find func(i int) int
	find = func(i int) int {
		if parent[i] != i {
			parent[i] = find(parent[i])
		}
		return parent[i]
	}
	for _, p := range n.Ports {
		parent[find(p.A)] = find(p.B)
	}
	order := make([]int, len(n.Compartments))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		if n.Compartments[a].Name < n.Compartments[b].Name {
			return -1
		}
		return 1
	})
	for i, a := range order {
		for _, b := range order[i+1:] {
			x, y := &n.Compartments[a], &n.Compartments[b]
			if find(a) != find(b) || !(x.Surface && y.Surface || x.Formation >= 0 && y.Formation >= 0) {
				continue
			}
			path := "share." + x.Name + "|" + y.Name
			u := uncertain{path: path, name: fmt.Sprintf("where between %q and %q the pressure lies while fluid flows", x.Name, y.Name),
				least: 0, nominal: 0.5, greatest: 1, text: percent, exact: percent}
			k := len(n.Symbols)
			s := well.Symbol{Name: u.name, Path: path, Middle: 0.5, Half: 0.5}
			for _, fixed := range c.plan.shares {
				if fixed.Path == path {
					s.Nominal = 2*fixed.si - 1
				}
			}
			n.Symbols = append(n.Symbols, s)
			c.symbols = append(c.symbols, u)
			n.Share(a, b, k)
		}
	}
	c.bites()
	for _, fixed := range c.plan.shares {
		for k := range n.Symbols {
			if n.Symbols[k].Path == fixed.Path {
				*n = *n.Narrow(func(symbol int) (float64, float64, bool) { return 2*fixed.si - 1, 0, symbol == k })
			}
		}
	}
}

// bites gives every hold whose slips may bite before it is done a symbol of where.
func (c *compiler) bites() {
	n := c.Network
	for _, d := range c.plan.Devices {
		for _, a := range d.Actions {
			if a.Bites == "" {
				continue
			}
			i, from := c.by.action[d.Name+": "+a.Name], c.by.action[d.Name+": "+a.Bites]
			k := len(n.Symbols)
			n.Symbols = append(n.Symbols, well.Symbol{Name: "where the slips of " + d.Name + " bite, from “" + a.Bites + "” to “" + a.Name + "”",
				Path: sharePrefix + n.Actions[i].Name, Middle: 0.5, Half: 0.5, Nominal: 1})
			c.symbols = append(c.symbols, uncertain{path: n.Symbols[k].Path, name: n.Symbols[k].Name, least: 0, nominal: 1, greatest: 1, text: percent, exact: percent})
			n.Actions[from].Marks = true
			n.Actions[i].Bites, n.Actions[i].Bite = from, affine.Form{C: 0.5, T: []affine.Term{{Symbol: k, C: 0.5}}}
		}
	}
}

const sharePrefix = "share."

func isShare(path string) bool {
	return len(path) > len(sharePrefix) && path[:len(sharePrefix)] == sharePrefix
}

func percent(x float64) string { return fmt.Sprintf("%.4g %%", 100*x) }

func (c *compiler) steps() {
	n := c.Network
	for _, s := range c.plan.Steps {
		x := walk.Step{Name: s.Name, Temperature: -1, Lands: s.Lands && c.plan.String != nil, Expect: make([][]int, n.Devices)}
		if s.Temperature != "" {
			x.Temperature = slices.Index(c.names, s.Temperature)
		}
		for _, name := range s.Shut {
			x.Shut = append(x.Shut, c.by.compartment[name])
		}
		for _, w := range s.Swap {
			x.Swaps = append(x.Swaps, walk.Swap{Compartment: c.by.compartment[w.Compartment], Fluid: c.fluid(w.Fluid),
				From: c.depth(w.From), To: c.depth(w.To), Up: w.Up})
		}
		for _, ramp := range s.Ramps {
			var moves []walk.Move
			for _, name := range slices.Sorted(maps.Keys(ramp)) {
				moves = append(moves, walk.Move{Compartment: c.by.compartment[name], To: c.applied(ramp[name])})
			}
			x.Ramps = append(x.Ramps, moves)
		}
		if len(s.Squeeze) > 0 {
			x.Squeeze = map[int]float64{}
			for name, d := range s.Squeeze {
				x.Squeeze[c.by.compartment[name]] = float64(d)
			}
		}
		for _, f := range s.Pull {
			x.Pulls = append(x.Pulls, affine.Const(float64(f)))
		}
		for _, name := range s.Expect {
			a := c.by.action[name]
			d := n.Actions[a].Device
			x.Expect[d] = append(x.Expect[d], a)
		}
		c.Steps = append(c.Steps, x)
		c.Limits.Steps = append(c.Limits.Steps, c.goals(&s))
	}
}

// applied is what is really applied where the gauge shows a pressure.
func (c *compiler) applied(p unit.Pressure) affine.Form {
	f := affine.Const(float64(p))
	if p > 0 {
		f = f.Plus(c.forms["rules.gauge"])
	}
	return f
}

func (c *compiler) goals(s *Step) judge.Goals {
	g := judge.Goals{Produces: s.Produce != nil, Inflow: slices.Contains(s.Allow, FlowIn), Loss: slices.Contains(s.Allow, FlowOut),
		Circle: slices.Contains(s.Allow, Circulation)}
	last := len(s.Ramps) + len(s.Pull)
	if len(s.Squeeze) > 0 {
		last++
	}
	for _, t := range s.Tests {
		d := c.depth(t.Depth)
		in, out := c.by.compartment[t.Inside], c.by.compartment[t.Outside]
		x := judge.Test{Inside: in, Outside: out, AtIn: c.at(in, d), AtOut: c.at(out, d), Stand: -1,
			Least: float64(t.Differential.Least), Greatest: float64(t.Differential.Greatest)}
		switch t.Moment {
		case AtStart:
			x.Stand = 0
		case AtEnd:
			x.Stand = last
		}
		g.Tests = append(g.Tests, x)
	}
	for _, b := range s.Balance {
		i, f := c.by.compartment[b.Compartment], c.by.formation[b.Formation]
		x := judge.Balance{Compartment: i, At: c.at(i, c.Network.Formations[f].Depth), Formation: f, Stand: last,
			Least: float64(b.Overbalance.Least), Greatest: float64(b.Overbalance.Greatest)}
		switch b.Moment {
		case AtStart:
			x.Stand = 0
		case AtPeak:
			x.Stand = 1
		}
		g.Balances = append(g.Balances, x)
	}
	return g
}
