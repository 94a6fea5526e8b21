package sleeve

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Action is one shift at the panel: a line, or several, pressured and vented
// again.
//
// To open, the open lines of the sleeves are pressured with the close line
// vented. To close, the close line is pressured, with the open lines of the
// sleeves that must stay open pressured before it and vented after it.
type Action struct {
	Close bool  // false: open
	Move  []int // the sleeves to move, in order
	Hold  []int // the sleeves held open while others close
}

// pressures tells whether the action puts pressure on the open line of a sleeve.
func (a Action) pressures(sleeve int) bool {
	if a.Close {
		return slices.Contains(a.Hold, sleeve)
	}
	return slices.Contains(a.Move, sleeve)
}

func (s System) checkAction(before []Position, a Action) error {
	var errs []error
	seen := map[int]bool{}
	for _, i := range slices.Concat(a.Move, a.Hold) {
		if i < 0 || i >= len(s.Sleeves) {
			errs = append(errs, fmt.Errorf("sleeve: action names sleeve %d; there are %d from 0", i, len(s.Sleeves)))
		} else if seen[i] {
			errs = append(errs, fmt.Errorf("sleeve: action names %q twice", s.Sleeves[i].Name))
		}
		seen[i] = true
	}
	if len(a.Move) == 0 {
		errs = append(errs, errors.New("sleeve: action moves no sleeve"))
	}
	if !a.Close && len(a.Hold) > 0 {
		errs = append(errs, errors.New("sleeve: an opening action holds no sleeves; with the close line vented they stay"))
	}
	if err := errors.Join(errs...); err != nil {
		return err
	}
	for _, i := range a.Move {
		if before[i] == Open && !a.Close || before[i] == Closed && a.Close {
			errs = append(errs, fmt.Errorf("sleeve: action moves %q, which is %v already", s.Sleeves[i].Name, before[i]))
		}
	}
	for _, i := range a.Hold {
		if before[i] == Closed {
			errs = append(errs, fmt.Errorf("sleeve: action holds %q open, which is closed: the pressure would open it", s.Sleeves[i].Name))
		}
	}
	return errors.Join(errs...)
}

// CloseLine stands for the close line in an Operation.
const CloseLine = -1

// Operation sets one line at the panel: CloseLine, or the open line of a sleeve.
// To block a line keeps what it holds; the pressure of the setting isn't used.
type Operation struct {
	Line    int
	Setting Setting
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
	Operation Operation
	Effects   []Effect
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
	errs := []error{err, s.checkPositions(before)}
	if want != nil {
		errs = append(errs, s.checkPositions(want))
	}
	for i, op := range ops {
		if op.Line < CloseLine || op.Line >= len(s.Sleeves) {
			errs = append(errs, fmt.Errorf("sleeve: operation %d is on line %d; it must be %d (close line) to %d", i, op.Line, CloseLine, len(s.Sleeves)-1))
		}
		if err := s.checkPanel(Panel{Close: op.Setting}); err != nil {
			errs = append(errs, fmt.Errorf("sleeve: operation %d: %w", i, err))
		}
	}
	if err := errors.Join(errs...); err != nil {
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
			errs = append(errs, fmt.Errorf("%w: %q is %v at the end, not %v", ErrNotReached, s.Sleeves[k].Name, now[k], want[k]))
		}
	}
	return steps, now, errors.Join(errs...)
}
