package main

import (
	"reflect"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// answerSchema is the JSON schema of what -json prints in these units, an answer or
// a shortAnswer: each field
// with its quantity and the one unit that it is in.
func answerSchema(u units, of reflect.Type) ([]byte, error) {
	d := &answerDrawing{units: u, defs: &node{}}
	root := (&node{}).put("$schema", dialect).put("title", "answer of installation -json")
	object := d.object(of)
	for _, name := range object.names {
		root.put(name, object.values[name])
	}
	root.put("$defs", d.defs)
	return root.written()
}

// answerDrawing makes schemas of the answer's types.
type answerDrawing struct {
	units
	defs *node
}

func (d *answerDrawing) object(t reflect.Type) *node {
	properties, required := &node{}, []string{}
	d.fields(t, properties, &required)
	n := (&node{}).put("type", "object").put("properties", properties)
	if len(required) > 0 {
		n.put("required", required)
	}
	return n.put("additionalProperties", false)
}

// fields puts a struct's fields, those of an embedded one as its own.
func (d *answerDrawing) fields(t reflect.Type, properties *node, required *[]string) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && name == "":
			e := f.Type
			if e.Kind() == reflect.Pointer {
				e = e.Elem()
			}
			d.fields(e, properties, required)
		case f.IsExported() && name != "" && name != "-":
			properties.put(name, d.of(f.Type, name))
			if !strings.Contains(options, "omitempty") {
				*required = append(*required, name)
			}
		}
	}
}

// of is the schema of a type in a field of that name.
func (d *answerDrawing) of(t reflect.Type, name string) *node {
	if t.Kind() == reflect.Pointer {
		return d.of(t.Elem(), name)
	}
	if t == reflect.TypeFor[sequence.Level]() {
		return (&node{}).put("type", "string").put("x-quantity", "pressure or force").put("x-unit", d.symbol(pressure)+" or "+d.symbol(force))
	}
	x := reflect.Zero(t).Interface()
	p := usual(x)
	if _, length := x.(unit.Length); length && strokes[name] {
		p = stroke
	}
	if symbol := d.UnitOf(x, p); symbol != "" {
		quantity, _, _, _ := quantityOf(t)
		return (&node{}).put("type", "string").put("x-quantity", quantity).put("x-unit", symbol)
	}
	if isWord(t) {
		return (&node{}).put("type", "string")
	}
	switch t.Kind() {
	case reflect.Slice:
		return (&node{}).put("type", []string{"array", "null"}).put("items", d.of(t.Elem(), name))
	case reflect.Map:
		return (&node{}).put("type", "object").put("additionalProperties", d.of(t.Elem(), name))
	case reflect.Struct:
		if _, known := d.defs.values[t.Name()]; !known {
			d.defs.put(t.Name(), nil) // so that it isn't made again below
			d.defs.put(t.Name(), d.object(t))
		}
		return (&node{}).put("$ref", "#/$defs/"+t.Name())
	case reflect.Bool:
		return (&node{}).put("type", "boolean")
	case reflect.Int, reflect.Uint64:
		return (&node{}).put("type", "integer")
	case reflect.Float64:
		return (&node{}).put("type", "number")
	}
	return (&node{}).put("type", "string")
}

// isWord tells whether a type is written as a word.
func isWord(t reflect.Type) bool {
	_, ok := words[t]
	return ok
}
