package main

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record"
)

// answer is what -json prints.
type answer struct {
	Caution string            `json:"caution"`
	Units   map[string]string `json:"units"`
	Hash    string            `json:"hash"`
	Edits   []sequence.Edit   `json:"edits,omitempty"`
	Notes   []string          `json:"notes,omitempty"`
	*sequence.Programme
	Changes *changed          `json:"changes,omitempty"`
	Risk    *sequence.Risk    `json:"risk,omitempty"`
	Record  *record.Diagnosis `json:"record,omitempty"`
}

// shortAnswer is what -json prints with -brief.
type shortAnswer struct {
	Caution string            `json:"caution"`
	Units   map[string]string `json:"units"`
	Hash    string            `json:"hash"`
	Edits   []sequence.Edit   `json:"edits,omitempty"`
	Notes   []string          `json:"notes,omitempty"`
	sequence.Summary
}

// printShortJSON writes the short form of the programme for machines.
func printShortJSON(out io.Writer, w *work) error {
	return writeJSON(out, w, shortAnswer{calculator.Caution, w.read.names(), w.hash, w.edits, w.notes, w.programme.Summary()})
}

// printJSON writes the programme for machines: every quantity is text in the one
// unit that the output has for it, without loss, so that it reads back to the same
// bits; "units" names them.
func printJSON(out io.Writer, w *work, over float64) error {
	d := answer{calculator.Caution, w.read.names(), w.hash, w.edits, w.notes, w.programme, nil, w.risk, w.record}
	if w.before != nil {
		d.Changes = compare(w, over)
	}
	return writeJSON(out, w, d)
}

func writeJSON(out io.Writer, w *work, d any) error {
	var b, pretty bytes.Buffer
	if err := w.read.encode(&b, reflect.ValueOf(d), ""); err != nil {
		return err
	}
	if err := json.Indent(&pretty, b.Bytes(), "", "  "); err != nil {
		return err
	}
	pretty.WriteByte('\n')
	_, err := pretty.WriteTo(out)
	return err
}

// names are the units of the output by what they are of.
func (u units) names() map[string]string {
	return map[string]string{"depth": u.symbol(depth), "travel": u.symbol(stroke), "pressure": u.symbol(pressure), "volume": u.symbol(volume), "force": u.symbol(force), "rate": u.symbol(rate)}
}

// strokes are the fields whose lengths are movements and not depths.
var strokes = map[string]bool{"travel": true, "engaged": true}

// asWritten are the fields whose text is read again by the plan, and stays as it
// is.
var asWritten = map[string]bool{"path": true, "now": true, "before": true, "name": true, "note": true}

// encode writes a value, named by the field that it is in.
func (u units) encode(b *bytes.Buffer, v reflect.Value, name string) error {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			b.WriteString("null")
			return nil
		}
		return u.encode(b, v.Elem(), name)
	}
	x := plain(v.Interface())
	p := usual(x)
	if _, length := x.(unit.Length); length && strokes[name] {
		p = stroke
	}
	if u.UnitOf(x, p) != "" {
		if band, ok := x.(interface{ Values() [3]any }); ok {
			return u.band(b, band.Values(), p)
		}
		return put(b, u.Exact(x, p))
	}
	if _, text := x.(encoding.TextMarshaler); text {
		return put(b, x)
	}
	switch v.Kind() {
	case reflect.Struct:
		b.WriteByte('{')
		if err := u.fields(b, v, new(int)); err != nil {
			return err
		}
		b.WriteByte('}')
		return nil
	case reflect.Slice:
		if v.IsNil() {
			b.WriteString("null")
			return nil
		}
		b.WriteByte('[')
		for i := range v.Len() {
			if i > 0 {
				b.WriteByte(',')
			}
			if err := u.encode(b, v.Index(i), name); err != nil {
				return err
			}
		}
		b.WriteByte(']')
		return nil
	case reflect.String:
		switch name {
		case "exact":
			return put(b, u.exactly(v.String()))
		case "value": // of a choice
			return put(b, u.difference(u.text(v.String())))
		}
		if !asWritten[name] {
			return put(b, u.text(v.String()))
		}
	}
	return put(b, v.Interface())
}

// exactly writes the text of a quantity without loss in the reader's unit.
func (u units) exactly(text string) string {
	for _, read := range []func(string) (any, error){one[unit.Pressure], one[unit.Force], one[unit.Density], one[unit.Length], one[unit.TemperatureDifference]} {
		if q, err := read(text); err == nil {
			return u.Exact(q, display.Usual)
		}
	}
	return text
}

// band writes a band as an object of its three values.
func (u units) band(b *bytes.Buffer, values [3]any, p display.Purpose) error {
	return put(b, u.Exact(values[0], p)+" .. "+u.Exact(values[1], p)+" .. "+u.Exact(values[2], p))
}

// fields writes the fields of a struct, those of an embedded one as its own.
func (u units) fields(b *bytes.Buffer, v reflect.Value, n *int) error {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && name == "" {
			e := v.Field(i)
			if e.Kind() == reflect.Pointer {
				e = e.Elem()
			}
			if err := u.fields(b, e, n); err != nil {
				return err
			}
			continue
		}
		if !f.IsExported() || name == "-" || strings.Contains(options, "omitempty") && empty(v.Field(i)) {
			continue
		}
		if *n > 0 {
			b.WriteByte(',')
		}
		*n++
		fmt.Fprintf(b, "%q:", name)
		if err := u.encode(b, v.Field(i), name); err != nil {
			return err
		}
	}
	return nil
}

// empty is what encoding/json leaves out with omitempty.
func empty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Slice, reflect.Map, reflect.String:
		return v.Len() == 0
	case reflect.Struct:
		return false
	}
	return v.IsZero()
}

func put(b *bytes.Buffer, v any) error {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
