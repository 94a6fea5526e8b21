package api

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"go/token"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/unit/fault"
	"completion.example/hydrostatics/working"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record"
)

// goOnly are the types that hold what only Go can: a fluid, a curve, a function, or what
// was prepared.
const goOnly = "movement.Concentric movement.Nested drag.Spread production.GasWell gasflow.Tubing flow.Influx flow.Kill hydrostatics.Bullhead hydrostatics.MeasuredLayer packer.Unseating packer.Release packer.Options packer.NotParted packer.Pull packer.Aftermath packer.PathCase movement.WellProfiles movement.Conditions hydrostatics.Layer hydrostatics.Cushion confined.PressureUp confined.Fill confined.Trapped sleeve.Route production.Well production.Zone"

// prepared are the types that show no field, as they are made of what may hold fluids
// and functions, last as long as the walk that they belong to, or are read from a file.
// JSON of them is an error that says what to write instead: never an empty object that
// reads back as nothing.
var prepared = map[reflect.Type]string{
	reflect.TypeFor[hydrostatics.Column](): "write its Layers, temperatures and Reference, and make it again with NewColumn",
	reflect.TypeFor[tubular.Body]():        "write the Pipe, and prepare it again",
	reflect.TypeFor[drag.Prepared]():       "write the String, and prepare it again",
	reflect.TypeFor[movement.Landed]():     "write the String and what it was landed with, and land it again",
	reflect.TypeFor[movement.MadeUp]():     "write the Assembly, and make it up again",
	reflect.TypeFor[movement.Standing]():   "write what was done to the string, and do it again from Land on",
	reflect.TypeFor[production.Network]():  "write the Well, and prepare it again",
	reflect.TypeFor[sequence.Follower]():   "write the plan, and follow it again",
	reflect.TypeFor[sequence.Situation]():  "write the plan and the steps done, and follow them again",
	reflect.TypeFor[record.Record]():       "write the file that it was read from",
}

// What can't be written says so, whether it is asked itself or as a part of something
// else, and so does what can't be read.
func TestPreparedSaysWhatToWriteInstead(t *testing.T) {
	for typ, instead := range prepared {
		v := reflect.New(typ)
		for _, x := range []any{v.Interface(), []any{v.Interface()}} {
			_, err := json.Marshal(x)
			require.ErrorContains(t, err, instead, typ)
		}
		require.ErrorContains(t, json.Unmarshal([]byte("{}"), v.Interface()), instead, typ)
	}
	_, err := json.Marshal(display.Plan("3000 m"))
	require.ErrorContains(t, err, "write the texts that Plan took")
	require.ErrorContains(t, new(display.System).UnmarshalText([]byte("plan")), `must be "field" or "si"`)
	_, err = json.Marshal(tubular.Expansion{})
	require.ErrorContains(t, err, "such as CarbonSteel()")
	require.ErrorContains(t, new(tubular.Expansion).UnmarshalText([]byte("brass")), "carbon steel")
}

// unwritten are fields that are left out of JSON, each with the reason.
var unwritten = map[string]string{
	"sequence.Options.Progress":     "a function",
	"sequence.Options.Verdict":      "a function",
	"sequence.Options.Windows":      "a function",
	"sequence.Uncertainty.Progress": "a function",
	"sequence.StringAt.Along":       "for pictures: hundreds of depths at every point, which Plan.At works out again",
	"record.Diagnosis.Onward":       "a plan of its own: sequence.Write writes it, so that Read can check it",
}

// own are values of types that write and read themselves, as nothing can be put
// into their fields from outside.
var own = map[reflect.Type]any{
	reflect.TypeFor[hydrostatics.Path](): *unit.Must(hydrostatics.NewPath([]hydrostatics.Station{
		{MD: 1000 * unit.Foot}, {MD: 2000 * unit.Foot, Inclination: 30 * unit.Degree, Azimuth: 45 * unit.Degree}, {MD: 9000 * unit.Foot, Inclination: 30 * unit.Degree, Azimuth: 50 * unit.Degree}})),
	reflect.TypeFor[hydrostatics.TemperatureProfile](): *unit.Must(hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{
		{Temperature: unit.Celsius(15)}, {TVD: 3000, Temperature: unit.Celsius(98.7)}})),
	reflect.TypeFor[catalogue.Catalogue](): unit.Must(catalogue.Standard()),
	reflect.TypeFor[catalogue.Grade]():     unit.Must(catalogue.FindGrade("L80")),
	reflect.TypeFor[sequence.Level]():      sequence.ForceLevel(20 * unit.Kilopound),
	reflect.TypeFor[working.Value]():       working.Of(9.2 * unit.PoundPerGallon),
	reflect.TypeFor[fault.Fault]():         fault.Fault{Path: "OD", Err: errors.New("is 0 in; must be above 0 in")},
	reflect.TypeFor[unit.Temperature]():    unit.Celsius(93.3),
	reflect.TypeFor[display.System]():      display.SI(),
	reflect.TypeFor[tubular.Expansion]():   tubular.CarbonSteel(),
	reflect.TypeFor[valve.TriggerState]():  valve.Row{{Threshold: unit.Within(3000*unit.PSI, 0.05)}}.Ramp(valve.TriggerState{}, 0, 2900*unit.PSI).State,
	reflect.TypeFor[choke.Curve]():         *unit.Must(choke.Table{{Name: "shut"}, {Name: "open", Travel: 1, Coefficient: 10 * unit.Cv}}.Curve()),
	reflect.TypeFor[packer.Envelope]():     *unit.Must(packer.Polygon{Vertices: []packer.Load{{Differential: 1e7}, {Axial: 1e5}, {Differential: -1e7}, {Axial: -1e5}}}.Envelope()),
}

// Every exported type comes back from JSON as it was: each exported field with a
// value of its own, and the type without any. What a type keeps besides, to show its
// working, does not: ask for the Steps first.
func TestEveryTypeReadsBackAsWritten(t *testing.T) {
	var only []string
	left := map[string]bool{}
	for _, typ := range everyType {
		if prepared[typ] != "" {
			continue
		}
		v := reflect.New(typ).Elem()
		if sample, ok := own[typ]; ok {
			v.Set(reflect.ValueOf(sample))
		} else {
			require.False(t, closed(typ), "%v reads itself; own must have a value of it", typ)
			f := filler{left: left}
			if !f.fill(v) {
				only = append(only, typ.String())
				continue
			}
		}
		text := readsBack(t, v)
		if string(text) == "{}" && typ.NumField() > 0 {
			t.Errorf("%v is written as {}: it must read back, or say what to write instead", typ)
		}
		if _, writes := own[typ]; !writes {
			readsBack(t, reflect.New(typ).Elem())
		}
	}
	require.ElementsMatch(t, strings.Fields(goOnly), only, "goOnly lists what can't be read back")
	var fields []string
	for field := range unwritten {
		fields = append(fields, field)
	}
	var got []string
	for field := range left {
		got = append(got, field)
	}
	require.ElementsMatch(t, fields, got, "unwritten lists the fields that are left out of JSON")
}

// closed tells whether a type reads itself into fields that it doesn't show.
func closed(typ reflect.Type) bool {
	if typ.Kind() != reflect.Struct {
		return false
	}
	for i := range typ.NumField() {
		if typ.Field(i).IsExported() {
			return false
		}
	}
	p := reflect.PointerTo(typ)
	return p.Implements(reflect.TypeFor[json.Unmarshaler]()) || p.Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}

// readsBack writes a value, reads it, and returns what was written.
func readsBack(t *testing.T, v reflect.Value) []byte {
	t.Helper()
	text, err := json.Marshal(v.Addr().Interface())
	if err != nil {
		if !v.IsZero() { // nothing is no salt, no fault, no compartment
			t.Errorf("%v: %v", v.Type(), err)
		}
		return nil
	}
	back := reflect.New(v.Type())
	if err := json.Unmarshal(text, back.Interface()); err != nil {
		t.Errorf("%v: %v, reading %s", v.Type(), err, text)
	} else if !reflect.DeepEqual(v.Interface(), back.Elem().Interface()) {
		t.Errorf("%v: %s reads back as %+v", v.Type(), text, back.Elem())
	}
	return text
}

// filler gives every exported field a value of its own.
type filler struct {
	n      int
	within []reflect.Type  // structs that are being filled
	left   map[string]bool // fields that JSON leaves out, as package.Type.Field
}

// fill returns false where a field is an interface or a function, or is of a type
// that keeps more than it shows.
func (f *filler) fill(v reflect.Value) bool {
	f.n++
	switch q := v.Addr().Interface().(type) {
	case *unit.Temperature:
		*q = unit.Celsius(float64(f.n) + 0.25)
		return true
	case *time.Duration:
		*q = time.Duration(f.n) * time.Second
		return true
	}
	if sample, ok := own[v.Type()]; ok {
		v.Set(reflect.ValueOf(sample))
		return true
	}
	if prepared[v.Type()] != "" {
		return false
	}
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(float64(f.n) + 0.5)
	case reflect.Int, reflect.Int64:
		v.SetInt(1)
	case reflect.Uint8, reflect.Uint, reflect.Uint64:
		v.SetUint(1)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.String:
		v.SetString(fmt.Sprint("text ", f.n))
	case reflect.Slice:
		if slices.Contains(f.within, v.Type().Elem()) {
			return true // a plan's branch has steps, which may have branches
		}
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		return f.fill(v.Index(0)) && f.fill(v.Index(1))
	case reflect.Array:
		for i := range v.Len() {
			if !f.fill(v.Index(i)) {
				return false
			}
		}
	case reflect.Map:
		key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		if !f.fill(key) || !f.fill(value) {
			return false
		}
		v.Set(reflect.MakeMap(v.Type()))
		v.SetMapIndex(key, value)
	case reflect.Pointer:
		if slices.Contains(f.within, v.Type().Elem()) {
			return true
		}
		v.Set(reflect.New(v.Type().Elem()))
		return f.fill(v.Elem())
	case reflect.Struct:
		f.within = append(f.within, v.Type())
		defer func() { f.within = f.within[:len(f.within)-1] }()
		for i := range v.NumField() {
			field := v.Type().Field(i)
			switch {
			case !field.IsExported():
			case field.Tag.Get("json") == "-":
				f.left[v.Type().String()+"."+field.Name] = true
			case !f.fill(v.Field(i)):
				return false
			}
		}
	default:
		return false
	}
	return true
}

// The demo's programme, with everything that it tells of a well.
func TestProgrammeReadsBackAsWritten(t *testing.T) {
	text, err := os.ReadFile(root + "/examples/installation/plans/demo.json")
	require.NoError(t, err)
	plan, err := sequence.Read(text)
	require.NoError(t, err)
	programme, err := sequence.Check(t.Context(), plan, sequence.Options{})
	require.NoError(t, err)
	text, err = json.Marshal(programme)
	require.NoError(t, err)
	var back sequence.Programme
	require.NoError(t, json.Unmarshal(text, &back))
	hidden := cmp.FilterPath(func(p cmp.Path) bool { // what isn't written, and what Steps and searches go on from
		f, ok := p.Last().(cmp.StructField)
		if !ok {
			return false
		}
		of := p.Index(-2).Type()
		return unwritten[of.String()+"."+f.Name()] != "" || !token.IsExported(f.Name()) && !closed(of)
	}, cmp.Ignore())
	require.Empty(t, cmp.Diff(*programme, back, hidden, cmpopts.EquateEmpty(), cmp.Exporter(func(reflect.Type) bool { return true })))
}
