package sleeve

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Motion is what a setting of the panel does to a sleeve.
type Motion uint8

// Motions.
const (
	Stays Motion = iota
	Opens
	Closes
	PartlyOpens  // a blocked line stops it on the way
	PartlyCloses // a blocked line stops it on the way
	MayOpen      // within its band of friction, or of what a blocked line gives
	MayClose
	MayMove // either way
)

var motions = [...]string{"stays", "opens", "closes", "partly opens", "partly closes", "may open", "may close", "may move"}

// String returns the motion in words.
func (m Motion) String() string {
	if int(m) < len(motions) {
		return motions[m]
	}
	return fmt.Sprintf("motion %d", uint8(m))
}

// Effect is what happens to one sleeve.
type Effect struct {
	Name   string   `json:"name"`
	Motion Motion   `json:"motion"`
	Before Position `json:"before"`
	After  Position `json:"after"`

	Force      unit.Band[unit.Force] `json:"force"` // on the piston, opening positive, as blocked lines let it vary
	Resistance unit.Band[unit.Force] `json:"resistance"`

	// Margin is zero or positive. For a sleeve that moves: what the force has
	// over the greatest resistance at the end of the stroke. For one that stays:
	// what the force is short of the least. Zero where the band doesn't decide.
	Margin unit.Force `json:"margin"`
}

// Apply returns what a setting of the panel does to every sleeve.
//
//	N = po·Ao − pc·Ac            force on the piston
//	opens if N ≥ F, closes if −N ≥ F, stays otherwise
//
// po and pc are the lines' pressures at the sleeve, F its Resistance. A vented
// or pressured line keeps its pressure. A blocked line gives way by what its
// liquid and wall let it,
//
//	Δp = ΔV/(V·(c + cw))
//
// so that a sleeve may run on against a long blocked line, stop on the way, or
// drive others through a blocked close line. The volumes of all sleeves that may
// move with a blocked close line bound its pressure. A line of which neither
// liquid nor wall gives counts as one that stops a sleeve at an unknown place.
//
// A sleeve moves or stays for certain only if it does so at both ends of its
// friction and of those pressures.
//
// Errors: the system's, and settings or positions out of range. Source: balance
// of forces and volumes.
func (s System) Apply(before []Position, panel Panel) ([]Effect, error) {
	heads, err := s.prepare()
	if err := fault.Join(scope, err, fault.At("panel", s.checkPanel(panel)), fault.At("before", s.checkPositions(before))); err != nil {
		return nil, err
	}
	l := s.hold(panel)
	return s.apply(heads, before, &l), nil
}

// held is the pressure of one line at the panel end: exact but where a blocked
// line has given way.
type held struct {
	low, high float64
	blocked   bool
}

func (t Setting) held() held {
	p := 0.0
	if t.Mode != Vented {
		p = float64(t.Pressure)
	}
	return held{p, p, t.Mode == Blocked}
}

// lines is what every line holds.
type lines struct {
	close held
	open  []held
}

func (s System) hold(p Panel) lines {
	l := lines{close: p.Close.held(), open: make([]held, len(s.Sleeves))}
	for i := range l.open {
		l.open[i] = p.open(i).held()
	}
	return l
}

// piston is one sleeve under a setting, in SI.
type piston struct {
	ao, ac, stroke float64
	least, most    float64 // resistance
	head           float64 // of each line at the sleeve
	low, high      float64 // open line at the panel
	gives          float64 // pressure per volume in the open line; zero unless blocked
}

// force on the piston from the pressures of both lines at the panel.
func (p *piston) force(open, close float64) float64 {
	return (open+p.head)*p.ao - (close+p.head)*p.ac
}

// closeLine is the common line's pressure at the panel.
type closeLine struct {
	startLow, startHigh float64 // before anything moves
	low, high           float64 // what it can reach
	empty, full         float64 // if every sleeve that may move makes its whole stroke
	gives               float64 // pressure per volume; zero unless blocked
}

// apply works out the effects, and leaves in l what blocked lines hold then.
func (s System) apply(heads []float64, before []Position, l *lines) []Effect {
	ps := make([]piston, len(s.Sleeves))
	for i, v := range s.Sleeves {
		f := v.Resistance()
		ps[i] = piston{ao: float64(v.OpenArea), ac: float64(v.CloseArea), stroke: float64(v.Stroke),
			least: float64(f.Least), most: float64(f.Greatest), head: heads[i], low: l.open[i].low, high: l.open[i].high}
		if l.open[i].blocked {
			ps[i].gives = 1 / s.softness(s.OpenLines[i])
		}
	}
	c := closeLine{startLow: l.close.low, startHigh: l.close.high}
	c.low, c.high, c.empty, c.full = c.startLow, c.startHigh, c.startLow, c.startHigh
	if l.close.blocked {
		c.gives = 1 / s.softness(s.CloseLine)
		c.settle(ps, before)
		l.close.low, l.close.high = c.low, c.high
	}
	effects := make([]Effect, len(ps))
	for i := range ps {
		effects[i] = ps[i].effect(before[i], &c)
		effects[i].Name, effects[i].Resistance = s.Sleeves[i].Name, s.Sleeves[i].Resistance()
		if l.open[i].blocked {
			l.open[i] = ps[i].after(effects[i], &c)
		}
	}
	return effects
}

// leastAfter is the least that the line can hold once a piston has pressed its
// return in. Written so that a line that can't give, infinity less infinity,
// leaves it at the low end.
func (c *closeLine) leastAfter(take float64) float64 {
	if x := c.empty + take; x > c.low {
		return x
	}
	return c.low
}

// mostAfter is the most that the line can hold once a piston has drawn its
// volume out.
func (c *closeLine) mostAfter(take float64) float64 {
	if x := c.full - take; x < c.high {
		return x
	}
	return c.high
}

// settle widens the range of a blocked close line until no further sleeve joins
// in. Each pass can only add sleeves, so that it ends.
func (c *closeLine) settle(ps []piston, before []Position) {
	for range 2*len(ps) + 1 {
		in, out := 0.0, 0.0                        // volume that sleeves can press in, and draw out
		highest, lowest := c.startHigh, c.startLow // where the last of them stops
		for i := range ps {
			p := &ps[i]
			if before[i] != Open && p.force(p.high, c.low) >= p.least {
				in += p.ac * p.stroke
				highest = max(highest, ((p.high+p.head)*p.ao-p.least)/p.ac-p.head)
			}
			if before[i] != Closed && -p.force(p.low, c.high) >= p.least {
				out += p.ac * p.stroke
				lowest = min(lowest, ((p.low+p.head)*p.ao+p.least)/p.ac-p.head)
			}
		}
		c.full, c.empty = c.startHigh+rise(in, c.gives), c.startLow-rise(out, c.gives)
		high, low := min(c.full, highest), max(c.empty, lowest)
		if high <= c.high && low >= c.low {
			return
		}
		c.high, c.low = max(high, c.high), min(low, c.low)
	}
}

// rise is the pressure that a volume makes in a line. A line that can't give has
// an infinite one, but not for no volume.
func rise(volume, gives float64) float64 {
	if volume == 0 || gives == 0 {
		return 0
	}
	return volume * gives
}

func (p *piston) effect(before Position, c *closeLine) Effect {
	least, most := p.force(p.low, c.high), p.force(p.high, c.low)
	e := Effect{Before: before, After: before, Force: unit.Band[unit.Force]{
		Least: unit.Force(least), Nominal: unit.Force(least + (most-least)/2), Greatest: unit.Force(most)}}
	mayOpen := before != Open && most >= p.least
	mayClose := before != Closed && -least >= p.least
	give, take := rise(p.ao*p.stroke, p.gives), rise(p.ac*p.stroke, c.gives)
	switch {
	case mayOpen && mayClose:
		e.Motion, e.After = MayMove, Unknown
	case mayOpen:
		// At the end of the stroke the open line has given its volume. The close
		// line has taken everybody's at worst; at best the piston's own, less
		// what others have drawn from it.
		sure := p.force(p.low-give, c.full) - p.most
		best := p.force(p.high-give, c.leastAfter(take)) - p.least
		e.decide(sure, best, p.force(p.low, c.startHigh) >= p.most, Open)
	case mayClose:
		sure := -p.force(p.high+give, c.empty) - p.most
		best := -p.force(p.low+give, c.mostAfter(take)) - p.least
		e.decide(sure, best, -p.force(p.high, c.startLow) >= p.most, Closed)
	default:
		short := math.Inf(1)
		if before != Open {
			short = min(short, p.least-most)
		}
		if before != Closed {
			short = min(short, p.least+least)
		}
		e.Margin = unit.Force(short)
	}
	return e
}

// decide sets motion, position and margin of a sleeve that may move towards a
// position: sure is what is left at the end of the stroke at worst, best what is
// left at best.
func (e *Effect) decide(sure, best float64, starts bool, to Position) {
	certain, partly, perhaps := Opens, PartlyOpens, MayOpen
	if to == Closed {
		certain, partly, perhaps = Closes, PartlyCloses, MayClose
	}
	switch {
	case sure >= 0:
		e.Motion, e.After, e.Margin = certain, to, unit.Force(sure)
	case starts && best < 0:
		e.Motion, e.After = partly, Unknown
	default:
		e.Motion, e.After = perhaps, Unknown
	}
}

// after is what a blocked open line holds when its sleeve has moved or may have.
func (p *piston) after(e Effect, c *closeLine) held {
	h := held{p.low, p.high, true}
	give := rise(p.ao*p.stroke, p.gives)
	switch e.Motion {
	case Opens:
		h.low, h.high = p.low-give, p.high-give
	case Closes:
		h.low, h.high = p.low+give, p.high+give
	case PartlyOpens, MayOpen, MayMove:
		stops := ((c.low+p.head)*p.ac+p.least)/p.ao - p.head
		h.low = min(h.low, max(p.low-give, stops))
	}
	switch e.Motion {
	case PartlyCloses, MayClose, MayMove:
		stops := ((c.high+p.head)*p.ac-p.least)/p.ao - p.head
		h.high = max(h.high, min(p.high+give, stops))
	}
	return h
}
