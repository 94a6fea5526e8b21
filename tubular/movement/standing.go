package movement

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Standing is how a string stands: as landed, what holds it where and with what
// locked in, what has parted. It is a value that never changes: a copy is as good
// as the original, and every change makes another. The zero value is a string
// that hasn't landed.
type Standing struct {
	landed  []spanLength // of each span then
	thermal bool
	top     float64   // how far the hanger's end has moved since
	held    []float64 // how far each place had moved when it took hold; NaN where it doesn't hold
	parted  []bool
}

// Holds tells whether a place holds the string.
func (s Standing) Holds(place int) bool {
	return place >= 0 && place < len(s.held) && s.held[place] == s.held[place]
}

// Parted tells whether a joint has parted.
func (s Standing) Parted(joint int) bool {
	return joint >= 0 && joint < len(s.parted) && s.parted[joint]
}

// ErrLost says that a place has gone with the part of the string below a joint that
// has parted.
var ErrLost = errors.New("movement: it has gone with the part of the string below a joint that parted")

// errNotLanded says that a standing isn't one of this string.
var errNotLanded = errors.New("movement: the string hasn't landed, or the standing is another string's: permitted one made by Land of the same MadeUp")

// errNotMadeUp says that there is no string.
var errNotMadeUp = errors.New("movement: the string is not made up: make it with Assembly.MakeUp, or String.Land")

// errNoLoading says that there is nothing to put the answer in.
var errNoLoading = errors.New("movement: there is no Loading or Case to put the answer in")

func (m *MadeUp) checkStanding(s Standing) error {
	if m == nil {
		return errNotMadeUp
	}
	if len(s.landed) != len(m.spans) || len(s.held) != len(m.holds) || len(s.parted) != len(m.joints) {
		return errNotLanded
	}
	return nil
}

// Land returns the string as it stands when it is landed in its hanger and
// nothing holds it yet: movements count from there. The conditions are those of
// that moment, at the hanger.
func (m *MadeUp) Land(c Conditions) (Standing, error) {
	if m == nil {
		return Standing{}, errNotMadeUp
	}
	if c.Top != AtHanger {
		return Standing{}, fault.NewIn(scope, "Top", "must be AtHanger when landing; a string on the hook lands by HangOff")
	}
	s := Standing{
		landed: make([]spanLength, len(m.spans)), thermal: c.Temperature != nil,
		held: make([]float64, len(m.holds)), parted: make([]bool, len(m.joints)),
	}
	for i := range s.held {
		s.held[i] = math.NaN()
	}
	l := borrowed()
	defer l.giveBack()
	if err := m.load(l, s, c, false); err != nil {
		return Standing{}, err
	}
	copy(s.landed, l.spans)
	return s, nil
}

// TakeHold returns the string held at a place as it stands in the conditions of
// that moment: what the string is like then is locked in. Where the plug is
// decides the sign of what a setting pressure p leaves in a uniform vertical
// string that is held at its lower end and bled off:
//
//	plugged in the string                    (1 - 2ν)*p*Ai of tension stays
//	open below, to a chamber under its seals -((Ap - Ai) + 2ν*Ai)*p: compression
//
// because in the first the pressure had made the string longer, in the second
// shorter. Slips may bite anywhere from the pressure at which they start to that
// at which they are set: hold the string in both conditions for the band.
func (m *MadeUp) TakeHold(s Standing, place int, c Conditions) (Standing, error) {
	return m.takeHold(s, place, c, nil)
}

// SetDown is TakeHold with a weight set down on the place, so that it carries
// that in these conditions: the top is lowered as much. A pull is negative. It
// wants a string at its hanger with nothing that holds it above the place.
func (m *MadeUp) SetDown(s Standing, place int, c Conditions, weight unit.Force) (Standing, error) {
	if err := fault.Join(scope, fault.Finite("weight", weight)); err != nil {
		return Standing{}, err
	}
	return m.takeHold(s, place, c, &weight)
}

func (m *MadeUp) takeHold(s Standing, place int, c Conditions, weight *unit.Force) (Standing, error) {
	if err := m.checkStanding(s); err != nil {
		return Standing{}, err
	}
	if place < 0 || place >= len(m.holds) {
		return Standing{}, noPlace(place, len(m.holds))
	}
	if s.Holds(place) {
		return Standing{}, fmt.Errorf("movement: place %d holds already", place)
	}
	if weight != nil && c.Top != AtHanger {
		return Standing{}, fault.NewIn(scope, "Top", "must be AtHanger when weight is set down; on the hook the Reading says it")
	}
	l := borrowed()
	defer l.giveBack()
	if err := m.LoadInto(l, s, c); err != nil {
		return Standing{}, err
	}
	next, at := s, float64(l.Holds[place].Moved)
	if l.Holds[place].Lost {
		return Standing{}, fmt.Errorf("%w: place %d", ErrLost, place)
	}
	if weight != nil {
		shorter, err := m.lower(l, place, float64(*weight))
		if err != nil {
			return Standing{}, err
		}
		next.top -= shorter
	}
	next.held = slices.Clone(s.held)
	if c.Around != nil {
		at -= float64(c.Around(m.holds[place].MD))
	}
	next.held[place] = at
	return next, nil
}

// lower is how much shorter the string above a place gets with a weight set down
// there: never positive for a weight.
func (m *MadeUp) lower(l *Loading, place int, weight float64) (float64, error) {
	sum := 0.0
	for i := range m.marks {
		sp := &m.spans[i] // above it
		sum += m.buckled(l.Nodes, sp.from, sp.to, -weight).shortening - l.spans[i].buckled - weight*sp.compliance
		if k := &m.marks[i]; k.kind == holdMark && k.index == place {
			return sum, nil
		}
		if m.isEnd(l, i) {
			break
		}
	}
	return 0, fault.NewIn("movement", "place", "is %d; must be one with nothing parted or holding above it", place)
}

// LetGo returns the string with a place that no longer holds it.
func (m *MadeUp) LetGo(s Standing, place int) (Standing, error) {
	if err := m.checkStanding(s); err != nil {
		return Standing{}, err
	}
	if !s.Holds(place) {
		return Standing{}, fault.NewIn("movement", "place", "is %d, which doesn't hold; must be one that does", place)
	}
	next := s
	next.held = slices.Clone(s.held)
	next.held[place] = math.NaN()
	return next, nil
}

// Part returns the string with a joint that has parted: what is below it stays
// with what holds it there, or is gone where nothing does.
func (m *MadeUp) Part(s Standing, joint int) (Standing, error) {
	if err := m.checkStanding(s); err != nil {
		return Standing{}, err
	}
	if joint < 0 || joint >= len(m.joints) {
		return Standing{}, noJoint(joint, len(m.joints))
	}
	if s.parted[joint] {
		return Standing{}, fmt.Errorf("movement: joint %d has parted already", joint)
	}
	next := s
	next.parted = slices.Clone(s.parted)
	next.parted[joint] = true
	return next, nil
}

// Join returns the string with a joint that had parted latched to again what is below
// it, as the two were before: the halves meet where they parted. ErrLost says that it
// hasn't parted, or that nothing has held what was below it.
func (m *MadeUp) Join(s Standing, joint int) (Standing, error) {
	if err := m.checkStanding(s); err != nil {
		return Standing{}, err
	}
	if err := noJoint(joint, len(m.joints)); err != nil {
		return Standing{}, err
	}
	below, holds := false, false
	for i := range m.marks {
		switch k := &m.marks[i]; {
		case k.kind == jointMark && k.index == joint:
			below = s.parted[joint]
		case k.kind == jointMark && s.parted[k.index]:
			below = false
		default:
			holds = holds || below && k.kind == holdMark && s.Holds(k.index)
		}
	}
	if !holds {
		return Standing{}, fmt.Errorf("%w: joint %d has nothing to latch on to", ErrLost, joint)
	}
	joined := s
	joined.parted = slices.Clone(s.parted)
	joined.parted[joint] = false
	return joined, nil
}

// HangOff returns a string that was on the hook, in these conditions, hung off
// there: its top stays where it is.
func (m *MadeUp) HangOff(s Standing, c Conditions) (Standing, error) {
	if err := m.checkStanding(s); err != nil {
		return Standing{}, err
	}
	if c.Top == AtHanger {
		return Standing{}, fault.NewIn(scope, "Top", "must be OnHookOpen or OnHookClosed when hanging off")
	}
	l := borrowed()
	defer l.giveBack()
	if err := m.LoadInto(l, s, c); err != nil {
		return Standing{}, err
	}
	next := s
	next.top = float64(l.TopMoved)
	if c.Around != nil {
		next.top -= float64(c.Around(m.hanger))
	}
	return next, nil
}
