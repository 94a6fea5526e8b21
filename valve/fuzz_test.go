package valve

import (
	"testing"

	"completion.example/hydrostatics/unit"
)

func FuzzPinCounts(f *testing.F) {
	f.Add(6, 4500.0, 0.05, 1.0, 24000.0, 29000.0)
	f.Fuzz(func(t *testing.T, n int, strength, tolerance, factor, least, greatest float64) {
		p := Pins{Count: n, Strength: unit.Force(strength), Tolerance: tolerance, TemperatureFactor: factor}
		fits, err := PinCounts([]Pins{p}, unit.Band[unit.Force]{Least: unit.Force(least), Nominal: unit.Force(least), Greatest: unit.Force(greatest)})
		if (err == nil) == (len(fits) == 0) {
			t.Fatalf("%+v: %d fits and error %v", p, len(fits), err)
		}
		for i, x := range fits {
			if !x.Fits() || i > 0 && x.Margin() > fits[i-1].Margin() {
				t.Fatalf("%+v: %+v", p, fits)
			}
		}
	})
}

func FuzzIsolationLedger(f *testing.F) {
	f.Add(uint8(2), 3000.0, 3300.0, 400.0, 600.0, 3, 2500.0, 3200.0, 100.0, 50.0)
	f.Fuzz(func(t *testing.T, kind uint8, a, b, c, d float64, cycles int, p1, p2, column, off float64) {
		v := IsolationValve{Kind: IsolationKind(kind), Unlock: psiBand(a, b), Bleed: psiBand(c, d), Cycles: cycles}
		cs := Columns{Applied: unit.Band[unit.Pressure]{Least: unit.Pressure(column - off), Nominal: unit.Pressure(column), Greatest: unit.Pressure(column + off)}}
		x, y := unit.Pressure(p1)*unit.PSI, unit.Pressure(p2)*unit.PSI
		events := []PressureEvent{{"up", cs, 0, x}, {"down", cs, x, 0}, {"up", cs, 0, y}, {"down", cs, y, 0}}
		h, err := v.After(events)
		if err != nil {
			return
		}
		if h.CyclesLeast > h.CyclesMost || h.CyclesLeast < 0 {
			t.Fatalf("%+v: %+v", v, h)
		}
		// Nothing comes back: a later condition is never less than an earlier.
		last := Armed
		for _, r := range h.Records {
			if r.Condition < last {
				t.Fatalf("%+v: %+v", v, h)
			}
			last = r.Condition
		}
		// A window that holds keeps the valve where it is.
		w, err := v.Hold(cs, SurfaceRange{Greatest: 1e9})
		if err != nil {
			return
		}
		inside := w.Least + w.Width()/2
		if h, err = v.After([]PressureEvent{{"test", cs, 0, inside}}); err == nil && h.CyclesMost > 0 && inside > 0 && cs.Differential().Greatest < v.Unlock.Least {
			t.Fatalf("%+v moved at %v inside %+v", v, inside, w)
		}
	})
}
