package sleeve

import (
	"errors"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve"
)

// Route asks for the shortest way between two sets of positions.
type Route struct {
	From    []Position         `json:"from"`
	To      []Position         `json:"to"`
	Surface valve.SurfaceRange `json:"surface"` // at the panel: greatest is the lesser of pump and line ratings

	// Single moves one sleeve at a time, so that the returns tell which moved.
	Single bool `json:"single"`

	// Permit, where it isn't nil, tells whether the well may be in a set of
	// positions on the way. From and To are not asked about.
	Permit func([]Position) bool `json:"permit"`
}

// Leg is one action of a route.
type Leg struct {
	Action     Action              `json:"action"`
	Window     valve.SurfaceWindow `json:"window"`   // of the panel pressure
	Pressure   unit.Pressure       `json:"pressure"` // the middle of the window
	Operations []Operation         `json:"operations"`
	After      []Position          `json:"after"`
}

// ErrNoRoute says that no row of actions leads from one set of positions to
// another.
var ErrNoRoute = errors.New("sleeve: no safe sequence")

// NoRouteError carries what stands in the way.
type NoRouteError struct {
	Reached int      // sets of positions that can be reached
	Refused []string // actions from the first set that have no pressure window, or would move another sleeve
	Barred  int      // sets of positions that Permit refused
}

func (e *NoRouteError) Error() string {
	s := fmt.Sprintf("%v: positions within reach: %d sets; not permitted: %d", ErrNoRoute, e.Reached, e.Barred)
	for i, r := range e.Refused {
		if i == mostRefused {
			return fmt.Sprintf("%s\n  and %d more that are refused", s, len(e.Refused)-i)
		}
		s += "\n  " + r
	}
	return s
}

// mostRefused is how many refusals an error names; Refused has them all.
const mostRefused = 4

// Is makes errors.Is(err, ErrNoRoute) true.
func (e *NoRouteError) Is(target error) bool { return target == ErrNoRoute }

// Plan returns the route with the fewest actions; of those the one that moves
// the fewest sleeves, and then holds the fewest.
//
// Every leg has a window of panel pressure in which its sleeves move for certain
// and no other can, and was gone through operation by operation. No legs: the
// positions are those wanted. Where there is no route the error is a
// *NoRouteError.
//
// An Unknown sleeve is taken to its position as one that isn't there; To must
// have none. Method: search in breadth over the sets of positions.
func (s System) Plan(r Route) ([]Leg, error) {
	heads, err := s.prepare()
	if err := fault.Join(scope, err, fault.At("From", s.checkPositions(r.From)), fault.At("To", s.checkPositions(r.To))); err != nil {
		return nil, err
	}
	if slices.Contains(r.To, Unknown) {
		return nil, fault.NewIn(scope, "To", "has unknown positions; must be known ones")
	}
	if _, err := valve.Window(r.Surface, nil); err != nil {
		return nil, fault.Join(scope, fault.At("Surface", err))
	}
	q := search{System: s, Route: r, heads: heads, seen: map[string]*node{}}
	return q.run()
}

type node struct {
	at    []Position
	via   Leg
	from  *node
	depth int
	cost  int // sleeves moved and held, within the same number of actions
}

type search struct {
	System
	Route
	heads   []float64
	seen    map[string]*node
	refused []string
}

func key(p []Position) string {
	b := make([]byte, len(p))
	for i, x := range p {
		b[i] = byte(x)
	}
	return string(b)
}

func (q *search) run() ([]Leg, error) {
	start := &node{at: q.From}
	q.seen[key(q.From)] = start
	barred := map[string]bool{}
	for layer := []*node{start}; len(layer) > 0; {
		if end := q.seen[key(q.To)]; end != nil {
			var legs []Leg
			for n := end; n.from != nil; n = n.from {
				legs = append(legs, n.via)
			}
			slices.Reverse(legs)
			return legs, nil
		}
		var next []*node
		for _, n := range layer {
			for _, a := range q.actions(n.at) {
				after := q.after(n.at, a)
				k := key(after)
				old, cost := q.seen[k], n.cost+100*len(a.Move)+len(a.Hold)
				if old != nil && (old.depth <= n.depth || old.cost <= cost) {
					continue
				}
				if k != key(q.To) && q.Permit != nil && !q.Permit(slices.Clone(after)) {
					barred[k] = true
					continue
				}
				leg, err := q.leg(n.at, a, after)
				if err != nil {
					if n == start {
						q.refused = append(q.refused, fmt.Sprintf("to %s: %v", q.name(a), err))
					}
					continue
				}
				if old == nil {
					old = &node{}
					q.seen[k] = old
					next = append(next, old)
				}
				*old = node{after, leg, n, n.depth + 1, cost}
			}
		}
		layer = next
	}
	return nil, &NoRouteError{Reached: len(q.seen), Refused: q.refused, Barred: len(barred)}
}

// actions are all that could be done: any set of sleeves opened, or closed with
// the rest held.
func (q *search) actions(at []Position) []Action {
	var actions []Action
	for _, closing := range [...]bool{false, true} {
		there := Open
		if closing {
			there = Closed
		}
		var can []int
		for i, p := range at {
			if p != there {
				can = append(can, i)
			}
		}
		for set := 1; set < 1<<len(can); set++ {
			if q.Single && set&(set-1) != 0 {
				continue
			}
			a := Action{Close: closing}
			for b, i := range can {
				if set&(1<<b) != 0 {
					a.Move = append(a.Move, i)
				} else if closing {
					a.Hold = append(a.Hold, i)
				}
			}
			actions = append(actions, a)
		}
	}
	return actions
}

func (q *search) after(at []Position, a Action) []Position {
	p := slices.Clone(at)
	for _, i := range a.Move {
		p[i] = Open
		if a.Close {
			p[i] = Closed
		}
	}
	// A held sleeve has its open line pressured with the close line vented
	// first, which takes an unknown one open.
	for _, i := range a.Hold {
		p[i] = Open
	}
	return p
}

func (q *search) leg(at []Position, a Action, after []Position) (Leg, error) {
	w, err := q.panelWindow(q.heads, at, a, q.Surface)
	if err != nil {
		return Leg{}, err
	}
	leg := Leg{Action: a, Window: w, Pressure: w.Least + w.Width()/2, After: after}
	leg.Operations = a.Operations(leg.Pressure)
	// The window doesn't know the order of the lines, nor columns on a piston
	// of unequal areas: go through it.
	_, _, err = q.Run(at, leg.Operations, after)
	return leg, err
}

func (q *search) name(a Action) string {
	verb := "open"
	if a.Close {
		verb = "close"
	}
	for _, i := range a.Move {
		verb += " " + q.Sleeves[i].Name
	}
	return verb
}
