package sequence

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
)

// merge puts what is written by hand over what follows from the tally.
func (d *deriver) merge() {
	p, o := d.plan, d.out
	p.Compartments = merged(d, "compartments", o.Compartments, p.Compartments, compartmentName, "top", "bottom", "surface", "formation")
	p.Ports = merged(d, "ports", o.Ports, p.Ports, portName, "joins", "depth")
	p.Devices = merged(d, "devices", o.Devices, p.Devices, deviceName, "depth")
	p.Ratings = replaced(o.Ratings, p.Ratings, func(r Rating) string { return r.Name })
	p.Barriers = replaced(o.Barriers, p.Barriers, func(b Barrier) string { return b.Name })
	if p.String != nil && o.String != nil {
		if p.String.Bore != 0 || len(p.String.Seals) > 0 {
			o.String.Seals = nil
		}
		d.overlay("string", reflect.ValueOf(o.String).Elem(), reflect.ValueOf(p.String).Elem(), "inside", "around", "hanger", "sections", "held_at")
	}
	if o.String != nil {
		p.String = o.String
	}
	if p.OuterString != nil && o.OuterString != nil {
		if p.OuterString.Bore != 0 || len(p.OuterString.Seals) > 0 {
			o.OuterString.Seals = nil
		}
		d.overlay("outer_string", reflect.ValueOf(o.OuterString).Elem(), reflect.ValueOf(p.OuterString).Elem(), "inside", "around", "hanger", "sections", "held_at")
		p.OuterString = o.OuterString
	}
	if p.Holding != nil && o.Holding != nil {
		d.overlay("holding", reflect.ValueOf(o.Holding).Elem(), reflect.ValueOf(p.Holding).Elem(), "depth")
	}
	if o.Holding != nil {
		p.Holding = o.Holding
	}
}

// merged puts each thing written by hand over the derived one of its name, key by
// key; those that the tally hasn't stand behind. The keys that the tally measures
// must not differ.
func merged[T any](d *deriver, list string, derived, hand []T, name func(T) string, measured ...string) []T {
	all := slices.Clone(derived)
	for i, h := range hand {
		k := slices.IndexFunc(derived, func(x T) bool { return name(x) == name(h) })
		if k < 0 {
			all = append(all, h)
			continue
		}
		d.overlay(fmt.Sprintf("%s[%d]", list, i), reflect.ValueOf(&all[k]).Elem(), reflect.ValueOf(h), measured...)
	}
	return all
}

// replaced puts each thing written by hand in the place of the derived one of its
// name, as a whole.
func replaced[T any](derived, hand []T, name func(T) string) []T {
	all := slices.Clone(derived)
	for _, h := range hand {
		if k := slices.IndexFunc(derived, func(x T) bool { return name(x) == name(h) }); k >= 0 {
			all[k] = h
		} else {
			all = append(all, h)
		}
	}
	return all
}

// overlay puts the keys that hand has over those of to. What can't differ is an error
// that names both.
func (d *deriver) overlay(path string, to, hand reflect.Value, measured ...string) {
	var won []string
	for i := range to.NumField() {
		key, _, _ := strings.Cut(to.Type().Field(i).Tag.Get("json"), ",")
		if key == "" || hand.Field(i).IsZero() || key == "name" || key == "note" {
			continue
		}
		if slices.Contains(measured, key) {
			if !alike(to.Field(i), hand.Field(i)) {
				d.faults.New(path+"."+quoted(key), "is %s by hand, but the tally makes %s of it (%s); leave it out, or mend the tally",
					written(hand.Field(i)), written(to.Field(i)), to.FieldByName("Note").String())
			}
			continue
		}
		to.Field(i).Set(hand.Field(i))
		won = append(won, key)
		switch key {
		case "layers":
			to.FieldByName("Fluid").SetString("")
		case "kind": // a model of the device says what it does
			to.FieldByName("Actions").SetZero()
		}
	}
	note := to.FieldByName("Note")
	if len(won) > 0 {
		note.SetString(note.String() + "; by hand: " + strings.Join(won, ", "))
	}
	if text := hand.FieldByName("Note").String(); text != "" {
		note.SetString(text + " (" + note.String() + ")")
	}
}

// alike tells whether two values are the same, depths to a millimetre.
func alike(a, b reflect.Value) bool {
	if a.Type() == reflect.TypeFor[unit.Length]() {
		return math.Abs(a.Float()-b.Float()) < 1e-3
	}
	return reflect.DeepEqual(a.Interface(), b.Interface())
}

// fluids checks that everything is filled with something.
func (d *deriver) fluids() {
	for _, c := range d.plan.Compartments {
		if c.Fluid == "" && len(c.Layers) == 0 {
			d.faults.New("assembly.fluid", "is missing: nothing says what %q is filled with at the start", c.Name)
		}
	}
}
