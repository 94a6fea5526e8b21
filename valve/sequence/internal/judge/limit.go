package judge

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Kind is what a margin is about.
type Kind uint8

// The kinds of limit. Index tells which one: of a rating, a formation, ...
const (
	Event       Kind = iota // Index: the action; it happens and isn't intended there and then
	Omission                // Index: the action; it is intended and doesn't come
	Inside                  // Index: the rating; greatest inside minus outside
	Outside                 // Index: the rating; greatest outside minus inside
	Fracture                // Index: the formation
	Inflow                  // Index: the compartment at its face
	Loss                    // Index: the compartment at its face
	Circulation             // Index: the compartment at surface to (Depth 0) or from (Depth 1) which fluid flows
	Vacuum                  // Index: the compartment
	Barriers                // Index: the formation
	TestLow                 // Index: the test of the step
	TestHigh                //
	BalanceLow              // Index: the balance of the step
	BalanceHigh             //
	Unwalkable              // what can't be walked
	String                  // Index: 0 burst, 1 collapse, 2 axial, 3 triaxial, 4 connection; in parts
	SealUp                  // Index: the seal; in parts
	SealDown                //
	Holding                 // what the packer's envelope leaves; in parts
	Lift                    // upward load at the hanger beyond what locks it down
	PullFree                // a pull that nothing holds
	Rig                     // weight indicator beyond the rig's rating
	RateLow                 // Index: the formation; in Parts of Parts
	RateHigh                //
	NoFlow                  // the zones don't flow
	ByHand                  // Index: the act of the step; Depth: 0 the differential across, else the hindrance
	Held                    // Index: the test of the step: what warming leaves of what it may lose
)

// Events tells whether a kind is about what happens, and not about a pressure or
// a force.
func (k Kind) Events() bool { return k == Event || k == Omission }

// Leaves tells whether the plan is left where a kind is passed: what happens isn't what the
// step intends, or can't be done by hand.
func (k Kind) Leaves() bool { return k.Events() || k == ByHand }

// Parts is what margins that are shares, or lengths in m, are multiplied with, so
// that rounding weighs as much in them as in a pressure in Pa.
const Parts = 1e6

// Rating is a differential that must not be passed along two compartments.
type Rating struct {
	Inside, Outside int      // Outside -1: the background
	Depths          [][2]int // in Depths of Inside and Outside
	Background      []affine.Form
	Burst, Collapse affine.Form
	HasBurst        bool
	HasCollapse     bool
}

// Barrier is something that stands between a formation and surface.
type Barrier struct {
	Formation int
	Port      int // stands while it is shut, or -1
	Action    int // stands once this has happened, or -1
	Until     int // and until this has, or -1
	Column    int // stands while this compartment overbalances the formation, or -1
	ColumnAt  int // in its Depths
}

// Test is a differential that must be seen where a step stands still.
type Test struct {
	Inside, Outside int
	AtIn, AtOut     int
	// Standstill is where; with Furthest it is where the nominal differential goes
	// furthest, for the reader.
	Standstill      int
	Furthest        bool // the furthest of all places after the first counts
	Least, Greatest float64
	Decline         float64             // share that may be lost while it is held
	Warms           map[int]affine.Form // by compartment, while it is held
}

// Balance is an overbalance that must be seen where a step stands still.
type Balance struct {
	Compartment, At int
	Formation       int
	Standstill      int // -1: the last
	Least, Greatest float64
}

// Act is what an act by hand must keep to.
type Act struct {
	Most    float64 // differential across what it opens
	HasMost bool
}

// Goals are what one step must keep to.
type Goals struct {
	Last     int // the number of the last place where the step stands still
	Tests    []Test
	Balances []Balance
	Acts     []Act
	Inflow   bool // allowed
	Loss     bool
	Circle   bool
	Produces bool // flow isn't judged
}

// Limits are all that a plan is held against.
type Limits struct {
	Ratings  []Rating
	Barriers []Barrier
	Least    int // barriers before each formation
	Steps    []Goals
}

// tolerance is the difference of two fixed pressures that counts as no flow: less
// than any gauge on a rig can show. In Pa: 0.5 psi.
const tolerance = 0.5 * float64(unit.PSI)

// vacuum is the least gauge pressure that there is, in Pa.
const vacuum = -101325

// limit is one thing to look at at every moment.
type limit struct {
	kind  Kind
	index int
}

// list orders what is looked at, and says which compartments (or, from the number
// of compartments on, actions) each limit holds against each other.
func (l *Limits) list(n *well.Network) (all []limit, ties [][]int) {
	add := func(kind Kind, index int, tie ...int) {
		all = append(all, limit{kind, index})
		ties = append(ties, tie)
	}
	for i, r := range l.Ratings {
		if r.Outside >= 0 {
			add(Inside, i, r.Inside, r.Outside)
		} else {
			add(Inside, i, r.Inside)
		}
	}
	for i := range n.Compartments {
		add(Vacuum, i, i)
	}
	for i, f := range n.Formations {
		if f.Face < 0 {
			continue
		}
		add(Fracture, i, f.Face)
	}
	for i, k := range n.Compartments {
		if k.Surface {
			add(Circulation, i, i)
		}
	}
	if l.Least == 0 {
		return all, ties
	}
	for f := range n.Formations {
		var tie []int
		listed := false
		for _, b := range l.Barriers {
			if b.Formation != f {
				continue
			}
			listed = true
			switch {
			case b.Port >= 0:
				tie = append(tie, n.Ports[b.Port].A, n.Ports[b.Port].B)
			case b.Action >= 0:
				tie = append(tie, len(n.Compartments)+b.Action)
			case b.Column >= 0:
				tie = append(tie, b.Column)
			}
			if b.Until >= 0 {
				tie = append(tie, len(n.Compartments)+b.Until)
			}
		}
		if face := n.Formations[f].Face; face >= 0 {
			tie = append(tie, face)
		}
		if listed {
			add(Barriers, f, tie...)
		}
	}
	return all, ties
}
