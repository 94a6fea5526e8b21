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
	f.Steps = slices.Clone(l.Steps)
	for i := range f.Steps {
		g := &f.Steps[i]
		if !slices.ContainsFunc(g.Tests, func(t Test) bool { return t.Warms != nil }) {
			continue
		}
		g.Tests = slices.Clone(g.Tests)
		for k := range g.Tests {
			t := &g.Tests[k]
			all := map[int]affine.Form{}
			for c, by := range t.Warms {
				all[c] = by.Narrow(part)
			}
			if t.Warms != nil {
				t.Warms = all
			}
		}
	}
	return &f
}
