package proof

import (
	"context"
	"fmt"
	"sync"

	"completion.example/valve/sequence/internal/affine"
)

// Singles are walks of single choices, for all windows of a plan. The zero value is
// ready.
type Singles struct {
	mutex sync.Mutex
	known map[string]*single
}

// single is a walk of one choice as far as it was wanted.
type single struct {
	mutex   sync.Mutex
	problem *Problem
	run     *Run
	to      int // the last step that it was taken to the beginning of
	err     error
}

// Know tells that a whole plan was walked at a choice already, and that all went as
// intended.
func (s *Singles) Know(p *Problem, run *Run, e []float64) {
	s.of(fmt.Sprint(e)).set(p, run, len(p.Steps), nil)
}

func (x *single) set(p *Problem, run *Run, to int, err error) {
	x.problem, x.run, x.to, x.err = p, run, to, err
}

func (s *Singles) of(key string) *single {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	if s.known == nil {
		s.known = map[string]*single{}
	}
	x := s.known[key]
	if x == nil {
		x = new(single)
		s.known[key] = x
	}
	return x
}

// walk takes one choice through the plan, to the beginning of a step at least.
func (s *Singles) walk(ctx context.Context, p *Problem, key string, e []float64, to int) (*Problem, *Run, error) {
	x := s.of(key)
	x.mutex.Lock()
	defer x.mutex.Unlock()
	if x.problem == nil || x.err == nil && x.to < to {
		q := x.problem
		if q == nil {
			q = p.At(e)
		}
		run, err := q.Walk(ctx, affine.Box(0, nil), Options{Quiet: true, Deaf: true, To: to + 1, Begins: true})
		x.set(q, run, to, err)
	}
	return x.problem, x.run, x.err
}
