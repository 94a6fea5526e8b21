package stringload

import "completion.example/valve/sequence/internal/well"

// Fix is the string with numbers in the place of some symbols.
func (r *Room) Fix(n *well.Network, value func(symbol int) (float64, bool)) *Room {
	f := *r
	f.Network = n
	f.Drag = f.Drag.Fix(value)
	return &f
}
