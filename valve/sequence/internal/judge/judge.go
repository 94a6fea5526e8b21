package judge

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Key names a margin: of a kind, in a step.
type Key struct {
	Step  int
	Kind  Kind
	Index int
}

// Margin is the least that was seen of a limit in a step, and where.
type Margin struct {
	Key
	Least    float64     // a bound that holds for all choices of the inputs
	Form     affine.Form // what it is the least value of
	Label    string      // of the drive
	Action   int         // just before or after which it was seen, or -1
	After    bool
	X        affine.Form
	Depth    int           // of a rating: in Depths of its inside
	Value    affine.Form   // what is felt, where it is an event
	Applied  []affine.Form // surface pressures of that moment
	Pull     *affine.Form  // the weight indicator, on a pull
	Enclosed bool          // not exact
	Stuck    []int         // actions whose devices are stuck there
	Begun    int           // which choice of what may have happened before
	// Points are choices with which the limit may be passed.
	Points  [][]float64
	Regions []Part

	region *affine.Region
	judge  *Judge
}

// Fails tells whether the limit may be passed.
func (m *Margin) Fails() bool { return len(m.Points) > 0 || len(m.Regions) > 0 }

// Part is a part of the box in which a limit may be passed: where By is below
// nought.
type Part struct {
	Region *affine.Region
	By     affine.Form
}

// Judge keeps the least margins of a walk. It is an observer.
type Judge struct {
	Limits  *Limits
	Network *well.Network
	Margins map[Key]*Margin
	Forces  map[ForceKey]*Extreme
	// Standstills, where not nil, is shown where each step stands still.
	Standstills func(w *walk.World, p walk.Place, number int) error
	// Load, where not nil, holds the string against its limits.
	Load func(j *Judge, w *walk.World, p walk.Place) error
	// Parts keeps all parts of the box in which a limit is passed, for windows.
	Parts bool
	// Quiet keeps no margins but those that are passed.
	Quiet bool
	// Deaf keeps nothing but what goes wrong with devices: for walks that only lead to a
	// step.
	Deaf bool

	sensed  [][]SensedRange // by step and action, made where they are asked for
	list    []limit
	spreads map[spreadKey]*spread
	broken  int
	trying  bool
	before  trial
}

// New makes a judge and says which compartments its limits hold against each
// other.
func New(n *well.Network, l *Limits, stringTies []int) (*Judge, [][]int) {
	j := &Judge{Limits: l, Network: n, Margins: map[Key]*Margin{}}
	list, ties := l.list(n)
	if stringTies != nil {
		list = append(list, limit{String, 0})
		ties = append(ties, stringTies)
	}
	j.list = list
	j.sensed = make([][]SensedRange, len(l.Steps))
	return j, ties
}

// SensedBy is what is kept of what an action feels in a step.
func (j *Judge) SensedBy(step, action int) SensedRange {
	if j.sensed[step] == nil {
		return SensedRange{}
	}
	return j.sensed[step][action]
}

// senses is where what an action feels in a step is noted.
func (j *Judge) senses(step, action int) *SensedRange {
	if j.sensed[step] == nil {
		j.sensed[step] = make([]SensedRange, len(j.Network.Actions))
	}
	f := &j.sensed[step][action]
	if j.trying {
		j.before.sensed.note([2]int{step, action}, f)
	}
	return f
}

// Passed are the limits that may be passed, in the order of the steps.
func (j *Judge) Passed() []*Margin {
	var all []*Margin
	for _, m := range j.Margins {
		if m.Fails() {
			all = append(all, m)
		}
	}
	slices.SortStableFunc(all, func(a, b *Margin) int {
		if a.Step != b.Step {
			return a.Step - b.Step
		}
		if a.Kind != b.Kind {
			return int(a.Kind) - int(b.Kind)
		}
		return a.Index - b.Index
	})
	return all
}
