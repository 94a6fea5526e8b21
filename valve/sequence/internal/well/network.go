package well

import (
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/valve/sequence/internal/affine"
)

// Network is a plan put together. It never changes.
type Network struct {
	Symbols      []Symbol
	Temperatures []*hydrostatics.TemperatureProfile // first the undisturbed one; nil where the plan has none
	Fluids       []Fluid
	Compartments []Compartment
	Ports        []Port
	Formations   []Formation
	Actions      []Action
	Devices      int
	Heat         []affine.Form // by temperature: by how much it is off, K
	// TVD is the true vertical depth of any measured one; needed where there is gas.
	TVD func(md float64) float64

	heatMiddle, heatHalf []float64           // by temperature: of the band that Cold and Warm are the ends of
	shares               map[[2]int]int      // symbol of a pair of compartments whose references may meet
	sharesFixed          map[int]affine.Form // those that are numbers
	around               [][]int             // ports of each compartment, in the order of their names
	rings                bool                // they may make one
}

// Symbol is an uncertain input. Its value is Middle + Half·e.
type Symbol struct {
	Name         string // such as `threshold of "sleeve A: opens"`
	Path         string // of the plan's field
	Middle, Half float64
	Nominal      float64 // e of the nominal value
	Text         func(value float64) string
}

// Depth is a place in the hole.
type Depth struct{ MD, TVD float64 }

// Fluid has a density that is the same everywhere, or one that depends on
// pressure and temperature.
type Fluid struct {
	Name        string
	Density     affine.Form            // where Feels is nil
	Columns     []*hydrostatics.Column // by temperature
	Cold, Warm  []*hydrostatics.Column // at the ends of what the temperature may be off; nil where it isn't
	Scale       affine.Form            // of a fluid that feels: what its density is multiplied with
	Compression float64                // 1/Pa, for volumes
	Expansion   float64                // 1/K, of what is trapped between known walls
	Real        Real                   // a liquid whose own properties those are; else nil
	Rheology    *flow.Rheology         // nil: not known
	Gases       []*Gases               // by temperature, of a gas; else nil
	Surface     float64                // density of a gas at surface conditions, kg/m³
}

// Gas tells whether the fluid is one.
func (f *Fluid) Gas() bool { return f.Gases != nil }

// Compartment is a connected body of fluid.
type Compartment struct {
	Name        string
	Depths      []Depth // where something stands, turns or may be asked for: from the top down
	Surface     bool
	Formation   int // or -1
	FormationAt int // in Depths
	Volume      float64
	Bores       []Bore  // down its length, where the plan has them
	Walls       []Wall  // the same, where their walls are known
	Turn        float64 // measured depth at which the hole first turns up in it, or of its bottom
	Layers      []Layer
	Trapped     affine.Form
}

// Layer is one fluid down to a depth.
type Layer struct {
	Fluid  int
	Bottom Depth
}

// Port joins two compartments.
type Port struct {
	Name string
	A, B int
	AtA  int // in Depths of A
	AtB  int
	Open bool
}

// Formation is a reservoir layer.
type Formation struct {
	Name     string
	Depth    Depth
	Pressure affine.Form
	Fracture affine.Form
	Cracks   bool // its fracture pressure is known
	Face     int  // the compartment that stands open to it, or -1
	Flows    bool // has an inflow
}

// Action is what a device does once its triggers have been met in a row.
type Action struct {
	Name            string // "device: action"
	Device          int
	Inside, Outside int // compartments; outside -1: the chamber
	AtIn, AtOut     int // in their Depths
	Depth           Depth
	Off             affine.Form // by how much deeper it may stand, m of true vertical depth
	Chamber         affine.Form
	More            []Weighed // of a balance of areas: what else is felt, by its area over that of the inside
	Of              int       // the first of the actions that are conditions of one; itself where it is the only one
	With            []int     // those conditions, itself among them; nil: it is the only one
	All             bool      // all of them must have been met, in whatever order; else any does it
	Disarms         []int     // actions
	Axial           bool
	Feels           Axially
	Joint           int // of an axial action: which joint of the string it is, or which of those that aren't
	Row             []Trigger
	Opens, Closes   []int
	Arms            []int
	Disarmed        bool
	Marks           bool        // the slips of another action may bite from this one on
	Bites           int         // that other one, of an action that holds; -1: it bites when it is done
	Bite            affine.Form // where between, from 0 to 1
	Watched         bool        // that it has happened counts for something else, such as a barrier
	Holds, Releases bool
	Strokes         []Stroke
	Slow            bool        // it moves once it has been at its level for a while:
	Delay           affine.Form // for so long, in s
}

// Axially is what an axial action feels.
type Axially int

// What there is: the balance of a joint that parts, the load up that a place carries
// and is unseated by, and what the string stands with on what a joint has left.
const (
	OfJoint Axially = iota
	OfPlace
	OnRest
)

// Weighed is the pressure of a compartment that counts a number of times.
type Weighed struct {
	Compartment, At int // in its Depths
	Times           float64
}

// Stroke is a volume that an action takes from a compartment as it happens.
type Stroke struct {
	Compartment int
	Volume      float64
}

// Trigger is one level of a row; a force in N where the action is axial.
type Trigger struct {
	Level   affine.Form
	Falling bool
	Count   int // at least 1
	Rearm   affine.Form
}

// Happens changes how ports and actions stand by what an action does when it happens:
// neither it nor any other condition of it waits any more, then its own lists count.
func (n *Network) Happens(action int, open, armed []bool) {
	a := &n.Actions[action]
	armed[action] = false
	for _, j := range a.With {
		armed[j] = false
	}
	for _, j := range a.Disarms {
		armed[j] = false
	}
	for _, j := range a.Arms {
		armed[j] = true
	}
	for _, p := range a.Opens {
		open[p] = true
	}
	for _, p := range a.Closes {
		open[p] = false
	}
}

// Acts tells whether an action changes anything but itself.
func (a *Action) Acts() bool {
	return len(a.Opens)+len(a.Closes)+len(a.Arms)+len(a.Disarms) > 0 || a.Holds || a.Releases || len(a.Strokes) > 0
}

// HasGas tells whether a fluid of the network is a gas.
func (n *Network) HasGas() bool {
	return slices.ContainsFunc(n.Fluids, func(f Fluid) bool { return f.Gas() })
}

// SetHeat says by how much each temperature may be off.
func (n *Network) SetHeat(heat []affine.Form) {
	n.Heat = heat
	for _, h := range heat {
		n.heatMiddle = append(n.heatMiddle, h.C)
		n.heatHalf = append(n.heatHalf, h.Radius())
	}
}

// Prepare finds what is asked for again and again: call it once, when the network
// is complete.
func (n *Network) Prepare() {
	for i := range n.Actions {
		if n.Actions[i].With == nil {
			n.Actions[i].Of = i
		}
	}
	n.around = make([][]int, len(n.Compartments))
	for p, port := range n.Ports {
		n.around[port.A] = append(n.around[port.A], p)
		n.around[port.B] = append(n.around[port.B], p)
	}
	n.sortPorts()
}

// Share registers the symbol of how the difference of two references is shared
// out along the way between them, for two compartments that carry one.
func (n *Network) Share(a, b, symbol int) {
	if n.shares == nil {
		n.shares = map[[2]int]int{}
	}
	n.shares[[2]int{a, b}] = symbol
	n.shares[[2]int{b, a}] = symbol
}

// IsShare tells whether a symbol is how the difference of two references is shared
// out.
func (n *Network) IsShare(symbol int) bool {
	for _, k := range n.shares {
		if k == symbol {
			return true
		}
	}
	return false
}

// PortsOf are the ports of a compartment.
func (n *Network) PortsOf(i int) []int { return n.around[i] }
