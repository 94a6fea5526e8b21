package sleeve

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/valve/controlline"
	"github.com/stretchr/testify/require"
)

// Each limit of a sleeve: on it no fault, just beyond it one that names it.
func TestSleeveLimits(t *testing.T) {
	const more = 1 + 1e-7
	ok := Sleeve{TVD: 0, OpenArea: 1, CloseArea: 1, Stroke: 100, Friction: unit.Exactly[unit.Force](1e9), Across: unit.Band[unit.Pressure]{Least: -1e9, Greatest: 1e9}, PerDifferential: 1}
	require.NoError(t, ok.Validate(), "everything at its greatest")
	for text, change := range map[string]func(*Sleeve){
		"TVD: is": func(v *Sleeve) { v.TVD = unit.Length(math.Inf(1)) }, "TVD: is -1": func(v *Sleeve) { v.TVD = -1 },
		"OpenArea: is": func(v *Sleeve) { v.OpenArea = more }, "OpenArea: is 0": func(v *Sleeve) { v.OpenArea = 0 },
		"CloseArea: is": func(v *Sleeve) { v.CloseArea = more }, "CloseArea: is 0": func(v *Sleeve) { v.CloseArea = 0 },
		"Stroke: is": func(v *Sleeve) { v.Stroke *= more }, "Stroke: is 0": func(v *Sleeve) { v.Stroke = 0 },
		"Friction: is": func(v *Sleeve) { v.Friction = v.Friction.Times(more) }, "Friction: is 0": func(v *Sleeve) { v.Friction.Least = 0 },
		"Across: is": func(v *Sleeve) { v.Across.Least *= more }, "Across: is -1e+09": func(v *Sleeve) { v.Across.Greatest *= more },
		"PerDifferential: is 1.0000001": func(v *Sleeve) { v.PerDifferential = more }, "PerDifferential: is": func(v *Sleeve) { v.PerDifferential = -1e-9 },
	} {
		v := ok
		change(&v)
		require.ErrorContains(t, v.Validate(), text)
	}
	for n, ok := range map[int]bool{0: false, 1: true, 10: true, 11: false} {
		require.Equal(t, ok, well(n).Validate() == nil, "%d sleeves: %v", n, well(n).Validate())
	}
	s := well(2)
	require.NoError(t, s.checkPanel(Panel{Close: Setting{Pressured, 1e9}}))
	require.ErrorContains(t, s.checkPanel(Panel{Close: Setting{Pressured, 1e9 * more}}), "Close.Pressure: is")
	require.ErrorContains(t, s.checkPanel(Panel{Open: []Setting{{Pressured, -1}}}), "Open[0].Pressure: is")
	require.ErrorContains(t, s.checkPanel(Panel{Close: Setting{Mode: Mode(len(modes))}}), "Close.Mode: is")
	require.ErrorContains(t, s.checkPositions([]Position{Open, Position(len(positions))}), "[1]: is")
	_, err := Position(len(positions)).MarshalText()
	require.ErrorContains(t, err, "3")
	require.Contains(t, Position(len(positions)).String(), "3")
	require.Contains(t, Mode(len(modes)).String(), "3")
	for _, sleeve := range []int{-1, 2} {
		_, err := s.Shifting(sleeve)
		require.Error(t, err, "%d", sleeve)
	}
	_, _, err = s.Run([]Position{Open, Open}, []Operation{{Line: 2}}, []Position{Open, Open})
	require.ErrorContains(t, err, "ops[0].Line: is")
	require.True(t, (&WrongMoveError{}).Is(ErrWrongMove))
	require.False(t, (&WrongMoveError{}).Is(controlline.ErrNoShift))
}

// Friction grows with the magnitude of the differential, whichever way it acts, by hand.
func TestResistanceByHand(t *testing.T) {
	v := Sleeve{Friction: unit.Exactly[unit.Force](1000), PerDifferential: 1e-4}
	for _, c := range []struct{ least, nominal, greatest, low, middle, high float64 }{
		{2e6, 3e6, 4e6, 1200, 1300, 1400}, {-4e6, -3e6, -2e6, 1200, 1300, 1400}, {-4e6, -1e6, 2e6, 1000, 1100, 1400},
		{-1e6, 0, 3e6, 1000, 1000, 1300}, {0, 1e6, 2e6, 1000, 1100, 1200}, {-2e6, -1e6, 0, 1000, 1100, 1200},
	} {
		v.Across = unit.Band[unit.Pressure]{Least: unit.Pressure(c.least), Nominal: unit.Pressure(c.nominal), Greatest: unit.Pressure(c.greatest)}
		r := v.Resistance()
		require.InDeltaSlice(t, []float64{c.low, c.middle, c.high}, []float64{float64(r.Least), float64(r.Nominal), float64(r.Greatest)}, 1e-9, "%+v", c)
	}
}

// What a line takes up per pressure: its volume times liquid's and wall's compliance.
func TestSoftnessWorked(t *testing.T) {
	s := well(1)
	l := s.OpenLines[0]
	precise.Equal(t, s.softness(l), "V*(1/1800e6 + 2*(1 + nu)/E*((1 - 2*nu)*d*d + D*D)/(D*D - d*d))", precise.Values{
		"V": float64(l.Volume()), "E": float64(l.Young), "nu": l.Poisson, "D": float64(l.OD), "d": float64(l.ID())})
}
