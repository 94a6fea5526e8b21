package stringload

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Narrow is the string with some symbols narrowed.
func (r *Room) Narrow(n *well.Network, part affine.Part) *Room {
	f := *r
	f.Network = n
	f.Drag = f.Drag.Narrow(part)
	return &f
}
