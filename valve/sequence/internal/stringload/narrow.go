package stringload

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Narrow is the string with some symbols narrowed.
func (r *Room) Narrow(n *well.Network, part affine.Part) *Room {
	f := *r
	f.Network = n
	f.Drag = f.Drag.Narrow(part)
	f.Factors = slices.Clone(r.Factors)
	for i := range f.Factors {
		f.Factors[i] = f.Factors[i].Narrow(part)
	}
	f.Seals = slices.Clone(r.Seals)
	for i := range f.Seals {
		f.Seals[i].Friction = f.Seals[i].Friction.Narrow(part)
	}
	if r.Outer != nil {
		f.Outer = r.Outer.Narrow(n, part)
	}
	return &f
}
