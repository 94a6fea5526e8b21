package tubular_test

import (
	"math"
	"reflect"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// wholeNumbers fails where a result that came without an error has a NaN or an
// infinity in it.
func wholeNumbers(t *testing.T, name string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			t.Errorf("%s = %v without an error", name, f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			wholeNumbers(t, name+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			wholeNumbers(t, name, v.Index(i))
		}
	}
}

func FuzzPipe(f *testing.F) {
	f.Add(3.5, 2.992, 80_000.0, 95_000.0, 50_000.0, 5000.0, 1000.0, 9.0)
	f.Add(1e200, 1e199, 80_000.0, 95_000.0, 1e300, 1e300, -1e300, 1e300)
	f.Add(1e-200, 1e-201, 80_000.0, 95_000.0, 1e-300, 1e-300, 1e-300, 1e-300)
	f.Add(3.0, math.Nextafter(3, 0), 40_000.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, od, id, yield, tensile, axial, inside, outside, fluid float64) {
		p := graded(bore(od, id), unit.Pressure(yield)*unit.PSI, unit.Pressure(tensile)*unit.PSI)
		l := tubular.Load{Axial: unit.Force(axial) * unit.PoundForce, Inside: unit.Pressure(inside) * unit.PSI, Outside: unit.Pressure(outside) * unit.PSI}
		check := func(name string, v any, err error) {
			if err == nil {
				wholeNumbers(t, name, reflect.ValueOf(v))
			}
		}
		r, err := p.Ratings()
		check("Ratings", r, err)
		c, err := p.CollapseUnderLoad(l.Outside, l.Inside)
		check("CollapseUnderLoad", c, err)
		d, err := p.DuctileRupture(tubular.Rupture{})
		check("DuctileRupture", d, err)
		e, err := p.Envelope(tubular.Outline{Factors: tubular.WithoutReserve(), Points: 8, Backing: l.Outside})
		check("Envelope", e, err)
		b, err := p.Prepare()
		check("Prepare", b, err)
		s, err := tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: p, Length: unit.Length(axial)}}, Fluid: unit.Density(fluid), Pull: l.Axial}.Stretch()
		check("Hanging.Stretch", s, err)
		F, err := tubular.PullToStretch([]tubular.HangingSection{{Pipe: p, Length: unit.Length(axial)}}, unit.Length(fluid))
		check("PullToStretch", F, err)
		left, err := p.Less(tubular.Allowance{Inside: unit.Length(fluid)})
		check("Less", left, err)
		b.Usage(l, tubular.WithoutReserve()) // must not panic on a zero body
	})
}
