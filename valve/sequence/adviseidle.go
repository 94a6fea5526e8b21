package sequence

import (
	"slices"

	"completion.example/valve/sequence/internal/proof"
)

// shutting is a range of a window in which a limit is passed.
type shutting struct {
	why             string
	least, greatest float64
}

// shutBy are the ranges in which limits are passed, or aren't shown to be kept.
func (k *checker) shutBy(w *Window, bad []proof.Bad) []shutting {
	var all []shutting
	for _, b := range bad {
		if b.Margin != nil {
			b.Left = false
			all = append(all, shutting{k.reason(w, b), b.Least, b.Greatest})
		}
	}
	return all
}

// idle tells whether a change opens none of the windows, however large it is: the largest
// that can be walked is tried first. Where limits shut a window from end to end as planned
// and the same ones still do then, with the nominal values, they do for what lies between,
// since more of a density or of pins moves the edge of a limit one way.
func (o *opener) idle(c *candidate, known map[int]*tried) (bool, error) {
	if !c.part || len(o.shuts) == 0 {
		return false, nil
	}
	for _, n := range slices.Backward(c.sizes) {
		t, err := o.tried(c, n, known)
		if err != nil {
			return false, err
		}
		if t == nil {
			continue // it can't be made, or fails on the way
		}
		for w, empty := range o.empty {
			if !shutThroughout(o.shuts[w], t.shuts[w], empty.held) {
				return false, nil
			}
		}
		return true, nil
	}
	return true, nil
}

// shutThroughout tells whether ranges in which the same limits are passed both before and
// after cover everything that is held, but for what is narrower than the search parts.
func shutThroughout(before, after []shutting, h proof.Held) bool {
	least, fine := h.Least, 10*h.Fine
	var both []shutting
	for _, a := range before {
		for _, b := range after {
			if a.why == b.why {
				both = append(both, shutting{a.why, max(a.least, b.least), min(a.greatest, b.greatest)})
			}
		}
	}
	for more := true; more; { // as far as they reach on from each other
		more = false
		for _, x := range both {
			if x.least <= least+fine && x.greatest > least {
				least, more = x.greatest, true
			}
		}
	}
	return least >= h.Greatest-fine
}
