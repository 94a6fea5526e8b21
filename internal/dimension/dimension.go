// Package dimension holds formulas against the oldest check of all: a formula
// in SI without hidden unit factors doesn't care how long the metre is. When
// length, mass, time and temperature are scaled by powers of two, every input
// and output scales by a power of two, exactly, bit for bit.
package dimension

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"completion.example/hydrostatics/unit"
)

// exponents are the powers of length, mass, time and temperature.
type exponents struct{ l, m, t, k int }

// A unit.Consistency has no fixed dimension: it holds time to the power of the
// flow index. Check refuses it, and any other number that isn't listed here.
var of = map[reflect.Type]exponents{
	reflect.TypeFor[unit.Length]():                {1, 0, 0, 0},
	reflect.TypeFor[unit.Area]():                  {2, 0, 0, 0},
	reflect.TypeFor[unit.Volume]():                {3, 0, 0, 0},
	reflect.TypeFor[unit.SecondMoment]():          {4, 0, 0, 0},
	reflect.TypeFor[unit.Angle]():                 {},
	reflect.TypeFor[unit.Curvature]():             {-1, 0, 0, 0},
	reflect.TypeFor[unit.Mass]():                  {0, 1, 0, 0},
	reflect.TypeFor[unit.Force]():                 {1, 1, -2, 0},
	reflect.TypeFor[unit.Torque]():                {2, 1, -2, 0},
	reflect.TypeFor[unit.Power]():                 {2, 1, -3, 0},
	reflect.TypeFor[unit.WeightPerLength]():       {0, 1, -2, 0},
	reflect.TypeFor[unit.Pressure]():              {-1, 1, -2, 0},
	reflect.TypeFor[unit.Density]():               {-3, 1, 0, 0},
	reflect.TypeFor[unit.Gradient]():              {-2, 1, -2, 0},
	reflect.TypeFor[unit.TemperatureDifference](): {0, 0, 0, 1},
	reflect.TypeFor[unit.TemperatureGradient]():   {-1, 0, 0, 1},
	reflect.TypeFor[unit.FlowRate]():              {3, 0, -1, 0},
	reflect.TypeFor[unit.Velocity]():              {1, 0, -1, 0},
	reflect.TypeFor[unit.Viscosity]():             {-1, 1, -1, 0},
	reflect.TypeFor[unit.Compressibility]():       {1, -1, 2, 0},
	reflect.TypeFor[unit.Expansivity]():           {0, 0, 0, -1},
	reflect.TypeFor[unit.ProductivityIndex]():     {4, -1, 1, 0},
	reflect.TypeFor[unit.MassRate]():              {0, 1, -1, 0},
	reflect.TypeFor[unit.ShearRate]():             {0, 0, -1, 0},
	reflect.TypeFor[unit.Permeability]():          {2, 0, 0, 0},
	reflect.TypeFor[unit.FlowCoefficient]():       {2, 0, 0, 0},
	reflect.TypeFor[unit.SpecificHeat]():          {2, 0, -2, -1},
	reflect.TypeFor[unit.Conductivity]():          {1, 1, -3, -1},
	reflect.TypeFor[unit.HeatTransfer]():          {0, 1, -3, -1},
	reflect.TypeFor[unit.Diffusivity]():           {2, 0, -1, 0},
	reflect.TypeFor[float64]():                    {},
	reflect.TypeFor[int]():                        {},
	reflect.TypeFor[bool]():                       {},
	reflect.TypeFor[string]():                     {},
}

// Scaling says what may be scaled.
type Scaling int

const (
	// Free scales length, mass, time and temperature, each on its own.
	Free Scaling = iota
	// Gravity is for formulas with standard gravity inside: length goes with
	// the square of time, so that 9.80665 m/s² stays what it is.
	Gravity
)

// scalings are powers of two; even ones, so that square roots stay exact.
func (s Scaling) scalings() []exponents {
	if s == Gravity {
		return []exponents{{l: 4, t: 2}, {m: 6}, {k: 4}, {l: -8, m: 2, t: -4, k: -2}}
	}
	return []exponents{{l: 4}, {m: 6}, {t: 4}, {k: 4}, {l: -6, m: 2, t: 8, k: -2}}
}

// Check calls the function f with args and with scaled args, and fails t where
// a result doesn't scale to the bit. Arguments and results are quantities,
// numbers, or structs, pointers, slices and arrays of them; an error result
// must be nil. A unit.Temperature can't be scaled and is left as it is.
func Check(t testing.TB, s Scaling, f any, args ...any) {
	t.Helper()
	fn := reflect.ValueOf(f)
	in := make([]reflect.Value, len(args))
	for i, a := range args {
		in[i] = reflect.ValueOf(a)
		unlisted(t, fmt.Sprintf("argument %d", i), in[i])
	}
	plain := fn.Call(in)
	for i, r := range plain {
		unlisted(t, fmt.Sprintf("result %d", i), r)
	}
	for _, by := range s.scalings() {
		scaled := make([]reflect.Value, len(in))
		for i, v := range in {
			scaled[i] = scale(v, by)
		}
		for i, got := range fn.Call(scaled) {
			if err, ok := got.Interface().(error); ok && err != nil {
				t.Errorf("scaled by %+v: %v", by, err)
				continue
			}
			if where, ok := equal(fmt.Sprintf("result %d", i), got, scale(plain[i], by)); !ok {
				t.Errorf("scaled by %+v: %s", by, where)
			}
		}
	}
}

// Scalable tells whether everything in v has a dimension that is known, so that a
// scaled copy of it can be made: no temperature, no function, nothing hidden.
func Scalable(v reflect.Value) bool { return known(v, false) }

// Comparable tells whether all that can be seen of v has a dimension that is known.
func Comparable(v reflect.Value) bool { return known(v, true) }

func known(v reflect.Value, hidden bool) bool {
	if _, listed := of[v.Type()]; listed {
		return true
	}
	switch v.Kind() {
	case reflect.Float64: // a number of a package's own, such as a friction factor
		return v.Type().PkgPath() != reflect.TypeFor[unit.Length]().PkgPath()
	case reflect.Int, reflect.Uint8, reflect.String, reflect.Bool:
		return true
	case reflect.Struct:
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() && hidden {
				continue
			}
			if !v.Type().Field(i).IsExported() || !known(v.Field(i), hidden) {
				return false
			}
		}
		return true
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if !known(v.Index(i), hidden) {
				return false
			}
		}
		return true
	case reflect.Pointer, reflect.Interface:
		return v.IsNil() || known(v.Elem(), hidden)
	}
	return false
}

// Departure calls a function with args and with scaled args, and returns where a
// result doesn't scale to the bit. Where the function returns an error for
// arguments scaled up it is asked again with those scaled down; refused tells that
// it takes neither. The arguments must be Scalable and the results Comparable.
func Departure(s Scaling, fn reflect.Value, args []reflect.Value) (refused bool, err error) {
	call := fn.Call
	if fn.Type().IsVariadic() {
		call = fn.CallSlice
	}
	plain := call(args)
	for _, by := range s.scalings() {
		got, fault := scaledCall(call, args, by)
		if fault != nil {
			by = by.inverse()
			if got, fault = scaledCall(call, args, by); fault != nil {
				return true, fmt.Errorf("scaled by %+v: %w", by, fault)
			}
		}
		for i := range got {
			if where, ok := equal(fmt.Sprintf("result %d", i), got[i], scale(plain[i], by)); !ok {
				return false, fmt.Errorf("scaled by %+v: %s", by, where)
			}
		}
	}
	return false, nil
}

func (e exponents) inverse() exponents { return exponents{-e.l, -e.m, -e.t, -e.k} }

// scaledCall makes the call with scaled arguments; its error stands apart.
func scaledCall(call func([]reflect.Value) []reflect.Value, args []reflect.Value, by exponents) (results []reflect.Value, fault error) {
	scaled := make([]reflect.Value, len(args))
	for i, v := range args {
		scaled[i] = scale(v, by)
	}
	results = call(scaled)
	for _, r := range results {
		if err, ok := r.Interface().(error); ok && err != nil {
			return nil, err
		}
	}
	return results, nil
}

// unlisted fails t for a number whose dimension isn't known, so that it isn't
// left unscaled without a word.
func unlisted(t testing.TB, path string, v reflect.Value) {
	t.Helper()
	if _, listed := of[v.Type()]; listed {
		return
	}
	switch v.Kind() {
	case reflect.Float64:
		if v.Type() != reflect.TypeFor[float64]() {
			t.Errorf("%s is a %s, whose dimension isn't known", path, v.Type())
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[unit.Temperature]() {
			return
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				unlisted(t, path+"."+f.Name, v.Field(i))
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			unlisted(t, fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			unlisted(t, path, v.Elem())
		}
	}
}

// scale returns a copy of v with every quantity scaled.
func scale(v reflect.Value, by exponents) reflect.Value {
	if e, ok := of[v.Type()]; ok {
		if v.Kind() != reflect.Float64 {
			return v
		}
		r := reflect.New(v.Type()).Elem()
		r.SetFloat(math.Ldexp(v.Float(), e.l*by.l+e.m*by.m+e.t*by.t+e.k*by.k))
		return r
	}
	r := reflect.New(v.Type()).Elem()
	r.Set(v)
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				r.Field(i).Set(scale(v.Field(i), by))
			}
		}
	case reflect.Slice:
		if v.IsNil() {
			return v
		}
		r.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		for i := range v.Len() {
			r.Index(i).Set(scale(v.Index(i), by))
		}
	case reflect.Array:
		for i := range v.Len() {
			r.Index(i).Set(scale(v.Index(i), by))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			r.Set(reflect.New(v.Type().Elem()))
			r.Elem().Set(scale(v.Elem(), by))
		}
	case reflect.Interface:
		if !v.IsNil() {
			r.Set(scale(v.Elem(), by))
		}
	}
	return r
}

// equal compares bit for bit and says where two values part.
func equal(path string, got, want reflect.Value) (where string, ok bool) {
	switch got.Kind() {
	case reflect.Float64:
		if math.Float64bits(got.Float()) != math.Float64bits(want.Float()) {
			return fmt.Sprintf("%s = %.17g, want %.17g: not homogeneous in SI", path, got.Float(), want.Float()), false
		}
	case reflect.Struct:
		for i := range got.NumField() {
			if f := got.Type().Field(i); f.IsExported() {
				if where, ok := equal(path+"."+f.Name, got.Field(i), want.Field(i)); !ok {
					return where, false
				}
			}
		}
	case reflect.Slice, reflect.Array:
		if got.Len() != want.Len() {
			return path + " has another length", false
		}
		for i := range got.Len() {
			if where, ok := equal(fmt.Sprintf("%s[%d]", path, i), got.Index(i), want.Index(i)); !ok {
				return where, false
			}
		}
	case reflect.Pointer, reflect.Interface:
		if got.IsNil() != want.IsNil() {
			return path + " is nil in one of the two", false
		}
		if !got.IsNil() {
			return equal(path, got.Elem(), want.Elem())
		}
	}
	return "", true
}
