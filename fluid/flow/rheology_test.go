package flow_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// near holds got against want to a relative tolerance.
func near(t testing.TB, want, got, relative float64, what ...any) {
	t.Helper()
	require.InDelta(t, want, got, relative*math.Abs(want), fmt.Sprint(what...))
}

// mud is a made-up Herschel–Bulkley fluid used throughout.
var mud = flow.Rheology{Yield: 4 * unit.Pascal, Consistency: 0.6 * unit.PascalSecondN, Index: 0.62}

func TestStressAndRateAreInverse(t *testing.T) {
	for _, r := range []flow.Rheology{mud, flow.Newtonian(1 * unit.Centipoise), flow.Bingham(20*unit.Centipoise, 5*unit.Pascal), flow.PowerLaw(0.5*unit.PascalSecondN, 0.7)} {
		for _, γ := range []unit.ShearRate{0.1, 5.11, 511, 1022} {
			near(t, float64(γ), float64(r.Rate(r.Stress(γ))), 1e-12, r, γ)
		}
		require.Zero(t, r.Rate(r.Yield))
		require.Zero(t, r.Rate(r.Yield/2))
		require.Equal(t, r.Yield, r.Stress(0))
	}
	require.True(t, math.IsNaN(float64(mud.Stress(unit.ShearRate(math.NaN())))))
	near(t, 4+0.6*math.Pow(100, 0.62), float64(mud.Stress(100)), 1e-15)
	near(t, (4+0.6*math.Pow(100, 0.62))/100, float64(mud.Viscosity(100)), 1e-15)
}

func TestModel(t *testing.T) {
	require.Equal(t, flow.ModelNewtonian, flow.Newtonian(1).Model())
	require.Equal(t, flow.ModelBingham, flow.Bingham(1, 1).Model())
	require.Equal(t, flow.ModelPowerLaw, flow.PowerLaw(1, 0.5).Model())
	require.Equal(t, flow.ModelHerschelBulkley, mud.Model())
	for _, m := range flow.Models() {
		text, err := m.MarshalText()
		require.NoError(t, err)
		var back flow.Model
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, m, back)
	}
	require.Error(t, new(flow.Model).UnmarshalText([]byte("Newtonian")))
	_, err := flow.Model(9).MarshalText()
	require.Error(t, err)
	require.Equal(t, "Model(9)", flow.Model(9).String())
}

func TestRheologyCheckNamesEveryFault(t *testing.T) {
	err := flow.Rheology{Yield: -1, Index: 3}.Validate()
	require.ErrorContains(t, err, "flow: Yield: is -1 Pa")
	require.ErrorContains(t, err, "flow: Consistency: is 0")
	require.ErrorContains(t, err, "flow: Index: is 3; must be from 0.1 to 2")
	require.Error(t, flow.Rheology{Yield: unit.Pressure(math.NaN()), Consistency: 1, Index: 1}.Validate())
	require.NoError(t, mud.Validate())
}

func TestRheologyIsText(t *testing.T) {
	text, err := json.Marshal(flow.Rheology{Yield: 10 * unit.PoundForcePer100SquareFeet, Consistency: 0.5 * unit.PascalSecondN, Index: 0.7})
	require.NoError(t, err)
	var back flow.Rheology
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, 0.5*unit.PascalSecondN, back.Consistency)
	require.NoError(t, json.Unmarshal([]byte(`{"yield":"5 lbf/100ft2","consistency":"1.2 lbf.s^n/100ft2","index":0.6}`), &back))
	near(t, 1.2*0.4788025898, float64(back.Consistency), 1e-9) // 1 lbf/100 ft² is 0.4788026 Pa (NIST SP 811)
}

func ExampleRheology_Stress() {
	r := flow.Rheology{Yield: 4 * unit.Pascal, Consistency: 0.6 * unit.PascalSecondN, Index: 0.62}
	fmt.Printf("%.2f Pa\n", r.Stress(511*unit.PerSecond).In(unit.Pascal))
	// Output: 32.67 Pa
}
