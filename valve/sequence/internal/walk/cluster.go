package walk

import (
	"cmp"
	"slices"

	"completion.example/valve/sequence/internal/well"
)

// places are those of the compartments' and then of the actions' names in their order.
func places(n *well.Network) []int {
	name := func(i int) string {
		if i < len(n.Compartments) {
			return n.Compartments[i].Name
		}
		return n.Actions[i-len(n.Compartments)].Name
	}
	order := make([]int, len(n.Compartments)+len(n.Actions))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(name(a), name(b)) })
	all := make([]int, len(order))
	for k, i := range order {
		all[i] = k
	}
	return all
}

// cluster is what is walked along a leg on its own.
type cluster struct {
	first   int // of the names of what is in it, its place: the order of the file is nobody's order
	actions []int
	owns    []bool // by compartment: what happens here may move it
	free    []bool // by compartment: nothing moves it but the pressure that is applied
	limits  []int
}

// driven tells for every compartment whether its pressure is the one that is
// applied to it, whatever happens below: then it ties nothing together.
func driven(s *well.State, mixed map[int]bool) []bool {
	d := make([]bool, len(s.Compartments))
	for i := range d {
		d[i] = s.Surface[i] && !mixed[i]
	}
	for i := range d {
		if m := s.SecondReference(i); m.With >= 0 && s.Surface[i] {
			for _, k := range s.Body(i) {
				d[k] = false
			}
		}
	}
	return d
}

// sets are disjoint sets of compartments and actions.
type sets []int

func (u sets) find(i int) int {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

func (u sets) unite(i, j int) { u[u.find(i)] = u.find(j) }

// clusters parts the well. ties are compartments that a limit holds against each
// other; more are pairs that have turned out to belong together.
func (k *Walker) clusters(w *World, more []int, mixed map[int]bool) []*cluster {
	s := w.State
	free := driven(s, mixed)
	if len(more) > 0 {
		return k.part(s, free, more)
	}
	if k.parted == nil || !slices.Equal(k.partedOpen, s.Open) || !slices.Equal(k.parted[0].free, free) {
		k.parted, k.partedOpen = k.part(s, free, nil), slices.Clone(s.Open)
	}
	return k.parted
}

// part is that with the compartments that nothing moves but what is applied.
func (k *Walker) part(s *well.State, free []bool, more []int) []*cluster {
	n := len(s.Compartments)
	u := make(sets, n+len(s.Actions))
	for i := range u {
		u[i] = i
	}
	tie := func(a, b int) {
		if a >= 0 && b >= 0 && (a >= n || !free[a]) && (b >= n || !free[b]) {
			u.unite(a, b)
		}
	}
	for p, port := range s.Ports {
		if s.Open[p] {
			tie(port.A, port.B)
		}
	}
	device := make([]int, s.Devices)
	moves := -1 // an action that the string feels or that feels it: all of them are walked together
	for i := range s.Actions {
		a := &s.Actions[i]
		if device[a.Device] != 0 {
			u.unite(n+i, device[a.Device])
		}
		device[a.Device] = n + i
		if a.Axial || a.Holds || a.Releases {
			for _, c := range k.stringTies {
				tie(n+i, c)
			}
			if moves >= 0 {
				u.unite(n+i, moves)
			}
			moves = n + i
		}
		if !a.Axial {
			tie(n+i, a.Inside)
			tie(n+i, a.Outside)
			for _, m := range a.More {
				tie(n+i, m.Compartment)
			}
		}
		for _, x := range a.Strokes {
			tie(n+i, x.Compartment)
		}
	}
	for _, t := range k.ties {
		for _, c := range t {
			for _, o := range t {
				tie(c, o)
			}
		}
	}
	for i := 1; i < len(more); i += 2 {
		tie(more[i-1], more[i])
	}
	var all []*cluster
	byRoot := make([]*cluster, len(u))
	var owned []bool
	of := func(root int) *cluster {
		c := byRoot[root]
		if c == nil {
			c = &cluster{first: len(k.places), free: free}
			if len(owned) < n {
				owned = make([]bool, n*8)
			}
			c.owns, owned = owned[:n:n], owned[n:]
			byRoot[root] = c
			all = append(all, c)
		}
		return c
	}
	for i := range s.Actions {
		c := of(u.find(n + i))
		c.actions = append(c.actions, i)
		c.first = min(c.first, k.places[n+i])
	}
	for i := range n {
		if !free[i] {
			c := of(u.find(i))
			c.owns[i] = true
			c.first = min(c.first, k.places[i])
		}
	}
	if len(all) == 0 {
		all = append(all, &cluster{owns: make([]bool, n), free: free})
	}
	slices.SortStableFunc(all, func(a, b *cluster) int { return a.first - b.first })
	for l, t := range k.ties {
		c := all[0]
		if l == len(k.ties)-1 && k.stringTies != nil && moves >= 0 {
			c = of(u.find(moves)) // so that it is looked at just before and after it is moved
		}
		for _, i := range t {
			if i >= n || !free[i] {
				c = of(u.find(i))
				break
			}
		}
		c.limits = append(c.limits, l)
	}
	return all
}

// together are pairs that make one cluster of everything.
func (k *Walker) together(w *World) (pairs []int) {
	n := len(w.State.Compartments)
	for i := range n + len(w.State.Actions) {
		pairs = append(pairs, n, i)
	}
	return pairs
}

// conflict says that something that happened reaches beyond its cluster.
type conflict struct {
	a, b  int
	mixed []int
}

func (conflict) Error() string { return "clusters belong together" }

// beyond finds whether moving the ports of an action reaches what isn't in the
// cluster. The ports have been moved.
func (c *cluster) beyond(s *well.State, action int) error {
	a := &s.Actions[action]
	n := len(s.Compartments)
	for _, ports := range [2][]int{a.Opens, a.Closes} {
		for _, p := range ports {
			for _, end := range [2]int{s.Ports[p].A, s.Ports[p].B} {
				if !c.owns[end] && !c.free[end] {
					return conflict{a: n + action, b: end}
				}
			}
		}
	}
	// Two surface pressures that come to fix one body drive none of its
	// compartments: what they make of it is decided below.
	for _, p := range a.Opens {
		body := s.Body(s.Ports[p].A)
		var surfaces []int
		for _, m := range body {
			if s.Surface[m] {
				surfaces = append(surfaces, m)
			}
		}
		for _, m := range body {
			if !c.owns[m] && (!c.free[m] || len(surfaces) > 1) {
				return conflict{a: n + action, b: m, mixed: surfaces}
			}
		}
	}
	return nil
}
