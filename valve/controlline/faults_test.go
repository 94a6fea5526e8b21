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
		l.OD, l.Wall, l.Length, l.TVD = 0.11*unit.Millimetre, 0.05*unit.Millimetre, 20*unit.Kilometre, 0
	}
	fine.Displaced, fine.Swept = 0, 1
	_, err := fine.Plan()
	require.ErrorContains(t, err, "controlline: time is ")
	fine.Swept, fine.Feed.Young, fine.Liquid.Compressibility = 2e-9, 0, 1e-7
	_, err = fine.Plan()
	require.ErrorContains(t, err, "controlline: time is ")

	soft := shift
	soft.Liquid.Compressibility = 1e-7
	soft.Liquid.Density = 3000
	_, err = soft.Plan()
	require.ErrorContains(t, err, "controlline: Liquid.Compressibility: is ")
	soft.Feed.TVD = 0
	_, err = soft.Plan()
	require.ErrorContains(t, err, "controlline: Liquid.Compressibility: is ")

	thin := shift
	thin.Liquid.Viscosity, thin.Liquid.Density = 1e-9, 1
	for _, l := range []*Line{&thin.Feed, &thin.Vent} {
		l.OD, l.Wall, l.Length, l.TVD = 100*unit.Millimetre, 2*unit.Millimetre, unit.Centimetre, 0
	}
	_, err = thin.Plan()
	require.ErrorContains(t, err, "controlline: rate at a drive of 2500 psi: the liquid would move faster than 3277.6 ft/s")
}
