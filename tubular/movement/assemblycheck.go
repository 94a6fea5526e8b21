package movement

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// check reports what is wrong with seals, held places, joints and the rest;
// String.layDown has sections, path and design.
func (a Assembly) check() error {
	faults := fault.In(scope)
	add := func(err error) { faults.Add(err) }
	var end unit.Length
	if n := len(a.Sections); n > 0 {
		end = a.Sections[n-1].BottomMD
	}
	depth := func(field string, md unit.Length) {
		if !(md > a.Hanger && md <= end) {
			faults.New(field, "is %v; must be below the hanger at %v and at most the lower end at %v", md, a.Hanger, end)
		}
	}
	for i, s := range a.Seals {
		field := fmt.Sprintf("Seals[%d]", i)
		depth(field+".MD", s.MD)
		add(fault.Above(field+".Bore", s.Bore, 0))
		add(notNegative(field+".Up", s.Up))
		add(notNegative(field+".Down", s.Down))
		add(fault.AtLeast(field+".Length", s.Length, 0))
		add(fault.AtLeast(field+".Friction", s.Friction, 0))
	}
	for i, h := range a.Holds {
		field := fmt.Sprintf("Holds[%d]", i)
		depth(field+".MD", h.MD)
		add(fault.AtLeast(field+".Bore", h.Bore, 0))
		add(fault.AtLeast(field+".Casing", h.Casing, 0))
		if h.Casing != 0 && h.Casing < h.Bore {
			faults.New(field+".Casing", "is %v; must be at least its bore of %v, or 0", h.Casing, h.Bore)
		}
		for k := range i {
			if a.Holds[k].MD == h.MD {
				faults.New(field+".MD", "is %v; must be another depth than that of Holds[%d]", h.MD, k)
			}
		}
	}
	for i, j := range a.Joints {
		field := fmt.Sprintf("Joints[%d]", i)
		depth(field+".MD", j.MD)
		add(fault.Above(field+".Seal", j.Seal, 0))
		for k := range i {
			if a.Joints[k].MD == j.MD {
				faults.New(field+".MD", "is %v; must be another depth than that of Joints[%d]", j.MD, k)
			}
		}
	}
	for i, md := range a.Plugs {
		depth(fmt.Sprintf("Plugs[%d]", i), md)
	}
	for i, md := range a.Hung {
		depth(fmt.Sprintf("Hung[%d]", i), md)
	}
	add(fault.Finite("Block", a.Block))
	if a.HangerSeal != 0 {
		add(fault.Above("HangerSeal", a.HangerSeal, 0))
		if len(a.Sections) > 0 && a.HangerSeal < a.Sections[0].Pipe.OD {
			faults.New("HangerSeal", "is %v; must be at least the outside diameter of the pipe, %v, or 0", a.HangerSeal, a.Sections[0].Pipe.OD)
		}
	}
	derating := func(field string, d *tubular.Derating) {
		if d != nil && !(d.Rate >= 0 && isFinite(float64(d.Rate)) && d.From.Kelvin() > 0) {
			faults.New(field, "is %v from %v; must be a rate of at least 0 and a temperature above absolute zero", d.Rate, d.From)
		}
	}
	derating("Derating", a.Derating)
	for i, s := range a.Sections {
		derating(fault.Index("Sections", i)+".Derating", s.Derating)
	}
	return faults.Err()
}
