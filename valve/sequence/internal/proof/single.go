package proof

import (
	"context"
	"sync"

	"completion.example/valve/sequence/internal/affine"
)

// Singles are walks of single choices, for all windows of a plan. The zero value is
// ready.
type Singles struct {
	mutex sync.Mutex
	known map[string]*single
}

type single struct {
	once    sync.Once
	problem *Problem
	run     *Run
	err     error
}

// walk takes one choice through the plan, once.
func (s *Singles) walk(ctx context.Context, p *Problem, key string, e []float64) (*Problem, *Run, error) {
	s.mutex.Lock()
	if s.known == nil {
		s.known = map[string]*single{}
	}
	x := s.known[key]
	if x == nil {
		x = new(single)
		s.known[key] = x
	}
	s.mutex.Unlock()
	x.once.Do(func() {
		x.problem = p.At(e)
		x.run, x.err = x.problem.Walk(ctx, affine.Box(0, nil), Options{Quiet: true})
	})
	return x.problem, x.run, x.err
}
