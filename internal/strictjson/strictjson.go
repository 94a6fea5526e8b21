// Package strictjson reads JSON into a Go value and reports every fault at
// once, each with its path in the file: unknown fields, names that stand
// twice, wrong kinds, and whatever a value's own UnmarshalText says.
//
// encoding/json stops at the first fault, without a path, and lets a name
// that stands twice pass.
package strictjson

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"completion.example/internal/fault"
)

// Unmarshal reads data into the value that to points to. Struct fields are
// matched by their json tag, or else by their name in lower case, to the letter,
// and by the names that they had before (see Names). On any fault to holds what could be read.
func Unmarshal(data []byte, to any) error {
	v := reflect.ValueOf(to)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return errors.New("strictjson: the value to read into must be a pointer")
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	r := reader{}
	tree, err := r.parse(d, "", 0)
	if err == nil {
		if _, err = d.Token(); err == io.EOF {
			err = nil
		} else if err == nil {
			err = errors.New("text after the end of the JSON value")
		}
	}
	if err != nil {
		r.faults.Add(place(data, d, err))
		return r.faults.Err()
	}
	r.read("", tree, v.Elem())
	return r.faults.Err()
}

// maxDepth is more than any plan has, and keeps a hostile file from filling the
// memory with paths.
const maxDepth = 40

// place adds line and column to a fault of syntax.
func place(data []byte, d *json.Decoder, err error) error {
	at := min(int(d.InputOffset()), len(data))
	var s *json.SyntaxError
	if errors.As(err, &s) {
		at = min(int(s.Offset), len(data))
	}
	line := 1 + bytes.Count(data[:at], []byte("\n"))
	column := at - bytes.LastIndexByte(data[:at], '\n')
	if err == io.EOF {
		err = io.ErrUnexpectedEOF
	}
	return fmt.Errorf("line %d, column %d: %w", line, column, err)
}

// object keeps the order of the file.
type object struct {
	names  []string
	values map[string]any
}

type reader struct{ faults fault.Faults }

func (r *reader) fault(path string, format string, args ...any) {
	r.faults.New(path, format, args...)
}

// parse builds the tree and finds names that stand twice.
func (r *reader) parse(d *json.Decoder, path string, depth int) (any, error) {
	if depth > maxDepth {
		return nil, fmt.Errorf("values stand more than %d deep in each other", maxDepth)
	}
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch t {
	case json.Delim('{'):
		o := object{values: map[string]any{}}
		for d.More() {
			key, err := d.Token()
			if err != nil {
				return nil, err
			}
			name := key.(string) // the decoder has checked that a name is a string
			v, err := r.parse(d, join(path, name), depth+1)
			if err != nil {
				return nil, err
			}
			if _, twice := o.values[name]; twice {
				r.fault(join(path, name), "stands twice")
				continue
			}
			o.names = append(o.names, name)
			o.values[name] = v
		}
		_, err := d.Token()
		return o, err
	case json.Delim('['):
		list := []any{}
		for d.More() {
			v, err := r.parse(d, fault.Index(path, len(list)), depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err := d.Token()
		return list, err
	}
	return t, nil
}

func join(path, name string) string {
	if strings.ContainsAny(name, " .[]:") {
		name = strconv.Quote(name)
	}
	if path == "" {
		return name
	}
	return path + "." + name
}

// read puts a tree into a value.
func (r *reader) read(path string, tree any, v reflect.Value) {
	if tree == nil {
		r.fault(path, "is null; leave it out instead")
		return
	}
	if u, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		r.text(path, tree, u)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		r.read(path, tree, v.Elem())
	case reflect.Struct:
		r.structure(path, tree, v)
	case reflect.Map:
		r.mapping(path, tree, v)
	case reflect.Slice:
		list, ok := tree.([]any)
		if !ok {
			r.fault(path, "is %s; must be a list", kind(tree))
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), len(list), len(list)))
		for i, t := range list {
			r.read(fault.Index(path, i), t, v.Index(i))
		}
	default:
		r.scalar(path, tree, v)
	}
}

func (r *reader) text(path string, tree any, u encoding.TextUnmarshaler) {
	s, ok := tree.(string)
	if !ok {
		if n, number := tree.(json.Number); number {
			s = n.String() // so that the quantity itself says which units would do
		} else {
			r.fault(path, "is %s; must be text", kind(tree))
			return
		}
	}
	if err := u.UnmarshalText([]byte(s)); err != nil {
		r.faults.At(path, err)
	}
}

func (r *reader) structure(path string, tree any, v reflect.Value) {
	o, ok := tree.(object)
	if !ok {
		r.fault(path, "is %s; must be an object with fields", kind(tree))
		return
	}
	fields := map[string]int{}
	var known []string
	for i := range v.NumField() {
		names := Names(v.Type().Field(i))
		for _, name := range names {
			fields[name] = i
		}
		if len(names) > 0 {
			known = append(known, names[0])
		}
	}
	read := map[int]bool{}
	for _, name := range o.names {
		i, ok := fields[name]
		if ok && read[i] {
			r.fault(join(path, name), "stands twice: it is the old name of %s", Names(v.Type().Field(i))[0])
			continue
		}
		if !ok {
			slices.Sort(known)
			r.fault(join(path, name), "unknown field; there are %s", strings.Join(known, ", "))
			continue
		}
		read[i] = true
		r.read(join(path, name), o.values[name], v.Field(i))
	}
}

// Names returns what a field is called in JSON: its json tag, or its name in lower
// case, then the names that it had before and that are still read, those of its tag
// was. None of a field that isn't read.
func Names(f reflect.StructField) []string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	if !f.IsExported() || name == "-" {
		return nil
	}
	if name == "" {
		name = strings.ToLower(f.Name)
	}
	names := []string{name}
	if old := f.Tag.Get("was"); old != "" {
		names = append(names, strings.Split(old, ",")...)
	}
	return names
}

func (r *reader) mapping(path string, tree any, v reflect.Value) {
	o, ok := tree.(object)
	if !ok {
		r.fault(path, "is %s; must be an object", kind(tree))
		return
	}
	v.Set(reflect.MakeMapWithSize(v.Type(), len(o.names)))
	for _, name := range o.names {
		e := reflect.New(v.Type().Elem()).Elem()
		r.read(join(path, name), o.values[name], e)
		v.SetMapIndex(reflect.ValueOf(name).Convert(v.Type().Key()), e)
	}
}

func (r *reader) scalar(path string, tree any, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if s, ok := tree.(string); ok {
			v.SetString(s)
			return
		}
		r.fault(path, "is %s; must be text", kind(tree))
	case reflect.Bool:
		if b, ok := tree.(bool); ok {
			v.SetBool(b)
			return
		}
		r.fault(path, "is %s; must be true or false", kind(tree))
	case reflect.Int:
		n, ok := tree.(json.Number)
		if i, err := strconv.ParseInt(string(n), 10, 32); ok && err == nil {
			v.SetInt(i)
			return
		}
		r.fault(path, "is %s; must be a whole number", kind(tree))
	case reflect.Float64:
		n, ok := tree.(json.Number)
		if f, err := n.Float64(); ok && err == nil {
			v.SetFloat(f)
			return
		}
		r.fault(path, "is %s; must be a number", kind(tree))
	default:
		r.fault(path, "can't be read: no rule for %s", v.Type())
	}
}

func kind(tree any) string {
	switch t := tree.(type) {
	case object:
		return "an object"
	case []any:
		return "a list"
	case string:
		return strconv.Quote(t)
	case json.Number:
		return t.String()
	}
	return fmt.Sprint(tree)
}
