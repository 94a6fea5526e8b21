package sequence

import (
	"maps"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/well"
)

// volumes are what a step pumps in or lets out at surface, with the nominal
// values.
func (k *checker) volumes(i int) []VolumeMoved {
	step := &k.plan.Steps[i]
	var all []VolumeMoved
	for _, w := range step.Displace {
		c := k.plan.Compartments[k.by.compartment[w.Compartment]]
		all = append(all, VolumeMoved{Compartment: w.Compartment, What: "displacement to " + w.Fluid,
			Volume: unit.Volume(float64(c.capacity()) * float64(w.ToMD-w.FromMD))})
	}
	if len(k.standstills[i]) > 0 {
		all = append(all, k.fillVolumes(k.before(i), k.standstills[i][0].world.State)...)
	}
	for n, ramp := range step.Ramps {
		if n+1 >= len(k.standstills[i]) {
			break
		}
		all = append(all, k.fillVolumes(k.standstills[i][n].world.State, k.standstills[i][n+1].world.State)...)
		all = append(all, k.rampVolumes(k.standstills[i][n].world.State, k.standstills[i][n+1].world.State, ramp)...)
	}
	return all
}

// rampVolumes is what a change of surface pressure takes to compress the fluid
// of everything that is joined to it: V·c·Δp at mid-depth of each compartment.
// The walls are taken as rigid, so it is the least; fluid/confined has their
// share.
func (k *checker) rampVolumes(before, after *well.State, to map[string]unit.Pressure) []VolumeMoved {
	var all []VolumeMoved
	counted := map[int]bool{}
	for _, name := range slices.Sorted(maps.Keys(to)) {
		i := k.by.compartment[name]
		if counted[i] {
			continue // joined to one before it, which has the whole volume
		}
		total := 0.0
		for _, m := range after.Body(i) {
			counted[m] = true
			p := k.plan.Compartments[m]
			total += float64(p.capacity()) * float64(p.BottomMD-p.TopMD) * (middle(after, m) - middle(before, m)) * k.compression(after, m)
			if after.Closed(m) { // liquid that came in under its gas
				was, _ := before.GasIn(m)
				is, _ := after.GasIn(m)
				total += float64(p.capacity()) * (was.F.C - is.F.C)
			}
		}
		if total != 0 {
			all = append(all, VolumeMoved{Compartment: name, What: "compression", Volume: unit.Volume(total)})
		}
	}
	return all
}

// middle is the pressure half-way down a compartment.
func middle(s *well.State, i int) float64 {
	d := s.Compartments[i].Depths
	top, _ := s.At(i, 0)
	bottom, _ := s.At(i, len(d)-1)
	return (top.F.C + bottom.F.C) / 2
}

// compression is the compressibility of a compartment's fluids, in 1/Pa, by
// length.
func (k *checker) compression(s *well.State, i int) float64 {
	top := s.Compartments[i].Depths[0].MD
	sum, start := 0.0, top
	for _, l := range s.Layers(i) {
		sum += s.Fluids[l.Fluid].Compression * (l.Bottom.MD - top) // none of gas: that is counted by its mass
		top = l.Bottom.MD
	}
	return sum / (top - start)
}
