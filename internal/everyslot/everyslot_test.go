package everyslot

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	longtests "completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// subject is a call with arguments that suit it.
type subject struct {
	name    string
	f       reflect.Value
	args    []reflect.Value
	results []reflect.Value
}

// calls are the exported functions and methods by name. Text and printing have
// tests of their own.
func calls() map[string]reflect.Value {
	all := map[string]reflect.Value{}
	for name, f := range functions {
		all[name] = reflect.ValueOf(f)
	}
	for name, p := range types {
		t := reflect.TypeOf(p)
		if t.Elem().Kind() == reflect.Interface {
			continue
		}
		for i := range t.NumMethod() {
			m := t.Method(i)
			f := m.Func
			if byValue, ok := t.Elem().MethodByName(m.Name); ok {
				f = byValue.Func
			}
			all[name+"."+m.Name] = f
		}
	}
	return all
}

// subjects finds arguments for as many calls as it can: from the samples, and from
// what calls return, until nothing is added. The others are returned by name.
func subjects(t *testing.T) (list []subject, without map[string]string) {
	pool := map[reflect.Type]reflect.Value{}
	for _, s := range samples() {
		v := reflect.ValueOf(s)
		if _, have := pool[v.Type()]; !have {
			pool[v.Type()] = v
		}
	}
	own, all := byName(), calls()
	done, why := map[string]bool{}, map[string]string{}
	for {
		before := len(done)
		for _, name := range slices.Sorted(maps.Keys(all)) {
			if done[name] {
				continue
			}
			f := all[name]
			args, ok := arguments(f.Type(), own[name], pool)
			if !ok {
				why[name] = "nothing to pass to " + f.Type().String()
				continue
			}
			results, panicked := call(f, args)
			require.Empty(t, panicked, "%s with samples", name)
			if failed(results) {
				why[name] = fmt.Sprint(results[len(results)-1])
				continue
			}
			done[name] = true
			delete(why, name)
			list = append(list, subject{name, f, args, results})
			for _, r := range results {
				harvest(r, pool)
			}
		}
		if len(done) == before {
			break
		}
	}
	return list, why
}

// harvest keeps a result, and what it is made of, for arguments.
func harvest(v reflect.Value, pool map[reflect.Type]reflect.Value) {
	if v.Type() == errorType {
		return
	}
	if _, have := pool[v.Type()]; !have {
		pool[v.Type()] = v
	}
	switch v.Kind() {
	case reflect.Slice:
		if v.Len() > 0 {
			harvest(v.Index(0), pool)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			harvest(v.Elem(), pool)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && v.Field(i).Kind() != reflect.Interface {
				harvest(v.Field(i), pool)
			}
		}
	}
}

func arguments(f reflect.Type, own []any, pool map[reflect.Type]reflect.Value) (args []reflect.Value, ok bool) {
	for i := range f.NumIn() {
		if i < len(own) && own[i] != nil {
			if f.In(i) == temperature {
				args = append(args, reflect.ValueOf(unit.Kelvin(float64(own[i].(int)))))
			} else {
				args = append(args, reflect.ValueOf(own[i]).Convert(f.In(i)))
			}
			continue
		}
		v, ok := suited(f.In(i), pool)
		if !ok {
			return nil, false
		}
		args = append(args, v)
	}
	return args, true
}

// suited finds a value of a type: itself, a slice of one, a pointer to one, for an
// interface anything that satisfies it; the zero value of an enumeration.
func suited(t reflect.Type, pool map[reflect.Type]reflect.Value) (reflect.Value, bool) {
	if v, ok := pool[t]; ok {
		return v, true
	}
	switch t.Kind() {
	case reflect.Pointer:
		if v, ok := suited(t.Elem(), pool); ok {
			p := reflect.New(t.Elem())
			p.Elem().Set(v)
			return p, true
		}
	case reflect.Slice:
		if v, ok := suited(t.Elem(), pool); ok {
			return reflect.Append(reflect.MakeSlice(t, 0, 1), v), true
		}
	case reflect.Int, reflect.Uint8, reflect.String, reflect.Bool:
		return reflect.Zero(t), true
	case reflect.Float64:
		return reflect.ValueOf(0.3).Convert(t), true
	case reflect.Interface:
		if t == errorType || t == readerType {
			return reflect.Value{}, false
		}
		var found []reflect.Type
		for have := range pool {
			if have.Implements(t) {
				found = append(found, have)
			}
		}
		if len(found) > 0 {
			slices.SortFunc(found, func(a, b reflect.Type) int { return strings.Compare(a.String(), b.String()) })
			v := reflect.New(t).Elem()
			v.Set(pool[found[0]])
			return v, true
		}
	}
	return reflect.Value{}, false
}

// textual are calls that print and read, which have tests of their own.
func textual(name string) bool {
	if _, last, _ := strings.Cut(name[strings.LastIndex(name, "/")+1:], "."); strings.HasPrefix(last, "Read") || strings.HasPrefix(last, "Parse") {
		return true
	}
	for _, suffix := range []string{".String", ".Rounded", ".MarshalText", ".UnmarshalText", ".MarshalJSON", ".UnmarshalJSON", ".Error", ".Is", ".Unwrap"} {
		if strings.HasSuffix(name, suffix) {
			return true
		}
	}
	return false
}

func TestEverySlot(t *testing.T) {
	list, without := subjects(t)
	idle := 0
	for _, name := range slices.Sorted(maps.Keys(without)) {
		if !textual(name) {
			t.Logf("%s: no arguments: %s", name, without[name])
			idle++
		}
	}
	require.Zero(t, idle, "calls without arguments; give samples of them")
	count, excused := 0, map[string]bool{}
	for _, s := range list {
		if textual(s.name) {
			continue
		}
		for _, at := range slots(s.args) {
			if excuse := excuseOf(s.name, at.path); excuse != "" {
				excused[excuse] = true
				continue
			}
			for _, bad := range nonsense(at.kind) {
				count++
				if count%longtests.Size(4, 1) != 0 {
					continue
				}
				faults := try(s, at, bad)
				if faults != "" {
					t.Errorf("%s: %s = %v: %s", s.name, at.path, show(bad), faults)
				}
			}
		}
	}
	for prefix := range excuses {
		require.True(t, excused[prefix], "no such slot: %s", prefix)
	}
	t.Logf("%d calls, %d values", len(list), count)
}

// excuses are slots that are left alone, by the beginning of call and path, and why.
var excuses = map[string]string{
	"hydrostatics.LayersAlong: argument 1[0].Fluid*": "it turns depths and hands the fluids on unread; NewColumn checks them",
	"hydrostatics.LayersAlong: argument 1[1].Fluid*": "as above",

	"tubular.Body.Collapse: argument 0":         "a nil Body comes from nobody, Prepare returns a value; a look at it costs in the hottest loop",
	"tubular.Body.StraightVonMises: argument 0": "as above",
	"tubular.Body.Usage: argument 0":            "as above",
	"tubular.Body.UsageBent: argument 0":        "as above",
	"tubular.Body.Derated: argument 0":          "as above",
	"tubular.Body.VonMises: argument 0":         "as above",
	"tubular.CollapseCurve.Regime: argument 0":  "as above, of PrepareCollapse",

	"tubular.Connection.Usage: argument 0": "as above; a rating that isn't a number counts as not known, Faults finds it",

	"fluid/flow.Schedule.At: argument 1": "no volume of the schedule: no slugs",
	"hydrostatics.Path.MDs: argument 1":  "no depth of the path: no measured depths",
}

// excuseOf returns the entry of excuses that a slot falls under.
func excuseOf(call, path string) string {
	for prefix := range excuses {
		if strings.HasPrefix(call+": "+path, prefix) {
			return prefix
		}
	}
	return ""
}

func show(v reflect.Value) any {
	if v.Kind() == reflect.Float64 {
		return v.Float()
	}
	if v.Type() == temperature {
		return v.Interface().(unit.Temperature).Kelvin()
	}
	return v
}

// try makes one call and says what is wrong with what comes back.
func try(s subject, at slot, bad reflect.Value) string {
	begun := time.Now()
	results, panicked := call(s.f, at.put(bad))
	if panicked != "" {
		return "panic: " + panicked
	}
	if took := time.Since(begun); took > 20*time.Second {
		return "took " + took.String()
	}
	if returnsError(s.f.Type()) {
		if failed(results) {
			return ""
		}
		for _, r := range results[:len(results)-1] {
			if where, ok := finite("result", r); !ok {
				return where + " without an error"
			}
		}
		return ""
	}
	if bad.Kind() == reflect.Float64 && math.IsNaN(bad.Float()) && dependent(s, at) {
		for _, r := range results {
			if _, ok := finite("", r); !ok {
				return ""
			}
		}
		return "a finite result that depends on it"
	}
	return ""
}

// dependent tells whether the results change with the number in a slot.
func dependent(s subject, at slot) bool {
	v := reflect.New(at.kind).Elem()
	v.SetFloat(at.now.Float()*(1+1e-3) + 1e-9)
	results, panicked := call(s.f, at.put(v))
	if panicked != "" {
		return false
	}
	var now, then []float64
	for i := range results {
		now, then = numbers(results[i], now), numbers(s.results[i], then)
	}
	return !slices.Equal(now, then)
}
