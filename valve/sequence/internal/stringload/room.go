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
	Lifts        [2]float64     // greatest readings of rig and hanger, N; zero: not known
	Places       map[int]int    // by action that holds: the place
	Envelope     *packer.Envelope
	Below, Above int // compartments of the envelope's differential, and where
	BelowAt      int
	AboveAt      int
	Packer       int // the place that the envelope is of
	Seals        []Seal
	Joints       int         // how many
	Pulled       []int       // places whose load unseats them, and
	Latches      []bool      // joints that are latched to again, where it is one
	Frees        map[int]int // by action that releases where something holds: that place alone
	Block        float64
	TopBore      float64 // area of the bore at the hanger, m²
	Memory       *Memory // loads of a walk, used again; nil: none are kept
	Own          []int   // by temperature of the well: the string's own; nil: that

	// Outer is the string that it stands in, and Pair the two of them; nil: none. On are
	// the actions that are on the outer one.
	Outer *Room
	Pair  *movement.Concentric
	On    map[int]bool

	once   []int   // of the compartments that it feels
	inside int     // where in these Inside is,
	parts  [][]int // and Outside
}

// Seal is how far a seal may move, in m, and what it takes to slide.
type Seal struct {
	MD       float64
	Up, Down float64
	Friction affine.Form
}

// Ties are the compartments that the string feels, and that around it.
func (r *Room) Ties() []int {
	var ties []int
	for _, x := range r.strings() {
		ties = append(ties, x.ties()...)
	}
	return ties
}

func (r *Room) ties() []int {
	ties := []int{r.Inside}
	for _, part := range r.Outside {
		ties = append(ties, part...)
	}
	if r.Envelope != nil {
		ties = append(ties, r.Below, r.Above)
	}
	return ties
}

// Prepare numbers the compartments that the string feels, once for all walks, which
// may go on at the same time.
func (r *Room) Prepare() {
	for _, i := range r.Ties() {
		if !slices.Contains(r.once, i) {
			r.once = append(r.once, i)
		}
	}
	for _, x := range r.strings() {
		x.inside, x.parts = slices.Index(r.once, x.Inside), make([][]int, len(x.Outside))
		for k, part := range x.Outside {
			for _, i := range part {
				x.parts[k] = append(x.parts[k], slices.Index(r.once, i))
			}
		}
	}
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
	depths      [][]float64     // their TVD
	from        *profile        // of slips that may bite earlier: how it was then,
	bite        affine.Form     // and how far from that to this one they do
	temperature int
	moves       bool // along the leg
}

// profileOf takes the pressures of a state at a place of its leg.
func (r *Room) profileOf(s *well.State, x affine.Form) (*profile, error) {
	p := new(profile)
	if err := r.take(p, s, x); err != nil {
		return nil, err
	}
	return r.lasting(p), nil
}

// take puts the pressures of a state at a place of its leg into a profile.
func (r *Room) take(p *profile, s *well.State, x affine.Form) error {
	p.temperature, p.of, p.moves = s.Temperature, r.once, false
	if p.corners == nil {
		p.corners, p.forms = make([][]int, len(p.of)), make([][]affine.Form, len(p.of))
	}
	for n, i := range p.of {
		p.corners[n], p.forms[n] = s.Corners(i), p.forms[n][:0]
		for _, d := range p.corners[n] {
			l, err := s.At(i, d)
			if err != nil {
				return err
			}
			p.forms[n] = append(p.forms[n], l.At(x))
			p.moves = p.moves || l.S != 0 || l.D != 0
		}
		if bent := s.Bent(i); bent > 0 { // between the depths about a level it isn't straight
			last := len(p.forms[n]) - 1
			p.forms[n][last] = p.forms[n][last].Widen(bent)
		}
	}
	return nil
}

// lasting is a profile that stays as it is when what it was taken into is used again.
func (r *Room) lasting(p *profile) *profile {
	q := *p
	q.corners = slices.Clone(p.corners) // those of one compartment are never written into
	q.forms, q.depths = make([][]affine.Form, len(p.forms)), make([][]float64, len(p.forms))
	for n, i := range p.of {
		q.forms[n] = slices.Clone(p.forms[n])
		q.depths[n] = make([]float64, len(p.forms[n]))
		for d, c := range p.corners[n] {
			q.depths[n][d] = r.Network.Compartments[i].Depths[c].TVD
		}
	}
	return &q
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

// take puts the numbers of a profile in the place of what was there.
func (s *sharp) take(p *profile, e []float64) {
	s.depths = p.depths
	s.p = slices.Grow(s.p[:0], len(p.of))[:len(p.of)]
	for n, forms := range p.forms {
		values := slices.Grow(s.p[n][:0], len(forms))[:len(forms)]
		for d := range forms {
			values[d] = forms[d].At(e)
			if p.from != nil {
				was := p.from.forms[n][d].At(e)
				values[d] = was + (values[d]-was)*p.bite.At(e)
			}
		}
		s.p[n] = values
	}
}

// at is the pressure at a true vertical depth: straight between two depths of the
// compartment.
func (s *sharp) at(n int, tvd float64) float64 {
	depths, p := s.depths[n], s.p[n]
	for k := 1; k < len(depths); k++ {
		a, b := depths[k-1], depths[k]
		if k == len(depths)-1 || tvd <= max(a, b) && tvd >= min(a, b) || k == 1 && tvd < min(a, b) {
			if a == b {
				return p[k-1]
			}
			return p[k-1] + (p[k]-p[k-1])*(tvd-a)/(b-a)
		}
	}
	return p[0]
}

// conditions are what acts on the string, and on that around it. They ask what the
// profile's numbers were put into; nil: something new.
func (r *Room) conditions(p *profile, e []float64, s *sharp) (all [2]movement.Conditions) {
	if s == nil {
		s = new(sharp)
	}
	s.take(p, e)
	for i, x := range r.strings() {
		all[i] = x.of(s, r.temperature(x.own(p.temperature), e))
	}
	return all
}

// of are the conditions with the pressures of a profile.
func (r *Room) of(s *sharp, temperature func(unit.Length) unit.Temperature) movement.Conditions {
	inside, parts := r.inside, r.parts
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
		Temperature: temperature,
	}
}
