package movement

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// check reports what is wrong with seals, held places, joints and the rest;
// String.prepare has sections, path and design.
func (a Assembly) check() error {
	var faults []error
	add := func(err error) {
		if err != nil {
			faults = append(faults, err)
		}
	}
	var end unit.Length
	if n := len(a.Sections); n > 0 {
		end = a.Sections[n-1].Bottom
	}
	depth := func(field string, md unit.Length) {
		if !(md > a.Hanger && md <= end) {
			add(fmt.Errorf("movement: %s = %s, permitted below the hanger at %s to the lower end at %s",
				field, md.Rounded(6), a.Hanger.Rounded(6), end.Rounded(6)))
		}
	}
	for i, s := range a.Seals {
		field := fmt.Sprintf("Seals[%d]", i)
		depth(field+".MD", s.MD)
		add(above(field+".Bore", s.Bore, 0))
		add(notNegative(field+".Up", s.Up))
		add(notNegative(field+".Down", s.Down))
		add(atLeast(field+".Length", s.Length, 0))
		add(atLeast(field+".Friction", s.Friction, 0))
	}
	for i, h := range a.Holds {
		field := fmt.Sprintf("Holds[%d]", i)
		depth(field+".MD", h.MD)
		add(atLeast(field+".Bore", h.Bore, 0))
		add(atLeast(field+".Casing", h.Casing, 0))
		if h.Casing != 0 && h.Casing < h.Bore {
			add(fmt.Errorf("movement: %s.Casing = %s, permitted from its bore of %s upwards, or 0", field, h.Casing.Rounded(6), h.Bore.Rounded(6)))
		}
		for k := range i {
			if a.Holds[k].MD == h.MD {
				add(fmt.Errorf("movement: %s.MD = %s, permitted no other place at that depth: Holds[%d] is there", field, h.MD.Rounded(6), k))
			}
		}
	}
	for i, j := range a.Joints {
		field := fmt.Sprintf("Joints[%d]", i)
		depth(field+".MD", j.MD)
		add(above(field+".Seal", j.Seal, 0))
		for k := range i {
			if a.Joints[k].MD == j.MD {
				add(fmt.Errorf("movement: %s.MD = %s, permitted no other joint at that depth: Joints[%d] is there", field, j.MD.Rounded(6), k))
			}
		}
	}
	for i, md := range a.Plugs {
		depth(fmt.Sprintf("Plugs[%d]", i), md)
	}
	for i, md := range a.Hung {
		depth(fmt.Sprintf("Hung[%d]", i), md)
	}
	add(finite("Block", a.Block))
	if a.HangerSeal != 0 {
		add(above("HangerSeal", a.HangerSeal, 0))
		if len(a.Sections) > 0 && a.HangerSeal < a.Sections[0].Pipe.OD {
			add(fmt.Errorf("movement: HangerSeal = %s, permitted from the pipe's outside of %s upwards, or 0", a.HangerSeal.Rounded(6), a.Sections[0].Pipe.OD.Rounded(6)))
		}
	}
	if d := a.Derating; d != nil && !(d.Rate >= 0 && !math.IsInf(float64(d.Rate), 0) && d.From.Kelvin() > 0) {
		add(fmt.Errorf("movement: Derating = %v from %v, permitted a rate from 0 upwards and a temperature above absolute zero", d.Rate, d.From))
	}
	return errors.Join(faults...)
}
