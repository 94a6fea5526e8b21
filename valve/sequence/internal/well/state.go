package well

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// State is how the well stands. Pressures are lines along the present leg.
type State struct {
	*Network
	Top         []affine.Line // by compartment, at its top
	Applied     []affine.Line // by compartment, where Surface
	Surface     []bool
	Open        []bool // by port
	Armed       []bool // by action
	Temperature int
	Front       Front
	Span        float64     // s goes no further than this on the leg
	Rate        []float64   // by compartment: Pa per unit of s by which a squeeze raises the body that it began with
	Begun       []int       // by compartment: how many its body had when the squeeze began
	volume      []float64   // by compartment: of that body
	gave        []float64   // by compartment: of that body, what it gives; 0: not known
	String      StringState // nil: the plan has no string
	columns     []*column
	seconds     []SecondReference // of bodies that two things fix
	gas         []capOfGas        // by compartment; the same for all states where there is no gas
	mayHoldGas  bool
	profiles    [][]affine.Line // by compartment: what column and friction make down to each depth while something is pumped
	jumps       []affine.Line   // by port: by how much side B has more than side A, where a choke is
	inject      []affine.Line   // by formation: what it takes above its own pressure
	Ripe        []bool          // by action: a slow one has been at its level for long enough; nil: none
	low         []int           // by compartment: see Low; nil: no column has fallen
	body        []uint64        // by compartment: the body that it was last in
	stirred     bool            // columns have changed since the last Solve of everything

	visited []bool
	order   []int
	members []int // of the body that is being solved
}

// SecondReference is a second thing that fixes the pressure of a body.
type SecondReference struct {
	Of   int // its compartment
	With int // the compartment that carries the first, or -1
	// Excess is what the first makes at the second, less what the second is: at
	// the top of its compartment, or at its formation.
	Excess affine.Line
}

// Start is the well as the programme finds it.
func (n *Network) Start() *State {
	s := &State{Network: n, Front: Front{Compartment: -1}, mayHoldGas: n.HasGas()}
	for i := range n.Compartments {
		k := &n.Compartments[i]
		s.Top = append(s.Top, affine.Flat(k.Trapped))
		s.Applied = append(s.Applied, affine.Line{})
		s.Surface = append(s.Surface, k.Surface)
		s.columns = append(s.columns, n.column(i, k.Layers))
		s.gas = append(s.gas, newCap(s.columns[i]))
		s.body = append(s.body, mark(i))
	}
	for _, p := range n.Ports {
		s.Open = append(s.Open, p.Open)
	}
	for _, a := range n.Actions {
		s.Armed = append(s.Armed, !a.Disarmed)
	}
	s.visited = make([]bool, len(n.Compartments))
	return s
}

// Clone copies what a walk changes.
func (s *State) Clone() *State {
	c := *s
	c.Top, c.Applied = cloned2(s.Top, s.Applied)
	c.Surface, c.Open, c.Armed, c.visited = cloned4(s.Surface, s.Open, s.Armed, s.visited)
	c.seconds = slices.Clone(s.seconds)
	c.columns = slices.Clone(s.columns)
	if s.mayHoldGas {
		c.gas = slices.Clone(s.gas)
	}
	if s.profiles != nil { // Stand writes into them
		c.profiles = make([][]affine.Line, len(s.profiles))
		for i := range s.profiles {
			c.profiles[i] = slices.Clone(s.profiles[i])
		}
	}
	c.jumps = slices.Clone(s.jumps)
	c.inject = slices.Clone(s.inject)
	c.body = slices.Clone(s.body)
	c.low = slices.Clone(s.low)
	c.order, c.members = nil, nil
	return &c
}

// cloned2 and cloned4 copy several slices into one piece of memory.
func cloned2(a, b []affine.Line) (x, y []affine.Line) {
	n := len(a)
	all := append(append(make([]affine.Line, 0, n+len(b)), a...), b...)
	return all[:n:n], all[n:]
}

func cloned4(a, b, c, d []bool) (w, x, y, z []bool) {
	i := len(a)
	j := i + len(b)
	k := j + len(c)
	all := append(append(append(append(make([]bool, 0, k+len(d)), a...), b...), c...), d...)
	return all[:i:i], all[i:j:j], all[j:k:k], all[k:]
}

// SecondReference is the second thing that fixes the body of a compartment; With is -1 where
// there is none.
func (s *State) SecondReference(i int) SecondReference {
	for _, m := range s.seconds {
		if m.Of == i {
			return m
		}
	}
	return SecondReference{Of: i, With: -1}
}

// keepSecond keeps a second reference, in place of another of the same compartment.
func (s *State) keepSecond(m SecondReference) {
	for n := range s.seconds {
		if s.seconds[n].Of == m.Of {
			s.seconds[n] = m
			return
		}
	}
	s.seconds = append(s.seconds, m)
}

// At is the pressure in a compartment at one of its depths.
func (s *State) At(i, depth int) (affine.Line, error) {
	if s.low != nil && depth <= s.low[i] {
		return affine.Line{}, nil
	}
	if s.gas[i].Closed {
		return s.inClosed(i, depth)
	}
	return s.carry(i, s.Top[i], 0, depth)
}

// Differential is what the triggers of an action feel, other than an axial one.
func (s *State) Differential(a *Action) (affine.Line, error) {
	in, err := s.At(a.Inside, a.AtIn)
	if err != nil {
		return in, err
	}
	if a.Outside < 0 {
		in = in.PlusForm(a.Chamber.Times(-1))
	} else {
		out, err := s.At(a.Outside, a.AtOut)
		if err != nil {
			return out, err
		}
		in = in.Minus(out)
	}
	for _, m := range a.More {
		p, err := s.At(m.Compartment, m.At)
		if err != nil {
			return p, err
		}
		in = in.Plus(p.Times(m.Times))
	}
	if a.Off.Sharp() && a.Off.C == 0 {
		return in, nil
	}
	more, err := s.deeper(a)
	return in.PlusForm(more), err
}

// Layers are the fluids of a compartment.
func (s *State) Layers(i int) []Layer { return s.columns[i].layers }

// SetLayers gives a compartment other fluids.
func (s *State) SetLayers(i int, layers []Layer) {
	s.columns[i] = s.column(i, layers)
	if s.mayHoldGas {
		s.gas[i] = newCap(s.columns[i])
	}
	s.stirred = true
}

// SetTemperature gives the well another temperature.
func (s *State) SetTemperature(t int) {
	s.stirred = s.stirred || s.Temperature != t
	s.Temperature = t
}

// EndLeg ends a leg: everything is at its place x and goes no further.
func (s *State) EndLeg(x affine.Form) {
	for i := range s.Top {
		if s.mayHoldGas {
			s.gas[i].endLeg(x)
		}
		s.Top[i] = affine.Flat(s.Top[i].At(x))
		s.Applied[i] = affine.Flat(s.Applied[i].At(x))
	}
	for i := range s.seconds {
		m := &s.seconds[i]
		m.Excess = affine.Flat(m.Excess.At(x))
	}
	for _, lines := range s.profiles {
		for d := range lines {
			lines[d] = affine.Flat(lines[d].At(x))
		}
	}
	for p := range s.jumps {
		s.jumps[p] = affine.Flat(s.jumps[p].At(x))
	}
	for f := range s.inject {
		s.inject[f] = affine.Flat(s.inject[f].At(x))
	}
	s.Front, s.Span, s.Rate, s.Begun = Front{Compartment: -1}, 0, nil, nil
}

// FluidAt is the fluid of a compartment just below a depth.
func (s *State) FluidAt(i int, md float64) int { return s.columns[i].fluidAt(md) }

// Waits tells whether an action may move where the well stands: it is armed and, where
// it is slow, has been at its level for long enough.
func (s *State) Waits(i int) bool {
	return s.Armed[i] && (!s.Actions[i].Slow || s.Ripe != nil && s.Ripe[i])
}
