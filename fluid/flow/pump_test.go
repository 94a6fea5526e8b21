package flow_test

import (
	"fmt"
	"testing"
	"time"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

func TestPump(t *testing.T) {
	triplex := flow.Pump{Cylinders: 3, Liner: 6 * unit.Inch, Stroke: 12 * unit.Inch, Efficiency: 0.97}
	// Course sheet after Lapeyrouse: 3 (D² 0.7854) S 0.00411 spm gal/min at 95 %, which is
	// 0.95/231 rounded; here at 97 %.
	near(t, 3*36*0.7854*12*0.97/231*80, triplex.Rate(80).In(unit.GallonPerMinute), 1e-5)
	near(t, 1000, triplex.Strokes(1000*unit.Volume(triplex.Output())), 1e-14)
	require.Zero(t, flow.Pump{}.Output())
	workingtest.Check(t, triplex.Steps())
	workingtest.Check(t, flow.Pump{Cylinders: 2, Liner: 0.15, Rod: 0.05, Stroke: 0.3, DoubleActing: true, Efficiency: 0.9}.Steps())
	require.Equal(t, 25*time.Minute, flow.PumpingTime(100*unit.Barrel, 4*unit.BarrelPerMinute).Round(time.Millisecond))
	require.Zero(t, flow.PumpingTime(1, 0))
	dimension.Check(t, dimension.Free, flow.Pump.Output, flow.Pump{Cylinders: 2, Liner: 0.15, Rod: 0.05, Stroke: 0.3, DoubleActing: true, Efficiency: 0.9})
}

func ExamplePump_Output() {
	// Printed 0.104976 bbl with the constant 0.000243 for three cylinders.
	p := flow.Pump{Cylinders: 3, Liner: 6 * unit.Inch, Stroke: 12 * unit.Inch, Efficiency: 1}
	fmt.Printf("%.5f bbl\n", p.Output().In(unit.Barrel))
	// Output: 0.10491 bbl
}
