package sequence

import (
	"errors"
	"fmt"
	"strings"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/packer"
	"completion.example/tubular/catalogue"
	"completion.example/valve"
)

// network is a plan put together: names are indices, measured depths are true
// vertical ones. It never changes, so all worlds share it.
type network struct {
	plan         *Plan
	path         *hydrostatics.Path
	temperatures map[string]*hydrostatics.TemperatureProfile
	fluids       map[string]hydrostatics.Fluid
	uniform      bool // no fluid's density feels pressure
	compartments []compartment
	ports        []port
	actions      []action
	ratings      []rating
	byName       struct{ compartment, port, action, formation map[string]int }
	formationTVD []unit.Length
	face         []int // by formation: the compartment that stands open to it, or -1
	string       *mechanics
	envelope     *packer.Envelope
	holdingTVD   unit.Length
}

type compartment struct {
	top, bottom unit.Length // TVD
	formation   int         // or -1
	weight      float64     // of its pressure where trapped bodies meet: its volume, or 1
}

type port struct {
	a, b int
	tvd  unit.Length
}

type action struct {
	name            string // "device: action"
	device          int
	tvd             unit.Length
	md              unit.Length
	inside, outside int // compartments; outside -1: chamber
	chamber         unit.Pressure
	axial           bool
	row             valve.Row
	opens, closes   []int
	arms            []int
	disarmed        bool
	holds, releases bool
}

type rating struct {
	inside, outside int // outside -1: background
	background      *hydrostatics.Column
	depths          []unit.Length // TVD at which it is looked at
	burst, collapse unit.Pressure // greatest differentials, design factor taken off; zero: not limited
}

// compile puts a sound plan together.
func compile(p *Plan, pipes catalogue.Catalogue) (*network, error) {
	n := &network{plan: p, temperatures: map[string]*hydrostatics.TemperatureProfile{}, fluids: map[string]hydrostatics.Fluid{}}
	c := &compiler{network: n, pipes: pipes}
	c.well()
	c.fluids()
	if c.err() != nil {
		return nil, c.err()
	}
	c.compartments()
	c.ports()
	c.actions()
	c.ratings()
	c.string()
	c.holding()
	return n, c.err()
}

type compiler struct {
	*network
	pipes  catalogue.Catalogue
	faults []error
}

func (c *compiler) err() error { return errors.Join(c.faults...) }

func (c *compiler) check(path string, err error) {
	if err != nil {
		c.faults = append(c.faults, fault.Fault{Path: path, Err: err})
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
	for name, points := range w.Temperatures {
		at := make([]hydrostatics.TemperaturePoint, len(points))
		for i, m := range points {
			at[i] = hydrostatics.TemperaturePoint(m)
		}
		profile, err := hydrostatics.NewTemperatureProfile(at)
		c.check("well.temperatures."+name, err)
		c.temperatures[name] = profile
	}
}

func (c *compiler) fluids() {
	c.network.uniform = true
	for _, f := range c.plan.Fluids {
		switch f.Kind {
		case ClearBrine:
			c.network.fluids[f.Name] = fluid.Brine{At70F: f.Density, Expansion: f.Expansion, Compression: f.Compression}
		case FreshWater:
			c.network.fluids[f.Name] = fluid.Water{}
		default:
			c.network.fluids[f.Name] = hydrostatics.Incompressible(f.Density)
		}
		c.network.uniform = c.network.uniform && uniform(c.network.fluids[f.Name])
	}
}

// tvd is the true vertical depth of a measured depth that was checked.
func (c *compiler) tvd(path string, md unit.Length) unit.Length {
	d, err := c.network.path.TVD(md)
	c.check(path, err)
	return d
}

func (c *compiler) compartments() {
	c.byName.compartment = map[string]int{}
	c.byName.formation = map[string]int{}
	for i, f := range c.plan.Formations {
		c.byName.formation[f.Name] = i
		c.formationTVD = append(c.formationTVD, c.tvd(fmt.Sprintf("formations[%d].depth", i), f.Depth))
		c.face = append(c.face, -1)
	}
	for i, p := range c.plan.Compartments {
		path := fmt.Sprintf("compartments[%d]", i)
		k := compartment{top: c.tvd(path+".top", p.Top), bottom: c.tvd(path+".bottom", p.Bottom), formation: -1, weight: 1}
		if !(k.top < k.bottom) {
			c.check(path, errors.New("its bottom is no deeper than its top on the well path"))
		}
		if p.Formation != "" {
			k.formation = c.byName.formation[p.Formation]
			c.face[k.formation] = i
		}
		if p.Capacity > 0 {
			k.weight = float64(p.Capacity) * float64(p.Bottom-p.Top)
		}
		c.byName.compartment[p.Name] = i
		c.network.compartments = append(c.network.compartments, k)
	}
}

func (c *compiler) ports() {
	c.byName.port = map[string]int{}
	for i, p := range c.plan.Ports {
		c.byName.port[p.Name] = i
		c.network.ports = append(c.network.ports, port{
			a: c.byName.compartment[p.Joins[0]], b: c.byName.compartment[p.Joins[1]],
			tvd: c.tvd(fmt.Sprintf("ports[%d].depth", i), p.Depth),
		})
	}
}

func (c *compiler) actions() {
	c.byName.action = map[string]int{}
	for _, d := range c.plan.Devices {
		for _, a := range d.Actions {
			c.byName.action[d.Name+": "+a.Name] = len(c.byName.action)
		}
	}
	for i, d := range c.plan.Devices {
		for k, a := range d.Actions {
			path := fmt.Sprintf("devices[%d].actions[%d]", i, k)
			x := action{
				name: d.Name + ": " + a.Name, device: i, md: d.Depth, tvd: c.tvd(path, d.Depth), axial: a.Axial,
				inside: -1, outside: -1, disarmed: a.Disarmed, holds: a.Holds, releases: a.Releases,
			}
			if !a.Axial {
				x.inside = c.byName.compartment[a.Inside]
				if a.Chamber != nil {
					x.chamber = *a.Chamber
				} else {
					x.outside = c.byName.compartment[a.Outside]
				}
			}
			for _, t := range a.Triggers {
				x.row = append(x.row, t.band(a.Axial))
			}
			c.check(path+".triggers", x.row.Check())
			for _, name := range a.Opens {
				x.opens = append(x.opens, c.byName.port[name])
			}
			for _, name := range a.Closes {
				x.closes = append(x.closes, c.byName.port[name])
			}
			for _, name := range a.Arms {
				x.arms = append(x.arms, c.byName.action[d.Name+": "+name])
			}
			c.network.actions = append(c.network.actions, x)
		}
	}
}

// ratingPoints is how many depths a rating along a pipe is looked at, besides
// those where fluids meet. Between two straight pressure profiles the worst is
// at an end; the points between are for the bends of the well path and for
// fluids that compress.
const ratingPoints = 9

func (c *compiler) ratings() {
	for i, r := range c.plan.Ratings {
		path := fmt.Sprintf("ratings[%d]", i)
		x := rating{inside: c.byName.compartment[r.Inside], outside: -1}
		if r.Outside != "" {
			x.outside = c.byName.compartment[r.Outside]
		} else {
			bottom := c.tvd(path, c.plan.Well.Depth)
			col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: c.network.fluids[r.Background], Top: 0, Bottom: bottom}},
				c.temperatures[Undisturbed], hydrostatics.Reference{})
			c.check(path+".background", err)
			x.background = col
		}
		burst, collapse, err := r.limits(c.pipes)
		c.check(path, err)
		x.burst, x.collapse = burst, collapse
		for k := range ratingPoints {
			md := r.From + (r.To-r.From)*unit.Length(k)/(ratingPoints-1)
			x.depths = append(x.depths, c.tvd(path, md))
			if r.From == r.To {
				break
			}
		}
		c.network.ratings = append(c.network.ratings, x)
	}
}

// loops finds rings of open ports without anything to fix their pressure:
// their pressures wouldn't be determined.
func (n *network) loops() error {
	s := n.start()
	var faults []error
	visited := make([]bool, len(n.compartments))
	for i := range n.compartments {
		if visited[i] {
			continue
		}
		members, ports := s.body(i)
		fixed := false
		var all []string
		for _, m := range members {
			visited[m] = true
			fixed = fixed || n.plan.Compartments[m].Surface || n.compartments[m].formation >= 0
			all = append(all, n.plan.Compartments[m].Name)
		}
		if ports >= len(members) && !fixed {
			faults = append(faults, fault.Fault{Path: "ports", Err: fmt.Errorf(
				"%s are joined in a ring by open ports and nothing fixes their pressure", strings.Join(all, ", "))})
		}
	}
	return errors.Join(faults...)
}
