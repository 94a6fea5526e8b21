package movement

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"completion.example/hydrostatics/unit"
)

// LoadAll computes the string in many states, on all cores; the answers are
// those of Load, bit for bit, in the order of the states. The states' functions
// are called from several goroutines at once. Faults are reported together and
// name the state by its index.
func (l *Landed) LoadAll(states []WellProfiles) ([]Case, error) {
	if l == nil { // told here: what panics in a goroutine takes the program with it
		return nil, errNotMadeUp
	}
	cases, faults := make([]Case, len(states)), make([]error, len(states))
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(states)) {
		wait.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(states)); i = next.Add(1) - 1 {
				if err := l.LoadInto(&cases[i], states[i]); err != nil {
					faults[i] = fmt.Errorf("state %d: %w", i, err)
				}
			}
		})
	}
	wait.Wait()
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return cases, nil
}

// LongestTool returns the length of the longest stiff tool of a diameter that
// passes through the whole string in a case, and the depth that stops a longer
// one. Where the length doesn't matter limited is false; a tool wider than the
// bore somewhere has length zero. Each node is taken as a bend of its own
// curvature, hole and buckling together: see Helix.LongestTool. Nothing passes a
// case that isn't of this string.
func (l *Landed) LongestTool(c *Case, diameter unit.Length) (length, at unit.Length, limited bool) {
	if l == nil || c == nil {
		return 0, 0, true
	}
	return l.made.longestTool(c.Nodes, diameter)
}

// LongestTool is that of a string under load: see Landed.LongestTool. What is
// lost with a joint that parted stops nothing.
func (m *MadeUp) LongestTool(l *Loading, diameter unit.Length) (length, at unit.Length, limited bool) {
	if m == nil || l == nil {
		return 0, 0, true
	}
	nodes := l.Nodes
	for i := range l.segments {
		if g := &l.segments[i]; g.lost {
			from, _ := m.reach(g)
			nodes = nodes[:from]
			break
		}
	}
	return m.longestTool(nodes, diameter)
}

func (m *MadeUp) longestTool(nodes []Node, diameter unit.Length) (length, at unit.Length, limited bool) {
	if diameter != diameter {
		return diameter, 0, true
	}
	longest := math.Inf(1)
	for i := range nodes {
		n := &nodes[i]
		if n.Section < 0 || n.Section >= len(m.sections) || i >= len(m.own) {
			return 0, n.MD, true
		}
		play := float64(m.sections[n.Section].Pipe.ID - diameter)
		κ := float64(n.Curvature)
		if κ == 0 && play >= 0 || play/2 >= m.bars[n.Section].r && m.elements[m.own[i]].curvature == 0 {
			continue
		}
		if pass := math.Sqrt(8 * max(0, play) / κ); play < 0 || pass < longest {
			longest, at, limited = pass, n.MD, true
			if play < 0 {
				return 0, at, true
			}
		}
	}
	if !limited {
		return 0, 0, false
	}
	return unit.Length(longest), at, true
}
