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

// places are those of a plan, in the order of its devices.
func (p *Plan) places() []place {
	var all []place
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			if a.Holds && !slices.ContainsFunc(all, func(x place) bool { return x.Depth == d.MD }) {
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

// string puts the completion string together.
func (c *compiler) string() {
	p := c.plan.String
	if p == nil {
		return
	}
	r := &stringload.Room{Network: c.Network, Temperatures: c.Network.Temperatures, Inside: c.by.compartment[p.Inside],
		Drag: c.forms["string.drag"], Closed: p.Top == TopClosed, LockDown: float64(p.LockDown), Rig: float64(p.Rig),
		Places: map[int]int{}, Frees: map[int]int{}, Block: float64(p.Block)}
	a := movement.Assembly{Path: c.path, Hanger: p.HangerMD, HangerSeal: p.HangerSeal, Block: p.Block, Spacing: nodeSpacing, Design: c.plan.Rules.design(),
		Derating: p.Derating.tubular()}
	for i, x := range p.Sections {
		pipe, err := x.Pipe.find(c.pipes)
		c.check(fmt.Sprintf("string.sections[%d].pipe", i), err)
		a.Sections = append(a.Sections, movement.StringSection{Pipe: pipe, BottomMD: x.BottomMD, Hole: x.Hole, Joint: x.Joint, Connection: x.connection(c.pipes),
			Wear: tubular.Allowance(x.Wear), Derating: x.Derating.tubular()})
	}
	for n, s := range p.seals() {
		a.Seals = append(a.Seals, movement.Seal{MD: s.MD, Bore: s.Bore, Up: s.Up, Down: s.Down})
		r.Seals = append(r.Seals, stringload.Seal{MD: float64(s.MD), Up: float64(s.Up), Down: float64(s.Down), Friction: c.forms[s.path(n)+".friction"]})
	}
	r.Hanger = float64(p.HangerMD)
	c.rubs(r, a.Sections)
	held := map[unit.Length]int{}
	for place, x := range c.plan.places() {
		held[x.Depth] = place
		a.Holds = append(a.Holds, movement.Hold{MD: x.Depth})
	}
	for _, d := range c.plan.Devices {
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
			if x.Axial {
				a.Joints = append(a.Joints, movement.Joint{MD: d.MD, Seal: x.Seal})
			}
		}
	}
	r.Joints = len(a.Joints)
	up, err := a.MakeUp()
	c.check("string", err)
	if err != nil {
		return
	}
	r.Up = up
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
	if h := c.plan.Holding; h != nil {
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
		r.Packer = held[h.MD]
		if _, ok := held[h.MD]; !ok {
			r.Packer = held[p.HeldMD]
		}
	}
	r.Prepare()
	c.Problem.String = r
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
