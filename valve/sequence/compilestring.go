package sequence

import (
	"errors"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/well"
)

// nodeSpacing keeps a programme quick. Forces and lengths are straight or
// quadratic between changes of section and survey stations, which are nodes
// anyway; only the small share of buckling feels the spacing.
const nodeSpacing = 250 * unit.Foot

// seals are the seals of the string: those listed, or the one at the lower end.
func (s *String) seals() []Seal {
	if len(s.Seals) > 0 || len(s.Sections) == 0 {
		return s.Seals
	}
	return []Seal{{Name: "seals", MD: s.Sections[len(s.Sections)-1].BottomMD, Bore: s.Bore, Up: s.Up, Down: s.Down}}
}

// place is a place at which a device takes hold of the string.
type place struct {
	Name  string // of the first device there that does
	Depth unit.Length
}

// places are those of a string, in the order of the plan's devices.
func (p *Plan) places(on WhichString) []place {
	var all []place
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			if a.Holds && d.On == on && !slices.ContainsFunc(all, func(x place) bool { return x.Depth == d.MD }) {
				all = append(all, place{d.Name, d.MD})
			}
		}
	}
	return all
}

// connection is what the joints of a section bear by the catalogue, where it has
// them and the plan doesn't say.
func (s StringSection) connection(all catalogue.Catalogue) tubular.Connection {
	if c := s.Connection; c != nil {
		return tubular.Connection(*c)
	}
	if s.Joint != 0 || s.Pipe.Bore != 0 || s.Pipe.Yield != 0 {
		return tubular.Connection{}
	}
	entry, err := all.Find(s.Pipe.Size, s.Pipe.Weight)
	if err != nil {
		return tubular.Connection{}
	}
	grade, err := catalogue.FindGrade(s.Pipe.Grade)
	if err != nil {
		return tubular.Connection{}
	}
	return entry.Connection(grade)
}

// string puts the completion string together, and that around it.
func (c *compiler) string() {
	all := c.plan.strings()
	if len(all) == 0 {
		return
	}
	var parts []*stringload.Room
	var made []movement.Assembly
	for _, x := range all {
		r, a := c.assembled(x)
		parts, made = append(parts, r), append(made, a)
	}
	if len(all) > 1 {
		made[stringload.Outer] = made[stringload.Outer].Carrying(made[stringload.Main])
	}
	for i, x := range all {
		up, err := made[i].MakeUp()
		c.check(x.path, err)
		if err != nil {
			return
		}
		parts[i].Up = up
		c.surrounded(parts[i], x, made[i])
	}
	r := parts[stringload.Main]
	if len(all) > 1 {
		pair, err := movement.Nest(parts[stringload.Outer].Up, r.Up)
		c.check("outer_string", err)
		r.Outer, r.Pair, r.On = parts[stringload.Outer], pair, map[int]bool{}
		for _, d := range c.plan.Devices {
			for _, x := range d.Actions {
				for _, i := range c.members(d.Name + ": " + x.Name) {
					r.On[i] = d.On == OnOuterString
				}
			}
		}
	}
	r.Prepare()
	c.Problem.String = r
}

// assembled is a string with what is on it.
func (c *compiler) assembled(s ownString) (*stringload.Room, movement.Assembly) {
	p := s.String
	r := &stringload.Room{Network: c.Network, Temperatures: c.Network.Temperatures, Inside: c.by.compartment[p.Inside],
		Drag: c.forms[s.path+".drag"], Closed: p.Top == TopClosed, LockDown: float64(p.LockDown), Lifts: [2]float64{float64(p.most(0)), float64(p.most(1))},
		Places: map[int]int{}, Frees: map[int]int{}, Block: float64(p.Block)}
	if len(p.Temperatures) > 0 {
		for i, name := range c.names {
			if own, ok := p.Temperatures[name]; ok {
				i = slices.Index(c.names, own)
			}
			r.Own = append(r.Own, i)
		}
	}
	a := movement.Assembly{Path: c.path, Hanger: p.HangerMD, HangerSeal: p.HangerSeal, Block: p.Block, Spacing: nodeSpacing, Design: c.plan.Rules.design(),
		Derating: p.Derating.tubular()}
	for i, x := range p.Sections {
		pipe, err := x.Pipe.find(c.pipes)
		c.check(fmt.Sprintf("%s.sections[%d].pipe", s.path, i), err)
		a.Sections = append(a.Sections, movement.StringSection{Pipe: pipe, BottomMD: x.BottomMD, Hole: x.Hole, Joint: x.Joint, Connection: x.connection(c.pipes),
			Wear: tubular.Allowance(x.Wear), Derating: x.Derating.tubular()})
	}
	for n, x := range p.seals() {
		a.Seals = append(a.Seals, movement.Seal{MD: x.MD, Bore: x.Bore, Up: x.Up, Down: x.Down})
		r.Seals = append(r.Seals, stringload.Seal{MD: float64(x.MD), Up: float64(x.Up), Down: float64(x.Down), Friction: c.forms[x.path(s.path, n)+".friction"]})
	}
	r.Hanger = float64(p.HangerMD)
	c.rubs(r, a.Sections, s)
	held := map[unit.Length]int{}
	for place, x := range c.plan.places(s.on()) {
		held[x.Depth] = place
		a.Holds = append(a.Holds, movement.Hold{MD: x.Depth})
	}
	for _, d := range c.plan.Devices {
		if d.On != s.on() {
			continue
		}
		for _, x := range d.Actions {
			place, there := held[d.MD]
			if x.Holds {
				for _, i := range c.members(d.Name + ": " + x.Name) {
					r.Places[i] = place
				}
			}
			if x.Releases && there {
				for _, i := range c.members(d.Name + ": " + x.Name) {
					r.Frees[i] = place
				}
			}
			switch {
			case x.feels() != well.OfJoint:
				of := place
				if x.LatchesTo != "" {
					of = c.Network.Actions[c.by.action[d.Name+": "+x.LatchesTo]].Joint
				}
				r.Pulled, r.Latches = append(r.Pulled, of), append(r.Latches, x.LatchesTo != "")
				r.Frees[c.by.action[d.Name+": "+x.Name]] = place
			case x.Axial:
				a.Joints = append(a.Joints, movement.Joint{MD: d.MD, Seal: x.Seal})
			}
		}
	}
	r.Joints = len(a.Joints)
	return r, a
}

// surrounded says what is around a string that is made up, and what the packer's
// envelope is held against.
func (c *compiler) surrounded(r *stringload.Room, s ownString, a movement.Assembly) {
	p, up := s.String, r.Up
	r.TopBore = float64(a.Sections[0].Pipe.InnerArea())
	for k, part := range up.OutsideParts() {
		var all []int
		top := p.HangerMD
		for _, name := range p.Around {
			i := c.by.compartment[name]
			bottom := c.plan.Compartments[i].BottomMD
			if bottom > part.TopMD && top < part.BottomMD {
				all = append(all, i)
			}
			top = bottom
		}
		if k > 0 && k < len(up.OutsideParts())-1 && part.BottomMD == part.TopMD {
			// Between a place that holds and the seals in it: they seal, not the place.
			r.Outside = append(r.Outside, r.Outside[k-1])
			continue
		}
		if k == len(up.OutsideParts())-1 { // the lower end feels what is below it
			if i := c.by.compartment[p.Below]; part.BottomMD == part.TopMD || len(all) == 0 {
				all = []int{i}
			}
		}
		if len(all) == 0 {
			all = []int{c.by.compartment[p.Below]}
		}
		r.Outside = append(r.Outside, all)
	}
	if h := c.plan.Holding; h != nil && c.plan.holdingOn() == s.on() {
		envelope, err := h.Envelope.Envelope()
		c.check("holding.envelope", err)
		if len(a.Holds) == 0 {
			c.check("holding", errors.New("no action holds the string, so that there is no packer to hold"))
			return
		}
		r.Envelope = envelope
		d := c.depth(h.MD)
		r.Below, r.Above = c.by.compartment[h.Below], c.by.compartment[h.Above]
		r.BelowAt, r.AboveAt = c.at(r.Below, d), c.at(r.Above, d)
		at := slices.IndexFunc(c.plan.places(s.on()), func(x place) bool { return x.Depth == h.MD })
		if at < 0 {
			at = max(0, slices.IndexFunc(c.plan.places(s.on()), func(x place) bool { return x.Depth == p.HeldMD }))
		}
		r.Packer = at
	}
}

// design are the factors of the plan; those left out are 1.
func (r Rules) design() tubular.DesignFactors {
	one := func(f float64) float64 {
		if f == 0 {
			return 1
		}
		return f
	}
	return tubular.DesignFactors{Name: "plan", Burst: one(r.Burst), Collapse: one(r.Collapse), Axial: one(r.Axial), Triaxial: one(r.Triaxial), Source: r.Source}
}
