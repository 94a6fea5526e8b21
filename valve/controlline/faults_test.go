package controlline

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestFaultsOfShiftsAndHeads(t *testing.T) {
	_, err := quarter.PanelFor(oil, -1)
	require.ErrorContains(t, err, "controlline: atDevice: is ")
	_, err = Line{}.PanelFor(LineFluid{}, 1e6)
	require.ErrorContains(t, err, "controlline: ")
	_, err = Response{Scale: 1}.Until(0)
	require.ErrorContains(t, err, "controlline: share: is 0; must be above 0 and below 1")
	_, err = Response{}.Until(math.NaN())
	require.ErrorContains(t, err, "controlline: share: is NaN")
	_, err = Shift{}.Plan()
	require.ErrorContains(t, err, "controlline: ")
}

// A shift that takes longer than a clock counts, one whose pressure never arrives, and
// one of a liquid so thin that it would run faster than flow is known for.
func TestShiftsThatNeverEnd(t *testing.T) {
	fine := shift
	fine.Liquid.Viscosity = 100
	for _, l := range []*Line{&fine.Feed, &fine.Vent} {
		l.OD, l.Wall, l.Length, l.TVD = 0.2*unit.Millimetre, 0.0499*unit.Millimetre, 20*unit.Kilometre, 0
	}
	fine.Displaced, fine.Swept, fine.Pump, fine.Move = 0, 1, 1000, 0
	_, err := fine.Plan()
	require.ErrorContains(t, err, "controlline: time is ")
	fine.Swept, fine.Feed.Young, fine.Liquid.Compressibility = 2e-9, 0, 1e-8
	_, err = fine.Plan()
	require.ErrorContains(t, err, "controlline: time is ")

	soft := shift
	soft.Liquid.Compressibility = 1e-8
	soft.Liquid.Density = 2900
	_, err = soft.Plan()
	require.ErrorContains(t, err, "controlline: Liquid.Compressibility: is ")
	soft.Feed.TVD = 0
	_, err = soft.Plan()
	require.ErrorContains(t, err, "controlline: Liquid.Compressibility: is ")

	thin := shift
	thin.Liquid.Viscosity, thin.Liquid.Density = 1e-6, 1
	for _, l := range []*Line{&thin.Feed, &thin.Vent} {
		l.OD, l.Wall, l.Length, l.TVD = 100*unit.Millimetre, 2*unit.Millimetre, unit.Centimetre, 0
	}
	_, err = thin.Plan()
	require.ErrorContains(t, err, "the liquid would move faster than 999 m/s")
}

// The device waits until its share of the pump's pressure has come through the line:
// all but what drives it.
func TestDelayIsThatOfTheShare(t *testing.T) {
	p, err := shift.Plan()
	require.NoError(t, err)
	r, err := shift.Feed.Response(shift.Liquid)
	require.NoError(t, err)
	require.InEpsilon(t, 3000-500, p.Drive.In(unit.PSI), 1e-12)
	want, err := r.Until(1 - 2500.0/3000)
	require.NoError(t, err)
	require.Greater(t, want, r.Wave)
	require.InEpsilon(t, want.Seconds(), p.Delay.Seconds(), 1e-9)
}

// What the friction of the lines refuses, and times beyond a clock, are told.
func TestWhatTheLinesRefuse(t *testing.T) {
	thin := shift
	thin.Liquid.Viscosity = 1e-9
	_, err := thin.Plan()
	require.ErrorContains(t, err, "controlline: rate at a drive of ")
	require.ErrorContains(t, err, "flow: Rheology.Consistency: is ")

	l := Line{OD: 0.2 * unit.Millimetre, Wall: 0.0499 * unit.Millimetre, Length: 20 * unit.Kilometre}
	slow := LineFluid{Density: 900, Viscosity: 100, Compressibility: 1e-8}
	_, err = l.Response(slow)
	require.ErrorContains(t, err, "controlline: time is ")
	require.ErrorContains(t, err, "must be from 0 s to 9e9 s")
	s := Shift{Feed: l, Vent: l, Liquid: slow, Pump: 3e9, Move: 1e9, Swept: 2e-9}
	_, err = s.Plan()
	require.ErrorContains(t, err, "controlline: time is ")
}
