package movement_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

func TestFaultsComeTogether(t *testing.T) {
	path, err := hydrostatics.Vertical(5000 * unit.Foot)
	require.NoError(t, err)
	s := movement.String{Sections: combination().Sections, Path: path, Spacing: -1, HelicalOnset: 5,
		Seals: movement.SealBore{Bore: unit.Length(math.NaN()), Restraint: 9}, Hanger: -3}
	s.Sections[0].Hole = 2 * unit.Inch
	s.Sections[1].Joint = -1
	_, err = s.Land(movement.WellProfiles{}, 0)
	for _, field := range []string{"Sections[0].Hole", "Sections[1].Joint", "Sections[2].Bottom", "Spacing", "HelicalOnset: is 5", "Seals.Bore", "Seals.Restraint: is 9", "Hanger"} {
		require.ErrorContains(t, err, field)
	}
	good := vertical(t)
	_, err = good.Land(movement.WellProfiles{}, 0)
	require.ErrorContains(t, err, "Inside: is missing")
	_, err = good.Land(brine(0, 0), 5*unit.Kilopound)
	require.ErrorContains(t, err, "SlackOff")
	l, err := good.Land(brine(0, 0), 0)
	require.NoError(t, err)
	bad := brine(0, 0)
	bad.Temperature = nil
	_, err = l.Load(bad)
	require.ErrorContains(t, err, "Temperature")
	bad = brine(0, 0)
	bad.Friction = []unit.Gradient{1, 2}
	bad.Below = 5
	bad.Tail = 7
	_, err = l.Load(bad)
	for _, field := range []string{"Friction", "Tail"} {
		require.ErrorContains(t, err, field)
	}
	bad = brine(0, 0)
	bad.Inside = func(d unit.Length) unit.Pressure { return unit.Pressure(math.Log(float64(5000*unit.Foot - d))) }
	_, err = l.Load(bad)
	require.ErrorContains(t, err, "true vertical depth")
	v := packerExample()
	v.Closed, v.SlackOff = true, 1
	_, err = v.Analyse()
	require.ErrorContains(t, err, "Seals: are given")
	require.ErrorContains(t, err, "SlackOff")
}

func TestNamesReadBack(t *testing.T) {
	for _, x := range []movement.Tail{movement.Open, movement.Plugged, movement.Hanging} {
		text, err := x.MarshalText()
		require.NoError(t, err)
		var back movement.Tail
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, x, back)
	}
	for _, x := range []movement.Mode{movement.Straight, movement.Sinusoidal, movement.Helical} {
		text, err := x.MarshalText()
		require.NoError(t, err)
		var back movement.Mode
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, x, back)
	}
	for _, x := range []movement.Restraint{movement.Free, movement.Limited, movement.Anchored} {
		text, err := x.MarshalText()
		require.NoError(t, err)
		var back movement.Restraint
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, x, back)
	}
	_, err := movement.Tail(7).MarshalText()
	require.ErrorContains(t, err, "hanging")
	_, err = movement.Mode(7).MarshalText()
	require.Error(t, err)
	_, err = movement.Restraint(7).MarshalText()
	require.Error(t, err)
	require.Error(t, new(movement.Tail).UnmarshalText([]byte("x")))
	require.Error(t, new(movement.Mode).UnmarshalText([]byte("x")))
	require.Error(t, new(movement.Restraint).UnmarshalText([]byte("x")))
	require.Equal(t, "Tail(7) Mode(7) Restraint(7)", fmt.Sprint(movement.Tail(7), " ", movement.Mode(7), " ", movement.Restraint(7)))
}
