// Package gasflow computes a gas that flows steadily up a well: pressures between
// the formation and the wellhead, by weight, friction and acceleration.
//
// Signs: depth is positive down, rates are positive up the well, pressures are
// gauge. One phase: no liquid falls out and none is carried; a wet gas counts with
// the gravity of the whole well stream while there is little of it.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package gasflow

import (
	"errors"
	"fmt"
	"math"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Gas is what the tubing asks of what flows in it; fluid.Gas is one.
type Gas interface {
	Density(p unit.Pressure, t unit.Temperature) (unit.Density, error)
	Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error)
}

// Tubing is the way of the gas from the formation to the wellhead.
//
// Along the hole, s down,
//
//	dp/ds·(1 − v²·ρ/p) = ρ·g·dz/ds + 2·f·ρ·v²/d,  v = W/(ρ·A)
//
// p absolute, ρ and viscosity at p and T(z), W the mass rate, f Fanning's factor of
// Colebrook and White (16/Re where laminar), d the inside diameter, A its area. The
// bracket is the gas's acceleration, with the speed of sound of a gas at constant
// temperature, p/ρ: a correction of a per mille below 30 m/s. Temperature is
// straight between wellhead and bottom, by vertical depth.
//
// Source: momentum of one-dimensional steady flow; e.g. Katz and others, Handbook of
// Natural Gas Engineering (1959), ch. 7, whose closed form at mean Z and T it meets.
type Tubing struct {
	Sections []flow.ConduitSection `json:"sections"` // from the wellhead down; pipe, not annulus
	Gas      Gas                   `json:"gas"`
	Wellhead unit.Temperature      `json:"wellhead"` // flowing
	Bottom   unit.Temperature      `json:"bottom"`
}

// Node is the gas at one depth.
type Node struct {
	MD          unit.Length      `json:"md"`
	TVD         unit.Length      `json:"tvd"`
	Pressure    unit.Pressure    `json:"pressure"`
	Temperature unit.Temperature `json:"temperature"`
	Density     unit.Density     `json:"density"`
	Velocity    unit.Velocity    `json:"velocity"`
}

// ErrNotReached says that the gas at this rate doesn't reach the other end: its
// pressure falls to nothing or its speed to that of sound on the way.
var ErrNotReached = errors.New("gasflow: at this rate the gas does not reach the wellhead")

// stepsOfSection are those of the fourth-order march over a section.
const stepsOfSection = 60

// Up returns the gas at the ends of the sections for a pressure at the bottom, the
// wellhead first. Errors: ErrNotReached; faults of the inputs; what the gas refuses.
func (t Tubing) Up(rate unit.MassRate, bottom unit.Pressure) ([]Node, error) {
	return t.march(rate, bottom, true)
}

// Down is Up from the wellhead's pressure.
func (t Tubing) Down(rate unit.MassRate, wellhead unit.Pressure) ([]Node, error) {
	return t.march(rate, wellhead, false)
}

// Validate reports what is out of range.
func (t Tubing) Validate() error {
	f := fault.In("gasflow")
	if len(t.Sections) == 0 {
		f.New("Sections", "are missing; give the tubing from the wellhead down")
	}
	if t.Gas == nil {
		f.New("Gas", "is missing")
	}
	last := unit.Length(0)
	for i, s := range t.Sections {
		at := fault.Index("Sections", i)
		f.At(at+".Conduit", s.Conduit.Validate())
		if s.Conduit.Annulus() {
			f.New(at+".Conduit.Inner", "is %v; gas flows in a pipe here, with nothing in it", s.Conduit.Inner)
		}
		f.Add(fault.AboveTo(at+".Length", s.Length, 0, 20*unit.Kilometre))
		if d := s.BottomTVD - last; !(math.Abs(float64(d)) <= float64(s.Length)*(1+1e-9)) {
			f.New(at+".BottomTVD", "is %v, %v below its top; it must not be further than its length, %v", s.BottomTVD, d, s.Length)
		}
		last = s.BottomTVD
	}
	f.Add(fault.Temperature("Wellhead", t.Wellhead, unit.Celsius(-60), unit.Celsius(350)), fault.Temperature("Bottom", t.Bottom, unit.Celsius(-60), unit.Celsius(350)))
	return f.Err()
}

func (t Tubing) march(rate unit.MassRate, from unit.Pressure, up bool) ([]Node, error) {
	if err := fault.Join("gasflow", t.Validate(), fault.Between("rate", rate, 0, 1e4*unit.KilogramPerSecond), fault.Between("pressure", from, 0, 300*unit.Megapascal)); err != nil {
		return nil, err
	}
	n := len(t.Sections)
	nodes := make([]Node, n+1)
	p := float64(from)
	for i := range n {
		k := i
		if up {
			k = n - 1 - i
		}
		m, err := t.section(k, float64(rate))
		if err != nil {
			return nil, err
		}
		if i == 0 {
			if nodes[m.start(up)], err = m.node(m.end(up), p); err != nil {
				return nil, err
			}
		}
		if p, err = m.across(p, up); err != nil {
			return nil, err
		}
		if nodes[m.start(!up)], err = m.node(m.end(!up), p); err != nil {
			return nil, err
		}
	}
	return nodes, nil
}

// stretch is a section prepared for a rate.
type stretch struct {
	t           Tubing
	index       int
	s0, length  float64 // along the hole
	z0, slope   float64 // vertical depth of its top, and dz/ds
	area, d     float64
	roughness   float64 // relative
	flux        float64 // mass rate per area
	deep        float64
	temperature [2]float64
}

func (t Tubing) section(k int, rate float64) (stretch, error) {
	s := t.Sections[k]
	m := stretch{t: t, index: k, length: float64(s.Length), area: float64(s.Conduit.Area()), d: float64(s.Conduit.Outer)}
	for _, above := range t.Sections[:k] {
		m.s0 += float64(above.Length)
		m.z0 = float64(above.BottomTVD)
	}
	m.slope = (float64(s.BottomTVD) - m.z0) / m.length
	m.roughness = float64(s.Conduit.Roughness) / m.d
	m.flux = rate / m.area
	m.deep = float64(t.Sections[len(t.Sections)-1].BottomTVD)
	m.temperature = [2]float64{t.Wellhead.Kelvin(), t.Bottom.Kelvin()}
	return m, nil
}

// start is the node that the march begins at, and end its place in the stretch.
func (m stretch) start(up bool) int {
	if up {
		return m.index + 1
	}
	return m.index
}

func (m stretch) end(up bool) float64 {
	if up {
		return m.length
	}
	return 0
}

func (m stretch) at(s float64) (z float64, t unit.Temperature) {
	z = m.z0 + m.slope*s
	share := 0.0
	if m.deep > 0 {
		share = z / m.deep
	}
	return z, unit.Kelvin(m.temperature[0] + (m.temperature[1]-m.temperature[0])*share)
}

func (m stretch) node(s, p float64) (Node, error) {
	z, t := m.at(s)
	rho, err := m.t.Gas.Density(unit.Pressure(p), t)
	if err != nil {
		return Node{}, err
	}
	return Node{MD: unit.Length(m.s0 + s), TVD: unit.Length(z), Pressure: unit.Pressure(p), Temperature: t, Density: rho, Velocity: unit.Velocity(m.flux / float64(rho))}, nil
}

// slopeAt is dp/ds.
func (m stretch) slopeAt(s, p float64) (float64, error) {
	absolute := p + float64(unit.Atmosphere)
	if !(p >= 0) {
		return 0, ErrNotReached
	}
	_, t := m.at(s)
	rho, err1 := m.t.Gas.Density(unit.Pressure(p), t)
	mu, err2 := m.t.Gas.Viscosity(unit.Pressure(p), t)
	if err := errors.Join(err1, err2); err != nil {
		return 0, fmt.Errorf("gasflow: at %v: %w", unit.Pressure(p), err)
	}
	r := float64(rho)
	v := m.flux / r
	friction := 0.0
	if v > 0 {
		re := m.flux * m.d / float64(mu)
		f := flow.FanningFactor(16 / re)
		if re > laminarEnd {
			f = flow.Colebrook(re, m.roughness).Fanning()
		}
		friction = 2 * float64(f) * r * v * v / m.d
	}
	sound := 1 - v*v*r/absolute
	if !(sound > 0) {
		return 0, ErrNotReached
	}
	return (r*standardGravity*m.slope + friction) / sound, nil
}

// standardGravity in m/s². Source: 3rd CGPM (1901).
const standardGravity = 9.80665

// laminarEnd is where flow in a pipe stops being laminar for certain. Source:
// common practice.
const laminarEnd = 2100

// across marches over the stretch by Runge and Kutta's fourth-order rule.
func (m stretch) across(p float64, up bool) (float64, error) {
	h, s := m.length/stepsOfSection, 0.0
	if up {
		h, s = -h, m.length
	}
	for range stepsOfSection {
		k1, err1 := m.slopeAt(s, p)
		k2, err2 := m.slopeAt(s+h/2, p+h/2*k1)
		k3, err3 := m.slopeAt(s+h/2, p+h/2*k2)
		k4, err4 := m.slopeAt(s+h, p+h*k3)
		for _, err := range []error{err1, err2, err3, err4} {
			if err != nil {
				return 0, err
			}
		}
		p += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
		s += h
	}
	// The end has no step behind it that would ask.
	_, err := m.slopeAt(s, p)
	return p, err
}
