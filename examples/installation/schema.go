package main

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// dialect is the standard that the schema is written in.
const dialect = "https://json-schema.org/draft/2020-12/schema"

// node is a schema, its keywords in the order in which they are to be read.
type node struct {
	names  []string
	values map[string]any
}

func (n *node) put(name string, value any) *node {
	if n.values == nil {
		n.values = map[string]any{}
	}
	if _, twice := n.values[name]; !twice {
		n.names = append(n.names, name)
	}
	n.values[name] = value
	return n
}

// MarshalJSON writes the keywords in their order.
func (n *node) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, name := range n.names {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "%q:", name)
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		if err := e.Encode(n.values[name]); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// written is a whole schema, for people.
func (n *node) written() ([]byte, error) {
	text, err := json.Marshal(n)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = json.Indent(&b, text, "", "  ")
	b.WriteByte('\n')
	return b.Bytes(), err
}

// words that a text may be, by its type.
var words = map[reflect.Type][]string{
	reflect.TypeFor[sequence.FluidKind]():   {string(sequence.ConstantDensity), string(sequence.ClearBrine), string(sequence.FreshWater), string(sequence.Nitrogen), string(sequence.Methane), string(sequence.NaturalGas)},
	reflect.TypeFor[sequence.TopOfString](): {string(sequence.TopOpen), string(sequence.TopClosed)},
	reflect.TypeFor[sequence.FlowWay]():     {string(sequence.Producing), string(sequence.Injecting)},
	reflect.TypeFor[sequence.Moment]():      {string(sequence.AtStart), string(sequence.AtPeak), string(sequence.AtEnd)},
	reflect.TypeFor[sequence.Flow]():        {string(sequence.FlowIn), string(sequence.FlowOut), string(sequence.Circulation)},
	reflect.TypeFor[sequence.PieceKind](): {string(sequence.PipeLength), string(sequence.PackerPiece), string(sequence.SleevePiece), string(sequence.IsolationValve), string(sequence.SealStack),
		string(sequence.SealBore), string(sequence.PlugPiece), string(sequence.ReleasePiece), string(sequence.SafetyValve), string(sequence.ScreenPiece), string(sequence.OtherPiece)},
	reflect.TypeFor[sequence.Wall]():       {string(sequence.InBore), string(sequence.InWall)},
	reflect.TypeFor[valve.IsolationKind](): {valve.OpensUnderPressure.String(), valve.OpensAtBleedOff.String(), valve.OpensAfterCycles.String()},
	reflect.TypeFor[valve.Direction]():     {valve.Rising.String(), valve.Falling.String()},
}

// schema is the JSON schema of a plan.
func schema() ([]byte, error) {
	known, err := keys()
	if err != nil {
		return nil, err
	}
	d := &drawing{keys: known, defs: &node{}}
	root := (&node{}).put("$schema", dialect).put("title", "installation programme")
	for i, name := range d.object(reflect.TypeFor[sequence.Plan]()).names {
		root.put(name, d.made[i])
	}
	root.put("$defs", d.defs)
	return root.written()
}

// drawing makes schemas of types.
type drawing struct {
	keys map[string]key
	defs *node
	made []any
}

// object is the schema of a struct's keys.
func (d *drawing) object(t reflect.Type) *node {
	properties, required := &node{}, []string{}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if !f.IsExported() || name == "" || name == "-" {
			continue
		}
		k := d.keys[t.Name()+"."+name]
		n := d.of(f.Type).put("description", k.meaning)
		if k.required {
			required = append(required, name)
		} else {
			n.put("x-default", k.standard)
		}
		properties.put(name, n)
	}
	n := (&node{}).put("type", "object").put("description", d.keys[t.Name()].meaning).put("properties", properties)
	if len(required) > 0 {
		n.put("required", required)
	}
	n.put("additionalProperties", false)
	d.made = nil
	for _, name := range n.names {
		d.made = append(d.made, n.values[name])
	}
	return n
}

// of is the schema of a type.
func (d *drawing) of(t reflect.Type) *node {
	if t.Kind() == reflect.Pointer {
		return d.of(t.Elem())
	}
	if list, ok := words[t]; ok {
		return (&node{}).put("type", "string").put("enum", list)
	}
	if quantity, units, band, ok := quantityOf(t); ok {
		n := (&node{}).put("type", "string").put("x-quantity", quantity).put("x-units", units)
		if band {
			n.put("x-band", "a value, least .. greatest, least .. nominal .. greatest, value +/- 5 %, or value +/- value")
		}
		return n
	}
	switch t.Kind() {
	case reflect.Slice:
		return (&node{}).put("type", "array").put("items", d.of(t.Elem()))
	case reflect.Map:
		return (&node{}).put("type", "object").put("additionalProperties", d.of(t.Elem()))
	case reflect.Struct:
		if _, known := d.defs.values[t.Name()]; !known {
			d.defs.put(t.Name(), nil) // so that it isn't made again below
			d.defs.put(t.Name(), d.object(t))
		}
		return (&node{}).put("$ref", "#/$defs/"+t.Name())
	case reflect.Bool:
		return (&node{}).put("type", "boolean")
	case reflect.Int:
		return (&node{}).put("type", "integer")
	case reflect.Float64:
		return (&node{}).put("type", "number")
	}
	return (&node{}).put("type", "string")
}

// quantityOf tells what quantity a type of package unit is of, and the units that
// it is read in.
func quantityOf(t reflect.Type) (quantity string, units []string, band, ok bool) {
	to, ok := reflect.New(t).Interface().(encoding.TextUnmarshaler)
	if !ok {
		return "", nil, false, false
	}
	if t == reflect.TypeFor[unit.Band[sequence.Factor]]() {
		return "number", []string{""}, true, true
	}
	var p *unit.ParseError
	if !errors.As(to.UnmarshalText([]byte("1")), &p) {
		return "", nil, false, false
	}
	return p.Quantity, p.Units, t.Kind() == reflect.Struct && t.NumField() == 3, true
}
