package sequence

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"sync"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/catalogue"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/well"
)

// compiled is a plan put together: names are indices, bands are symbols.
type compiled struct {
	made    [2]*stringMade // nil: the plan has no such string
	devices []deviceDepth  // where they stand in what compartments
	proof.Problem
	plan    *Plan
	by      struct{ compartment, port, action, formation, device map[string]int }
	path    *hydrostatics.Path
	symbols []uncertain // of the network's symbols: those of the plan, then the shares
	names   []string    // of temperatures
	gauge   affine.Form // error of the gauges
	known   sync.Map    // what zones give, by what was asked
}

// atNominal is the plan with every quantity at its nominal value.
func (c *compiled) atNominal() *compiled {
	e := c.Nominal()
	return &compiled{made: c.made, devices: c.devices, Problem: *c.At(e), plan: c.plan, by: c.by, path: c.path, names: c.names, gauge: affine.Const(c.gauge.At(e))}
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
	c.begin()
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
		c.path, err = hydrostatics.Vertical(w.MD)
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
		c.Network.TVD = c.tvdAt
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
		heat = append(heat, c.forms["well.temperature_errors."+name])
	}
	c.Network.SetHeat(heat)
}

func (c *compiler) fluids() {
	for _, f := range c.plan.Fluids {
		x := well.Fluid{Name: f.Name, Density: c.forms["fluids."+f.Name+".density"], Compression: float64(f.Compression), Expansion: float64(f.Expansion), Rheology: f.rheology()}
		var feels hydrostatics.Fluid
		switch f.Kind {
		case ClearBrine:
			feels = f.brine()
			x.Scale = x.Density.Times(1 / float64(f.Density.Nominal))
		case FreshWater:
			feels, x.Real = f.water(), f.water()
			x.Scale = affine.Const(1)
		case Nitrogen, Methane, NaturalGas:
			c.gases(f, &x)
		}
		if feels != nil {
			for k := range c.Network.Temperatures {
				t := c.warmth(k, c.Network.Heat[k].C) // the middle of what it may be
				col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: feels, TopTVD: 0, BottomTVD: unit.Length(c.bottom)}}, t, hydrostatics.Reference{})
				c.check(fmt.Sprintf("fluid %q at temperature %q", f.Name, c.names[k]), err)
				x.Columns = append(x.Columns, col)
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
		t := c.warmth(k, by)
		col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, TopTVD: 0, BottomTVD: unit.Length(c.bottom)}}, t, hydrostatics.Reference{})
		c.check(`well.temperature_errors`, err)
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
	n := 0
	for _, d := range c.plan.Devices {
		for k := range d.Actions {
			c.by.action[d.Name+": "+d.Actions[k].Name] = n
			n += len(d.Actions[k].conditions())
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
			Name: f.Name, Depth: c.depth(f.MD), Face: -1, Flows: f.Inflow != nil,
			Pressure: c.forms["formations."+f.Name+".pressure"], Fracture: c.forms["formations."+f.Name+".fracture"], Cracks: f.Fracture.Nominal > 0,
		})
	}
}
