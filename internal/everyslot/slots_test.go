package everyslot

import (
	"fmt"
	"io"
	"math"
	"reflect"
	"strings"

	"completion.example/hydrostatics/unit"
)

// A slot is a place among the arguments of a call that holds one number, pointer,
// interface, function or slice.
type slot struct {
	path string
	// put returns the arguments with v in the slot.
	put  func(v reflect.Value) []reflect.Value
	kind reflect.Type
	now  reflect.Value
}

// slots lists those of all arguments.
func slots(args []reflect.Value) []slot {
	var list []slot
	for i := range args {
		walk(fmt.Sprintf("argument %d", i), args[i], func(v reflect.Value) []reflect.Value {
			with := append([]reflect.Value(nil), args...)
			with[i] = v
			return with
		}, &list, 0)
	}
	return list
}

var temperature = reflect.TypeFor[unit.Temperature]()

func walk(path string, v reflect.Value, put func(reflect.Value) []reflect.Value, list *[]slot, deep int) {
	if deep > 6 {
		return
	}
	leaf := func() { *list = append(*list, slot{path, put, v.Type(), v}) }
	switch v.Kind() {
	case reflect.Float64, reflect.Int, reflect.Int64, reflect.Uint8:
		leaf()
	case reflect.Func:
		leaf()
	case reflect.Pointer, reflect.Interface:
		leaf()
		if v.IsNil() {
			return
		}
		inner := v.Elem()
		walk(path+"*", inner, func(x reflect.Value) []reflect.Value {
			holder := reflect.New(v.Type()).Elem()
			if v.Kind() == reflect.Pointer {
				p := reflect.New(inner.Type())
				p.Elem().Set(x)
				holder.Set(p)
			} else {
				holder.Set(x)
			}
			return put(holder)
		}, list, deep+1)
	case reflect.Slice:
		leaf()
		for k := range min(v.Len(), 2) {
			walk(fmt.Sprintf("%s[%d]", path, k), v.Index(k), func(x reflect.Value) []reflect.Value {
				s := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
				reflect.Copy(s, v)
				s.Index(k).Set(x)
				return put(s)
			}, list, deep+1)
		}
	case reflect.Array:
		for k := range v.Len() {
			walk(fmt.Sprintf("%s[%d]", path, k), v.Index(k), func(x reflect.Value) []reflect.Value {
				a := reflect.New(v.Type()).Elem()
				a.Set(v)
				a.Index(k).Set(x)
				return put(a)
			}, list, deep+1)
		}
	case reflect.Struct:
		if v.Type() == temperature {
			leaf()
			return
		}
		for k := range v.NumField() {
			f := v.Type().Field(k)
			if !f.IsExported() {
				continue
			}
			walk(path+"."+f.Name, v.Field(k), func(x reflect.Value) []reflect.Value {
				s := reflect.New(v.Type()).Elem()
				s.Set(v)
				s.Field(k).Set(x)
				return put(s)
			}, list, deep+1)
		}
	}
}

// nonsense are the values that a slot is given.
func nonsense(t reflect.Type) []reflect.Value {
	var list []reflect.Value
	floats := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, math.Copysign(0, -1), 5e-324, -5e-324, 1e308, -1e308, -1}
	switch {
	case t == temperature:
		for _, x := range floats {
			list = append(list, reflect.ValueOf(unit.Kelvin(x)))
		}
	case t.Kind() == reflect.Float64:
		for _, x := range floats {
			v := reflect.New(t).Elem()
			v.SetFloat(x)
			list = append(list, v)
		}
	case t.Kind() == reflect.Int, t.Kind() == reflect.Int64:
		for _, x := range []int64{0, -1, math.MaxInt64, math.MinInt64} {
			v := reflect.New(t).Elem()
			v.SetInt(x)
			list = append(list, v)
		}
	case t.Kind() == reflect.Uint8:
		list = append(list, reflect.Zero(t), reflect.ValueOf(uint8(255)).Convert(t))
	default:
		list = append(list, reflect.Zero(t))
	}
	return list
}

// finite tells where v holds a number that isn't, in its exported part.
func finite(path string, v reflect.Value) (where string, ok bool) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return fmt.Sprintf("%s = %v", path, x), false
		}
	case reflect.Struct:
		if v.Type() == temperature {
			if x := v.Interface().(unit.Temperature).Kelvin(); math.IsNaN(x) || math.IsInf(x, 0) {
				return fmt.Sprintf("%s = %v K", path, x), false
			}
			return "", true
		}
		for k := range v.NumField() {
			if f := v.Type().Field(k); f.IsExported() {
				if where, ok := finite(path+"."+f.Name, v.Field(k)); !ok {
					return where, false
				}
			}
		}
	case reflect.Slice, reflect.Array:
		for k := range min(v.Len(), 1000) {
			if where, ok := finite(fmt.Sprintf("%s[%d]", path, k), v.Index(k)); !ok {
				return where, false
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return finite(path+"*", v.Elem())
		}
	}
	return "", true
}

// numbers appends what quantities v holds, in its exported part.
func numbers(v reflect.Value, list []float64) []float64 {
	switch v.Kind() {
	case reflect.Float64:
		list = append(list, v.Float())
	case reflect.Struct:
		for k := range v.NumField() {
			if v.Type().Field(k).IsExported() {
				list = numbers(v.Field(k), list)
			}
		}
	case reflect.Slice, reflect.Array:
		for k := range v.Len() {
			list = numbers(v.Index(k), list)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			list = numbers(v.Elem(), list)
		}
	}
	return list
}

var (
	errorType  = reflect.TypeFor[error]()
	readerType = reflect.TypeFor[io.Reader]()
)

// call calls f and tells of a panic.
func call(f reflect.Value, args []reflect.Value) (results []reflect.Value, panicked string) {
	defer func() {
		if r := recover(); r != nil {
			panicked = strings.ReplaceAll(fmt.Sprint(r), "\n", " ")
		}
	}()
	in := make([]reflect.Value, len(args))
	for i, a := range args {
		in[i] = clone(a)
	}
	if f.Type().IsVariadic() {
		return f.CallSlice(in), ""
	}
	return f.Call(in), ""
}

// clone keeps a call from writing into the samples: what is behind a pointer with
// exported fields, and slices.
func clone(v reflect.Value) reflect.Value {
	switch {
	case v.Kind() == reflect.Pointer && !v.IsNil():
		p := reflect.New(v.Type().Elem())
		p.Elem().Set(v.Elem())
		return p
	case v.Kind() == reflect.Slice && !v.IsNil():
		s := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(s, v)
		return s
	}
	return v
}

// failed tells whether the last result is an error that isn't nil.
func failed(results []reflect.Value) bool {
	n := len(results)
	return n > 0 && results[n-1].Type() == errorType && !results[n-1].IsNil()
}

func returnsError(f reflect.Type) bool { return f.NumOut() > 0 && f.Out(f.NumOut()-1) == errorType }
