package sequence

import (
	"errors"
	"fmt"

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
	return []Seal{{Name: "seals", Depth: s.Sections[len(s.Sections)-1].Bottom, Bore: s.Bore, Up: s.Up, Down: s.Down}}
}

// connection is what the joints of a section bear by the catalogue, where it has
// them and the plan doesn't say.
func (s Section) connection(all catalogue.Catalogue) tubular.Connection {
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
		Places: map[int]int{}, Block: float64(p.Block)}
	a := movement.Assembly{Path: c.path, Hanger: p.Hanger, Block: p.Block, Spacing: nodeSpacing, Design: c.plan.Rules.design()}
	for i, x := range p.Sections {
		pipe, err := x.Pipe.find(c.pipes)
		c.check(fmt.Sprintf("string.sections[%d].pipe", i), err)
		a.Sections = append(a.Sections, movement.Section{Pipe: pipe, Bottom: x.Bottom, Hole: x.Hole, Joint: x.Joint, Connection: x.connection(c.pipes)})
	}
	for _, s := range p.seals() {
		a.Seals = append(a.Seals, movement.Seal{MD: s.Depth, Bore: s.Bore, Up: s.Up, Down: s.Down})
		r.Seals = append(r.Seals, stringload.Seal{Up: float64(s.Up), Down: float64(s.Down)})
	}
	held := map[unit.Length]int{}
	for _, d := range c.plan.Devices {
		for _, x := range d.Actions {
			if x.Holds {
				place, ok := held[d.Depth]
				if !ok {
					place = len(a.Holds)
					held[d.Depth] = place
					a.Holds = append(a.Holds, movement.Hold{MD: d.Depth})
				}
				for _, i := range c.members(d.Name + ": " + x.Name) {
					r.Places[i] = place
				}
			}
			if x.Axial {
				a.Joints = append(a.Joints, movement.Joint{MD: d.Depth, Seal: x.Seal})
			}
		}
	}
	up, err := a.MakeUp()
	c.check("string", err)
	if err != nil {
		return
	}
	r.Up = up
	r.TopBore = float64(a.Sections[0].Pipe.InnerArea())
	for k, part := range up.OutsideParts() {
		var all []int
		top := p.Hanger
		for _, name := range p.Around {
			i := c.by.compartment[name]
			bottom := c.plan.Compartments[i].Bottom
			if bottom > part.Top && top < part.Bottom {
				all = append(all, i)
			}
			top = bottom
		}
		if k == len(up.OutsideParts())-1 { // the lower end feels what is below it
			if i := c.by.compartment[p.Below]; part.Bottom == part.Top || len(all) == 0 {
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
		d := c.depth(h.Depth)
		r.Below, r.Above = c.by.compartment[h.Below], c.by.compartment[h.Above]
		r.BelowAt, r.AboveAt = c.at(r.Below, d), c.at(r.Above, d)
		r.Packer = held[h.Depth]
		if _, ok := held[h.Depth]; !ok {
			r.Packer = held[p.Held]
		}
	}
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
