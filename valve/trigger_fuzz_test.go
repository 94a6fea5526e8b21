package valve

import (
	"testing"

	"completion.example/hydrostatics/unit"
)

func FuzzTriggerRamp(f *testing.F) {
	f.Add(100.0, 200.0, 10.0, 20.0, 3, false, 0.0, 150.0)
	f.Fuzz(func(t *testing.T, a, b, c, d float64, n int, falling bool, from, to float64) {
		tr := Trigger{Threshold: psiBand(a, b), Rearm: psiBand(c, d), Count: n}
		if falling {
			tr.Direction = Falling
		}
		s := TriggerState{}
		for i := 0; i < 4; i++ {
			s = tr.Ramp(s, unit.Pressure(from), unit.Pressure(to)).State
			latest, earliest := s.Links()
			if tr.Validate() == nil && latest > earliest {
				t.Fatalf("%+v: the latest device is ahead of the earliest", tr)
			}
			from, to = to, from
		}
	})
}

func BenchmarkTriggerRamp(b *testing.B) {
	tr := Trigger{Threshold: psiBand(2850, 3150)}
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		_ = tr.Ramp(TriggerState{}, 0, unit.Pressure(i))
	}
}

func BenchmarkRowRamp(b *testing.B) {
	row := IsolationValve{Kind: OpensAfterCycles, Unlock: psiBand(2850, 3150), Bleed: psiBand(400, 500), Cycles: 5}.Row()
	b.ReportAllocs()
	var s TriggerState
	for i := 0; i < b.N; i++ {
		s = row.Ramp(s, 0, 3500*unit.PSI).State
		s = row.Ramp(s, 3500*unit.PSI, 0).State
		if i%5 == 4 {
			s = TriggerState{}
		}
	}
}
