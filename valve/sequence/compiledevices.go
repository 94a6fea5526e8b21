package sequence

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

func (c *compiler) ports() {
	for _, p := range c.plan.Ports {
		d := c.depth(p.MD)
		a, b := c.by.compartment[p.Joins[0]], c.by.compartment[p.Joins[1]]
		c.Network.Ports = append(c.Network.Ports, well.Port{Name: p.Name, A: a, B: b, AtA: c.at(a, d), AtB: c.at(b, d), Open: p.Open})
	}
}

func (c *compiler) actions() {
	felt := map[WhichString]*[2]int{OnString: {}, OnOuterString: {}} // of joints, and of the others
	for i, d := range c.plan.Devices {
		depth := c.depth(d.MD)
		off := c.forms["devices."+d.Name+".depth_error"].Times(c.fall(d.MD))
		for k := range d.Actions {
			a := &d.Actions[k]
			first := c.by.action[d.Name+": "+a.Name]
			x := well.Action{Name: d.Name + ": " + a.Name, Device: i, Depth: depth, Off: off, Axial: a.Axial, Of: first, All: len(a.All) > 1,
				Bites: -1, Disarmed: a.Disarmed, Holds: a.Holds, Releases: a.Releases, Strokes: c.strokes(a.Strokes)}
			x.Slow, x.Delay = a.slow()
			if a.Axial {
				x.Feels = a.feels()
				n := &felt[d.On][min(x.Feels, 1)]
				x.Joint = *n
				*n++
				x.Releases = x.Releases || x.Feels != well.OfJoint
			}
			for _, name := range a.Opens {
				x.Opens = append(x.Opens, c.by.port[name])
			}
			for _, name := range a.Closes {
				x.Closes = append(x.Closes, c.by.port[name])
			}
			for _, name := range a.Arms {
				x.Arms = append(x.Arms, c.members(d.Name+": "+name)...)
			}
			for _, name := range a.Disarms {
				x.Disarms = append(x.Disarms, c.members(d.Name+": "+name)...)
			}
			if all := c.members(x.Name); len(all) > 1 {
				x.With = all
			}
			path := fmt.Sprintf("devices.%s.actions.%s", d.Name, a.Name)
			for n, y := range a.conditions() {
				c.Network.Actions = append(c.Network.Actions, c.condition(x, y, a.listed(path, n)))
			}
		}
	}
}

// feels tells what an axial action feels.
func (a *Action) feels() well.Axially {
	switch {
	case a.Unseats:
		return well.OfPlace
	case a.LatchesTo != "":
		return well.OnRest
	}
	return well.OfJoint
}

// parts tells whether an action is of a joint that parts.
func (a *Action) parts() bool { return a.Axial && a.feels() == well.OfJoint }

// members are the conditions of an action: one where it is its own.
func (c *compiler) members(name string) []int {
	first := c.by.action[name]
	all := []int{first}
	for n := 1; n < len(c.plan.action(name).conditions()); n++ {
		all = append(all, first+n)
	}
	return all
}

// condition puts together what one condition of an action feels and waits for.
func (c *compiler) condition(x well.Action, y Condition, path string) well.Action {
	x.Inside, x.Outside = -1, -1
	unit := 1.0
	switch {
	case x.Axial:
	case y.Areas != nil:
		on := y.Areas.On
		unit = 1 / float64(on[0].Area)
		x.Inside = c.by.compartment[on[0].Compartment]
		x.AtIn = c.at(x.Inside, x.Depth)
		for _, p := range on[1:] {
			i := c.by.compartment[p.Compartment]
			x.More = append(x.More, well.Weighed{Compartment: i, At: c.at(i, x.Depth), Times: float64(p.Area) * unit})
		}
	default:
		x.Inside = c.by.compartment[y.Inside]
		x.AtIn = c.at(x.Inside, x.Depth)
		if y.Chamber != nil {
			x.Chamber = affine.Const(float64(*y.Chamber))
			break
		}
		x.Outside = c.by.compartment[y.Outside]
		x.AtOut = c.at(x.Outside, x.Depth)
	}
	x.Row = nil
	for n, t := range y.Triggers {
		if y.Areas == nil {
			x.Row = append(x.Row, c.trigger(t, fmt.Sprintf("%s.triggers[%d]", path, n), x.Axial))
			continue
		}
		spring, friction := c.forms[path+".areas.spring"], c.forms[path+".areas.friction"]
		up, down := spring.Plus(friction).Times(unit), spring.Minus(friction).Times(unit)
		z := well.Trigger{Falling: t.Direction == valve.Falling, Count: max(t.Count, 1), Level: up, Rearm: down}
		if z.Falling {
			z.Level, z.Rearm = down, up
		}
		x.Row = append(x.Row, z)
	}
	return x
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
