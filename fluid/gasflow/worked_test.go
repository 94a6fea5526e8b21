package gasflow_test

import (
	"testing"

	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// dense is a gas whose density doesn't change, so that each step of the march is the
// whole of it.
type dense struct{}

func (dense) Density(unit.Pressure, unit.Temperature) (unit.Density, error)     { return 5, nil }
func (dense) Viscosity(unit.Pressure, unit.Temperature) (unit.Viscosity, error) { return 2e-5, nil }

// Slow gas, laminar: Fanning's 16/Re; fast gas: Colebrook's. A level length, so slow
// that its speed is nothing to that of sound (which the formula here leaves in).
func TestFrictionOfGasWorked(t *testing.T) {
	tb := gasflow.Tubing{Gas: dense{}, Wellhead: unit.Celsius(60), Bottom: unit.Celsius(60),
		Sections: []flow.ConduitSection{{Name: "level", Conduit: flow.Conduit{Outer: 0.1}, Length: 100}}}
	nodes, err := tb.Down(0.002, 1e6)
	require.NoError(t, err)
	// Re = G·d/μ = 1273: laminar. The sound's share, v²ρ/p = 1.2e-7 at 1.1 MPa, changes
	// by a millionth of itself along the way.
	precise.Within(t, 1e-7, float64(nodes[1].Pressure-1e6), `
		G = 0.002/(pi/4*0.1*0.1)
		Re = G*0.1/2e-5
		100*2*16/Re*G*G/5/0.1/(1 - G*G/5/1101325)`, nil)
	precise.Equal(t, float64(nodes[0].Velocity), "0.002/(pi/4*0.1*0.1)/5", nil)
	fast, err := tb.Down(0.05, 1e6)
	require.NoError(t, err)
	f := flow.Colebrook(0.05/(0.7853981633974483*0.01)*0.1/2e-5, 0).Fanning()
	precise.Within(t, 1e-9, float64(fast[1].Pressure-1e6), "G = 0.05/(pi/4*0.1*0.1)\n100*2*f*G*G/5/0.1/(1 - G*G/5/1101325)", precise.Values{"f": float64(f)})
}
