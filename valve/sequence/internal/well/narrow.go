package well

import (
	"maps"
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// Narrow is the network with some symbols narrowed.
func (n *Network) Narrow(part affine.Part) *Network {
	f := *n
	f.Heat = slices.Clone(n.Heat)
	for i := range f.Heat {
		f.Heat[i] = f.Heat[i].Narrow(part)
	}
	f.Fluids = slices.Clone(n.Fluids)
	for i := range f.Fluids {
		f.Fluids[i].Density = f.Fluids[i].Density.Narrow(part)
		f.Fluids[i].Scale = f.Fluids[i].Scale.Narrow(part)
	}
	f.Compartments = slices.Clone(n.Compartments)
	for i := range f.Compartments {
		f.Compartments[i].Trapped = f.Compartments[i].Trapped.Narrow(part)
	}
	f.Formations = slices.Clone(n.Formations)
	for i := range f.Formations {
		f.Formations[i].Pressure = f.Formations[i].Pressure.Narrow(part)
		f.Formations[i].Fracture = f.Formations[i].Fracture.Narrow(part)
	}
	f.Actions = slices.Clone(n.Actions)
	for i := range f.Actions {
		a := &f.Actions[i]
		a.Chamber, a.Off, a.Bite = a.Chamber.Narrow(part), a.Off.Narrow(part), a.Bite.Narrow(part)
		a.Row = slices.Clone(a.Row)
		for k := range a.Row {
			a.Row[k].Level = a.Row[k].Level.Narrow(part)
			a.Row[k].Rearm = a.Row[k].Rearm.Narrow(part)
		}
	}
	f.sharesFixed = maps.Clone(n.sharesFixed)
	if f.sharesFixed == nil {
		f.sharesFixed = map[int]affine.Form{}
	}
	for _, symbol := range n.shares {
		if middle, half, ok := part(symbol); ok {
			share := affine.Const(0.5 + 0.5*middle)
			if half != 0 {
				share.T = []affine.Term{{Symbol: symbol, C: 0.5 * half}}
			}
			f.sharesFixed[symbol] = share
		}
	}
	return &f
}
