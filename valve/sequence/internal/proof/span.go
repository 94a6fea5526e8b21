package proof

import (
	"cmp"
	"slices"
)

// span is a range of a held quantity.
type span struct{ least, greatest float64 }

func (s span) width() float64 { return s.greatest - s.least }

// join makes ranges that touch one.
func join(ranges []span) []span {
	slices.SortFunc(ranges, func(a, b span) int { return cmp.Compare(a.least, b.least) })
	var all []span
	for _, r := range ranges {
		if n := len(all); n > 0 && r.least <= all[n-1].greatest {
			all[n-1].greatest = max(all[n-1].greatest, r.greatest)
			continue
		}
		all = append(all, r)
	}
	return all
}
