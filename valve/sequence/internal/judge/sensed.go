package judge

import (
	"math"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// SensedRange is what an action felt in a step.
type SensedRange struct {
	Seen            bool
	Least, Greatest float64
	Level           affine.Form // that it waits for
	Falling         bool
	Left            float64 // least way to the level that it waits for
	LeftForm        affine.Form
	Point           []float64
	Waits           walk.Progress
	CameOn          bool // a trigger of its row may be met without its firing
	Link            int  // which trigger Level is of
	ReachLink       int
	HasReach        bool
	Reach           float64 // least way beyond its level, where it is intended
	ReachForm       affine.Form
	ReachPoint      []float64
	Pulled          bool // it came on a pull, with the weight indicator between
	PullLeast       float64
	PullGreatest    float64
}

// Came keeps the weight indicator when an intended action happens on a pull.
func (j *Judge) Came(w *walk.World, action int, p walk.Place) {
	if p.Pulling == nil || j.Quiet || j.Deaf {
		return
	}
	f := j.senses(p.Step, action)
	reading := p.Pulling.At(p.X)
	least, greatest := j.bound(w, reading), -j.bound(w, reading.Times(-1))
	if !f.Pulled {
		f.Pulled, f.PullLeast, f.PullGreatest = true, least, greatest
		return
	}
	f.PullLeast, f.PullGreatest = min(f.PullLeast, least), max(f.PullGreatest, greatest)
}

// Sensed keeps what an action feels, and how near to the level that it waits for
// that is.
func (j *Judge) Sensed(w *walk.World, p walk.Place, action int, q walk.Progress, from, to affine.Form) {
	if j.Quiet || j.Deaf || q.Done {
		return
	}
	if a := &j.Network.Actions[action]; a.All {
		for _, k := range a.With {
			if k != action && w.State.Armed[k] {
				return // it alone makes nothing happen
			}
		}
	}
	f := j.senses(p.Step, action)
	row := j.Network.Actions[action].Row
	t := &row[q.Links]
	level, falling := t.Level, t.Falling
	if q.Out {
		level, falling = t.Rearm, !t.Falling
	}
	if !f.Seen {
		f.Seen, f.Least, f.Greatest, f.Left = true, math.Inf(1), math.Inf(-1), math.Inf(1)
	}
	for _, x := range [2]affine.Form{from, to} {
		if x.Least() < f.Least {
			f.Least = min(f.Least, j.bound(w, x))
		}
		if x.Greatest() > f.Greatest {
			f.Greatest = max(f.Greatest, -j.bound(w, x.Times(-1)))
		}
		left := level.Minus(x)
		if falling {
			left = left.Times(-1)
		}
		if left.Least() >= f.Left {
			continue
		}
		region := w.In(q)
		if region == nil {
			continue
		}
		bound, at := region.Least(left)
		final := q.Links == len(row)-1 && !q.Out && q.Count+1 >= t.Count
		if bound < 2*walk.Reach && !final {
			f.CameOn = true // it is met, or just so: what comes after it counts
			continue
		}
		if bound < f.Left {
			f.Left, f.LeftForm, f.Point, f.Level, f.Falling, f.Link = bound, left, at, level, falling, q.Links
		}
	}
}

// bound is the least value of a form in a world.
func (j *Judge) bound(w *walk.World, f affine.Form) float64 {
	if len(w.Region.Rows()) == 0 || len(f.T) == 0 {
		return f.Least()
	}
	b, _ := w.Region.Least(f)
	return b
}

// Reached keeps by how much an intended action goes beyond its level: of a row,
// the least over its triggers.
func (j *Judge) Reached(w *walk.World, p walk.Place, action int, q walk.Progress, by affine.Form) {
	if a := &j.Network.Actions[action]; j.Quiet || j.Deaf || len(a.With) > 0 && !a.All {
		return // any of its conditions will do
	}
	f := j.senses(p.Step, action)
	if f.HasReach && by.Least() >= f.Reach {
		return
	}
	region := w.In(q)
	if region == nil {
		return
	}
	bound, at := region.Least(by)
	if !f.HasReach || bound < f.Reach {
		f.HasReach, f.Reach, f.ReachForm, f.ReachPoint, f.ReachLink = true, bound, by, at, q.Links
	}
}
