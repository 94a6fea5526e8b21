package movement_test

import (
	"math"
	"reflect"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// approx compares cases: quantities to a share of their size, or of 1 in SI.
func approx(tolerance float64) cmp.Options {
	return cmp.Options{
		cmpopts.IgnoreUnexported(movement.Case{}),
		cmp.Comparer(func(a, b unit.Temperature) bool { return math.Abs(float64(a.Sub(b))) < 1e-9 }),
		cmp.FilterPath(func(p cmp.Path) bool { t := p.Last().Type(); return t != nil && t.Kind() == reflect.Float64 },
			cmp.Comparer(func(a, b any) bool {
				x, y := reflect.ValueOf(a).Float(), reflect.ValueOf(b).Float()
				return math.Abs(x-y) <= tolerance*max(1, math.Abs(x), math.Abs(y))
			})),
	}
}
