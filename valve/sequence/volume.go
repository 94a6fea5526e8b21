package sequence

import (
	"maps"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Volume is fluid pumped in (positive) or let out at surface.
type Volume struct {
	Compartment string      `json:"compartment"`
	What        string      `json:"what"`
	Volume      unit.Volume `json:"volume"`
}

// swapVolume is what has to be pumped to swap a fluid.
func (s *state) swapVolume(w Swap) Volume {
	c := s.plan.Compartments[s.byName.compartment[w.Compartment]]
	return Volume{Compartment: w.Compartment, What: "swap to " + w.Fluid,
		Volume: unit.Volume(float64(c.Capacity) * float64(w.To-w.From))}
}

// rampVolumes is what a change of surface pressure takes to compress the fluid
// of everything that is joined to it: V·c·Δp at mid-depth of each compartment.
// The walls are taken as rigid, so it is the least; fluid/confined has their
// share.
func (s *state) rampVolumes(before *state, to map[string]unit.Pressure) ([]Volume, error) {
	var all []Volume
	counted := map[int]bool{}
	for _, name := range slices.Sorted(maps.Keys(to)) {
		i := s.byName.compartment[name]
		if counted[i] {
			continue // joined to one before it, which has the whole volume
		}
		members, _ := s.body(i)
		for _, m := range members {
			counted[m] = true
		}
		total := 0.0
		for _, m := range members {
			p := s.plan.Compartments[m]
			mid := (s.compartments[m].top + s.compartments[m].bottom) / 2
			now, err := s.at(m, mid)
			if err != nil {
				return nil, err
			}
			was, err := before.at(m, mid)
			if err != nil {
				return nil, err
			}
			total += float64(p.Capacity) * float64(p.Bottom-p.Top) * float64(now-was) * s.compression(m)
		}
		if total != 0 {
			all = append(all, Volume{Compartment: name, What: "compression", Volume: unit.Volume(total)})
		}
	}
	return all, nil
}

// compression is the compressibility of a compartment's fluids, in 1/Pa, by
// height.
func (s *state) compression(i int) float64 {
	sum, height := 0.0, 0.0
	for _, l := range s.layers[i] {
		for _, f := range s.plan.Fluids {
			if f.Name == l.fluid {
				sum += float64(f.Compression) * float64(l.bottom-l.top)
			}
		}
		height += float64(l.bottom - l.top)
	}
	return sum / height
}
