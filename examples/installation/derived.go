package main

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// written is the plan as its file would have it, with what follows from its
// assembly: every entry of a list on a line of its own, in the reader's units and
// without loss, so that it reads as a plan.
func (w *work) written() string {
	v := reflect.ValueOf(w.plan).Elem()
	var parts []string
	for i := range v.NumField() {
		key, ok := keyOf(v.Type().Field(i))
		if !ok || v.Field(i).IsZero() {
			continue
		}
		f := v.Field(i)
		text := w.json(f, key)
		if f.Kind() == reflect.Slice && f.Len() > 0 {
			var lines []string
			for k := range f.Len() {
				lines = append(lines, "    "+w.json(f.Index(k), key))
			}
			text = "[\n" + strings.Join(lines, ",\n") + "\n  ]"
		}
		parts = append(parts, fmt.Sprintf("  %q: %s", key, text))
	}
	return "{\n" + strings.Join(parts, ",\n") + "\n}\n"
}

func keyOf(f reflect.StructField) (string, bool) {
	key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return key, f.IsExported() && key != "" && key != "-"
}

// json writes a value; what is left out of a plan is left out.
func (w *work) json(v reflect.Value, key string) string {
	if v.Kind() == reflect.Pointer {
		return w.json(v.Elem(), key)
	}
	if _, is := v.Interface().(encoding.TextMarshaler); is {
		u := w.read.units
		if sized(key) {
			u = w.sizes
		}
		return quote(u.Exact(v.Interface(), purposeOf(v, key)))
	}
	var parts []string
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if key, ok := keyOf(v.Type().Field(i)); ok && !v.Field(i).IsZero() {
				parts = append(parts, quote(key)+": "+w.json(v.Field(i), key))
			}
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortStableFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
		for _, k := range keys {
			parts = append(parts, quote(k.String())+": "+w.json(v.MapIndex(k), key))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case reflect.Slice:
		for i := range v.Len() {
			parts = append(parts, w.json(v.Index(i), key))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case reflect.String:
		return quote(v.String())
	}
	return fmt.Sprint(v.Interface())
}

// quote writes a text as JSON does, without hiding < and >.
func quote(text string) string {
	b := &strings.Builder{}
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	if e.Encode(text) != nil { // a text always can be
		return `""`
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// purposeOf is what a key's value is for, where its type doesn't say so.
func purposeOf(v reflect.Value, key string) display.Purpose {
	t := v.Type()
	if t.Kind() == reflect.Struct && t.NumField() == 3 { // a band
		t = t.Field(0).Type
	}
	switch t {
	case reflect.TypeFor[unit.Length]():
		switch key {
		case "size", "bore", "hole", "seal", "seal bore", "seal_bore", "od", "wall", "outer", "inner", "outer_wall", "inner_wall":
			return display.Diameter
		case "up", "down":
			return display.Stroke
		}
		return display.Depth
	case reflect.TypeFor[unit.Area]():
		if key == "capacity" {
			return display.Capacity
		}
	case reflect.TypeFor[unit.FlowRate]():
		return display.ProductionRate
	}
	return display.Usual
}
