package packer

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// Parted is the moment after a mandrel has parted: tubing and annulus are joined
// at the joint, and what is under it may be open.
type Parted struct {
	// Legs are tubing and annulus down to the joint, which is the port.
	Legs hydrostatics.UTube `json:"legs"`

	// Formation is the pressure at the joint that whatever lies under it brings,
	// where the bore under the joint is open to it, and Margin what the columns
	// are to have over it.
	Open      bool          `json:"open"`
	Formation unit.Pressure `json:"formation"`
	Margin    unit.Pressure `json:"margin"`
}

// Aftermath is what a parted mandrel leaves to do.
type Aftermath struct {
	// Differential is tubing minus annulus at the joint just before. Falling is
	// the heavier side, which fluid flows out of.
	Differential unit.Pressure     `json:"differential"`
	Falling      hydrostatics.Side `json:"falling"`

	// Hold is the pressure to add at surface on the lighter side that stops the
	// flow before it begins.
	Hold unit.Pressure `json:"hold"`

	// Rest is how the legs come to rest if nothing is done; NoRest says why they
	// don't, which is when the heavier one empties.
	Rest   hydrostatics.AtRest `json:"rest"`
	NoRest error               `json:"no_rest"`

	// Fill is what to pump to have the heavier side's fluid on both sides: the
	// lighter side's volume. Circulation is both.
	Fill        unit.Volume `json:"fill"`
	Circulation unit.Volume `json:"circulation"`

	// Overbalance is the lighter column at the joint over the formation, with
	// nothing held at surface; negative lets the well flow. Kill is the density
	// of one fluid on both sides that has the margin over it. Both are zero where
	// the bore under the joint is closed.
	Overbalance unit.Pressure `json:"overbalance"`
	Kill        unit.Density  `json:"kill"`

	depth             unit.Length
	formation, margin unit.Pressure
	tubing, annulus   unit.Pressure
}

// Aftermath returns what happens when tubing and annulus are joined, and what to
// pump.
//
//	hold        = |pt - pa|
//	overbalance = least of the columns, without surface pressure, - formation
//	kill        = (formation + margin) / (g H)
//
// pt and pa are the pressures at the joint in tubing and annulus, H its true
// vertical depth. How the legs come to rest is hydrostatics.UTube's answer; the
// formation takes no part in it.
//
// Errors name every field out of range. Source: hydrostatics of communicating
// columns.
func (p Parted) Aftermath() (Aftermath, error) {
	f := fault.In(scope)
	f.Add(fault.AtLeast("Formation", p.Formation, 0))
	f.Add(fault.AtLeast("Margin", p.Margin, 0))
	if !p.Open && (p.Formation != 0 || p.Margin != 0) {
		f.New("Formation", "is %v, and Margin %v; must be 0 where Open is not set", p.Formation, p.Margin)
	}
	rest, err := p.Legs.Rest()
	if err != nil && !errors.Is(err, hydrostatics.ErrNoBalance) {
		f.At("Legs", err)
	}
	if err := f.Err(); err != nil {
		return Aftermath{}, err
	}
	a := Aftermath{Rest: rest, NoRest: err, formation: p.Formation, margin: p.Margin}
	if a.depth, err = depthOn(p.Legs.Path, p.Legs.PortMD); err != nil {
		return Aftermath{}, err
	}
	if a.tubing, err = p.bottom(p.Legs.Tubing); err != nil {
		return Aftermath{}, err
	}
	if a.annulus, err = p.bottom(p.Legs.Annulus); err != nil {
		return Aftermath{}, err
	}
	a.Differential = a.tubing - a.annulus
	a.Hold = max(a.Differential, -a.Differential)
	tubing, annulus := volume(p.Legs.Tubing, p.Legs.PortMD), volume(p.Legs.Annulus, p.Legs.PortMD)
	a.Circulation = tubing + annulus
	switch {
	case a.Differential > 0:
		a.Falling, a.Fill = hydrostatics.Tubing, annulus
	case a.Differential < 0:
		a.Falling, a.Fill = hydrostatics.Annulus, tubing
	}
	if p.Open {
		a.Overbalance = min(a.tubing-p.Legs.Tubing.Surface, a.annulus-p.Legs.Annulus.Surface) - p.Formation
		a.Kill = hydrostatics.EquivalentDensity(p.Formation+p.Margin, a.depth)
	}
	return a, finiteResult("state after parting", float64(a.Differential), float64(a.Circulation), float64(a.Kill))
}

// bottom is the pressure at the joint at the foot of a leg.
func (p Parted) bottom(l hydrostatics.Leg) (unit.Pressure, error) {
	sum := l.Surface
	top, err := depthOn(p.Legs.Path, l.LevelMD)
	if err != nil {
		return 0, err
	}
	for _, fluid := range l.Fluids {
		bottom, err := depthOn(p.Legs.Path, fluid.BottomMD)
		if err != nil {
			return 0, err
		}
		sum += hydrostatics.Pressure(fluid.Density, bottom-top)
		top = bottom
	}
	return sum, nil
}

func volume(l hydrostatics.Leg, port unit.Length) unit.Volume {
	total, top := unit.Volume(0), unit.Length(0)
	for _, s := range l.Sections {
		bottom := min(s.BottomMD, port)
		if bottom > top {
			total += unit.Volume(float64(s.Area) * float64(bottom-top))
			top = bottom
		}
	}
	return total
}

// depthOn returns the true vertical depth of a measured depth; without a path
// the hole is vertical.
func depthOn(path *hydrostatics.Path, md unit.Length) (unit.Length, error) {
	if path == nil {
		return md, nil
	}
	tvd, err := path.TVD(md)
	if err != nil {
		return 0, fmt.Errorf("packer: path: %w", err)
	}
	return tvd, nil
}

// Steps works the differential and, where there is one, the kill density.
func (a Aftermath) Steps() []working.Step {
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	steps := []working.Step{{
		Name: "differential at the joint", Symbol: "dp", Equation: "pt - pa",
		Inputs: []working.Input{in("pt", working.Of(a.tubing)), in("pa", working.Of(a.annulus))},
		Value:  working.Of(a.Differential), Source: "hydrostatics",
	}}
	if a.Kill > 0 {
		steps = append(steps, working.Step{
			Name: "density that kills it", Symbol: "ρ", Equation: "(pf + m)/(g*H)",
			Inputs: []working.Input{in("pf", working.Of(a.formation)), in("m", working.Of(a.margin)), in("H", working.Of(a.depth))},
			Value:  working.Of(a.Kill), Source: "hydrostatics",
		})
	}
	return steps
}
