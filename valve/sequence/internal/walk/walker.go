package walk

import (
	"context"
	"errors"
	"fmt"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Place is a moment that an observer is shown.
type Place struct {
	Step, Drive int
	Label       string // of the drive: "start", "ramp 1", "displacement", "pressure change", "pull 1"
	X           affine.Form
	Action      int  // that happens at it, or -1
	After       bool // just after it
	Limits      []int
	Pulling     *affine.Line // the reading of the weight indicator along the leg, or nil
	// Between are the ends of a stretch on which nothing happens, of the place halfway;
	// else nil.
	Between *[2]affine.Form
}

// Observer is shown what a walk meets. Its methods are called in the order of the
// walk of one world, and of one world after the other.
type Observer interface {
	// Moment is a place at which pressures may turn: what Limits names is to be
	// held against it.
	Moment(w *World, p Place) error
	// Sensed is what an armed action feels from one end of a stretch to the other,
	// and the conditions of the progress that it has.
	Sensed(w *World, p Place, action int, progress Progress, from, to affine.Form)
	// Reached is by how much an intended action's differential goes beyond its
	// level to the end of the leg.
	Reached(w *World, p Place, action int, progress Progress, by affine.Form)
	// Came is an intended action that happens.
	Came(w *World, action int, p Place)
	// Unintended is an action that happens and isn't wanted there and then.
	Unintended(w *World, action int, p Place, felt affine.Form)
	// Missing is an action that was wanted and hasn't come, at the end of a step.
	Missing(w *World, action int, p Place)
	// Hand is an act that is about to be done by hand, what keeps it from being done
	// and at which port, and what stands across the ports that it opens.
	Hand(w *World, p Place, act int, why Hindrance, port int, across []affine.Form)
	// Stuck is where devices keep moving each other without end: the world is left.
	Stuck(w *World, p Place)
	// Standstill is where a step stands still: at its start, after each ramp, squeeze
	// and pull.
	Standstill(w *World, p Place, number int) error
	// Try says that what is shown from here on may have to be forgotten, and Tried
	// whether it is kept.
	Try()
	Tried(keep bool)
}

// Walker walks steps.
type Walker struct {
	Network  *well.Network
	Observer Observer
	// PastUnintended goes on with a world in which something unintended has happened; else
	// it is left there, as all that follows follows from it.
	PastUnintended bool
	// Budget is how many worlds and events a step may take; zero is DefaultBudget.
	Budget int
	// Stops makes it an error if devices move each other without end in every world.
	Stops bool
	// Pumps, where not nil, is shown the well at every turn of a pump at its full rate.
	Pumps func(Pumped)
	// Flows, where not nil, is shown the well while the zones of a step flow.
	Flows func(w *World, step int)
	// Producing, where not nil, is shown every world while the zones of a step flow.
	Producing func(w *World, p Place) error
	// Fine is into how many times as many pieces legs are cut that gas feels; zero: once.
	Fine int
	// Generic leaves out what only happens at single values of the inputs: that two levels
	// are reached at the very same pressure, where they aren't one and the same.
	Generic bool
	// Context, where not nil, ends the walk once it is done.
	Context context.Context
	// Ties are, by limit, the compartments that it holds against each other.
	ties       [][]int
	stringTies []int
	String     StringRoom // nil: the plan has no string

	// Failed are the worlds of the last step in which something that may be stuck was.
	Failed []*World

	places  []int  // see places
	silents []bool // by action: see silentAction

	parted     []*cluster // the last parts of the well; nothing writes into them
	partedOpen []bool     // and the ports that were open then

	step    *Step
	place   Place
	spent   int
	legs    int                 // begun so far
	ends    func(s *well.State) // brings what moves to the end of the leg, where its ways are only enclosed
	stuck   error               // devices moved each other without end in a world of the step
	seen    []*World            // of the stage that is taken on
	ahead   affine.Form         // of a leg that is walked in pieces: what is left after this one
	seconds float64             // that the leg takes, where time goes on along it
	loose   bool                // the end of the leg is only enclosed along it, and shown once it is known
	silent  bool                // the observer isn't told: a leg is tried
	left    bool                // a world was left on a leg that is tried: what follows there isn't known
	pulling *affine.Line        // the weight indicator, on a pull
}

// DefaultBudget ends what would go on for minutes.
const defaultBudget = 20000

// ErrBudget says that there are too many orders in which things may happen.
var ErrBudget = errors.New("too many orders in which things may happen")

// ErrEnclosed says that how far pressures go that move together is too uncertain to
// be enclosed.
var ErrEnclosed = errors.New("pressures that move together go too uncertain ways")

// ErrDiverted says that what moves while zones flow changes which of them do.
var ErrDiverted = errors.New("a device that moves while zones flow changes which of them do; let it move in a step of its own, or write what flows after it as another step")

// ErrUnsettled says that devices keep moving each other without end.
var ErrUnsettled = errors.New("devices keep moving each other without an end")

// New makes a walker. ties are, by limit, the compartments that it holds against
// each other: they are walked together. Where there is a room, the string's limit is the
// last.
func New(n *well.Network, o Observer, ties [][]int, stringTies []int, room StringRoom) *Walker {
	return &Walker{places: places(n), silents: silents(n), Network: n, Observer: o, ties: ties, stringTies: stringTies, String: room}
}

// Step walks one step in all worlds. What comes back are the worlds that did what
// was intended (all of them where PastUnintended is set).
func (k *Walker) Step(worlds []*World, step *Step, index int) ([]*World, error) {
	k.step, k.spent, k.stuck = step, 0, nil
	k.place = Place{Step: index, Drive: -1, Label: "start", Action: -1}
	var err error
	worlds = k.fork(worlds)
	drives := k.drives(step)
	if worlds, err = k.begins(worlds, drives); err != nil {
		return nil, fmt.Errorf("step %q: %w", step.Name, err)
	}
	for n, d := range drives {
		k.place.Drive, k.place.Label = d.number, d.label
		next, err := each(worlds, func(w *World) ([]*World, error) { return k.timed(w, &d, drives[n+1:]) })
		if err != nil {
			return nil, fmt.Errorf("step %q: %w", step.Name, err)
		}
		worlds = merge(next)
		if d.stand >= 0 {
			for _, w := range worlds {
				if err := k.Observer.Standstill(w, k.place, d.stand); err != nil {
					return nil, err
				}
			}
		}
	}
	if len(worlds) == 0 && k.Stops && k.stuck != nil {
		return nil, fmt.Errorf("step %q: %w", step.Name, k.stuck)
	}
	if err := k.goesOn(worlds); err != nil {
		return nil, fmt.Errorf("step %q: %w", step.Name, err)
	}
	worlds = k.missed(worlds)
	if worlds, err = k.ended(worlds); err != nil {
		return nil, fmt.Errorf("step %q: %w", step.Name, err)
	}
	return worlds, nil
}

// ended finds what was expected and hasn't come.
func (k *Walker) ended(worlds []*World) ([]*World, error) {
	var good []*World
	for _, w := range worlds {
		missing := false
		for d, expected := range k.step.Expect {
			if w.Came[d] < len(expected) {
				a := expected[w.Came[d]]
				if k.silentAction(a) {
					continue
				}
				k.Observer.Missing(w, a, k.place)
				missing = true
			}
		}
		if w, missing = k.silentMissing(w, missing); !missing || k.PastUnintended {
			for d := range w.Came {
				w.Came[d] = 0
			}
			w.Seen = nil
			good = append(good, w)
		}
	}
	return good, nil
}

// Spent is how many places the last step took.
func (k *Walker) Spent() int { return k.spent }

func (k *Walker) spend() error {
	budget := k.Budget
	if budget == 0 {
		budget = defaultBudget
	}
	if k.Context != nil && k.spent%16 == 0 {
		if err := k.Context.Err(); err != nil {
			return err
		}
	}
	if k.spent++; k.spent > budget {
		return ErrBudget
	}
	return nil
}

// silentAction tells whether an action is the only one of its device and changes
// nothing else: then that it has happened is a matter of its own row.
func (k *Walker) silentAction(i int) bool { return k.silents[i] }

func silents(n *well.Network) []bool {
	of := make([]int, n.Devices)
	for i := range n.Actions {
		of[n.Actions[i].Device]++
	}
	all := make([]bool, len(n.Actions))
	for i := range n.Actions {
		a := &n.Actions[i]
		all[i] = !a.Acts() && !a.Slow && !a.Watched && !a.Marks && of[a.Device] == 1
	}
	return all
}
