package sequence

import (
	"slices"

	"completion.example/internal/fault"
	"completion.example/valve/sequence/internal/stringload"
)

// WhichString names one of the plan's two strings.
type WhichString string

// The strings: the plan's string where nothing is said, and that around it.
const (
	OnString      WhichString = ""
	OnOuterString WhichString = "outer_string"
)

// ownString is one of a plan's strings.
type ownString struct {
	*String
	of    int    // as package stringload numbers them
	path  string // in the plan's file
	title string // for people
}

func (x ownString) on() WhichString {
	if x.of == stringload.Outer {
		return OnOuterString
	}
	return OnString
}

// strings are the plan's strings, the one that all plans with any have first.
func (p *Plan) strings() []ownString {
	var all []ownString
	if p.String != nil {
		all = append(all, p.own(OnString))
		if p.OuterString != nil {
			all = append(all, p.own(OnOuterString))
		}
	}
	return all
}

// own is one of them; its String is nil where the plan hasn't got it.
func (p *Plan) own(on WhichString) ownString {
	if on == OnOuterString {
		return ownString{p.OuterString, stringload.Outer, "outer_string", "outer string"}
	}
	return ownString{p.String, stringload.Main, "string", "string"}
}

// whose is the string that a limit or a place of a judge is of, and its index there.
func (p *Plan) whose(index int) (ownString, int) {
	if index >= stringload.Second {
		return p.own(OnOuterString), index - stringload.Second
	}
	return p.own(OnString), index
}

// room is the string as it was put together.
func (c *compiled) room(of int) *stringload.Room {
	if of == stringload.Outer && c.String.Outer != nil {
		return c.String.Outer
	}
	return c.String
}

// holdingOn is the string that the packer with the envelope holds.
func (p *Plan) holdingOn() WhichString {
	if p.OuterString == nil || p.Holding == nil {
		return OnString
	}
	holds := func(x place) bool { return x.Depth == p.Holding.MD }
	if slices.ContainsFunc(p.places(OnOuterString), holds) && !slices.ContainsFunc(p.places(OnString), holds) {
		return OnOuterString
	}
	return OnString
}

// twoStrings checks what one string says of the other.
func (v *validation) twoStrings() {
	for i, d := range v.plan.Devices {
		v.which(fault.Index("devices", i)+".on", d.On)
	}
	for i, s := range v.plan.Steps {
		path := v.plan.stepPath(i) + ".on"
		v.which(path, s.On)
		if s.On != OnString && len(s.Pull) == 0 && !s.Lands {
			v.fault(path, "says which string is pulled or lands; the step does neither")
		}
	}
	o, s := v.plan.OuterString, v.plan.String
	if o == nil {
		return
	}
	if s == nil {
		v.fault("outer_string", "stands without \"string\", the one in it; where there is one string alone, it is \"string\"")
		return
	}
	if len(o.Sections) == 0 || len(s.Sections) == 0 {
		return
	}
	end := min(o.Sections[len(o.Sections)-1].BottomMD, s.Sections[len(s.Sections)-1].BottomMD)
	if !(end > max(o.HangerMD, s.HangerMD)) {
		v.fault("outer_string.sections", "end at %v; the string in it hangs at %v: the one must stand in the other", o.Sections[len(o.Sections)-1].BottomMD, s.HangerMD)
	}
	// What is around the string within the outer one is what that has inside.
	if !slices.Contains(s.Around, o.Inside) {
		v.fault("string.around", "hasn't got %q, which is inside the outer string: what is around the one is inside the other", o.Inside)
		return
	}
	down := s.HangerMD
	for i, name := range s.Around {
		c := v.plan.compartment(name)
		if c == nil {
			return
		}
		top, bottom := max(down, o.HangerMD), min(c.BottomMD, o.Sections[len(o.Sections)-1].BottomMD)
		if name != o.Inside && top < bottom {
			v.fault(fault.Index("string.around", i), "is %q from %v to %v, where the outer string has %q inside", name, top, bottom, o.Inside)
		}
		down = c.BottomMD
	}
	v.fits(o, s)
}

// fits checks that the string has room in the outer one.
func (v *validation) fits(o, s *String) {
	top := s.HangerMD
	for i, x := range s.Sections {
		pipe, err := x.Pipe.find(v.pipes)
		from := o.HangerMD
		for k, y := range o.Sections {
			around, wrong := y.Pipe.find(v.pipes)
			if err == nil && wrong == nil && max(top, from) < min(x.BottomMD, y.BottomMD) && !(pipe.OD < around.ID) {
				v.fault(fault.Index("string.sections", i)+".pipe", "is %v wide; the bore of section %d of the outer string is %v", pipe.OD, k+1, around.ID)
			}
			from = y.BottomMD
		}
		top = x.BottomMD
	}
}

func (v *validation) which(path string, on WhichString) {
	switch {
	case on == OnString:
	case on != OnOuterString:
		v.fault(path, "is %q; there is %q, or leave it out for the plan's string", on, OnOuterString)
	case v.plan.OuterString == nil:
		v.fault(path, "is %q, which the plan hasn't got", on)
	}
}

// stringTemperatures checks the string's own temperatures.
func (v *validation) stringTemperatures(at string, s *String) {
	for _, name := range sortedKeys(s.Temperatures) {
		v.temperature(at+".temperatures."+name, name)
		v.temperature(at+".temperatures."+name, s.Temperatures[name])
	}
}
