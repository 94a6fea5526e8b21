package packer

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/movement"
)

// Pull is a string on the hook, fast at a joint that a pull is to part.
type Pull struct {
	Sections []movement.StringSection `json:"sections"` // from surface to the joint; Hole is not used
	Path     *hydrostatics.Path       `json:"path"`     // nil stands for a vertical hole

	// Inside and Outside are the pressures by true vertical depth while it is
	// pulled, with whatever is held at surface.
	Inside  func(tvd unit.Length) unit.Pressure `json:"inside"`
	Outside func(tvd unit.Length) unit.Pressure `json:"outside"`

	// Seal is the diameter that the joint's seal is on. Below is the pressure
	// under it where Plugged is set; otherwise it is the pressure inside.
	Seal    unit.Length   `json:"seal"`
	Plugged bool          `json:"plugged"`
	Below   unit.Pressure `json:"below"`

	// Drag is what the hole takes from a pull on its way down, from its least to
	// its greatest; package drag finds it. It is spread evenly along the string.
	Drag unit.Band[unit.Force] `json:"drag"`

	Block   unit.Force `json:"block"`    // what the weight indicator shows with nothing hung from it
	OpenTop bool       `json:"open_top"` // the top is not closed: pressure inside doesn't lift it
}

// Balance is a pull's hook load by its terms, without drag.
type Balance struct {
	Joint     unit.Force `json:"joint"`     // load on the joint
	End       unit.Force `json:"end"`       // of the pressures on the string's end in the joint
	Weight    unit.Force `json:"weight"`    // in air, of the string above
	Shoulders unit.Force `json:"shoulders"` // of the pressures on changes of section
	Cap       unit.Force `json:"cap"`       // of the pressure at surface inside, which lifts a closed top
	Block     unit.Force `json:"block"`

	// Reading is their sum: what the weight indicator shows. Drag adds to it.
	Reading unit.Force `json:"reading"`
}

// onHook is the pull's string on the hook, held at its joint, with the weight
// indicator at nothing.
type onHook struct {
	made    *movement.MadeUp
	loading movement.Loading
	terms   movement.Terms
}

// hang checks the pull and hangs the string: with nodes at depths where its force
// will be asked for.
func (p Pull) hang(depths ...unit.Length) (*onHook, error) {
	f := p.faults()
	if err := f.Err(); err != nil {
		return nil, err
	}
	bottom := p.Sections[len(p.Sections)-1].BottomMD
	a := movement.Assembly{
		Path: p.Path, Block: p.Block, Spacing: bottom,
		Joints: []movement.Joint{{MD: bottom, Seal: p.Seal}}, Holds: []movement.Hold{{MD: bottom, Bore: p.Seal}},
	}
	if _, err := depthOn(p.Path, bottom); err != nil {
		return nil, err
	}
	if a.Path == nil {
		var err error
		if a.Path, err = hydrostatics.Vertical(bottom); err != nil {
			return nil, fmt.Errorf("packer: path: %w", err)
		}
	}
	for _, s := range p.Sections {
		s.Hole = s.Pipe.OD // what fills its hole doesn't buckle, which a pull has no use for
		a.Sections = append(a.Sections, s)
	}
	for _, md := range depths {
		if md > 0 && md <= bottom {
			a.Hung = append(a.Hung, md)
		}
	}
	c := movement.Conditions{
		Inside:  func(_ int, tvd unit.Length) unit.Pressure { return p.Inside(tvd) },
		Outside: func(_ int, tvd unit.Length) unit.Pressure { return p.Outside(tvd) },
	}
	if p.Plugged {
		a.Plugs = []unit.Length{bottom}
		c.Inside = func(part int, tvd unit.Length) unit.Pressure {
			if part > 0 {
				return p.Below
			}
			return p.Inside(tvd)
		}
	}
	h := &onHook{}
	var err error
	if h.made, err = a.MakeUp(); err != nil {
		return nil, fmt.Errorf("packer: %w", err)
	}
	standing, err := h.made.Land(c)
	if err == nil {
		standing, err = h.made.TakeHold(standing, 0, c)
	}
	if err != nil {
		return nil, fmt.Errorf("packer: %w", err)
	}
	c.Top = movement.OnHookClosed
	if p.OpenTop {
		c.Top = movement.OnHookOpen
	}
	if err := h.made.LoadInto(&h.loading, standing, c); err != nil {
		return nil, fmt.Errorf("packer: %w", err)
	}
	h.terms = h.made.Terms(&h.loading)
	return h, nil
}

func (h *onHook) joint() movement.JointLoad { return h.loading.Joints[0] }

// Balance returns the hook load that puts a load on the joint, without drag.
//
//	R = P + F(end) + Σ w ΔTVD + Σ ΔF(shoulder) - pi(surface) Ai + block        top closed; without pi Ai where it is open
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
	h, err := p.hang()
	if err != nil {
		return Balance{}, err
	}
	if !finite(load) {
		return Balance{}, fault.Join("packer", fault.Finite("load", load))
	}
	b := h.balance(load)
	return b, finiteResult("hook load", float64(b.Reading))
}

func (h *onHook) balance(load unit.Force) Balance {
	joint := h.joint()
	b := Balance{
		Joint: load, End: joint.Wall - joint.Balance + h.terms.Plugs, Weight: h.terms.Weight, Shoulders: h.terms.Shoulders,
		Cap: -h.loading.Cap, Block: h.loading.Reading - h.loading.HangerLoad + h.loading.Cap,
	}
	b.Reading = b.Joint + b.End + b.Weight + b.Shoulders + b.Cap + b.Block
	return b
}

// force returns the real force at a measured depth, above the change of section
// where there is one, with a load on the joint and a drag.
func (h *onHook) force(md unit.Length, load, drag unit.Force) unit.Force {
	f, _ := h.made.WallAt(&h.loading, md)
	return f + load - h.joint().Balance + drag*unit.Force(1-md/h.terms.From)
}

func (p Pull) faults() fault.Faults {
	f := fault.In(scope)
	if len(p.Sections) == 0 {
		f.New("Sections", "is empty; must be one section or more")
	}
	top := unit.Length(0)
	for i, s := range p.Sections {
		field := fault.Index("Sections", i)
		f.At(field+".Pipe", s.Pipe.Validate())
		if !finite(s.BottomMD) || s.BottomMD <= top {
			f.New(field+".Bottom", "is %v; must be below %v", s.BottomMD, top)
		}
		top = s.BottomMD
	}
	if p.Inside == nil {
		f.New("Inside", "is missing; must be the pressure inside by depth")
	}
	if p.Outside == nil {
		f.New("Outside", "is missing; must be the pressure outside by depth")
	}
	f.Add(fault.Above("Seal", p.Seal, 0))
	f.Add(fault.AtLeast("Below", p.Below, 0))
	if !p.Plugged && p.Below != 0 {
		f.New("Below", "is %v; must be 0 where the joint is open below", p.Below)
	}
	f.At("Drag", p.Drag.Validate())
	if p.Drag.Least < 0 {
		f.New("Drag", "begins at %v; must be 0 or more", p.Drag.Least)
	}
	f.Add(fault.AtLeast("Block", p.Block, 0))
	return f
}
