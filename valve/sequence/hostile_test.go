package sequence_test

import (
	"context"
	"fmt"
	"math"
	"reflect"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// numbers visits every float of a plan, with its path.
func numbers(v reflect.Value, path string, visit func(path string, set func(float64) (undo func()))) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			numbers(v.Elem(), path, visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				numbers(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			numbers(v.Index(i), fmt.Sprintf("%s[%d]", path, i), visit)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			if v.Type().Elem().Kind() != reflect.Float64 {
				continue
			}
			visit(path+"."+key.String(), func(x float64) func() {
				was := v.MapIndex(key)
				v.SetMapIndex(key, reflect.ValueOf(x).Convert(v.Type().Elem()))
				return func() { v.SetMapIndex(key, was) }
			})
		}
	case reflect.Float64:
		visit(path, func(x float64) func() {
			was := v.Float()
			v.SetFloat(x)
			return func() { v.SetFloat(was) }
		})
	}
}

// finite tells whether every number of a programme is finite.
func finite(v reflect.Value, path string) error {
	var bad error
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				walk(v.Elem(), path)
			}
		case reflect.Struct:
			shown := func(reflect.StructField) bool { return true }
			if v.Type() == reflect.TypeFor[sequence.StringAt]() { // what it is loaded by is shown by its steps only
				x := v.Interface().(sequence.StringAt)
				walk(reflect.ValueOf(x.Steps()), path+".Steps()")
				shown = reflect.StructField.IsExported
			}
			for i := range v.NumField() {
				if f := v.Type().Field(i); shown(f) {
					walk(v.Field(i), path+"."+f.Name)
				}
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i))
			}
		case reflect.Float64:
			if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
				bad = fmt.Errorf("%s is %v", path, x)
			}
		}
	}
	walk(v, path)
	return bad
}

// rich is a small plan that has a little of everything.
func rich() *sequence.Plan {
	p := landed()
	p.String.Drag = unit.Within(5000*unit.PoundForce, 0.2)
	p.String.Sections[0].Joint = 200000 * unit.PoundForce
	p.String.Rig = 300000 * unit.PoundForce
	p.Rules = sequence.Rules{Barriers: 1, Burst: 1.1, Axial: 1.3, Gauge: unit.Band[unit.Pressure]{Least: -10 * psi, Greatest: 10 * psi}}
	for i := range p.Fluids {
		p.Fluids[i].Compression = 3e-6 * unit.PerPSI
	}
	p.Formations = []sequence.Formation{{Name: "sand", MD: 8500 * foot, Pressure: unit.Within(4000*psi, 0.01), Fracture: unit.Within(9000*psi, 0.01)}}
	p.Compartments = append(p.Compartments,
		sequence.Compartment{Name: "pocket", TopMD: 7000 * foot, BottomMD: 7100 * foot, Fluid: "tubing fluid", Trapped: unit.Within(3500*psi, 0.02), Capacity: 0.01 * unit.BarrelPerFoot},
		sequence.Compartment{Name: "face", TopMD: 8400 * foot, BottomMD: 8600 * foot, Layers: []sequence.Layer{{Fluid: "tubing fluid", ToMD: 8500 * foot}, {Fluid: "annulus fluid", ToMD: 8600 * foot}}, Formation: "sand"})
	p.Ports = append(p.Ports, sequence.Port{Name: "perforations", Joins: []string{"annulus", "face"}, MD: 8500 * foot})
	chamber := unit.Pressure(100 * psi)
	p.Devices = append(p.Devices, sequence.Device{Name: "counter", MD: 7050 * foot, Actions: []sequence.Action{{Name: "counts", Inside: "pocket", Chamber: &chamber,
		Triggers: []sequence.Trigger{{Threshold: unit.Within(9000*psi, 0.05), Count: 2, Rearm: unit.Within(1000*psi, 0.1)}}}}})
	p.Ratings = []sequence.Rating{{Name: "casing", Inside: "annulus", Background: "annulus fluid", ToMD: 9000 * foot, Burst: unit.Within(5000*psi, 0.01), Collapse: unit.Exactly(4000 * psi), Factor: 1.1}}
	p.Barriers = []sequence.Barrier{{Name: "casing", Formation: "sand"}}
	p.Steps[0].PressureChange = map[string]unit.Pressure{"pocket": 200 * psi}
	p.Steps[0].Balance = []sequence.Balance{{Compartment: "annulus", Formation: "sand", Overbalance: unit.Band[unit.Pressure]{Least: 0, Nominal: 200 * psi, Greatest: 500 * psi}}}
	p.Steps[0].Tests = []sequence.Test{{Barrier: "casing", Side: "below", Inside: "tubing", Outside: "annulus", MD: 8000 * foot, Decline: 0.05,
		Differential: unit.Band[unit.Pressure]{Least: 3500 * psi, Nominal: 3600 * psi, Greatest: 3700 * psi}}}
	p.Steps = append(p.Steps,
		sequence.Step{Name: "displace", Displace: []sequence.Displacement{{Compartment: "annulus", Fluid: "tubing fluid", FromMD: 100 * foot, ToMD: 5000 * foot}}},
		sequence.Step{Name: "pull", Pull: []unit.Force{170000 * unit.PoundForce}, Expect: []string{"release: parts"}})
	return p
}

func TestRichPlanIsProved(t *testing.T) {
	r := verdict(t, rich())
	require.True(t, r.OK(), "%+v %s", r.Findings, r.Open)
	require.NoError(t, finite(reflect.ValueOf(r), "programme"))
}

// Whatever stands in a field, the answer is an error or a verdict in numbers: no
// panic, no number that is none, and nothing is proved beside one.
func TestHostileNumbers(t *testing.T) {
	t.Parallel()
	p := rich()
	visited := 0
	numbers(reflect.ValueOf(p), "plan", func(path string, set func(float64) func()) {
		visited++
		if visited%long.Size(24, 1) != 0 {
			return
		}
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e308, -1e308, 1e-320, -1e-320} {
			undo := set(x)
			ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
			r, err := sequence.Check(ctx, p, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, ctx.Err(), "%s = %v takes too long", path, x)
			cancel()
			undo()
			if err != nil {
				require.Nil(t, r, "%s = %v", path, x)
				continue
			}
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%s = %v: no error, but %q", path, x, r.Verdict)
				continue
			}
			if err := finite(reflect.ValueOf(r), "programme"); err != nil {
				t.Errorf("%s = %v: %q and %v", path, x, r.Verdict, err)
			}
		}
	})
	require.Greater(t, visited, 120)
	require.True(t, verdict(t, p).OK(), "the plan is as it was")
}
