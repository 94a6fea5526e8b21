package sequence

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
)

// snapper gives a depth that was added up the value that a person writes for it: one
// that the plan has somewhere, or a round one, if there is one within a hundredth of
// a millimetre. So 8590 ft and 10 ft make just the 8600 ft of a test.
func snapper(p *Plan) func(float64) float64 {
	var known []float64
	var look func(v reflect.Value)
	look = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				look(v.Elem())
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					look(v.Field(i))
				}
			}
		case reflect.Slice:
			for i := range v.Len() {
				look(v.Index(i))
			}
		case reflect.Float64:
			if v.Type() == reflect.TypeFor[unit.Length]() && v.Float() > 0 {
				known = append(known, v.Float())
			}
		}
	}
	look(reflect.ValueOf(p).Elem())
	slices.Sort(known)
	return func(z float64) float64 {
		i, _ := slices.BinarySearch(known, z-snapping)
		if i < len(known) && known[i] <= z+snapping {
			return known[i]
		}
		for _, u := range []unit.Length{unit.Metre, unit.Foot} {
			if round := unit.Length(math.Round(z/float64(u)*1e4)/1e4) * u; math.Abs(float64(round)-z) < 1e-9*math.Max(1, z) {
				return float64(round)
			}
		}
		return z
	}
}

// snapping is a hundredth of a millimetre.
const snapping = 1e-5

// roundness is how many digits a number takes, to a billionth of it.
func roundness(x float64) int {
	text := strconv.FormatFloat(x, 'g', 9, 64)
	return len(strings.TrimRight(strings.TrimLeft(text, "0."), "0"))
}
