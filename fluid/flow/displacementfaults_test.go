package flow_test

import (
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestScheduleErrors(t *testing.T) {
	_, err := flow.Displacement{}.Schedule()
	for _, part := range []string{"Pipe: has 0 sections", "0 stages", "InPipe.Density", "InAnnulus.Rheology.Index"} {
		require.ErrorContains(t, err, part)
	}
	d := job()
	d.Stages[0].Volume = 0
	d.Stages[1].Rate = 0
	d.Every = 1e-6
	d.Output = -1
	_, err = d.Schedule()
	for _, part := range []string{"Stages[0].Volume", "Stages[1].Rate", "Every: is", "Output: is"} {
		require.ErrorContains(t, err, part)
	}
}

func FuzzSchedule(f *testing.F) {
	f.Add(6.0, 0.008, 80.0, 0.012, 2e5, 1.7, 2000.0, 1900.0, false)
	f.Add(1e-9, 1e-6, 1e5, 1.0, 0.0, 0.0, 1e-3, 0.0, true)
	f.Fuzz(func(t *testing.T, v1, q1, v2, q2, back, every, length, bottom float64, reverse bool) {
		d := job()
		d.Well.Exit = flow.Orifices{}
		d.Stages[0].Volume, d.Stages[0].Rate = unit.Volume(v1), unit.FlowRate(q1)
		d.Stages[1].Volume, d.Stages[1].Rate = unit.Volume(v2), unit.FlowRate(q2)
		d.BackPressure, d.Every, d.Reverse = unit.Pressure(back), unit.Volume(every), reverse
		d.Well.Pipe[0].Length, d.Well.Pipe[0].BottomTVD = unit.Length(length), unit.Length(bottom)
		s, err := d.Schedule()
		if err != nil {
			return
		}
		for _, p := range s.Points {
			for _, v := range []float64{float64(p.PumpPressure), float64(p.Bottom), float64(p.Static), float64(p.Friction), float64(p.Equivalent), p.Strokes} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%+v", p)
				}
			}
		}
		s.At(s.Pumped / 2)
	})
}
