package sequence

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"completion.example/internal/strictjson"
)

// Edit is a value of a plan that was set.
type Edit struct {
	Path   string `json:"path"`   // in full
	Before string `json:"before"` // as the plan's file writes it
	Now    string `json:"now"`    // as it was given
}

// Set gives one value of the plan another text: what the plan's file would have
// there, quotes left out. The path is that of the file, its parts with dots between
// them; things in lists are named by their name, or by their number from 0 in
// brackets. Parts may be left out where only one value is meant:
//
//	devices.isolation valve C.opens.pins = 6
//	fluids.base oil.density = 7.4 lb/gal +/- 1 %
//	steps.set the packer.ramps[0].tubing = 180 bar
//
// A whole number in the place of shear pins is their count. A whole object or list
// is written as JSON. A step goes to another place by the name of the step that it is to
// stand before or after:
//
//	steps.close sleeve A.before = displace the tubing to base oil
//
// The error names what the path doesn't find, with what is
// spelt like it, or what the text isn't; the plan then is as it was. Whether the
// plan can still be walked, Validate says.
func (p *Plan) Set(path, text string) (Edit, error) {
	if p == nil {
		return Edit{}, errNoPlan
	}
	path, text = strings.TrimSpace(path), strings.TrimSpace(text)
	r, err := find(reflect.ValueOf(p).Elem(), path)
	if err != nil {
		if e, ok, moved := p.put(path, text); ok {
			return e, moved
		}
		return Edit{}, err
	}
	before := valueAt(reflect.ValueOf(p).Elem(), r.steps)
	target := before.Type()
	if pins(target) {
		if _, err := strconv.Atoi(text); err == nil {
			return p.Set(r.path+".count", text)
		}
	}
	now, err := readAs(target, text)
	if err != nil {
		return Edit{}, fmt.Errorf("sequence: %s: %w", r.path, err)
	}
	e := Edit{Path: r.path, Before: written(before), Now: text}
	put(reflect.ValueOf(p).Elem(), r.steps, now)
	return e, nil
}

func pins(t reflect.Type) bool { return t == reflect.TypeFor[Pins]() || t == reflect.TypeFor[*Pins]() }

// isText tells whether values of a type are written as one text.
func isText(t reflect.Type) bool {
	return reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}

// readAs reads a text as the plan's reader reads a value of that type.
func readAs(t reflect.Type, text string) (reflect.Value, error) {
	to := reflect.New(t)
	bare := t
	for bare.Kind() == reflect.Pointer {
		bare = bare.Elem()
	}
	data := []byte(text)
	if isText(bare) || bare.Kind() == reflect.String {
		if !json.Valid(data) || text == "" || text[0] != '"' {
			data, _ = json.Marshal(text) // a text always can be
		}
	}
	if !json.Valid(data) {
		return reflect.Value{}, fmt.Errorf("is %q; must be %s", text, wanted(bare))
	}
	if err := strictjson.Unmarshal(data, to.Interface()); err != nil {
		return reflect.Value{}, fmt.Errorf("%q: %w", text, err)
	}
	return to.Elem(), nil
}

// wanted says what stands for a value of a type in a plan's file.
func wanted(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Bool:
		return "true or false"
	case reflect.Int:
		return "a whole number"
	case reflect.Float64:
		return "a number"
	case reflect.Slice:
		return "a list in JSON"
	}
	if pins(t) {
		return "a whole number, the count of pins, or an object in JSON"
	}
	return "an object in JSON"
}

// written is a value as the plan's file writes it, quotes left out.
func written(v reflect.Value) string {
	data, err := json.Marshal(v.Interface())
	if err != nil {
		return fmt.Sprint(v.Interface())
	}
	var text string
	if json.Unmarshal(data, &text) == nil {
		return text
	}
	return string(data)
}

// valueAt is the value at the end of a way, of nothing where a pointer on it is nil.
func valueAt(v reflect.Value, way []part) reflect.Value {
	for _, p := range way {
		for v.Kind() == reflect.Pointer {
			if v.IsNil() {
				v = reflect.New(v.Type().Elem())
			}
			v = v.Elem()
		}
		switch p.kind {
		case reflect.Struct:
			v = v.Field(p.field)
		case reflect.Slice:
			v = v.Index(p.index)
		default:
			v = v.MapIndex(reflect.ValueOf(p.key).Convert(v.Type().Key()))
		}
	}
	return v
}

// put writes a value at the end of a way, with what is missing on it.
func put(v reflect.Value, way []part, x reflect.Value) {
	if len(way) == 0 {
		v.Set(x)
		return
	}
	for v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		v = v.Elem()
	}
	p := way[0]
	switch p.kind {
	case reflect.Struct:
		put(v.Field(p.field), way[1:], x)
	case reflect.Slice:
		put(v.Index(p.index), way[1:], x)
	default:
		key := reflect.ValueOf(p.key).Convert(v.Type().Key())
		e := reflect.New(v.Type().Elem()).Elem()
		e.Set(v.MapIndex(key))
		put(e, way[1:], x)
		v.SetMapIndex(key, e)
	}
}
