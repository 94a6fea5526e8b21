package packer

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
)

// Pull is a string on the hook, fast at a joint that a pull is to part.
type Pull struct {
	Sections []movement.Section // from surface to the joint; Hole is not used
	Path     *hydrostatics.Path // nil stands for a vertical hole

	// Inside and Outside are the pressures by true vertical depth while it is
	// pulled, with whatever is held at surface.
	Inside, Outside func(tvd unit.Length) unit.Pressure

	// Seal is the diameter that the joint's seal is on. Below is the pressure
	// under it where Plugged is set; otherwise it is the pressure inside.
	Seal    unit.Length
	Plugged bool
	Below   unit.Pressure

	// Drag is what the hole takes from a pull on its way down, from its least to
	// its greatest; package drag finds it. It is spread evenly along the string.
	Drag unit.Band[unit.Force]

	Block unit.Force // what the weight indicator shows with nothing hung from it
}

// Balance is a pull's hook load by its terms, without drag.
type Balance struct {
	Joint     unit.Force // load on the joint
	End       unit.Force // of the pressures on the string's end in the joint
	Weight    unit.Force // in air, of the string above
	Shoulders unit.Force // of the pressures on changes of section
	Cap       unit.Force // of the pressure at surface inside, which lifts the closed top
	Block     unit.Force

	// Reading is their sum: what the weight indicator shows. Drag adds to it.
	Reading unit.Force
}

// station is an end of a section, as plain numbers in SI.
type station struct {
	md, tvd        float64
	inside, outer  float64 // pressures
	weight         float64 // in air, of all that is above
	shoulders      float64 // of all changes of section above
	ai, ea         float64 // of the section below the station; of the last section at its end
	weightPerDepth float64
}

// stations checks the pull and works out all that doesn't depend on the load.
func (p Pull) stations() ([]station, error) {
	f := p.faults()
	if err := f.err(); err != nil {
		return nil, err
	}
	s := make([]station, 0, len(p.Sections)+1)
	top := unit.Length(0)
	for i := 0; i <= len(p.Sections); i++ {
		tvd, err := depthOn(p.Path, top)
		if err != nil {
			return nil, err
		}
		pipe := p.Sections[min(i, len(p.Sections)-1)].Pipe
		x := station{
			md: float64(top), tvd: float64(tvd), inside: float64(p.Inside(tvd)), outer: float64(p.Outside(tvd)),
			ai: float64(pipe.InnerArea()),
			ea: float64(pipe.Material.Young) * float64(pipe.SteelArea()), weightPerDepth: float64(pipe.WeightInAir()),
		}
		if err := finiteResult("pressure along the string", x.inside, x.outer); err != nil {
			return nil, err
		}
		if i > 0 {
			above := s[i-1]
			x.weight = above.weight + above.weightPerDepth*(x.tvd-above.tvd)
			over := p.Sections[i-1].Pipe
			x.shoulders = above.shoulders + float64(movement.ShoulderForce(
				unit.Pressure(x.inside), unit.Pressure(x.outer), over.OD, over.ID, pipe.OD, pipe.ID))
		}
		s = append(s, x)
		if i < len(p.Sections) {
			top = p.Sections[i].Bottom
		}
	}
	return s, nil
}

// end is the string's end in the joint.
func (p Pull) end(s []station) movement.End {
	last, pipe := s[len(s)-1], p.Sections[len(p.Sections)-1].Pipe
	e := movement.End{
		Bore: p.Seal, OD: pipe.OD, ID: pipe.ID,
		Inside: unit.Pressure(last.inside), Outside: unit.Pressure(last.outer), Below: unit.Pressure(last.inside),
	}
	if p.Plugged {
		e.Below = p.Below
	}
	return e
}

// Balance returns the hook load that puts a load on the joint, without drag.
//
//	R = P + F(end) + Σ w ΔTVD + Σ ΔF(shoulder) - pi(surface) Ai + block
//
//	P        load on the joint, positive where it parts it
//	F(end)   movement.End.Force
//	w        weight in air per length
//
// The pressures carry the buoyancy: with one fluid inside and outside, and no
// pressure at surface, the sum is that of the buoyed weight. It holds for a
// string of any sections on any path, as long as its wall friction is left out.
//
// Errors name every field out of range. Source: equilibrium of the string;
// Lubinski, Althouse and Logan 1962; Hammerlindl 1977 for shoulders.
func (p Pull) Balance(load unit.Force) (Balance, error) {
	s, err := p.stations()
	if err != nil {
		return Balance{}, err
	}
	if !finite(load) {
		return Balance{}, fmt.Errorf("packer: load on the joint = %v: want a finite number", load)
	}
	b := p.balance(s, load)
	return b, finiteResult("hook load", float64(b.Reading))
}

func (p Pull) balance(s []station, load unit.Force) Balance {
	last := s[len(s)-1]
	b := Balance{
		Joint: load, End: p.end(s).Force(), Weight: unit.Force(last.weight), Shoulders: unit.Force(last.shoulders),
		Cap: unit.Force(-s[0].inside * s[0].ai), Block: p.Block,
	}
	b.Reading = b.Joint + b.End + b.Weight + b.Shoulders + b.Cap + b.Block
	return b
}

// force returns the real force at a measured depth, above the change of section
// where there is one, with a load on the joint and a drag.
func (p Pull) force(s []station, md unit.Length, load, drag unit.Force) (unit.Force, error) {
	tvd, err := depthOn(p.Path, md)
	if err != nil {
		return 0, err
	}
	last := s[len(s)-1]
	i := 1
	for i < len(s)-1 && s[i].md < float64(md) {
		i++
	}
	above := s[i-1]
	weight := last.weight - above.weight - above.weightPerDepth*(float64(tvd)-above.tvd)
	shoulders := last.shoulders - above.shoulders
	share := unit.Force((last.md - float64(md)) / last.md)
	return load + p.end(s).Force() + unit.Force(weight+shoulders) + drag*share, nil
}

func (p Pull) faults() faults {
	var f faults
	if len(p.Sections) == 0 {
		f.add("Pull.Sections is empty: want one section or more")
	}
	top := unit.Length(0)
	for i, s := range p.Sections {
		field := fmt.Sprintf("Pull.Sections[%d]", i)
		f.include(field, s.Pipe.Validate())
		if !finite(s.Bottom) || s.Bottom <= top {
			f.add("%s.Bottom = %v: want below %v", field, s.Bottom, top)
		}
		top = s.Bottom
	}
	if p.Inside == nil {
		f.add("Pull.Inside is missing: want the pressure inside by depth")
	}
	if p.Outside == nil {
		f.add("Pull.Outside is missing: want the pressure outside by depth")
	}
	positive(&f, "Pull.Seal", p.Seal)
	notNegative(&f, "Pull.Below", p.Below)
	if !p.Plugged && p.Below != 0 {
		f.add("Pull.Below = %v: want 0 where the joint is open below", p.Below)
	}
	f.include("Pull.Drag", p.Drag.Check())
	if p.Drag.Least < 0 {
		f.add("Pull.Drag begins at %v: want 0 or more", p.Drag.Least)
	}
	notNegative(&f, "Pull.Block", p.Block)
	return f
}
