package sequence

import (
	"encoding"
	"fmt"
	"math"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/stringload"
)

// Friction is how the hole rubs down to a measured depth.
type Friction struct {
	To     unit.Length       `json:"to,omitzero"`
	Factor unit.Band[Factor] `json:"factor,omitzero"` // of pipe on wall
}

// Factor is a number without a unit that may have a tolerance, such as a friction
// factor. As text it is a number.
type Factor float64

var _ encoding.TextUnmarshaler = (*Factor)(nil)

// String writes it without loss.
func (f Factor) String() string { return strconv.FormatFloat(float64(f), 'g', -1, 64) }

// Rounded writes it for people.
func (f Factor) Rounded(digits int) string { return unit.Significant(float64(f), digits) }

// MarshalText writes it without loss.
func (f Factor) MarshalText() ([]byte, error) {
	if math.IsNaN(float64(f)) || math.IsInf(float64(f), 0) {
		return nil, fmt.Errorf("sequence: factor is %v; must be finite", float64(f))
	}
	return []byte(f.String()), nil
}

// UnmarshalText reads a number.
func (f *Factor) UnmarshalText(text []byte) error {
	x, err := strconv.ParseFloat(strings.TrimSpace(string(text)), 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return fmt.Errorf("sequence: %q is no number without a unit, such as 0.25", text)
	}
	*f = Factor(x)
	return nil
}

// friction checks the friction factors.
func (v *validation) friction(at string, s *String, end unit.Length) {
	if len(s.Friction) == 0 {
		return
	}
	if s.Drag != (unit.Band[unit.Force]{}) {
		v.fault(at+".friction", "stands beside \"drag\"; the drag follows from the friction factors: leave one of them out")
	}
	top := unit.Length(0)
	for i, x := range s.Friction {
		path := fmt.Sprintf("%s.friction[%d]", at, i)
		if !(x.To > top) {
			v.fault(path+".to", "is %v; must be below %v", x.To, top)
		}
		v.faultIf(path+".factor", x.Factor.Validate())
		if !(x.Factor.Least >= 0 && x.Factor.Greatest <= 1) {
			v.fault(path+".factor", "runs from %v to %v; must be from 0 to 1", x.Factor.Least, x.Factor.Greatest)
		}
		top = x.To
	}
	if !(top >= end) {
		v.fault(at+".friction", "ends at %v; the string goes down to %v", top, end)
	}
}

// hole is the string in the hole that it rubs in, without fluids: they come with each
// load. from are the friction zones of the plan that its zones are of.
func (c *compiler) hole(sections []drag.PipeSection, s *String) (hole *drag.Prepared, from []int, err error) {
	x := drag.String{Path: c.path, Sections: sections, Spacing: nodeSpacing, BottomMD: s.Sections[len(s.Sections)-1].BottomMD}
	zone, section := 0, 0
	if s.HangerMD > 0 { // above it nothing rubs
		x.HoleSections, from = append(x.HoleSections, drag.HoleSection{BottomMD: s.HangerMD, Hole: s.Sections[0].Hole}), append(from, -1)
	}
	for zone < len(s.Friction) && section < len(s.Sections) {
		f, p := s.Friction[zone], s.Sections[section]
		bottom := min(f.To, p.BottomMD)
		if bottom > s.HangerMD {
			x.HoleSections = append(x.HoleSections, drag.HoleSection{BottomMD: bottom, Friction: float64(f.Factor.Nominal), Hole: p.Hole})
			from = append(from, zone)
		}
		if f.To <= bottom {
			zone++
		}
		if p.BottomMD <= bottom {
			section++
		}
	}
	hole, err = x.Prepare()
	return hole, from, err
}

// uncertain are the quantities of a string that may have a tolerance.
func (x ownString) uncertain() []uncertain {
	s, more := x.String, ""
	if x.of != stringload.Main {
		more = " of the " + x.title
	}
	all := []uncertain{of(x.path+".drag", "drag"+more, &s.Drag)}
	for i := range s.Friction {
		f := &s.Friction[i]
		all = append(all, of(fmt.Sprintf("%s.friction[%d].factor", x.path, i), "friction factor to "+f.To.Rounded(digits)+more, &f.Factor))
	}
	for i := range s.Seals {
		seal := &s.Seals[i]
		all = append(all, of(seal.path(x.path, i)+".friction", "friction of "+seal.name(i), &seal.Friction))
	}
	return all
}

// path is that of the plan's file.
func (s *Seal) path(at string, n int) string {
	if s.Name != "" {
		return at + ".seals." + s.Name
	}
	return fmt.Sprintf("%s.seals[%d]", at, n)
}

// rubs gives a string the hole that it rubs in, where the plan has friction factors.
func (c *compiler) rubs(r *stringload.Room, sections []movement.StringSection, x ownString) {
	s := x.String
	if len(s.Friction) == 0 {
		return
	}
	var pipes []drag.PipeSection
	top := unit.Length(0)
	for _, x := range sections {
		pipes = append(pipes, drag.PipeSection{Pipe: x.Pipe, Length: x.BottomMD - top})
		top = x.BottomMD
	}
	hole, from, err := c.hole(pipes, s)
	c.check(x.path+".friction", err)
	r.Hole = hole
	for _, zone := range from {
		f := affine.Const(0)
		if zone >= 0 {
			f = c.forms[fmt.Sprintf("%s.friction[%d].factor", x.path, zone)]
		}
		r.Factors = append(r.Factors, f)
	}
}
