package flow

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Cling returns the share of the pipe's velocity with which it drags the fluid
// of a concentric annulus along, for laminar Newtonian flow and α = d/D,
//
//	kc = (α² - 2 α² ln α - 1) / (2 (1 - α²) ln α)
//
// from 0 at a thin wire to 1/2 in a narrow gap. The trade often takes 0.45.
//
// Range: 0 < d < D. NaN at both ends, whose limits are 0 and 1/2; not checked
// beyond.
//
// Source: Burkhardt, J. Petroleum Technology (June 1961) 595.
func Cling(c Conduit) float64 {
	a := float64(c.Inner / c.Outer)
	l := math.Log(a)
	return (a*a - 2*a*a*l - 1) / (2 * (1 - a*a) * l)
}

// ClosedPipeVelocity returns the mean velocity of the fluid past the pipe, as
// the wall of the pipe sees it, while a closed pipe moves at speed Vp,
//
//	V = Vp [kc + d²/(D² - d²)]
//
// Range: d below D, not checked: infinite without a gap. Any speed, of either
// sign.
//
// Source: Burkhardt (1961); Moore, Drilling Practices Manual (1974), with kc =
// 0.45.
func ClosedPipeVelocity(c Conduit, speed unit.Velocity, cling float64) unit.Velocity {
	d2, D2 := sq(c.Inner), sq(c.Outer)
	return speed * unit.Velocity(cling+d2/(D2-d2))
}

// OpenPipeVelocity is ClosedPipeVelocity for a pipe that fills through its open
// end, with levels inside and outside moving alike,
//
//	V = Vp [kc + (d² - di²)/(D² - d² + di²)]
//
// Range: di up to d, d below D, not checked. Any speed, of either sign.
//
// Source: Moore, Drilling Practices Manual (1974), as in Lapeyrouse, Formulas and
// Calculations, chapter 5.
func OpenPipeVelocity(c Conduit, bore unit.Length, speed unit.Velocity, cling float64) unit.Velocity {
	d2, D2, b2 := sq(c.Inner), sq(c.Outer), sq(bore)
	return speed * unit.Velocity(cling+(d2-b2)/(D2-d2+b2))
}

func sq(l unit.Length) float64 { return float64(l) * float64(l) }

// Trip is pipe moving in a hole full of liquid.
type Trip struct {
	Annulus []ConduitSection `json:"annulus"` // around the moving pipe, from surface to its end
	Bores   []unit.Length    `json:"bores"`   // inside diameters of the pipe, one for each section; only for an open pipe
	Liquid  PumpedFluid      `json:"liquid"`
	Speed   unit.Velocity    `json:"speed"` // of the pipe, the mean over a stand; running in and pulling alike
	Cling   float64          `json:"cling"` // share of the pipe's speed dragged along; zero takes Cling of each section
	Peak    float64          `json:"peak"`  // greatest over mean speed of the pipe; zero takes PeakSpeed
	Open    bool             `json:"open"`  // the pipe's end is open
}

// PeakSpeed is the trade's greatest over mean speed of a stand.
//
// Source: Moore (1974), as in Lapeyrouse, chapter 5: Vm = 1.5 V.
const PeakSpeed = 1.5

// Swept is one section's share of a surge.
type Swept struct {
	Name     string        `json:"name"`
	Cling    float64       `json:"cling"`
	Velocity unit.Velocity `json:"velocity"` // effective, at the pipe's greatest speed
	Friction Friction      `json:"friction"`
	Loss     unit.Pressure `json:"loss"`
}

// Surge is what a trip does to the pressure at the end of the pipe.
type Surge struct {
	Loss              unit.Pressure `json:"loss"`               // added while running in, taken away while pulling
	Static            unit.Pressure `json:"static"`             // of the column at rest
	Running           unit.Pressure `json:"running"`            // static + loss
	Pulling           unit.Pressure `json:"pulling"`            // static - loss
	RunningEquivalent unit.Density  `json:"running_equivalent"` // equivalent of Running; 0 at no depth
	PullingEquivalent unit.Density  `json:"pulling_equivalent"` // equivalent of Pulling
	Sections          []Swept       `json:"sections"`
}

// Solve returns surge and swab: the friction of the effective velocity in each
// section's annulus, in any regime, by Stream.Friction. It is steady: neither
// inertia nor the gel's break is in it (GelPressure), nor anything below the
// pipe's end. With Cling the method is exact for laminar Newtonian flow, where the
// drag of the moving wall and the flow it has to let past add up; for other
// fluids and regimes it is the trade's approximation.
//
//	Δp = Σ G(Ve)·L
//
// Errors: faults of t; those of Stream.Friction.
//
// Source: Burkhardt (1961); Moore (1974).
func (t Trip) Solve() (Surge, error) {
	f := fault.In("flow")
	checkSections(&f, "Annulus", t.Annulus)
	for i, s := range t.Annulus {
		if !s.Conduit.Annulus() {
			f.New(fault.Index("Annulus", i)+".Conduit.Inner", "is 0 in; must be the outside diameter of the moving pipe")
		}
	}
	if t.Open {
		if len(t.Bores) != len(t.Annulus) {
			f.New("Bores", "has %d bores for %d sections of Annulus; must have one for each where the pipe is open", len(t.Bores), len(t.Annulus))
		} else {
			for i, b := range t.Bores {
				if s := t.Annulus[i]; !(b > 0 && b < s.Conduit.Inner) {
					f.New(fault.Index("Bores", i), "is %v; must be above 0 and below the pipe's outside diameter %v", b, s.Conduit.Inner)
				}
			}
		}
	}
	f.At("Liquid", t.Liquid.Validate())
	f.Add(fault.Between("Speed", t.Speed, 0, 20*unit.MetrePerSecond))
	f.Add(fault.Between("Cling", t.Cling, 0, 1))
	if t.Peak == 0 {
		t.Peak = PeakSpeed
	}
	f.Add(fault.Between("Peak", t.Peak, 1, 5))
	if err := f.Err(); err != nil {
		return Surge{}, err
	}
	var r Surge
	for i, s := range t.Annulus {
		w := Swept{Name: s.Name, Cling: t.Cling}
		if w.Cling == 0 {
			w.Cling = Cling(s.Conduit)
		}
		speed := t.Speed * unit.Velocity(t.Peak)
		if t.Open {
			w.Velocity = OpenPipeVelocity(s.Conduit, t.Bores[i], speed, w.Cling)
		} else {
			w.Velocity = ClosedPipeVelocity(s.Conduit, speed, w.Cling)
		}
		var err error
		w.Friction, err = Stream{s.Conduit, t.Liquid.Rheology, t.Liquid.Density, s.Conduit.Rate(w.Velocity)}.Friction()
		if err != nil {
			return Surge{}, fmt.Errorf("annulus %q: %w", s.Name, err)
		}
		w.Loss = w.Friction.Loss(s.Length) + MinorLoss(s.Minor, t.Liquid.Density, w.Velocity)
		r.Loss += w.Loss
		r.Sections = append(r.Sections, w)
	}
	depth := t.Annulus[len(t.Annulus)-1].BottomTVD
	r.Static = unit.Pressure(float64(t.Liquid.Density) * standardGravity * float64(depth))
	r.Running, r.Pulling = r.Static+r.Loss, r.Static-r.Loss
	if depth > 1e-3*unit.Millimetre {
		r.RunningEquivalent, r.PullingEquivalent = EquivalentDensity(r.Running, depth), EquivalentDensity(r.Pulling, depth)
	}
	return r, nil
}
