package well

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// Fix is the network with numbers in the place of some symbols.
func (n *Network) Fix(value func(symbol int) (float64, bool)) *Network {
	f := *n
	f.Fluids = slices.Clone(n.Fluids)
	for i := range f.Fluids {
		f.Fluids[i].Density = f.Fluids[i].Density.Fix(value)
		f.Fluids[i].Scale = f.Fluids[i].Scale.Fix(value)
	}
	f.Compartments = slices.Clone(n.Compartments)
	for i := range f.Compartments {
		f.Compartments[i].Trapped = f.Compartments[i].Trapped.Fix(value)
	}
	f.Formations = slices.Clone(n.Formations)
	for i := range f.Formations {
		f.Formations[i].Pressure = f.Formations[i].Pressure.Fix(value)
		f.Formations[i].Fracture = f.Formations[i].Fracture.Fix(value)
	}
	f.Actions = slices.Clone(n.Actions)
	for i := range f.Actions {
		a := &f.Actions[i]
		a.Chamber = a.Chamber.Fix(value)
		a.Row = slices.Clone(a.Row)
		for k := range a.Row {
			a.Row[k].Level = a.Row[k].Level.Fix(value)
			a.Row[k].Rearm = a.Row[k].Rearm.Fix(value)
		}
	}
	f.sharesFixed = map[int]affine.Form{}
	for _, symbol := range n.shares {
		if e, ok := value(symbol); ok {
			f.sharesFixed[symbol] = affine.Const(0.5 + 0.5*e)
		}
	}
	return &f
}
