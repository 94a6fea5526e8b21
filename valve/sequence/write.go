package sequence

import (
	"bytes"
	"encoding"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
)

// Write writes a plan as JSON that reads back to the same: its keys in their order,
// those left out that have nothing in them.
func Write(p *Plan) ([]byte, error) {
	if p == nil {
		return nil, errNoPlan
	}
	w := &writer{}
	if err := w.value(reflect.ValueOf(p).Elem()); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := json.Indent(&out, w.Bytes(), "", "  "); err != nil {
		return nil, err
	}
	out.WriteByte('\n')
	return out.Bytes(), nil
}

type writer struct{ bytes.Buffer }

func (w *writer) text(x any) error {
	e := json.NewEncoder(&w.Buffer)
	e.SetEscapeHTML(false)
	return e.Encode(x)
}

func (w *writer) value(v reflect.Value) error {
	if _, ok := v.Interface().(encoding.TextMarshaler); ok {
		return w.text(v.Interface())
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return w.text(nil)
		}
		return w.value(v.Elem())
	case reflect.Struct:
		return w.object(v)
	case reflect.Slice:
		w.WriteByte('[')
		for i := range v.Len() {
			if i > 0 {
				w.WriteByte(',')
			}
			if err := w.value(v.Index(i)); err != nil {
				return err
			}
		}
		w.WriteByte(']')
		return nil
	case reflect.Map:
		w.WriteByte('{')
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
		for i, key := range keys {
			if i > 0 {
				w.WriteByte(',')
			}
			if err := w.text(key.String()); err != nil {
				return err
			}
			w.WriteByte(':')
			if err := w.value(v.MapIndex(key)); err != nil {
				return err
			}
		}
		w.WriteByte('}')
		return nil
	}
	return w.text(v.Interface())
}

// object writes a struct's keys, without those that are empty.
func (w *writer) object(v reflect.Value) error {
	w.WriteByte('{')
	first := true
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if !f.IsExported() || name == "" || name == "-" || empty(v.Field(i)) && !says(v, f.Name) {
			continue
		}
		if !first {
			w.WriteByte(',')
		}
		first = false
		if err := w.text(name); err != nil {
			return err
		}
		w.WriteByte(':')
		if err := w.value(v.Field(i)); err != nil {
			return err
		}
	}
	w.WriteByte('}')
	return nil
}

func empty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Slice, reflect.Map:
		return v.Len() == 0
	}
	return v.IsZero()
}

// says tells whether a nought says something: nothing that is trapped has a pressure
// by default.
func says(v reflect.Value, field string) bool {
	c, ok := v.Interface().(Compartment)
	return ok && field == "Trapped" && !c.Surface && c.Formation == ""
}
