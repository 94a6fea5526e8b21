package sleeve

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Action is one shift at the panel: a line, or several, pressured and vented
// again.
//
// To open, the open lines of the sleeves are pressured with the close line
// vented. To close, the close line is pressured, with the open lines of the
// sleeves that must stay open pressured before it and vented after it.
type Action struct {
	Close bool  `json:"close"` // false: open
	Move  []int `json:"move"`  // the sleeves to move, in order
	Hold  []int `json:"hold"`  // the sleeves held open while others close
}

// pressures tells whether the action puts pressure on the open line of a sleeve.
func (a Action) pressures(sleeve int) bool {
	if a.Close {
		return slices.Contains(a.Hold, sleeve)
	}
	return slices.Contains(a.Move, sleeve)
}

func (s System) checkAction(before []Position, a Action) error {
	f := fault.In(scope)
	seen := map[int]bool{}
	list := func(name string, sleeves []int, each func(at string, i int)) {
		for k, i := range sleeves {
			each(fault.Index(name, k), i)
		}
	}
	exists := func(at string, i int) {
		if i < 0 || i >= len(s.Sleeves) {
			f.New(at, "is sleeve %d; must be from 0 to %d", i, len(s.Sleeves)-1)
		} else if seen[i] {
			f.New(at, "is %q, which is named already; must be named once", s.Sleeves[i].Name)
		}
		seen[i] = true
	}
	list("Move", a.Move, exists)
	list("Hold", a.Hold, exists)
	if len(a.Move) == 0 {
		f.New("Move", "is empty; must be one sleeve or more")
	}
	if !a.Close && len(a.Hold) > 0 {
		f.New("Hold", "is given for opening; must be empty: with the close line vented they stay")
	}
	if f.Any() {
		return f.Err()
	}
	list("Move", a.Move, func(at string, i int) {
		if before[i] == Open && !a.Close || before[i] == Closed && a.Close {
			f.New(at, "is %q, which is %v already; must be in another position", s.Sleeves[i].Name, before[i])
		}
	})
	list("Hold", a.Hold, func(at string, i int) {
		if before[i] == Closed {
			f.New(at, "is %q, which is closed; must be open: the pressure would open it", s.Sleeves[i].Name)
		}
	})
	return f.Err()
}

// CloseLine stands for the close line in an Operation.
const CloseLine = -1

// Operation sets one line at the panel: CloseLine, or the open line of a sleeve.
// To block a line keeps what it holds; the pressure of the setting isn't used.
type Operation struct {
	Line    int     `json:"line"`
	Setting Setting `json:"setting"`
}

// Operations are the steps of an action, in the order that moves nothing else.
func (a Action) Operations(pressure unit.Pressure) []Operation {
	on, off := Setting{Pressured, pressure}, Setting{}
	lines := a.Move
	if a.Close {
		lines = append(slices.Clone(a.Hold), CloseLine)
	}
	var ops []Operation
	for _, l := range lines {
		ops = append(ops, Operation{l, on})
	}
	for _, l := range slices.Backward(lines) {
		ops = append(ops, Operation{l, off})
	}
	return ops
}

// Describe writes an operation with the sleeves' names.
func (s System) Describe(op Operation) string {
	line := "close line"
	if op.Line >= 0 && op.Line < len(s.Sleeves) {
		line = "open line of " + s.Sleeves[op.Line].Name
	}
	if op.Setting.Mode == Pressured {
		return fmt.Sprintf("%s pressured to %s", line, op.Setting.Pressure.Rounded(4))
	}
	return fmt.Sprintf("%s %v", line, op.Setting.Mode)
}

// Step is an operation with what it did.
type Step struct {
	Operation Operation `json:"operation"`
	Effects   []Effect  `json:"effects"`
}

// ErrWrongMove says that an operation moves, or may move, another sleeve than
// was meant.
var ErrWrongMove = errors.New("sleeve: wrong move")

// WrongMoveError carries the numbers behind ErrWrongMove.
type WrongMoveError struct {
	Step      int // from 0
	Operation string
	Effects   []Effect // of the sleeves that were not meant, or not for certain
}

func (e *WrongMoveError) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%v in step %d, %s:", ErrWrongMove, e.Step+1, e.Operation)
	for i, x := range e.Effects {
		if i > 0 {
			b.WriteString(";")
		}
		fmt.Fprintf(&b, " %s, %v, %v (force %s, resistance %s)", x.Name, x.Before, x.Motion, x.Force.Rounded(4), x.Resistance.Rounded(4))
	}
	return b.String()
}

// Is makes errors.Is(err, ErrWrongMove) true.
func (e *WrongMoveError) Is(target error) bool { return target == ErrWrongMove }

// ErrNotReached says that the operations leave a sleeve where it wasn't meant to
// be.
var ErrNotReached = errors.New("sleeve: not reached")

// Run carries out operations one after the other, from all lines vented, and
// holds what they do against the positions wanted at the end.
//
// A sleeve that leaves its wanted position, or is no longer certain to be in it,
// ends the run with a *WrongMoveError that says what else would move; the steps
// so far are returned, and the positions after the last. A sleeve that stays out
// of its wanted position to the end is an error that is ErrNotReached. With want
// nil everything goes, and the steps tell.
//
// Other errors: the system's, and operations out of range.
func (s System) Run(before []Position, ops []Operation, want []Position) ([]Step, []Position, error) {
	heads, err := s.prepare()
	f := fault.In(scope)
	f.Add(err, fault.At("before", s.checkPositions(before)))
	if want != nil {
		f.At("want", s.checkPositions(want))
	}
	for i, op := range ops {
		f.AtIndex("ops", i, fault.Join("", fault.Whole("Line", op.Line, CloseLine, len(s.Sleeves)-1), fault.At("Setting", op.Setting.Validate())))
	}
	if err := f.Err(); err != nil {
		return nil, nil, err
	}
	now := slices.Clone(before)
	l := s.hold(Panel{})
	var steps []Step
	for i, op := range ops {
		line := &l.close
		if op.Line != CloseLine {
			line = &l.open[op.Line]
		}
		if op.Setting.Mode == Blocked {
			line.blocked = true
		} else {
			*line = op.Setting.held()
		}
		effects := s.apply(heads, now, &l)
		steps = append(steps, Step{op, effects})
		var wrong []Effect
		for k, e := range effects {
			now[k] = e.After
			if want != nil && e.After != e.Before && e.After != want[k] {
				wrong = append(wrong, e)
			}
		}
		if wrong != nil {
			return steps, now, &WrongMoveError{i, s.Describe(op), wrong}
		}
	}
	for k := range now {
		if want != nil && now[k] != want[k] {
			f.Add(fmt.Errorf("%w: %q is %v at the end, not %v", ErrNotReached, s.Sleeves[k].Name, now[k], want[k]))
		}
	}
	return steps, now, f.Err()
}
