package sequence

import (
	"maps"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence/internal/stringload"
)

// section checks what a section says of its limits.
func (v *validation) section(path string, x StringSection, pipe tubular.Pipe) {
	if x.Connection != nil {
		if x.Joint != 0 {
			v.fault(path+".connection", "stands beside \"joint\"; one of them says what the connections bear: write it as connection.tension")
		}
		c := tubular.Connection(*x.Connection)
		v.faultIf(path+".connection", c.Validate())
		if !c.Known() {
			v.fault(path+".connection", "says nothing that the connection bears; give one of tension, compression, internal pressure, external pressure and triaxial, or leave it out")
		}
	}
	if x.Wear != (Wear{}) {
		_, err := pipe.Less(tubular.Allowance(x.Wear))
		v.faultIf(path+".wear", err)
	}
	v.derating(path+".derating", x.Derating)
}

// tubular is the derating as package tubular has it.
func (d *Derating) tubular() *tubular.Derating {
	if d == nil {
		return nil
	}
	t := tubular.UsualDerating()
	if d.Rate != 0 {
		t.Rate = d.Rate
	}
	if d.From != (unit.Temperature{}) {
		t.From = d.From
	}
	return &t
}

// derating checks that it goes for every temperature of the well.
func (v *validation) derating(path string, d *Derating) {
	if d == nil {
		return
	}
	for _, name := range slices.Sorted(maps.Keys(v.plan.Well.Temperatures)) {
		for _, x := range v.plan.Well.Temperatures[name] {
			most := x.Temperature.Add(v.plan.Well.Errors[name].Greatest)
			if _, err := d.tubular().Factor(most); err != nil {
				v.faultIf(path, err)
				return
			}
		}
	}
}

// holds checks where an action takes hold of the string.
func (v *validation) holds(path string, d Device) {
	x := v.plan.own(d.On)
	s := x.String
	if s == nil || len(s.Sections) == 0 {
		return
	}
	if end := s.Sections[len(s.Sections)-1].BottomMD; !(d.MD > s.HangerMD && d.MD <= end) {
		v.fault(path, "the device stands at %v; the string hangs from %v to %v", d.MD, s.HangerMD, end)
		return
	}
	if d.MD == s.HeldMD {
		return
	}
	// The place that the plan names has to be one of those that hold, so that a depth
	// that is mistyped doesn't pass for a second place.
	for _, other := range v.plan.Devices {
		for _, a := range other.Actions {
			if a.Holds && other.On == d.On && other.MD == s.HeldMD {
				return
			}
		}
	}
	v.fault(path, "the device stands at %v, but %s.held_at is %v; at least one device that holds must stand there", d.MD, x.path, s.HeldMD)
}

// unchecked tells what the string's limits leave out.
func (x ownString) unchecked(p *Plan, add func(format string, args ...any)) {
	s := x.String
	if s.HangerSeal == 0 && x.of == stringload.Main {
		add("the hanger's seal isn't given: annulus pressure isn't counted to lift the hanger")
	} else if s.HangerSeal == 0 {
		add("%s: its hanger's seal isn't given: annulus pressure isn't counted to lift the hanger", x.title)
	}
	if s.HangerRating == 0 {
		add("%s: its hanger's rating isn't given", x.title)
	}
	worn, hot := false, s.Derating != nil
	for _, x := range s.Sections {
		worn = worn || x.Wear != Wear{}
		hot = hot || x.Derating != nil
	}
	if !worn {
		add("%s: no wall is taken off for wear and corrosion", x.title)
	}
	if !hot {
		add("%s: its yield strength isn't derated with temperature", x.title)
	}
	for i, name := range s.Around[:max(0, len(s.Around)-1)] {
		at := p.compartment(name).BottomMD
		sealed := false
		for _, y := range p.places(x.on()) {
			sealed = sealed || y.Depth == at
		}
		for _, y := range s.seals() {
			sealed = sealed || y.MD == at
		}
		if !sealed {
			add("%s: no seal is said to stand at %s, between %q and %q: what differs there acts on the pipe alone", x.title, at.Rounded(digits), name, s.Around[i+1])
		}
	}
}
