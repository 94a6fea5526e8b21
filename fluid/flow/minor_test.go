package flow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestOrificesBothWays(t *testing.T) {
	o := flow.Orifices{Count: 3, Diameter: 12.0 / 32 * unit.Inch, Discharge: flow.DischargeNozzle}
	near(t, 3*math.Pi/4*144/1024, o.Area().In(unit.SquareInch), 1e-14)
	p := o.Loss(12*unit.PoundPerGallon, 400*unit.GallonPerMinute)
	// The field's form with the exact constant: ρq²/(12033.93 Cd² A²).
	near(t, 12*400*400/(12033.93*0.9025*math.Pow(o.Area().In(unit.SquareInch), 2)), p.In(unit.PSI), 1e-6)
	q := flow.OrificeRate(12*unit.PoundPerGallon, p, o.Area(), o.Discharge)
	near(t, 400, q.In(unit.GallonPerMinute), 1e-12)
	require.Equal(t, -q, flow.OrificeRate(12*unit.PoundPerGallon, -p, o.Area(), o.Discharge))
	near(t, 0.320833333*400/o.Area().In(unit.SquareInch), o.Velocity(400*unit.GallonPerMinute).In(unit.FootPerSecond), 1e-8)
	require.True(t, math.IsNaN(float64(o.Loss(unit.Density(math.NaN()), 1))))
}

// White, Fluid Mechanics, Fig. 6.22: no loss where nothing changes; a pipe into a
// tank loses its velocity head; a tank into a pipe 0.42 (sharp).
func TestEnlargementAndContraction(t *testing.T) {
	require.Equal(t, 0.0, flow.Enlargement(1, 1))
	near(t, 1, flow.Enlargement(1, 1e12), 1e-11)
	near(t, 0.25, flow.Enlargement(1, 2), 1e-15)
	require.Equal(t, 0.0, flow.Contraction(1, 1))
	near(t, 0.42, flow.Contraction(1e12, 1), 1e-11)
	near(t, 0.21, flow.Contraction(2, 1), 1e-15)
	// Where the source changes from one law to the other they are 0.1 % of a
	// velocity head apart.
	s := 0.76 * 0.76
	require.InDelta(t, flow.Contraction(unit.Area(1/(s-1e-9)), 1), flow.Contraction(unit.Area(1/(s+1e-9)), 1), 0.002)
	near(t, 0.5*1000*4, float64(flow.DynamicPressure(1000, 2)), 1e-15)
	near(t, 0.42*0.5*1000*4, float64(flow.MinorLoss(0.42, 1000, 2)), 1e-15)
}

func ExampleOrificeLoss() {
	// Three 12/32 in nozzles at 400 gal/min of 12 lb/gal mud.
	p := flow.OrificeLoss(12*unit.PoundPerGallon, 400*unit.GallonPerMinute, 0.3313*unit.SquareInch, flow.DischargeNozzle)
	fmt.Println(p.Rounded(4))
	// Output: 1611 psi
}
