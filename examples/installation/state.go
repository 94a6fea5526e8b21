package main

import (
	"slices"
	"sort"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// condition is how a device stands at the end of a step.
type condition struct {
	device  string
	depth   unit.Length
	sign    sign
	word    string
	changed bool // in this step
}

// sign is how a device is drawn.
type sign string

const (
	isOpen   sign = "open"
	isShut   sign = "shut"
	isSet    sign = "set"
	isIdle   sign = "idle"   // not set, whole
	isParted sign = "parted" // released
	isUnsure sign = "unsure"
)

// conditions are those of all devices at the end of step i, from the top down.
func conditions(plan *sequence.Plan, p *sequence.Programme, i int) []condition {
	var all []condition
	for _, d := range plan.Devices {
		c := conditionOf(plan, &d, p, i)
		if i > 0 {
			before := conditionOf(plan, &d, p, i-1)
			c.changed = before.word != c.word
		}
		all = append(all, c)
	}
	sort.SliceStable(all, func(a, b int) bool { return int(all[a].depth-all[b].depth) < 0 }) // in less of the page than slices takes
	return all
}

func conditionOf(plan *sequence.Plan, d *sequence.Device, p *sequence.Programme, i int) condition {
	s := &p.Steps[i]
	c := condition{device: d.Name, depth: d.MD, sign: isIdle, word: "not moved"}
	open := map[string]bool{}
	for _, x := range s.Ports {
		open[x.Port] = x.Open
	}
	for _, a := range d.Actions {
		name := d.Name + ": " + a.Name
		done, partial := happened(p, i, name)
		if plan.Begin != nil && slices.Contains(plan.Begin.Happened, name) && partial == "" {
			done = true
		}
		switch {
		case a.Holds && done:
			c.sign, c.word = isSet, "set"
		case a.Holds:
			c.word = "not set"
		case a.Unseats && done:
			c.sign, c.word = isParted, "unseated"
		case a.LatchesTo != "" && done:
			c.sign, c.word = isSet, "latched on"
		case a.Unseats || a.LatchesTo != "":
		case a.Releases && done:
			c.sign, c.word = isParted, "parted"
		case a.Releases:
			c.word = "whole"
		}
		if !a.Holds && !a.Releases && !a.Unseats && c.sign == isIdle {
			for _, port := range append(slices.Clone(a.Opens), a.Closes...) {
				c.sign, c.word = isShut, "shut"
				if open[port] {
					c.sign, c.word = isOpen, "open"
				}
				if port != d.Name {
					c.word = port + " " + c.word
				}
			}
		}
		if c.sign == isIdle && done {
			c.word = a.Name
		}
		if partial != "" && !done {
			c.word += ", " + partial
		}
	}
	if slices.Contains(s.Unknown, d.Name) {
		c.sign, c.word = isUnsure, "not certain"
	}
	return c
}

// happened tells whether an action was completed up to step i, and else how far it
// has come.
func happened(p *sequence.Programme, i int, action string) (done bool, partial string) {
	for k := range i + 1 {
		for _, e := range p.Steps[k].Events {
			if e.Action != action {
				continue
			}
			done, partial = e.Partial == "", e.Partial
		}
	}
	return done, partial
}

// fillOf is what stands in a compartment at the end of step i: layers from the top
// down.
func fillOf(plan *sequence.Plan, c *sequence.Compartment, i int) []sequence.Layer {
	layers := slices.Clone(c.Layers)
	if len(layers) == 0 {
		layers = []sequence.Layer{{Fluid: c.Fluid, ToMD: c.BottomMD}}
	}
	if plan.Begin != nil && len(plan.Begin.Layers[c.Name]) > 0 {
		layers = slices.Clone(plan.Begin.Layers[c.Name])
	}
	for k := range i + 1 {
		for _, w := range plan.Steps[k].Displace {
			if w.Compartment == c.Name {
				layers = swapped(layers, c.TopMD, w)
			}
		}
	}
	return layers
}

// swapped puts a fluid between two depths of a column.
func swapped(layers []sequence.Layer, top unit.Length, w sequence.Displacement) []sequence.Layer {
	var all []sequence.Layer
	add := func(fluid string, from, to unit.Length) {
		if to <= from {
			return
		}
		if n := len(all); n > 0 && all[n-1].Fluid == fluid {
			all[n-1].ToMD = to
			return
		}
		all = append(all, sequence.Layer{Fluid: fluid, ToMD: to})
	}
	for _, l := range layers {
		add(l.Fluid, top, min(l.ToMD, w.FromMD))
		add(w.Fluid, max(top, w.FromMD), min(l.ToMD, w.ToMD))
		add(l.Fluid, max(top, w.ToMD), l.ToMD)
		top = l.ToMD
	}
	return all
}

// lanes say where compartments stand in a drawing: one in the middle, those around
// it, the faces of the formations outside, and lines as thin as they are.
type lanes struct {
	middle  *sequence.Compartment
	rings   [][]*sequence.Compartment // inside to outside
	faces   []*sequence.Compartment
	control []*sequence.Compartment
}

func laneOf(plan *sequence.Plan) lanes {
	var l lanes
	inside, around := "", []string(nil)
	if plan.String != nil {
		inside, around = plan.String.Inside, plan.String.Around
	}
	for k := range plan.Compartments {
		c := &plan.Compartments[k]
		if l.middle == nil && (c.Name == inside || inside == "" && c.Surface) {
			l.middle = c
		}
	}
	if l.middle == nil {
		l.middle = &plan.Compartments[0]
	}
	for k := range plan.Compartments {
		c := &plan.Compartments[k]
		switch {
		case c == l.middle:
		case c.Formation != "":
			l.faces = append(l.faces, c)
		case !slices.Contains(around, c.Name) && c.Surface && c.Capacity < l.middle.Capacity/20:
			l.control = append(l.control, c)
		default:
			l.put(c)
		}
	}
	return l
}

// put gives a compartment the first ring in which nothing stands at its depths.
func (l *lanes) put(c *sequence.Compartment) {
	for i, ring := range l.rings {
		if !slices.ContainsFunc(ring, func(o *sequence.Compartment) bool { return o.TopMD < c.BottomMD && c.TopMD < o.BottomMD }) {
			l.rings[i] = append(ring, c)
			return
		}
	}
	l.rings = append(l.rings, []*sequence.Compartment{c})
}

// fluidsOf lists the plan's fluids that stand in a compartment at some time, in
// the order of the file.
func fluidsOf(plan *sequence.Plan) []string {
	used := map[string]bool{}
	for k := range plan.Compartments {
		for _, l := range fillOf(plan, &plan.Compartments[k], len(plan.Steps)-1) {
			used[l.Fluid] = true
		}
		for _, l := range fillOf(plan, &plan.Compartments[k], -1) {
			used[l.Fluid] = true
		}
	}
	for _, s := range plan.Steps {
		for _, w := range s.Displace {
			used[w.Fluid] = true
		}
	}
	var all []string
	for _, f := range plan.Fluids {
		if used[f.Name] {
			all = append(all, f.Name)
		}
	}
	return all
}

// title makes a sentence's first letter a capital one.
func title(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
