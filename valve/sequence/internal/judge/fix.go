package judge

import "slices"

// Fix is the limits with numbers in the place of some symbols.
func (l *Limits) Fix(value func(symbol int) (float64, bool)) *Limits {
	f := *l
	f.Ratings = slices.Clone(l.Ratings)
	for i := range f.Ratings {
		r := &f.Ratings[i]
		r.Burst, r.Collapse = r.Burst.Fix(value), r.Collapse.Fix(value)
		r.Background = slices.Clone(r.Background)
		for k := range r.Background {
			r.Background[k] = r.Background[k].Fix(value)
		}
	}
	return &f
}
