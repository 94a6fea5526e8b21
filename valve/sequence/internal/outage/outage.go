// Package outage lets what is asked fail at each of the ways by which code comes to ask it:
// for tests that want every refusal handed on.
package outage

import "runtime"

// Counter counts how often something is asked, and fails from one call on.
type Counter struct {
	calls, from int
	edges       map[[2]uintptr]bool // who had called whom when it was asked
	fresh       []int               // calls that came by a new one
}

// Fails counts a call, by who calls what calls it.
func (c *Counter) Fails() bool {
	c.calls++
	if c.edges != nil {
		var stack [128]uintptr
		fresh := false
		for n, i := runtime.Callers(3, stack[:]), 1; i < n; i++ {
			if e := [2]uintptr{stack[i-1], stack[i]}; !c.edges[e] {
				c.edges[e], fresh = true, true
			}
		}
		if fresh {
			c.fresh = append(c.fresh, c.calls)
		}
	}
	return c.from > 0 && c.calls >= c.from
}

// EachWay runs what asks for something, and then once more for each of its ways, or every
// so many of them and the last, by which it came to ask: there the answer fails, and so do all after it.
// It returns how many ways there are.
func EachWay(every int, run func(c *Counter, fails bool)) int {
	c := &Counter{edges: map[[2]uintptr]bool{}}
	run(c, false)
	for n, from := range c.fresh {
		if n%every == 0 || n == len(c.fresh)-1 {
			run(&Counter{from: from}, true)
		}
	}
	return len(c.fresh)
}
