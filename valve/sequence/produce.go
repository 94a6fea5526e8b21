package sequence

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// zone is a formation that flows, with the choke on its way.
type zone struct {
	formation int
	tvd       unit.Length
	choke     unit.FlowCoefficient // zero: none
	md        float64
	through   int // the port that is its choke; -1: none
	chokes    int // on its way
}

// throttled tells what of chokes isn't modelled: two in a row, and two zones behind one.
func (c *compiled) throttled(zs []zone) error {
	for i, z := range zs {
		if z.chokes > 1 {
			return fmt.Errorf("zone %q flows through two chokes; one on its way can be told (chokes): leave out the one that takes less", c.plan.Formations[z.formation].Name)
		}
		for _, y := range zs[:i] {
			if z.through >= 0 && z.through == y.through {
				return fmt.Errorf("zones %q and %q flow through one choke, %q; each wants its own", c.plan.Formations[y.formation].Name, c.plan.Formations[z.formation].Name, c.plan.Ports[z.through].Name)
			}
		}
	}
	return nil
}

// zones finds the formations that are joined to a compartment.
func (c *compiled) zones(s *well.State, p *Produce) []zone {
	root := c.by.compartment[p.Compartment]
	by := map[int]int{root: -1} // the port through which each compartment was reached
	order := []int{root}
	for k := 0; k < len(order); k++ {
		for i, port := range s.Ports {
			for _, pair := range [2][2]int{{port.A, port.B}, {port.B, port.A}} {
				if _, seen := by[pair[1]]; s.Open[i] && pair[0] == order[k] && !seen {
					by[pair[1]] = i
					order = append(order, pair[1])
				}
			}
		}
	}
	var zs []zone
	for f, x := range s.Formations {
		if x.Face < 0 || c.plan.Formations[f].Inflow == nil {
			continue
		}
		if _, reached := by[x.Face]; !reached {
			continue
		}
		z := zone{formation: f, tvd: unit.Length(x.Depth.TVD), md: x.Depth.MD, through: -1}
		for at := x.Face; by[at] >= 0; {
			i := by[at]
			if cv, ok := p.Chokes[s.Ports[i].Name]; ok {
				z.through, z.chokes = i, z.chokes+1
				z.choke, z.tvd, z.md = cv, c.tvdOfPort(i), float64(c.plan.Ports[i].MD)
			}
			at = s.Ports[i].A + s.Ports[i].B - at
		}
		zs = append(zs, z)
	}
	inOrder(zs, func(a, b zone) int {
		return cmp.Or(cmp.Compare(b.tvd, a.tvd), cmp.Compare(c.plan.Formations[a.formation].Name, c.plan.Formations[b.formation].Name))
	})
	return zs
}

func (c *compiled) tvdOfPort(i int) unit.Length {
	tvd, _ := c.path.TVD(c.plan.Ports[i].MD) // checked with the plan
	return tvd
}

// production is the network of package production for the zones of a step, with
// the formations' pressures at a choice of the inputs.
func (c *compiled) production(p *Produce, zs []zone, sections []section, pressure func(f int) unit.Pressure) production.Well {
	var w production.Well
	loss := production.Loss{At: p.Rate, Turbulent: p.Loss}
	if p.Loss == 0 {
		loss = production.Loss{}
	}
	for i, z := range zs {
		f := c.plan.Formations[z.formation]
		x := production.Zone{
			Name: f.Name, TVD: z.tvd, WaterCut: f.Inflow.WaterCut, Density: f.Inflow.weighs(),
			Above: production.Interval{Density: p.Density},
		}
		// The inflow's pressure counts at the formation; the network's at the
		// depth where the zone enters the string.
		tvd := unit.Length(c.Network.Formations[z.formation].Depth.TVD)
		x.Inflow = f.Inflow.above(pressure(z.formation), hydrostatics.Pressure(f.Inflow.weighs(), tvd-z.tvd))
		if z.choke > 0 {
			x.Chokes = choke.Table{{Name: "set", Travel: 1, Coefficient: z.choke}}
		}
		if sections != nil {
			x.Above = production.Interval{Density: sections[i].density, Loss: sections[i].told()}
		}
		w.Zones = append(w.Zones, x)
		if i == len(zs)-1 {
			w.Outflow = production.Tubing{Surface: p.Surface, Height: z.tvd, Density: p.Density, Loss: loss}
			if sections != nil {
				w.Outflow = production.Tubing{Surface: p.Surface, Height: z.tvd, Density: sections[i].density, Loss: sections[i].told()}
			}
			if len(p.Outflow) > 0 {
				w.Outflow = p.table()
			}
		}
	}
	return w
}

// at is what a formation gives with a pressure, as package inflow has it.
func (in *Inflow) at(pressure unit.Pressure) production.Inflow {
	if in.gas() {
		return inflow.GasDeliverability{Reservoir: pressure, OpenFlow: in.OpenFlow, Exponent: in.Exponent}
	}
	return inflow.LiquidDeliverability{Reservoir: pressure, Index: in.Index, Bubble: in.Bubble}
}

// above is what a formation gives by the pressure at a place above it, from which its own
// fluid stands down to it.
func (in *Inflow) above(pressure, column unit.Pressure) production.Inflow {
	if column == 0 || in.gas() || in.Bubble <= 0 { // a straight line stays one
		return in.at(pressure - column)
	}
	return raised{in.at(pressure), column}
}

// raised is an inflow seen from above a column.
type raised struct {
	production.Inflow
	column unit.Pressure
}

func (r raised) Static() unit.Pressure { return r.Inflow.Static() - r.column }

func (r raised) At(p float64) (q, slope float64) { return r.Inflow.At(p + float64(r.column)) }

// table is the outflow as package production has it.
func (p *Produce) table() production.OutflowTable {
	var all production.OutflowTable
	for _, x := range p.Outflow {
		all = append(all, production.OutflowPoint{Rate: x.Rate, Pressure: x.Pressure})
	}
	return all
}

// rateParts makes a rate in m³/s a number of the size of the other margins.
const rateParts = judge.Parts * judge.Parts

// rates holds what the zones give against the plan, while they flow.
func (c *compiled) rates(j *judge.Judge, w *walk.World, p walk.Place) error {
	step := &c.plan.Steps[p.Step]
	if step.Produce == nil {
		return nil
	}
	zs := c.zones(w.State, step.Produce)
	if len(zs) == 0 {
		j.Note(w, p, judge.NoFlow, 0, affine.Const(-1), 0)
		return nil
	}
	flow := func(e func(f affine.Form) float64) ([]float64, error) {
		x, _, err := c.flow(step.Produce, zs, func(f int) unit.Pressure { return unit.Pressure(e(j.Network.Formations[f].Pressure)) })
		if err != nil {
			return nil, err
		}
		q := make([]float64, len(c.plan.Formations))
		for i, z := range zs {
			q[z.formation] = float64(x.Zones[i].Rate)
		}
		return q, nil
	}
	mid, err := flow(func(f affine.Form) float64 { return f.C })
	if err != nil {
		if errors.Is(err, production.ErrNoFlow) || errors.Is(err, production.ErrUnresolved) {
			j.Note(w, p, judge.NoFlow, 0, affine.Const(-1), 1)
			return nil
		}
		return err
	}
	forms := make([]affine.Form, len(mid))
	for f := range mid {
		forms[f] = affine.Const(mid[f])
	}
	for _, z := range zs {
		for _, t := range j.Network.Formations[z.formation].Pressure.T {
			var ends [2][]float64
			for n, side := range [2]float64{-1, 1} {
				if ends[n], err = flow(func(f affine.Form) float64 {
					x := f.C
					for _, u := range f.T {
						if u.Symbol == t.Symbol {
							x += side * u.C
						}
					}
					return x
				}); err != nil {
					j.Note(w, p, judge.NoFlow, 0, affine.Form{C: -0.5, T: []affine.Term{{Symbol: t.Symbol, C: -side}}}, 1)
					return nil
				}
			}
			for f := range forms {
				forms[f] = forms[f].Plus(affine.Form{T: []affine.Term{{Symbol: t.Symbol, C: (ends[1][f] - ends[0][f]) / 2}}}).
					Widen(1.5 * math.Abs((ends[1][f]+ends[0][f])/2-mid[f]))
			}
		}
	}
	for f, x := range c.plan.Formations {
		want, wanted := step.Produce.Want[x.Name]
		switch {
		case wanted:
			j.Note(w, p, judge.RateLow, f, forms[f].Shift(-float64(want.Least)).Times(rateParts), 0)
			j.Note(w, p, judge.RateHigh, f, forms[f].Times(-1).Shift(float64(want.Greatest)).Times(rateParts), 0)
		case forms[f].Least() < 0: // it takes fluid from the others
			j.Note(w, p, judge.RateLow, f, forms[f].Times(rateParts), 0)
		}
	}
	return nil
}

// fault is what is wrong with an inflow's own numbers.
func (in *Inflow) fault(pressure unit.Pressure) error {
	switch {
	case in.gas() && (in.Index != 0 || in.Bubble != 0 || in.WaterCut != 0):
		return errors.New("gives gas by open_flow: index, bubble_point and water_cut belong to liquid")
	case in.WaterDensity != 0 && in.WaterCut == 0:
		return errors.New("has a water_density without a water_cut")
	case !(in.GasCut >= 0 && in.GasCut < 1):
		return fmt.Errorf("has a gas_cut of %v; must be from 0 to below 1", in.GasCut)
	case !(in.WaterDensity >= 0) || in.WaterDensity > 3000*unit.KilogramPerCubicMetre:
		return fmt.Errorf("has a water_density of %v; must be from 0 to 3000 kg/m3", in.WaterDensity)
	case !in.gas() && in.Exponent != 0:
		return errors.New("has an exponent without an open_flow")
	case pressure <= 0: // which is told elsewhere
		return nil
	}
	return in.at(pressure).Validate()
}
