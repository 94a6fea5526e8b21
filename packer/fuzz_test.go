package packer_test

import (
	"math"
	"reflect"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"completion.example/valve"
)

// finite fails on NaN or infinity anywhere in a result.
func finite(t *testing.T, v reflect.Value, path string) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s is %v", path, x)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				finite(t, v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, v.Index(i), path)
		}
	}
}

func check(t *testing.T, result any, err error) {
	t.Helper()
	if err == nil {
		finite(t, reflect.ValueOf(result), reflect.TypeOf(result).String())
	}
}

// FuzzPlanning feeds any numbers to everything that validates its input: there
// must be an error, or an answer that is finite throughout.
func FuzzPlanning(f *testing.F) {
	f.Add(3000., 20e6, 5., 0.09, 0.075, 250e3, 0.8)
	f.Add(1e300, 1e300, 1e-300, 1e150, 1e149, 1e308, 1.)
	f.Add(math.Inf(1), math.NaN(), -1., 0., 0., 0., 0.)
	f.Add(1e-300, 1e308, 1e308, 1e-160, 1e-161, 1e-308, 1e-300)
	f.Add(8e-300, 1e308, 1e308, 1e-160, 1e-161, 42., 1e-300)
	f.Fuzz(func(t *testing.T, depth, pressure, length, od, id, force, share float64) {
		pipe := tubular.Pipe{OD: unit.Length(od), ID: unit.Length(id), Material: tubular.Steel()}
		d, p, F, l := unit.Length(depth), unit.Pressure(pressure), unit.Force(force), unit.Length(length)

		c := valve.Columns{Applied: unit.Exactly(p), Opposing: unit.Exactly(p * 0.9)}
		s := packer.Setting{Stages: []packer.Stage{{Acts: unit.Within(p, share)}, {Acts: unit.Within(2*p, share)}}, Columns: c,
			Piston: unit.Area(length), Kept: share, Plug: packer.Plug{Columns: c, Rating: p}}
		pressures, err := s.Pressures()
		check(t, pressures, err)
		applied, err := s.Apply(p)
		check(t, applied, err)
		window, err := s.Window(packer.Set, valve.SurfaceRange{Greatest: p}, nil, p*0.01)
		check(t, window, err)
		locked, err := packer.LockIn{Pipe: pipe, Length: d, Inside: p, Outside: p / 3}.Locked()
		check(t, locked, err)

		column := func(z unit.Length) unit.Pressure { return p + unit.Pressure(float64(z)*share*1e4) }
		r := packer.Release{
			Pull: packer.Pull{Sections: []movement.StringSection{{Pipe: pipe, BottomMD: d}}, Inside: column, Outside: column, Seal: unit.Length(od), Drag: unit.Exactly(F / 7)},
			Pins: unit.Within(F, share), Components: []packer.Component{{Name: "a", MD: d / 2, Rating: F * 3, Share: share}}, Rig: F * 2, RigShare: share,
		}
		parting, err := r.Parting()
		check(t, parting, err)
		freed, err := packer.Unseating{Pull: r.Pull, Trapped: unit.Within(p, share), Reserve: F}.Freed()
		check(t, freed, err)
		options, err := packer.NotParted{Release: r, Tried: F, Intervals: []packer.CutInterval{{TopMD: d / 4, BottomMD: d / 2}}, CutPull: F}.Options()
		check(t, options, err)
		margins, err := packer.HoldPins(unit.Within(F, share), true, []packer.PinCase{{Load: unit.Force(pressure)}})
		check(t, margins, err)
		weights, err := packer.Stab{Down: F, Up: F, End: movement.End{Bore: unit.Length(od), OD: unit.Length(od), ID: unit.Length(id), Inside: p, Outside: p, Below: p}, Friction: unit.Within(F, share)}.Weights()
		check(t, weights, err)

		plan := packer.SealPlan{Bore: packer.Receptacle{ShoulderMD: d, TopMD: d, BottomMD: d + l}, Seals: packer.SealStack{FirstMD: 0, LastMD: l},
			Cases: []packer.Travel{{Movement: unit.Length(force)}, {Movement: -l}}, Engaged: l * unit.Length(share)}
		out, err := plan.SpaceOut()
		check(t, out, err)
		engaged, err := plan.Engage(l)
		check(t, engaged, err)
		up, err := packer.Landing{Tagged: d, Height: l, HangerDepth: l, Joints: []unit.Length{d, l}, Pups: []unit.Length{l, unit.Length(od)}}.MakeUp()
		check(t, up, err)
		polygon, err := packer.Ratings{FromBelow: p, FromAbove: p * 0.7, Tension: F, Compression: F / 2, Up: F * 2, Down: F, Area: unit.Area(length)}.Polygon()
		check(t, polygon, err)
		if err == nil {
			e, err := polygon.Envelope()
			if err != nil {
				t.Fatalf("a polygon of ratings is an envelope: %v", err)
			}
			check(t, e.Margin(packer.Load{Differential: p / 2, Axial: F / 2}), nil)
		}
	})
}
