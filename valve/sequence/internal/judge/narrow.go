package judge

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// Narrow is the limits with some symbols narrowed.
func (l *Limits) Narrow(part affine.Part) *Limits {
	f := *l
	f.Ratings = slices.Clone(l.Ratings)
	for i := range f.Ratings {
		r := &f.Ratings[i]
		r.Burst, r.Collapse = r.Burst.Narrow(part), r.Collapse.Narrow(part)
		r.Background = slices.Clone(r.Background)
		for k := range r.Background {
			r.Background[k] = r.Background[k].Narrow(part)
		}
	}
	return &f
}
