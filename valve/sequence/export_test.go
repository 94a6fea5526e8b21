package sequence

import (
	"context"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/well"
)

// Outage is asked each time before a liquid's or gas's density, or how it gives way, is given:
// its error is what the caller gets instead.
type Outage func() error

// CheckWithout is Check of a plan in a well whose fluids, all of which now feel pressure by very little,
// may be out of their tables.
func CheckWithout(ctx context.Context, p *Plan, o Options, out Outage) (*Programme, error) {
	c, err := p.compiledWithout(out)
	if err != nil {
		return nil, err
	}
	k := &checker{compiled: c, ctx: ctx, options: o, given: p, programme: &Programme{Plan: p.Name, Findings: []Finding{}, Margins: []Margin{}}, progress: &progress{told: o.Progress}}
	return k.check()
}

func (p *Plan) compiledWithout(out Outage) (*compiled, error) {
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	ready, asked := false, out
	out = func() error {
		if !ready {
			return nil
		}
		return asked()
	}
	n := c.Network
	on := &compiler{compiled: c}
	deepest := unit.Length(0)
	for _, k := range n.Compartments {
		for _, d := range k.Depths {
			deepest = max(deepest, unit.Length(d.TVD))
		}
	}
	warmth := func(k int, by float64) *hydrostatics.TemperatureProfile {
		if len(n.Temperatures) == 0 || n.Temperatures[k] == nil {
			t, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(20)}, {TVD: deepest + 1, Temperature: unit.Celsius(20)}})
			if err != nil {
				panic(err)
			}
			return t
		}
		return on.warmth(k, by)
	}
	for i := range n.Fluids {
		f := &n.Fluids[i]
		if f.Gas() {
			f.Gases = nil
			of := failing{c.plan.Fluids[i].gas(), nil, out}
			for k := range n.Temperatures {
				h := n.Heat[k]
				g := &well.Gases{Least: h.Least(), Most: h.Greatest()}
				at := func(by float64) *well.Gas {
					t := warmth(k, by)
					return well.NewGas(f.Name, of, t, on.alongHole(t))
				}
				g.Gas[1] = at(g.Least + (g.Most-g.Least)/2)
				if h.Radius() > 0 {
					g.Gas[0], g.Gas[2] = at(g.Least), at(g.Most)
				}
				f.Gases = append(f.Gases, g)
			}
			continue
		}
		of := failing{steady(f.Density.C), f.Real, out}
		if f.Real != nil {
			of.Fluid, f.Real = f.Real, of
		}
		column := func(k int, by float64) *hydrostatics.Column {
			col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: of, BottomTVD: deepest + 1}}, warmth(k, by), hydrostatics.Reference{})
			if err != nil {
				panic(err)
			}
			return col
		}
		if f.Columns == nil {
			f.Scale = f.Density.Times(1 / f.Density.C)
		}
		f.Columns, f.Cold, f.Warm = nil, nil, nil
		for k := range max(1, len(n.Temperatures)) {
			h := 0.0
			var cold, warm *hydrostatics.Column
			if k < len(n.Heat) {
				if h = n.Heat[k].C; n.Heat[k].Radius() > 0 {
					cold, warm = column(k, n.Heat[k].Least()), column(k, n.Heat[k].Greatest())
				}
			}
			f.Columns, f.Cold, f.Warm = append(f.Columns, column(k, h)), append(f.Cold, cold), append(f.Warm, warm)
		}
	}
	ready = true
	return c, nil
}

// steady is a density.
type steady unit.Density

func (d steady) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return unit.Density(d), nil
}

// failing is a fluid that asks an outage first.
type failing struct {
	hydrostatics.Fluid
	real well.Real
	out  Outage
}

func (f failing) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if err := f.out(); err != nil {
		return 0, err
	}
	return f.Fluid.Density(p, t)
}

// UniformDensity is that of a liquid that is the same everywhere, for as long as it is known.
func (f failing) UniformDensity() (unit.Density, bool) {
	d, same := f.Fluid.(steady)
	return unit.Density(d), same && f.out() == nil
}

func (f failing) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	if err := f.out(); err != nil {
		return 0, err
	}
	return f.real.Compressibility(p, t)
}

func (f failing) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	if err := f.out(); err != nil {
		return 0, err
	}
	return f.real.Expansivity(p, t)
}
