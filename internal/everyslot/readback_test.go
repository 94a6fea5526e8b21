package everyslot

import (
	"encoding"
	"encoding/json"
	"go/token"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// What every call returns for its samples comes back from JSON as it was, but for
// what isn't shown: real results, as internal/api looks at one of each type with
// invented ones.
func TestResultsReadBackAsWritten(t *testing.T) {
	list, _ := subjects(t)
	read := 0
	for _, s := range list {
		for _, r := range s.results {
			if !r.IsValid() || r.Type() == errorType || !readable(r.Type(), nil) || r.Kind() == reflect.Pointer && r.IsNil() {
				continue
			}
			v := reflect.New(r.Type())
			v.Elem().Set(r)
			text, err := json.Marshal(v.Interface())
			if err != nil {
				if endless[s.name] == "" {
					t.Errorf("%s: %v", s.name, err)
				}
				continue
			}
			back := reflect.New(r.Type())
			if err := json.Unmarshal(text, back.Interface()); err != nil {
				t.Errorf("%s: %v, reading %s", s.name, err, text)
				continue
			}
			if d := cmp.Diff(v.Interface(), back.Interface(), cmpopts.EquateEmpty(), shown, cmp.Exporter(func(reflect.Type) bool { return true })); d != "" {
				t.Errorf("%s: reads back otherwise:\n%s", s.name, d)
			}
			read++
		}
	}
	require.Greater(t, read, 700, "the search for results has gone blind")
}

// endless are calls that return what JSON can't hold, NaN or infinity, for their
// samples; writing it is an error that says so.
var endless = map[string]string{
	"hydrostatics.CourseBetween":     "one station twice: no length to bend over",
	"hydrostatics.Course.Steps":      "the working of that",
	"packer.ElementPressure":         "an element of no area",
	"packer.Restraint":               "seals that nothing stops on their way up",
	"tubular.CollapseCurve.Pressure": "slenderness of 0.3, less than that of a solid bar",
	"tubular/drag.Prepared.SetDown":  "no push at surface gets so much weight down",
}

// shown leaves out the fields that a type keeps to itself and doesn't write.
var shown = cmp.FilterPath(func(p cmp.Path) bool {
	f, ok := p.Last().(cmp.StructField)
	return ok && !token.IsExported(f.Name()) && !readsItself(p.Index(-2).Type())
}, cmp.Ignore())

func readsItself(t reflect.Type) bool {
	p := reflect.PointerTo(t)
	return p.Implements(reflect.TypeFor[json.Unmarshaler]()) || p.Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}

// refuses tells whether a type says that it can't be read, and what to write instead:
// what is prepared.
func refuses(t reflect.Type) bool {
	p, ok := reflect.New(t).Interface().(json.Unmarshaler)
	if !ok {
		return false
	}
	err := p.UnmarshalJSON([]byte("{}"))
	return err != nil && strings.Contains(err.Error(), "is neither written as JSON nor read; write ")
}

// readable tells whether a type can be read: not what holds a fluid, a curve or a
// function, nor what is prepared and shows nothing.
func readable(t reflect.Type, within []reflect.Type) bool {
	if refuses(t) {
		return false
	}
	if slices.Contains(within, t) || readsItself(t) {
		return true
	}
	within = append(within, t)
	switch t.Kind() {
	case reflect.Interface, reflect.Func, reflect.Chan:
		return false
	case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
		return readable(t.Elem(), within)
	case reflect.Struct:
		fields := 0
		for i := range t.NumField() {
			f := t.Field(i)
			if !f.IsExported() || strings.HasPrefix(f.Tag.Get("json"), "-") {
				continue
			}
			fields++
			if !readable(f.Type, within) {
				return false
			}
		}
		return fields > 0
	}
	return true
}
