package stringload

import (
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Room is a string put together with its well.
type Room struct {
	Network      *well.Network
	Temperatures []*hydrostatics.TemperatureProfile
	Up           *movement.MadeUp
	Inside       int     // compartment
	Outside      [][]int // by part of the outside: compartments from the top down
	Drag         affine.Form
	Hole         *drag.Prepared // that the string rubs in; nil: Drag is what it takes
	Factors      []affine.Form  // of friction, by zone of the hole
	Hanger       float64        // measured depth
	Closed       bool           // the top is closed on a pull: pressure inside lifts it
	LockDown     float64        // upward load that the hanger bears, N
	Rig          float64        // greatest reading, N; zero: not known
	Places       map[int]int    // by action that holds: the place
	Envelope     *packer.Envelope
	Below, Above int // compartments of the envelope's differential, and where
	BelowAt      int
	AboveAt      int
	Packer       int // the place that the envelope is of
	Seals        []Seal
	Joints       int         // how many
	Frees        map[int]int // by action that releases where something holds: that place alone
	Block        float64
	TopBore      float64 // area of the bore at the hanger, m²
	Memory       *Memory // loads of a walk, used again; nil: none are kept

	once []int
}

// Seal is how far a seal may move, in m, and what it takes to slide.
type Seal struct {
	MD       float64
	Up, Down float64
	Friction affine.Form
}

// Ties are the compartments that the string feels.
func (r *Room) Ties() []int {
	ties := []int{r.Inside}
	for _, part := range r.Outside {
		ties = append(ties, part...)
	}
	if r.Envelope != nil {
		ties = append(ties, r.Below, r.Above)
	}
	return ties
}

// felt are the compartments that the string feels, each once.
func (r *Room) felt() []int {
	if r.once == nil {
		for _, i := range r.Ties() {
			if !slices.Contains(r.once, i) {
				r.once = append(r.once, i)
			}
		}
	}
	return r.once
}

// temperature is a profile, off as a choice of the inputs has it.
func (r *Room) temperature(k int, e []float64) func(unit.Length) unit.Temperature {
	of := r.Temperatures[k].At
	off := unit.TemperatureDifference(r.Network.Heat[k].At(e))
	if off == 0 {
		return of
	}
	return func(tvd unit.Length) unit.Temperature { return of(tvd).Add(off) }
}

// profile is the pressure of every compartment that the string feels, at all of
// its depths.
type profile struct {
	of          []int           // compartments
	corners     [][]int         // by compartment in of: depths between which its pressure is straight
	forms       [][]affine.Form // there
	from        *profile        // of slips that may bite earlier: how it was then,
	bite        affine.Form     // and how far from that to this one they do
	temperature int
}

// profileOf takes the pressures of a state at a place of its leg.
func (r *Room) profileOf(s *well.State, x affine.Form) (*profile, error) {
	p := &profile{temperature: s.Temperature}
	for _, i := range r.felt() {
		corners := s.Corners(i)
		forms := make([]affine.Form, len(corners))
		for n, d := range corners {
			l, err := s.At(i, d)
			if err != nil {
				return nil, err
			}
			forms[n] = l.At(x)
		}
		// Between the depths about a level pressure isn't straight.
		forms[len(forms)-1] = forms[len(forms)-1].Widen(s.Bent(i))
		p.of = append(p.of, i)
		p.corners = append(p.corners, corners)
		p.forms = append(p.forms, forms)
	}
	return p, nil
}

func (p *profile) index(compartment int) int {
	for n, i := range p.of {
		if i == compartment {
			return n
		}
	}
	return -1
}

// like tells whether two profiles are of the same places.
func (p *profile) like(q *profile) bool {
	return len(p.of) == len(q.of) && slices.EqualFunc(p.corners, q.corners, slices.Equal[[]int])
}

// same tells whether two profiles are equal.
func (p *profile) same(q *profile) bool {
	if (p.from == nil) != (q.from == nil) || p.from != nil && !p.from.same(q.from) {
		return false
	}
	if p.temperature != q.temperature || len(p.of) != len(q.of) {
		return false
	}
	for n := range p.forms {
		if len(p.forms[n]) != len(q.forms[n]) {
			return false
		}
		for d := range p.forms[n] {
			if p.corners[n][d] != q.corners[n][d] {
				return false
			}
			if !p.forms[n][d].Same(q.forms[n][d], 1e-3) {
				return false
			}
		}
	}
	return true
}

// symbols adds the symbols that a profile depends on.
func (p *profile) symbols(set map[int]bool) {
	if p.from != nil {
		p.from.symbols(set)
		for _, t := range p.bite.T {
			set[t.Symbol] = true
		}
	}
	for _, forms := range p.forms {
		for _, f := range []affine.Form{forms[0], forms[len(forms)-1]} {
			for _, t := range f.T {
				set[t.Symbol] = true
			}
		}
	}
}

// sharp are the numbers of a profile at a choice of the inputs.
type sharp struct {
	depths [][]float64 // TVD
	p      [][]float64
}

func (r *Room) sharp(p *profile, e []float64) *sharp {
	s := &sharp{}
	for n, i := range p.of {
		values := make([]float64, len(p.forms[n]))
		for d, f := range p.forms[n] {
			values[d] = f.At(e)
			if p.from != nil {
				was := p.from.forms[n][d].At(e)
				values[d] = was + (values[d]-was)*p.bite.At(e)
			}
		}
		s.p = append(s.p, values)
		depths := make([]float64, len(values))
		for d, c := range p.corners[n] {
			depths[d] = r.Network.Compartments[i].Depths[c].TVD
		}
		s.depths = append(s.depths, depths)
	}
	return s
}

// at is the pressure at a true vertical depth: straight between two depths of the
// compartment.
func (s *sharp) at(n int, tvd float64) float64 {
	depths, p := s.depths[n], s.p[n]
	for k := 1; k < len(depths); k++ {
		a, b := depths[k-1], depths[k]
		if tvd <= max(a, b) && tvd >= min(a, b) || k == len(depths)-1 || k == 1 && tvd < min(a, b) {
			if a == b {
				return p[k-1]
			}
			return p[k-1] + (p[k]-p[k-1])*(tvd-a)/(b-a)
		}
	}
	return p[0]
}

// conditions are what acts on the string.
func (r *Room) conditions(p *profile, e []float64) movement.Conditions {
	s := r.sharp(p, e)
	inside := p.index(r.Inside)
	parts := make([][]int, len(r.Outside))
	for k, part := range r.Outside {
		for _, i := range part {
			parts[k] = append(parts[k], p.index(i))
		}
	}
	return movement.Conditions{
		Inside: func(_ int, tvd unit.Length) unit.Pressure { return unit.Pressure(s.at(inside, float64(tvd))) },
		Outside: func(part int, tvd unit.Length) unit.Pressure {
			all := parts[part]
			for _, n := range all[:len(all)-1] {
				if d := s.depths[n]; float64(tvd) <= d[len(d)-1] {
					return unit.Pressure(s.at(n, float64(tvd)))
				}
			}
			return unit.Pressure(s.at(all[len(all)-1], float64(tvd)))
		},
		Temperature: r.temperature(p.temperature, e),
	}
}
