package production_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

func number(t *testing.T, f production.Flow) {
	t.Helper()
	for _, z := range f.Zones {
		for _, x := range []float64{float64(z.Rate), float64(z.Sandface), float64(z.Tubing), float64(z.Drop), float64(z.Water), float64(z.Passing), z.PassingCut} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("not a number without an error: %+v", f)
			}
		}
	}
	for _, x := range []float64{float64(f.Rate), float64(f.Water), f.WaterCut, float64(f.Pressure), float64(f.Crossflow)} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("not a number without an error: %+v", f)
		}
	}
}

// FuzzWell gives two zones any numbers at all.
func FuzzWell(f *testing.F) {
	f.Add(4000.0, 5.0, 0.0, 3500.0, 10.0, 2000.0, 4.0, 9.0, 300.0, 25.0, 3000.0, 0.0, 0)
	f.Add(4000.0, 5.0, 0.0, 3500.0, 0.8, 2000.0, 4.0, 9.0, 300.0, 25.0, 3000.0, 500.0, 5)
	f.Fuzz(func(t *testing.T, pr1, j1, pb1, pr2, j2, pb2, c1, c2, height, loss, p, q float64, kind int) {
		w := production.Well{Zones: []production.Zone{
			{Name: "a", TVD: unit.Length(math.Abs(height)) + 1000, Inflow: inflow.LiquidDeliverability{Reservoir: unit.Pressure(pr1) * psi, Index: unit.ProductivityIndex(j1) * pi, Bubble: unit.Pressure(pb1) * psi},
				Density: 800, Chokes: choke.Table{{Name: "c", Coefficient: unit.FlowCoefficient(c1) * unit.Cv}}, WaterCut: 0.4,
				Above: production.Interval{Density: 900, Loss: production.Loss{At: 1000 * bpd, Turbulent: unit.Pressure(loss) * psi}}},
			{Name: "b", TVD: 1000, Inflow: inflow.LiquidDeliverability{Reservoir: unit.Pressure(pr2) * psi, Index: unit.ProductivityIndex(j2) * pi, Bubble: unit.Pressure(pb2) * psi},
				Density: 800, Chokes: choke.Table{{Name: "c", Coefficient: unit.FlowCoefficient(c2) * unit.Cv}}},
		}}
		if kind&4 != 0 {
			for i := range w.Zones {
				w.Zones[i].WaterCut = 0
				w.Zones[i].Gas = &production.GasAtChoke{Density: 0.8, Standard: unit.Fahrenheit(60), Temperature: unit.Fahrenheit(200), Z: 0.9, HeatRatio: 1.28, Ratio: 0.7}
				w.Zones[i].Inflow = inflow.GasDeliverability{Reservoir: unit.Pressure(pr1) * psi, OpenFlow: unit.FlowRate(j1), Exponent: j2}
			}
		}
		switch kind & 3 {
		case 0:
			w.Outflow = production.FixedPressure{Pressure: unit.Pressure(p) * psi}
		case 1:
			w.Outflow = production.FixedRate{Rate: unit.FlowRate(q) * bpd}
		case 2:
			w.Outflow = production.Tubing{Surface: unit.Pressure(p) * psi, Height: unit.Length(height), Density: 700, Loss: production.Loss{At: unit.FlowRate(q), Laminar: 5 * psi}}
		case 3:
			w.Outflow = production.OutflowTable{{Rate: 0, Pressure: unit.Pressure(p) * psi}, {Rate: unit.FlowRate(q) * bpd, Pressure: unit.Pressure(p+loss) * psi}}
		}
		if flow, err := w.Flow(); err == nil {
			number(t, flow)
		}
	})
}

// FuzzNetwork builds sensible networks of many shapes: each is solved or refused.
func FuzzNetwork(f *testing.F) {
	f.Add(uint64(1), uint64(2), 3)
	f.Fuzz(func(t *testing.T, a, b uint64, n int) {
		r := rand.New(rand.NewPCG(a, b))
		w, positions := random(r, 1+(n%12+12)%12, n%3 == 0)
		if flow, err := w.Flow(positions...); err == nil {
			number(t, flow)
		} else if strings.Contains(err.Error(), "resolved") {
			t.Fatal(err)
		}
	})
}

func FuzzReadOutflowTable(f *testing.F) {
	f.Add(outflowCSV)
	f.Fuzz(func(t *testing.T, text string) {
		table, err := production.ReadOutflowTable(strings.NewReader(text))
		if err != nil {
			return
		}
		w := twoLayers(table)
		if flow, err := w.Flow(); err == nil {
			number(t, flow)
		}
	})
}
