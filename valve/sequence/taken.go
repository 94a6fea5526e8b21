package sequence

import (
	"fmt"
	"slices"
)

// Way is a way through the branches of a plan.
type Way struct {
	Left   []bool           `json:"left"`   // by step: it doesn't lie on the way
	Unseen map[int][]string `json:"unseen"` // by the first step of a branch that was taken: the actions of which one wasn't seen
}

// Taken is the plan along one way through its branches: that on which the steps in
// done lie, numbered from 0 in Expanded's list, and, where they don't say, the way of
// what is seen. Its steps have the numbers of Expanded's; those that don't lie on the
// way are empty. The plan has no branches. The error names a step that lies on no way
// with those before it.
func (p *Plan) Taken(done []int) (*Plan, Way, error) {
	q := p.Expanded()
	if q == p {
		q = p.Clone()
	}
	if q == nil {
		return nil, Way{}, errNoPlan
	}
	left := make([]bool, len(q.Steps))
	way := Way{left, map[int][]string{}}
	if len(q.Steps) == 0 || q.Steps[0].flow == nil {
		return q, way, nil
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
			way.Unseen[to] = f.not
		}
		for _, d := range done {
			if i < d && d < to {
				return nil, Way{}, fmt.Errorf("sequence: step %d, %s, isn't on the way that goes on from step %d, %s", d+1, q.Steps[d].Name, i+1, last)
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
	return q, way, nil
}

// After is the list of steps that follow a step, numbered as Expanded's, with the
// branches that are still to come: what is left of the branch that the step is in, and
// then the plan's own list. unseen tells that what its step expects wasn't seen, so that
// its branch is next. After a last step it is empty.
//
// Errors: a plan without that step.
func (p *Plan) After(step int, unseen bool) ([]Step, error) {
	q := p.Expanded()
	switch {
	case q == nil:
		return nil, errNoPlan
	case step < 0 || step >= len(q.Steps):
		return nil, fmt.Errorf("sequence: step: is %d; must be from 0 to %d", step, len(q.Steps)-1)
	case q == p:
		q = p.Clone()
	}
	i := step + 1
	if f := q.Steps[step].flow; f != nil {
		if i = f.next; unseen && f.fail >= 0 {
			i = f.fail
		}
	}
	plain := func(i int) Step {
		s := q.Steps[i]
		s.flow = nil
		return s
	}
	var all []Step
	for i < len(q.Steps) {
		f, s := q.Steps[i].flow, plain(i)
		i++
		if f != nil {
			i = f.next
		}
		if f != nil && f.fail >= 0 {
			s.Otherwise = &Otherwise{Not: f.not, Then: f.then}
			for k := f.fail; k < f.next; k++ {
				s.Otherwise.Steps = append(s.Otherwise.Steps, plain(k))
			}
		}
		all = append(all, s)
	}
	return all, nil
}
