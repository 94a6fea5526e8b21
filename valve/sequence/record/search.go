package record

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// search looks for the ways in which a record may have come about.
type search struct {
	ctx      context.Context
	opt      *Options
	plan     *sequence.Plan // as run
	follower *sequence.Follower
	frames   map[int]*frame
	last     int // step recorded last
	effects  map[string]bool
	unseen   map[int][]string // by first step of a branch: the actions of which one wasn't seen
}

// lapse is one way in which a step was otherwise than its walk has it.
type lapse struct {
	step   int
	action string // did not happen, or
	leak   string // leaked, or
	early  *Moved // happened though its band wasn't reached
}

// node is a hypothesis, with the well where it has brought it.
type node struct {
	faults   []lapse
	at       *sequence.Situation
	share    float64 // of the worst that speaks against it
	worst    item
	worstIn  int // step
	outcomes map[int]*outcome
	seen     map[int]*sequence.Seen
}

// with is a node with another fault.
func (n *node) with(x lapse) *node {
	c := *n
	c.faults = append(slices.Clone(n.faults), x)
	c.outcomes, c.seen = map[int]*outcome{}, map[int]*sequence.Seen{}
	for k, v := range n.outcomes {
		c.outcomes[k] = v
	}
	for k, v := range n.seen {
		c.seen[k] = v
	}
	return &c
}

// still are the actions that don't move in a step: once one hasn't, it doesn't until
// a step means it to.
func (n *node) still(p *sequence.Plan, step int) []string {
	var all []string
	for _, f := range n.faults {
		if f.action == "" || f.step > step {
			continue
		}
		again := false
		for i := f.step + 1; i <= step; i++ {
			again = again || slices.Contains(p.Steps[i].Expect, f.action)
		}
		if !again {
			all = append(all, f.action)
		}
	}
	return all
}

// leak is what leaks in a step.
func (n *node) leak(step int) string {
	for _, f := range n.faults {
		if f.leak != "" && f.step == step {
			return f.leak
		}
	}
	return ""
}

// look walks all hypotheses with up to so many faults. Those that are ruled out come
// back apart.
func (s *search) look(depth int) (alive, dead []*node, err error) {
	alive = []*node{{outcomes: map[int]*outcome{}, seen: map[int]*sequence.Seen{}}}
	for i := 0; i <= s.last; i++ {
		var next []*node
		for _, n := range alive {
			out, err := s.step(n, i, depth)
			if err != nil {
				return nil, nil, err
			}
			next = append(next, out...)
		}
		alive = alive[:0]
		for _, n := range next {
			if n.share > ruledOut {
				dead = append(dead, n)
			} else {
				alive = append(alive, n)
			}
		}
		if len(alive) == 0 {
			break
		}
	}
	slices.SortStableFunc(alive, simplest)
	return alive, dead, nil
}

// simplest puts what supposes fewer faults first, and of those what fits better.
func simplest(a, b *node) int {
	return cmp.Or(cmp.Compare(len(a.faults), len(b.faults)), cmp.Compare(a.share, b.share))
}

// step takes a hypothesis through a step, in all ways with one fault more each, as
// many as are allowed.
func (s *search) step(n *node, i, depth int) ([]*node, error) {
	base, err := s.walk(n, i)
	if err != nil || base == nil {
		return nil, err
	}
	all := []*node{base}
	for k := 0; k < len(all); k++ {
		x := all[k]
		if len(x.faults) >= depth {
			continue
		}
		for _, e := range x.seen[i].Events {
			if e.Partial != "" || !s.effects[e.Action] || x.after(i, e.Action) {
				continue
			}
			m := n.with(lapse{step: i, action: e.Action})
			m.faults = append(slices.Clone(x.faults), lapse{step: i, action: e.Action})
			y, err := s.walk(m, i)
			if err != nil {
				return nil, err
			}
			if y != nil {
				all = append(all, y)
			}
		}
		if x.leak(i) == "" && x.outcomes[i] != nil && x.outcomes[i].worst().share > fits {
			for _, name := range s.leaky(x, i) {
				m := n.with(lapse{step: i, leak: name})
				m.faults = append(slices.Clone(x.faults), lapse{step: i, leak: name})
				y, err := s.walk(m, i)
				if err != nil {
					return nil, err
				}
				if y != nil && y.outcomes[i].lost > 0 && y.outcomes[i].worst().share < x.outcomes[i].worst().share {
					all = append(all, y)
				}
			}
		}
	}
	return all, nil
}

// after tells whether a node has a fault in this step that stands behind an action in
// the alphabet: two faults in one step are tried in one order only.
func (n *node) after(step int, action string) bool {
	for _, f := range n.faults {
		if f.step == step && (f.leak != "" || f.action >= action) {
			return true
		}
	}
	return false
}

// leaky are the compartments whose volumes or pressures may show a leak in a step.
func (s *search) leaky(n *node, i int) []string {
	var all []string
	// So little is no pressure for anything to leak at.
	const least = 100 * unit.PSI
	f := s.frames[i]
	for name, x := range n.outcomes[i].courses {
		mean := x.load[len(x.load)-1] / (f.time[len(f.time)-1] - f.time[0])
		if mean > float64(least)/4 && x.still() {
			all = append(all, name)
		}
	}
	slices.Sort(all)
	return all
}

// walk takes a hypothesis through one step as it stands. What can't be walked is
// ruled out: nil.
func (s *search) walk(n *node, i int) (*node, error) {
	seen, at, err := s.follower.Step(s.ctx, n.at, i, n.still(s.plan, i))
	if err != nil {
		if s.ctx.Err() != nil {
			return nil, s.ctx.Err()
		}
		if len(n.faults) == 0 {
			return nil, err
		}
		return nil, nil
	}
	c := n.with(lapse{})
	c.faults = n.faults
	c.at, c.seen[i] = at, seen
	f := s.frames[i]
	if f == nil {
		return c, nil
	}
	o := f.evaluate(seen, s.plan, s.opt, n.leak(i))
	if not := s.unseen[i]; len(not) > 0 && !slices.ContainsFunc(n.faults, func(x lapse) bool { return slices.Contains(not, x.action) }) {
		// That it was done speaks for what it is done for, though no instrument shows it.
		o.add((fits+ruledOut)/2, "it was done, which is for where “%s” isn't seen", strings.Join(not, "”, or “"))
	}
	c.outcomes[i] = o
	if w := o.worst(); w.share > c.share {
		c.share, c.worst, c.worstIn = w.share, w, i
	}
	return c, nil
}

// effects are the actions that change the well.
func effects(p *sequence.Plan) map[string]bool {
	all := map[string]bool{}
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			if len(a.Opens)+len(a.Closes)+len(a.Arms) > 0 || a.Holds || a.Releases {
				all[d.Name+": "+a.Name] = true
			}
		}
	}
	return all
}
