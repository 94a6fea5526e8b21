package sequence

import (
	"fmt"
	"slices"
)

// Taken is the plan along one way through its branches: that on which the steps in
// done lie, numbered from 0 in Expanded's list, and, where they don't say, the way of
// what is seen. Its steps have the numbers of Expanded's; those that don't lie on the
// way are empty, and left says which. The plan has no branches. The error names a step
// that lies on no way with those before it.
func (p *Plan) Taken(done []int) (q *Plan, left []bool, err error) {
	q = p.Expanded()
	if q == p {
		q = p.Clone()
	}
	if q == nil {
		return nil, nil, errNoPlan
	}
	left = make([]bool, len(q.Steps))
	if len(q.Steps) == 0 || q.Steps[0].flow == nil {
		return q, left, nil
	}
	for i := range left {
		left[i] = true
	}
	last := ""
	for i := 0; i < len(q.Steps); {
		left[i], last = false, q.Steps[i].Name
		f := q.Steps[i].flow
		to := f.next
		if f.fail >= 0 && slices.ContainsFunc(done, func(d int) bool { return f.fail <= d && d < f.next }) {
			to = f.fail
		}
		for _, d := range done {
			if i < d && d < to {
				return nil, nil, fmt.Errorf("sequence: step %d, %s, isn't on the way that goes on from step %d, %s", d+1, q.Steps[d].Name, i+1, last)
			}
		}
		i = to
	}
	for i := range q.Steps {
		if left[i] {
			q.Steps[i] = Step{Name: q.Steps[i].Name}
		}
		q.Steps[i].flow = nil
	}
	return q, left, nil
}
