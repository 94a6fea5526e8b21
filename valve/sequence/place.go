package sequence

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"completion.example/internal/spelling"
)

// The last parts of a path that puts a step elsewhere.
const (
	placeBefore = "before"
	placeAfter  = "after"
)

// put takes a step of the plan's own list out of its place and puts it before or after
// another; ok tells whether the path says so at all.
func (p *Plan) put(path, other string) (e Edit, ok bool, err error) {
	i := strings.LastIndexByte(path, '.')
	if i < 0 || path[i+1:] != placeBefore && path[i+1:] != placeAfter {
		return e, false, nil
	}
	side := path[i+1:]
	r, err := find(reflect.ValueOf(p).Elem(), path[:i])
	if err != nil || len(r.steps) != 2 || r.path != "steps."+p.stepAt(r.steps[1].index) {
		return e, false, nil
	}
	from := r.steps[1].index
	e = Edit{Path: r.path + "." + side, Before: p.stepAt(from + 1), Now: other}
	if side == placeAfter {
		e.Before = p.stepAt(from - 1)
	}
	s := p.Steps[from]
	rest := slices.Delete(slices.Clone(p.Steps), from, from+1)
	to := slices.IndexFunc(rest, func(x Step) bool { return x.Name == other })
	switch {
	case s.flow != nil:
		return Edit{}, true, fmt.Errorf("sequence: %s: the steps of a plan whose branches are written out stay where they are", e.Path)
	case to < 0:
		var names []string
		for _, x := range rest {
			names = append(names, x.Name)
		}
		if near := spelling.Near(other, names); len(near) > 0 {
			return Edit{}, true, fmt.Errorf("sequence: %s: no other step %q; did you mean %q?", e.Path, other, near[0])
		}
		return Edit{}, true, fmt.Errorf("sequence: %s: no other step %q; there are %q", e.Path, other, names)
	case side == placeAfter:
		to++
	}
	p.Steps = slices.Insert(rest, to, s)
	return e, true, nil
}

// stepAt is the name of a step; none beyond the ends.
func (p *Plan) stepAt(i int) string {
	if i < 0 || i >= len(p.Steps) {
		return ""
	}
	return p.Steps[i].Name
}
