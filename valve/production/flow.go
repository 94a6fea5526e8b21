package production

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Flow is what a network does.
type Flow struct {
	Zones     []ZoneFlow    `json:"zones"`     // in the order of the well: from the bottom up
	Rate      unit.FlowRate `json:"rate"`      // to surface; negative where the well takes
	Water     unit.FlowRate `json:"water"`     // water in it
	WaterCut  float64       `json:"water_cut"` // its share; zero without flow
	Pressure  unit.Pressure `json:"pressure"`  // in the tubing at the topmost zone
	Bottom    unit.Pressure `json:"bottom"`    // in the tubing at the lowest zone
	Crossflow unit.FlowRate `json:"crossflow"` // taken by zones, in total
	Passes    int           `json:"passes"`    // through the network until found

	cells []cell // the solver's
}

// ZoneFlow is what one zone does.
type ZoneFlow struct {
	Position   int           `json:"position"`
	Rate       unit.FlowRate `json:"rate"`        // into the tubing; negative where the zone takes
	Water      unit.FlowRate `json:"water"`       // water in it
	Sandface   unit.Pressure `json:"sandface"`    // in front of the zone
	Tubing     unit.Pressure `json:"tubing"`      // in the tubing beside it
	Drop       unit.Pressure `json:"drop"`        // across the choke; for a shut zone what the choke holds
	Passing    unit.FlowRate `json:"passing"`     // up the tubing above it; negative where it goes down
	PassingCut float64       `json:"passing_cut"` // share of water in that
	Takes      bool          `json:"takes"`       // crossflow: the zone takes fluid from the others
	Shut       bool          `json:"shut"`
}

// Oil is the rate to surface that isn't water.
//
//	q − qw
//
// Range: any flow; zero for a nil one.
//
// Source: definition.
func (f *Flow) Oil() unit.FlowRate {
	if f == nil {
		return 0
	}
	return f.Rate - f.Water
}

// Share is a zone's part of what all zones give; zero for one that takes, and
// for one that the well hasn't.
//
//	qi/Σ q of the zones that give
//
// Range: any number of a zone; zero for a nil flow.
//
// Source: definition.
func (f *Flow) Share(zone int) float64 {
	if f == nil || zone < 0 || zone >= len(f.Zones) {
		return 0
	}
	given := float64(f.Rate + f.Crossflow)
	if given <= 0 || f.Zones[zone].Rate <= 0 {
		return 0
	}
	return float64(f.Zones[zone].Rate) / given
}

// Taking lists the indices of the zones that take fluid.
func (f *Flow) Taking() []int {
	if f == nil {
		return nil
	}
	var t []int
	for i, z := range f.Zones {
		if z.Takes {
			t = append(t, i)
		}
	}
	return t
}

// drop is the pressure lost in the choke for a solved rate.
func (n *node) drop(p, q, k float64) float64 {
	if n.shape == gas {
		if q == 0 {
			return 0
		}
		return n.gas.sandface(n.curve, n.static, p, k) - p
	}
	return k * q * math.Abs(q)
}

// water follows the water through the tubing: each stream up or down carries
// the mixture of what came into it. What comes down from surface counts as
// water.
func (n *Network) water(f *Flow) {
	top := len(n.nodes) - 1
	below := func(i int) float64 { // into node i from below
		if i == 0 {
			return 0
		}
		return max(0, float64(f.Zones[i-1].Passing))
	}
	above := func(i int) float64 { return max(0, -float64(f.Zones[i].Passing)) } // into node i from above
	mix := func(i int) float64 {
		own, under, over := max(0, float64(f.Zones[i].Rate)), below(i), above(i)
		water := own * n.nodes[i].cut
		if under > 0 {
			water += under * f.Zones[i-1].PassingCut
		}
		if over > 0 {
			water += over * f.Zones[i].PassingCut
		}
		if max(own, under, over) == 0 {
			return n.nodes[i].cut
		}
		return water / (own + under + over)
	}
	for i := range f.Zones {
		if f.Zones[i].PassingCut = 0; f.Zones[i].Passing > 0 {
			f.Zones[i].PassingCut = mix(i)
		}
	}
	for i := top; i >= 0; i-- {
		if f.Zones[i].Passing >= 0 {
			continue
		}
		if f.Zones[i].PassingCut = 1; i < top {
			f.Zones[i].PassingCut = mix(i + 1)
		}
	}
	for i := range f.Zones {
		z := &f.Zones[i]
		z.Water = z.Rate * unit.FlowRate(n.nodes[i].cut)
		if z.Rate < 0 {
			z.Water = z.Rate * unit.FlowRate(mix(i))
		}
	}
	f.WaterCut = f.Zones[top].PassingCut
	if f.Rate == 0 {
		f.WaterCut = 0
	}
	f.Water = f.Rate * unit.FlowRate(f.WaterCut)
}
