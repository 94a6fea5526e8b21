package sequence_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Whatever number stands in a tally, and whatever is left out of it, the answer is an
// error or a plan in numbers that can be walked.
func TestHostileTallies(t *testing.T) {
	t.Parallel()
	for _, file := range []string{shipped + "demo-as-tally.json", shipped + "../begin/si.json"} {
		p := readPlan(t, file)
		sound := func(what string) {
			made, err := p.Derive()
			if err != nil {
				return
			}
			require.NoError(t, finite(reflect.ValueOf(made), "plan"), what)
		}
		tried := 0
		numbers(reflect.ValueOf(p.Assembly), "assembly", func(path string, set func(float64) func()) {
			tried++
			if tried%long.Size(24, 3) != 0 {
				return
			}
			for _, x := range []float64{math.NaN(), -1, 1e300} {
				undo := set(x)
				sound(fmt.Sprintf("%s = %v", path, x))
				undo()
			}
		})
		require.Greater(t, tried, 33)
		cleared(reflect.ValueOf(p.Assembly), "assembly", sound)
	}
	var none *sequence.Plan
	_, err := none.Derive()
	require.Error(t, err)
	for _, a := range []*sequence.Assembly{{}, {Casing: make([]sequence.Casing, 1)}, {Strings: make([]sequence.Tally, 2)},
		{Casing: make([]sequence.Casing, 1), Strings: []sequence.Tally{{Pieces: make([]sequence.Piece, 2)}}, Lines: make([]sequence.ControlLine, 1)}} {
		_, err := (&sequence.Plan{Assembly: a}).Derive()
		require.Error(t, err)
	}
}

// cleared takes away every field and element of a value in turn.
func cleared(v reflect.Value, path string, sound func(what string)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			cleared(v.Elem(), path, sound)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Field(i)
			if !f.CanSet() || f.IsZero() {
				continue
			}
			name := path + "." + v.Type().Field(i).Name
			was := reflect.New(f.Type()).Elem()
			was.Set(f)
			f.SetZero()
			sound(name + " is left out")
			f.Set(was)
			cleared(f, name, sound)
		}
	case reflect.Slice:
		for i := range v.Len() {
			cleared(v.Index(i), fmt.Sprintf("%s[%d]", path, i), sound)
		}
		for i := range v.Len() { // one less
			was := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
			reflect.Copy(was, v)
			v.Set(reflect.AppendSlice(was.Slice3(0, i, i), was.Slice(i+1, v.Len())))
			sound(fmt.Sprintf("%s without [%d]", path, i))
			v.Set(was)
		}
	}
}
