package sequence

import (
	"reflect"
	"strings"

	"completion.example/internal/fault"
	"completion.example/internal/strictjson"
)

// How much a plan may hold: several times what a well has, and no more than can
// be walked, so that a slip of a program ends in one line and not in hours.
const (
	mostBytes   = 16 << 20 // of a plan's file
	mostText    = 100_000  // bytes of one text, a note for example
	mostValues  = 400_000  // of everything in a plan
	mostSteps   = 2_000
	mostRamps   = 1_000 // of one step
	mostDevices = 500
	mostOthers  = 5_000 // entries of any other list, or names of any other object
)

// newestVersion is the form of a plan's file that this package knows.
const newestVersion = 1

// size checks the version and the sizes of a plan's parts, before they are looked
// at one by one.
func (v *validation) size() {
	p := v.plan
	if p.Version < 0 || p.Version > newestVersion {
		v.fault("version", "is %d; must be %d, the newest form that is known here, or left out", p.Version, newestVersion)
	}
	v.extent("steps", len(p.Steps), mostSteps)
	v.extent("devices", len(p.Devices), mostDevices)
	for i := range min(len(p.Steps), mostSteps) {
		v.extent(fault.Index("steps", i)+".ramps", len(p.Steps[i].Ramps), mostRamps)
	}
	if len(v.faults) > 0 {
		return
	}
	left := mostValues
	if !tooMuch(reflect.ValueOf(p).Elem(), &left) {
		return
	}
	left = mostValues
	v.extents("", reflect.ValueOf(p).Elem(), &left)
	if left < 0 {
		v.fault("", "holds more than %d values; must be %d at most", mostValues, mostValues)
	}
}

func (v *validation) extent(path string, length, most int) {
	if length > most {
		v.fault(path, "has %d entries; must be from 0 to %d", length, most)
	}
}

// tooMuch tells whether anything in a value is too long, or all of it is too much.
// It asks for no paths, which is most of the work of extents.
func tooMuch(x reflect.Value, left *int) bool {
	if *left--; *left < 0 {
		return true
	}
	switch x.Kind() {
	case reflect.Pointer:
		return !x.IsNil() && tooMuch(x.Elem(), left)
	case reflect.Struct:
		for i := range x.NumField() {
			if tooMuch(x.Field(i), left) {
				return true
			}
		}
	case reflect.Slice:
		for i := range min(x.Len(), mostOthers+1) {
			if i == mostOthers || tooMuch(x.Index(i), left) {
				return true
			}
		}
	case reflect.Map:
		if x.Len() > mostOthers {
			return true
		}
		for it := x.MapRange(); it.Next(); {
			if tooMuch(it.Key(), left) || tooMuch(it.Value(), left) {
				return true
			}
		}
	case reflect.String:
		return x.Len() > mostText
	}
	return false
}

// extents checks the length of everything in a value, and stops where too much is
// left of it to count.
func (v *validation) extents(path string, x reflect.Value, left *int) {
	if *left--; *left < 0 {
		return
	}
	switch x.Kind() {
	case reflect.Pointer:
		if !x.IsNil() {
			v.extents(path, x.Elem(), left)
		}
	case reflect.Struct:
		for i := range x.NumField() {
			if names := strictjson.Names(x.Type().Field(i)); len(names) > 0 {
				v.extents(strings.TrimPrefix(path+"."+names[0], "."), x.Field(i), left)
			}
		}
	case reflect.Slice:
		if v.extent(path, x.Len(), mostOthers); x.Len() > mostOthers {
			return
		}
		for i := range x.Len() {
			v.extents(fault.Index(path, i), x.Index(i), left)
		}
	case reflect.Map:
		if v.extent(path, x.Len(), mostOthers); x.Len() > mostOthers {
			return
		}
		for it := x.MapRange(); it.Next(); {
			v.extents(path, it.Key(), left)
			v.extents(path+"."+it.Key().String(), it.Value(), left)
		}
	case reflect.String:
		if x.Len() > mostText {
			v.fault(path, "has %d bytes; must be %d at most", x.Len(), mostText)
		}
	}
}
