package api

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
)

// goOnly are the types that hold what only Go can: a fluid, a curve, a function.
const goOnly = "production.GasWell gasflow.Tubing flow.Influx flow.Kill hydrostatics.Bullhead hydrostatics.MeasuredLayer packer.Unseating packer.Release packer.Options packer.NotParted packer.Pull packer.Aftermath packer.PathCase movement.WellProfiles movement.Conditions hydrostatics.Layer hydrostatics.Cushion confined.PressureUp confined.Fill confined.Trapped sleeve.Route production.Well production.Zone"

// Every exported field of every struct comes back from JSON as it was. What a type
// keeps besides, to show its working, does not: ask for the Steps first.
func TestResultsReadBackAsWritten(t *testing.T) {
	for _, zero := range structs {
		typ := reflect.TypeOf(zero)
		if reflect.PointerTo(typ).Implements(reflect.TypeFor[json.Unmarshaler]()) {
			continue // has a test of its own
		}
		v := reflect.New(typ).Elem()
		n := 0
		filled := fill(v, &n)
		require.Equal(t, filled, !strings.Contains(" "+goOnly+" ", " "+typ.String()+" "), "%v: goOnly lists what can't be read back", typ)
		if !filled {
			continue
		}
		text, err := json.Marshal(v.Interface())
		require.NoError(t, err, "%v", typ)
		back := reflect.New(typ)
		require.NoError(t, json.Unmarshal(text, back.Interface()), "%v", typ)
		require.Equal(t, v.Interface(), back.Elem().Interface(), "%v", typ)
	}
}

// fill gives every exported field a value of its own; false where a field is an
// interface, or the type keeps more than it shows.
func fill(v reflect.Value, n *int) bool {
	*n++
	switch q := v.Addr().Interface().(type) {
	case *unit.Temperature:
		*q = unit.Celsius(float64(*n) + 0.25)
		return true
	case *time.Duration:
		*q = time.Duration(*n) * time.Second
		return true
	}
	if grade, ok := v.Addr().Interface().(*catalogue.Grade); ok { // its name is its text
		*grade = catalogue.Grades()[0]
		return true
	}
	if _, own := v.Addr().Interface().(json.Unmarshaler); own {
		return v.Kind() != reflect.Struct // prepared values stand in fields as pointers
	}
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(float64(*n) + 0.5)
	case reflect.Int, reflect.Int64:
		v.SetInt(1)
	case reflect.Uint8, reflect.Uint:
		v.SetUint(1)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.String:
		v.SetString(fmt.Sprint("text ", *n))
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		return fill(v.Index(0), n) && fill(v.Index(1), n)
	case reflect.Array:
		for i := range v.Len() {
			if !fill(v.Index(i), n) {
				return false
			}
		}
	case reflect.Pointer:
		if v.Type().Implements(reflect.TypeFor[json.Unmarshaler]()) {
			return true // prepared: it has a test of its own, and may be missing here
		}
		v.Set(reflect.New(v.Type().Elem()))
		return fill(v.Elem(), n)
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && !fill(v.Field(i), n) {
				return false
			}
		}
	default:
		return false
	}
	return true
}
