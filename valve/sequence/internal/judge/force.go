package judge

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// ForceKind is which of the three forces of a string is kept.
type ForceKind uint8

// The forces: what a part carries, what bends the pipe, what its wall bears.
const (
	Carried ForceKind = iota // by a place that holds, up positive
	Effective
	Wall
)

// ForceKey names a force of the string in a step, at a place that holds it or could.
type ForceKey struct {
	Step  int
	Kind  ForceKind
	Place int
}

// Extreme is the least and the greatest that was seen of a number, over all choices
// of the inputs, and where.
type Extreme struct {
	Least, Greatest     float64
	LeastAt, GreatestAt Moment
}

// Moment is where in a step something was seen.
type Moment struct {
	Label  string
	Action int // just before or after which it was seen, or -1
	After  bool
}

// Force keeps the extremes of a force of the string.
func (j *Judge) Force(w *walk.World, p walk.Place, kind ForceKind, place int, f affine.Form) {
	if j.Quiet {
		return
	}
	at := Moment{p.Label, p.Action, p.After}
	key := ForceKey{p.Step, kind, place}
	x := j.Forces[key]
	if j.trying {
		j.before.forces.note(key, x)
	}
	if x == nil {
		x = &Extreme{Least: j.bound(w, f), Greatest: -j.bound(w, f.Times(-1)), LeastAt: at, GreatestAt: at}
		if j.Forces == nil {
			j.Forces = map[ForceKey]*Extreme{}
		}
		j.Forces[key] = x
		return
	}
	// Rounding doesn't make another moment.
	const same = 1e-6
	if f.Least() < x.Least-same {
		if b := j.bound(w, f); b < x.Least-same {
			x.Least, x.LeastAt = b, at
		}
	}
	if f.Greatest() > x.Greatest+same {
		if b := -j.bound(w, f.Times(-1)); b > x.Greatest+same {
			x.Greatest, x.GreatestAt = b, at
		}
	}
}
