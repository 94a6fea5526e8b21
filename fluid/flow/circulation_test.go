package flow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

// g is standard gravity, exact.
const g = 9.80665

// well is made up: 3-1/2 in tubing with a smaller tail in 9-5/8 and 7 in casing,
// deviated below 1,500 m.
func well() flow.Well {
	return flow.Well{
		Pipe: []flow.ConduitSection{
			{Name: "tubing", Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Length: 2000, BottomTVD: 1900},
			{Name: "tail", Conduit: flow.Conduit{Outer: 2.441 * unit.Inch}, Length: 500, BottomTVD: 2300, Minor: 12},
		},
		Annulus: []flow.ConduitSection{
			{Name: "9-5/8 in", Conduit: flow.Conduit{Outer: 8.681 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 1500, BottomTVD: 1500},
			{Name: "7 in", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 500, BottomTVD: 1900},
			{Name: "7 in by tail", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 2.875 * unit.Inch}, Length: 500, BottomTVD: 2300},
		},
		Exit: flow.Orifices{Count: 4, Diameter: 12 * unit.Millimetre, Discharge: flow.DischargeSharp},
	}
}

func TestCirculationAddsUp(t *testing.T) {
	w := well()
	c := flow.Circulation{Well: w, Liquid: heavy, Rate: 0.012, BackPressure: 5e5}
	r, err := c.Solve()
	require.NoError(t, err)
	var pipe, annulus float64
	for _, s := range w.Pipe {
		f, err := flow.Stream{Conduit: s.Conduit, Rheology: mud, Density: 1500, Rate: 0.012}.Friction()
		require.NoError(t, err)
		pipe += float64(f.Loss(s.Length) + flow.MinorLoss(s.Minor, 1500, f.Velocity))
	}
	for i := len(w.Annulus) - 1; i >= 0; i-- {
		s := w.Annulus[i]
		f, err := flow.Stream{Conduit: s.Conduit, Rheology: mud, Density: 1500, Rate: 0.012}.Friction()
		require.NoError(t, err)
		annulus += float64(f.Loss(s.Length))
	}
	workingtest.Check(t, r.Steps())
	near(t, pipe, float64(r.PipeLoss), 1e-12)
	near(t, annulus, float64(r.AnnulusLoss), 1e-12)
	exit := float64(w.Exit.Loss(1500, 0.012))
	near(t, exit, float64(r.ExitLoss), 1e-12)
	near(t, 5e5+pipe+annulus+exit, float64(r.PumpPressure), 1e-12)
	near(t, 5e5+annulus+1500*g*2300, float64(r.Bottom.Pressure), 1e-12)
	near(t, 5e5+1500*g*2300, float64(r.Bottom.Static), 1e-12)
	near(t, (5e5+annulus+1500*g*2300)/(g*2300), float64(r.Bottom.Equivalent), 1e-12)
	near(t, float64(r.PumpPressure)*0.012, r.Power, 1e-12)
	require.Equal(t, []string{"tubing", "tail", "7 in by tail", "7 in", "9-5/8 in"}, names(r.Parts))
	require.Len(t, r.Nodes, 3)
	require.Equal(t, unit.Length(2500), r.Bottom.MD)
	require.Equal(t, unit.Length(1500), r.Nodes[0].TVD)
	// Down the annulus each node has the friction of what lies above it.
	near(t, 5e5+1500*g*1500+float64(r.Parts[4].Loss), float64(r.Nodes[0].Pressure), 1e-12)
}

func names(parts []flow.Part) (all []string) {
	for _, p := range parts {
		all = append(all, p.Name)
	}
	return all
}

// One liquid: turned round, the pump pressure is the same, and the bottom feels
// the pipe's friction.
func TestReverseCirculation(t *testing.T) {
	c := flow.Circulation{Well: well(), Liquid: heavy, Rate: 0.012, BackPressure: 5e5}
	forward, err := c.Solve()
	require.NoError(t, err)
	c.Reverse = true
	back, err := c.Solve()
	require.NoError(t, err)
	near(t, float64(forward.PumpPressure), float64(back.PumpPressure), 1e-12)
	near(t, float64(5e5+back.PipeLoss+back.ExitLoss+1500*g*2300), float64(back.Bottom.Pressure), 1e-12)
	near(t, float64(forward.AnnulusLoss), float64(back.AnnulusLoss), 1e-12)
	require.Equal(t, []string{"9-5/8 in", "7 in", "7 in by tail", "tail", "tubing"}[0], back.Parts[0].Name)
}

func TestCirculationAtRest(t *testing.T) {
	r, err := flow.Circulation{Well: well(), Liquid: heavy}.Solve()
	require.NoError(t, err)
	require.Zero(t, r.PumpPressure)
	near(t, 1500, float64(r.Bottom.Equivalent), 1e-14)
}

func TestCirculationErrors(t *testing.T) {
	w := well()
	w.Pipe[0].Length = -1
	w.Annulus[2].BottomTVD = 2299
	w.Annulus[1].BottomTVD = 3000
	w.Exit.Count = -2
	_, err := flow.Circulation{Well: w, Liquid: flow.PumpedFluid{}, Rate: -1, BackPressure: -1}.Solve()
	for _, part := range []string{"Pipe[0].Length", "must end with Pipe", "Annulus[1].Bottom", "Exit.Count", "Liquid.Density", "Rate: is", "BackPressure: is"} {
		require.ErrorContains(t, err, part)
	}
	_, err = flow.Circulation{}.Solve()
	require.ErrorContains(t, err, "Pipe: has 0 sections")
}

// A horizontal well has no depth at surface, and so no equivalent density.
func TestNoDepth(t *testing.T) {
	flat := []flow.ConduitSection{{Conduit: flow.Conduit{Outer: 0.1}, Length: 100}}
	r, err := flow.Circulation{Well: flow.Well{Pipe: flat, Annulus: []flow.ConduitSection{{Conduit: flow.Conduit{Outer: 0.2, Inner: 0.12}, Length: 100}}}, Liquid: water, Rate: 0.01}.Solve()
	require.NoError(t, err)
	require.Zero(t, r.Bottom.Equivalent)
	require.False(t, math.IsInf(float64(r.Bottom.Equivalent), 0))
}

func TestVolumesAndGel(t *testing.T) {
	w := well()
	near(t, math.Pi/4*(math.Pow(2.992*0.0254, 2)*2000+math.Pow(2.441*0.0254, 2)*500), float64(w.PipeVolume()), 1e-12)
	near(t, float64(w.Annulus[0].Conduit.Volume(1500)+w.Annulus[1].Conduit.Volume(500)+w.Annulus[2].Conduit.Volume(500)), float64(w.AnnulusVolume()), 1e-14)
	c := w.Annulus[0].Conduit
	near(t, 123, float64(c.Length(c.Volume(123))), 1e-14)
	near(t, 0.7, float64(c.Velocity(c.Rate(0.7))), 1e-14)
	// By hand: 4·10·1000/0.1.
	near(t, 4e5, float64(flow.GelPressure(flow.Conduit{Outer: 0.2, Inner: 0.1}, 10, 1000)), 1e-14)
	dimension.Check(t, dimension.Free, flow.GelPressure, flow.Conduit{Outer: 0.2, Inner: 0.1}, unit.Pressure(10), unit.Length(1000))
}

func ExampleCirculation_Solve() {
	r, err := flow.Circulation{
		Well: flow.Well{
			Pipe:    []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Length: 9000 * unit.Foot, BottomTVD: 9000 * unit.Foot}},
			Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 9000 * unit.Foot, BottomTVD: 9000 * unit.Foot}},
		},
		Liquid: flow.PumpedFluid{Name: "brine", Density: 9.5 * unit.PoundPerGallon, Rheology: flow.Newtonian(1.5 * unit.Centipoise)},
		Rate:   4 * unit.BarrelPerMinute,
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("pump %v: tubing %v, annulus %v; equivalent %v\n", r.PumpPressure.Rounded(3), r.PipeLoss.Rounded(3), r.AnnulusLoss.Rounded(3), r.Bottom.Equivalent.Rounded(4))
	// Output: pump 327 psi: tubing 275 psi, annulus 51.4 psi; equivalent 9.61 lb/gal
}
