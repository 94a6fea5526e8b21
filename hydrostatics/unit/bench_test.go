package unit_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
)

// The same formula, typed and bare: hydrostatic pressure, head and force in a
// chain, so that no term can be dropped.
func typed(rho unit.Density, h unit.Length, a unit.Area) unit.Force {
	p := unit.Pressure(float64(rho) * 9.80665 * float64(h))
	return unit.Force(float64(p) * float64(a))
}

func bare(rho, h, a float64) float64 {
	p := rho * 9.80665 * h
	return p * a
}

func BenchmarkTyped(b *testing.B) {
	b.ReportAllocs()
	rho, h, a := 9.2*unit.PoundPerGallon, 9000*unit.Foot, 5*unit.SquareInch
	for i := 0; i < b.N; i++ {
		h = unit.Length(1 + 1e-9*float64(typed(rho, h, a))) // each waits for the last
	}
	sink = float64(h)
}

func BenchmarkBare(b *testing.B) {
	b.ReportAllocs()
	rho, h, a := float64(9.2*unit.PoundPerGallon), float64(9000*unit.Foot), float64(5*unit.SquareInch)
	for i := 0; i < b.N; i++ {
		h = 1 + 1e-9*bare(rho, h, a)
	}
	sink = h
}

var sink float64

func BenchmarkString(b *testing.B) {
	p := 5000 * unit.PSI
	for b.Loop() {
		_ = p.String()
	}
}

func BenchmarkUnmarshal(b *testing.B) {
	text := []byte("5000 psi")
	var p unit.Pressure
	b.ReportAllocs()
	for b.Loop() {
		_ = p.UnmarshalText(text)
	}
}

// Typed arithmetic is the bare arithmetic, to the bit.
func TestTypedIsBare(t *testing.T) {
	for h := 0.1; h < 1e5; h *= 1.7 {
		if got, want := float64(typed(1100, unit.Length(h), 0.003)), bare(1100, h, 0.003); got != want {
			t.Errorf("typed %g, bare %g", got, want)
		}
	}
	if n := testing.AllocsPerRun(100, func() { sink = float64(typed(1100, 3000, 0.003)) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
