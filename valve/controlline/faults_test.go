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

// A shift of a huge volume through a line takes longer than a clock counts.
func TestShiftsThatNeverEnd(t *testing.T) {
	s := shift
	s.Swept, s.Displaced = 1e10, 0
	_, err := s.Plan()
	require.ErrorContains(t, err, "controlline: ")
	// A short line of next to nothing in viscosity: faster than flow is known for.
	s = shift
	s.Liquid.Viscosity = 1e-12
	s.Feed.Length, s.Feed.TVD, s.Vent.Length, s.Vent.TVD = unit.Centimetre, 0, unit.Centimetre, 0
	s.Pump, s.Move = 20000*unit.PSI, 1
	_, err = s.Plan()
	require.ErrorContains(t, err, "controlline: ")
}
