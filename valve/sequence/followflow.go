package sequence

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// otherReference tells whether another compartment of a body fixes its pressure too, and
// what that drives: where the leg ends, or, if a port has parted them by then, where
// it begins.
func (k *checker) otherReference(from, to *well.State, i, m int) (OtherReference, bool) {
	x := OtherReference{Flow: Circulation}
	face := k.Network.Compartments[m].Formation
	switch {
	case m == i:
		return x, false
	case face >= 0:
		x.Name = k.plan.Formations[face].Name
	case k.plan.Compartments[m].Surface && to.Surface[m]:
		x.Name = k.plan.Compartments[m].Name
	default:
		return x, false
	}
	at := to
	if !slices.Contains(to.Body(i), m) {
		at = from
	}
	const none = 0.5 * unit.PSI
	drive := unit.Pressure(excess(at, m) - excess(at, i))
	x.Drive, x.Out = max(drive, -drive), drive > 0
	switch {
	case x.Drive < none:
		x.Drive, x.Flow = 0, ""
	case face >= 0 && x.Out:
		x.Flow = FlowOut
	case face >= 0:
		x.Flow = FlowIn
	}
	return x, true
}

// excess is by how much what carries a body exceeds this compartment's own
// reference.
func excess(s *well.State, m int) float64 {
	if s.SecondReference(m).With < 0 {
		return 0
	}
	return s.SecondReference(m).Excess.F.C
}

// atOnce is what goes into a body whose surface is held, as something opens into
// it: the differential that falls away, times what that part takes.
func (k *checker) atOnce(end *well.State, body []int, i int, at *walk.Event) unit.Volume {
	total := 0.0
	for _, x := range at.Across {
		p := &k.Network.Ports[x.Port]
		if !slices.Contains(body, p.A) {
			continue
		}
		// What joins hung on the other side of the port.
		for _, side := range [2]struct {
			in, out int
			by      float64
		}{{p.A, p.B, x.Differential.C}, {p.B, p.A, -x.Differential.C}} {
			mine := k.without(end, x.Port, side.in)
			if !slices.Contains(mine, i) {
				continue
			}
			for _, m := range k.without(end, x.Port, side.out) {
				if !slices.Contains(mine, m) {
					total += k.volumeOf(m) * k.compression(end, m) * side.by
				}
			}
		}
	}
	return unit.Volume(total)
}

// without is the body of a compartment with one port shut.
func (k *checker) without(end *well.State, port, i int) []int {
	s := end.Clone()
	s.Open[port] = false
	return s.Body(i)
}
