package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Reach is how near to a level is at it: 1e-7 psi, in Pa.
const Reach = 6.9e-4

// World is the well in one part of the box of inputs.
type World struct {
	State  *well.State
	Region *affine.Region
	Rows   [][]Progress // by action: alternatives of how far its row has come
	Came   []int        // by device: how many of the actions that the step expects of it have come
	Times  []int        // by action: how often it has happened since the beginning
	Live   []bool       // by formation: its inflow has been part of the plan
	// Dry are, by formation, the conditions under which it hasn't flowed in so far,
	// where that isn't certain.
	Dry   [][]affine.Form
	Trail *Trail // what happened, last first
	Past  *Past  // what was done to the string, last first
	Stuck []int  // actions whose devices don't move by what they feel
	// Stood is by action for how long a slow one has been at its level, in s; nil: none has.
	Stood []affine.Form
	level []bool     // by action: a slow one was at its level where it last stood, and nothing has happened since
	due   []ripening // by action: where on the present leg a slow one moves; nil: none does
	freed bool       // something that was stuck moves again from here on, or the string has been pulled
	just  []int      // those that got stuck in this step
	Begun int        // which choice of what may have happened before it began with
	On    int        // the string that is pulled or lands, where there are two
	keeps bool       // what was done before it landed counts: there is another one around it
	// Seen is what an observer has seen where the step stood still, to hold it against
	// what comes later in it.
	Seen []Seen

	at affine.Form // of a world that is remembered: where it stood
}

// Seen is a pressure that was seen where a step stood still.
type Seen struct {
	Index int
	F     affine.Form
	State *well.State // as it was
	Place Place
}

// Progress is how far a row of triggers has come, under conditions.
type Progress struct {
	Links int  // triggers that have been met
	Count int  // times that the next one was met
	Out   bool // the next one was met and hasn't come back to its re-arm level
	Done  bool // the row has fired; only of a silent action
	Rows  []affine.Form
	Wide  bool // the conditions hold in more than the part in which it is so
}

// is tells whether two alternatives are the same but for their conditions.
func (p Progress) is(q Progress) bool {
	return p.Links == q.Links && p.Count == q.Count && p.Out == q.Out && p.Done == q.Done
}

// Trail is something that happened, and what happened before it.
type Trail struct {
	Before *Trail
	Event
}

// Event is an action that happened, or its row coming on.
type Event struct {
	Step, Drive int // Drive counts ramps, squeeze and pulls; -1 is what comes before them
	Leg         int // grows with the walk
	Action      int // or -1: an act moves a port
	Act         int // by hand, counted from 1; 0: by pressure or pull
	Complete    bool
	Links       int
	Count       int
	Felt        affine.Form
	Place       affine.Form
	Applied     []affine.Form // by compartment, where it reaches the surface
	Pull        *affine.Form
	Across      []Across // over each port that it opens, just before
}

// Across is the pressure of A less that of B, of a port's compartments.
type Across struct {
	Port         int
	Differential affine.Form
}

// Start is the world before the first step.
func Start(n *well.Network, region *affine.Region) (*World, error) {
	w := start(n, region)
	if err := w.State.Solve(affine.Form{}); err != nil {
		return w, err
	}
	return w, w.State.Close()
}

func start(n *well.Network, region *affine.Region) *World {
	w := &World{State: n.Start(), Region: region,
		Came: make([]int, n.Devices), Times: make([]int, len(n.Actions)), Live: make([]bool, len(n.Formations)), Dry: make([][]affine.Form, len(n.Formations))}
	for range n.Actions {
		w.Rows = append(w.Rows, []Progress{{}})
	}
	return w
}

// Clone copies what a walk changes.
func (w *World) Clone() *World {
	c := *w
	c.State = w.State.Clone()
	c.Rows = slices.Clone(w.Rows) // alternatives are never written into
	n := len(w.Came)
	counts := append(append(make([]int, 0, n+len(w.Times)), w.Came...), w.Times...)
	c.Came, c.Times = counts[:n:n], counts[n:]
	c.Stuck = slices.Clone(w.Stuck)
	c.Stood = slices.Clone(w.Stood)
	c.level = slices.Clone(w.level)
	c.due = slices.Clone(w.due)
	c.Live = slices.Clone(w.Live)
	c.Dry = slices.Clone(w.Dry) // conditions are never written into
	c.Seen = slices.Clip(w.Seen)
	return &c
}

// within is the world in a part of its region, or nil.
func (w *World) within(r *affine.Region) *World {
	if r == nil {
		return nil
	}
	c := w.Clone()
	c.Region = r
	return c
}

// ways walks a world that is the caller's own in the part in which a length runs forwards,
// and in that in which it runs backwards; where it surely runs one way in the world itself.
func (w *World) ways(length affine.Form, walk func(part *World, sign float64, length affine.Form) ([]*World, error)) ([]*World, error) {
	var all []*World
	for _, sign := range [2]float64{1, -1} {
		far := length.Times(sign)
		if sign < 0 && far.Greatest() <= 0 {
			continue
		}
		part := w
		if far.Least() < 0 {
			part = w.within(w.Region.With(far))
		}
		if part == nil {
			continue
		}
		out, err := walk(part, sign, far)
		if err != nil {
			return nil, err
		}
		all = append(all, out...)
	}
	return all, nil
}

// only puts the conditions of the one alternative of an action's progress that is
// left, if it is just one, on the world. It tells whether anything is left.
func (w *World) only(i int) bool {
	if len(w.Rows[i]) != 1 || len(w.Rows[i][0].Rows) == 0 {
		return len(w.Rows[i]) > 0
	}
	p := w.Rows[i][0]
	region := w.In(p)
	if region == nil {
		return false
	}
	p.Rows, p.Wide = nil, false
	w.Region, w.Rows[i] = region, []Progress{p}
	return true
}

// In is the part of a world's region in which an alternative is so, or nil.
func (w *World) In(p Progress) *affine.Region { return p.in(w.Region) }

func (p Progress) in(r *affine.Region) *affine.Region {
	if r = r.And(p.Rows); r != nil && p.Wide {
		return r.Widened()
	}
	return r
}

// waits is the level that a row waits for next, and the way in which it is met.
func waits(row []well.Trigger, p Progress) (level affine.Form, falling bool) {
	t := &row[p.Links]
	if p.Out {
		return t.Rearm, !t.Falling
	}
	return t.Level, t.Falling
}

// met is a row that has come on by what it waited for, and whether it has fired.
func met(row []well.Trigger, p Progress) (Progress, bool) {
	if p.Out {
		p.Out = false
		return p, false
	}
	p.Count++
	if p.Count < row[p.Links].Count {
		p.Out = true
		return p, false
	}
	p.Links, p.Count = p.Links+1, 0
	return p, p.Links == len(row)
}

// last tells whether meeting what it waits for makes the row fire.
func last(row []well.Trigger, p Progress) bool {
	return !p.Out && p.Links == len(row)-1 && p.Count+1 >= row[p.Links].Count
}

// along is a differential in the direction of a trigger.
func along(falling bool, f affine.Form) affine.Form {
	if falling {
		return f.Times(-1)
	}
	return f
}
