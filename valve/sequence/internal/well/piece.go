package well

import "iter"

// piece is a stretch of a compartment in one fluid, no longer than to the next of its
// depths.
type piece struct {
	depth    int // in Depths: the one that it leads to
	fluid    int
	from, to Depth
}

// pieces go down a compartment from its top.
func (k *Compartment) pieces(layers []Layer) iter.Seq[piece] {
	return func(yield func(piece) bool) {
		at, l := k.Depths[0], 0
		for d, to := range k.Depths {
			for at.MD < to.MD {
				next := to
				for l < len(layers)-1 && layers[l].Bottom.MD <= at.MD {
					l++
				}
				if b := layers[l].Bottom; b.MD < to.MD && b.MD > at.MD {
					next = b
				}
				if !yield(piece{d, layers[l].Fluid, at, next}) {
					return
				}
				at = next
			}
		}
	}
}
