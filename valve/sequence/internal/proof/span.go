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
	slices.SortStableFunc(ranges, func(a, b span) int { return cmp.Compare(a.least, b.least) })
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

// first is the number of the first of some ranges, apart and in order, that ends
// beyond x.
func first(ranges []span, x float64) int {
	n, _ := slices.BinarySearchFunc(ranges, x, func(r span, x float64) int {
		if r.greatest <= x {
			return -1
		}
		return 1
	})
	return n
}

// cover adds a range to ranges that are apart and in order.
func cover(ranges []span, x span) []span {
	from := first(ranges, x.least)
	if from > 0 && ranges[from-1].greatest == x.least {
		from--
	}
	to := from
	for to < len(ranges) && ranges[to].least <= x.greatest {
		x.least, x.greatest = min(x.least, ranges[to].least), max(x.greatest, ranges[to].greatest)
		to++
	}
	return slices.Replace(ranges, from, to, x)
}
