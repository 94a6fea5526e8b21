package sequence

import (
	"maps"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Rise is how fast a surface pressure is changed in a ramp, by the plan's own rule, and
// what that takes of the pump.
type Rise struct {
	Compartment string        `json:"compartment"`
	Ramp        int           `json:"ramp"` // counted from 1
	From        unit.Pressure `json:"from"`
	To          unit.Pressure `json:"to"`
	PerMinute   unit.Pressure `json:"per_minute"` // change in a minute, without sign
	Minutes     float64       `json:"minutes"`    // that the ramp takes
	// Pump is the mean rate that compression takes; negative: it comes back. It is zero
	// where a compartment before it in the ramp has the whole of their joined fluid, and
	// where volumes aren't counted.
	Pump unit.FlowRate `json:"pump"`
}

// rises are the ramps of a step in time, where the plan says how fast. What moves
// together in a ramp moves in the same time: the greatest change has the plan's rate.
//
//	t = max |Δp| / rate        q = V·c·Δp / t
func (k *checker) rises(i int) []Rise {
	step := &k.plan.Steps[i]
	rate := step.rise(k.plan)
	if rate == 0 {
		return nil
	}
	var all []Rise
	for n, ramp := range step.Ramps {
		if n+1 >= len(k.standstills[i]) {
			break
		}
		before, after := k.standstills[i][n].world.State, k.standstills[i][n+1].world.State
		volumes := k.rampVolumes(before, after, ramp)
		most := 0.0
		from := map[string]float64{}
		for name, to := range ramp {
			from[name] = 0
			if c := k.by.compartment[name]; before.Surface[c] {
				p, err := before.At(c, 0)
				if err != nil {
					continue
				}
				from[name] = p.F.C
			}
			most = max(most, math.Abs(float64(to)-from[name]))
		}
		if most == 0 {
			continue
		}
		minutes := most / float64(rate)
		for _, name := range slices.Sorted(maps.Keys(ramp)) {
			change := math.Abs(float64(ramp[name]) - from[name])
			if change == 0 {
				continue
			}
			x := Rise{Compartment: name, Ramp: n + 1, From: unit.Pressure(from[name]), To: ramp[name], PerMinute: unit.Pressure(change / minutes), Minutes: minutes}
			for _, v := range volumes {
				if v.Compartment == name {
					x.Pump = unit.FlowRate(float64(v.Volume) / (60 * minutes))
				}
			}
			all = append(all, x)
		}
	}
	return all
}

// rise checks how fast pressures are to be changed.
func (v *validation) rise(path string, p unit.Pressure) {
	if p != 0 && !(p >= leastRise && p <= mostPressure) {
		v.fault(path, "is %v in a minute; must be from %v to %v, or left out", p, leastRise, mostPressure)
	}
}

const leastRise = 0.1 * unit.PSI
