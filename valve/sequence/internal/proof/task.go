package proof

import (
	"completion.example/valve/sequence/internal/affine"
)

// task is a range that is to be looked at.
type task struct {
	span
	hope hope
	at   float64 // the value that there is hope for
}

// hope tells whether a range holds a value that is right in all choices of all else.
type hope int8

const (
	unknown hope = iota
	some         // there is one
	none         // its middle isn't one
)

// easy is how many walks a window takes that needs no telling of what is worth while.
const easy = 64

// next is the number of the task to be done next: those without hope last, and of the
// others the widest, so that what is left when the work is at its end is narrow.
func next(work []task) int {
	best := 0
	for i, x := range work {
		y := work[best]
		if (x.hope == none) != (y.hope == none) {
			if y.hope == none {
				best = i
			}
			continue
		}
		if x.width() > y.width() {
			best = i
		}
	}
	return best
}

// part is a part of a range: there is hope for it where the value lies in it.
func (t task) part(x span) task {
	if t.hope == some && t.at >= x.least && t.at <= x.greatest {
		return task{x, some, t.at}
	}
	return task{span: x}
}

// hope looks at the middle of a range alone.
func (w *window) hope(x *task) error {
	w.walks++
	x.at = x.least + x.width()/2
	run, err := w.all.walk(w, span{x.at, x.at}, affine.Const(x.at))
	w.events += run.Events
	if w.ctx != nil && w.ctx.Err() != nil {
		return w.ctx.Err()
	}
	x.hope = none
	if err == nil && run.Open == nil && len(run.Judge.Passed()) == 0 {
		x.hope = some
	}
	return nil
}
