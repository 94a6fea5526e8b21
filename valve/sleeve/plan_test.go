package sleeve

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"

	"github.com/stretchr/testify/require"
)

func TestPlanShortest(t *testing.T) {
	s := well(3)
	from, to := []Position{Open, Closed, Closed}, []Position{Closed, Open, Open}
	legs, err := s.Plan(Route{From: from, To: to, Surface: surface})
	require.NoError(t, err)
	require.Len(t, legs, 2)
	require.True(t, legs[0].Action.Close, "closing first holds nothing")
	require.Empty(t, legs[0].Action.Hold)

	legs, err = s.Plan(Route{From: from, To: to, Surface: surface, Single: true})
	require.NoError(t, err)
	require.Len(t, legs, 3)

	// The well must never be shut: one sleeve stays open all the time.
	flowing := func(p []Position) bool { return p[0] == Open || p[1] == Open || p[2] == Open }
	legs, err = s.Plan(Route{From: from, To: to, Surface: surface, Permit: flowing})
	require.NoError(t, err)
	require.Len(t, legs, 2)
	require.False(t, legs[0].Action.Close)
	require.Equal(t, []int{1, 2}, legs[1].Action.Hold)

	// Zones must not be joined either: no way.
	alone := func(p []Position) bool {
		n := 0
		for _, x := range p {
			if x == Open {
				n++
			}
		}
		return n == 1
	}
	_, err = s.Plan(Route{From: from, To: to, Surface: surface, Permit: alone})
	var none *NoRouteError
	require.ErrorAs(t, err, &none)
	require.Positive(t, none.Barred)

	legs, err = s.Plan(Route{From: to, To: to, Surface: surface})
	require.NoError(t, err)
	require.Empty(t, legs)
}

// Every pair of positions of three sleeves can be reached, in no more than two
// actions, and each leg does what it says anywhere in its window.
func TestPlanAllPairs(t *testing.T) {
	s := well(3)
	all := [][]Position{}
	for i := 0; i < 8; i++ {
		p := make([]Position, 3)
		for b := range p {
			p[b] = Position(i >> b & 1)
		}
		all = append(all, p)
	}
	all = append(all, []Position{Unknown, Open, Closed}, []Position{Unknown, Unknown, Unknown})
	for _, from := range all {
		for _, to := range all[:8] {
			legs, err := s.Plan(Route{From: from, To: to, Surface: surface})
			require.NoError(t, err, "%v to %v", from, to)
			require.LessOrEqual(t, len(legs), 2, "%v to %v", from, to)
			at := from
			for _, l := range legs {
				for _, p := range []unit.Pressure{l.Window.Least, l.Pressure, l.Window.Greatest} {
					_, after, err := s.Run(at, l.Action.Operations(p*(1+1e-12)), l.After)
					require.NoError(t, err, "%v to %v at %v", from, to, p)
					require.Equal(t, l.After, after)
				}
				at = l.After
			}
			require.Equal(t, to, at)
		}
	}
}

// A pump that is too weak, or areas so different that pressure on both lines
// closes a held sleeve, leave no window.
func TestPanelWindow(t *testing.T) {
	s := well(2)
	both := []Position{Open, Open}
	a := Action{Close: true, Move: []int{1}, Hold: []int{0}}
	w, err := s.PanelWindow(both, a, surface)
	require.NoError(t, err)
	require.InDelta(t, 600, w.Least.In(unit.PSI), 1e-6)

	_, err = s.PanelWindow(both, a, valve.SurfaceRange{Greatest: 500 * unit.PSI})
	require.ErrorIs(t, err, valve.ErrNoSurfacePressure)

	// A held sleeve that may be closed has to be opened for certain first.
	s.Sleeves[0].Friction = unit.Exactly(2000 * unit.PoundForce)
	w, err = s.PanelWindow([]Position{Unknown, Open}, a, surface)
	require.NoError(t, err)
	require.InDelta(t, 1000, w.Least.In(unit.PSI), 1e-6)
	s.Sleeves[0].Friction = s.Sleeves[1].Friction

	// 0.1 in² more on the close side: 800 lbf at 8,000 psi in both lines, of
	// which the column has 3,107 psi.
	s.Sleeves[0].CloseArea = 2.1 * unit.SquareInch
	w, err = s.PanelWindow(both, a, valve.SurfaceRange{Greatest: 10000 * unit.PSI})
	require.NoError(t, err)
	require.Equal(t, "sleeve 1 closing", w.Ceiling.Name)
	x, err := s.Shifting(0)
	require.NoError(t, err)
	require.InDelta(t, 8000-x.Head.In(unit.PSI), w.Greatest.In(unit.PSI), 1e-6)

	s.Sleeves[0].CloseArea = 2.2 * unit.SquareInch // 800 lbf at 4,000 psi
	_, err = s.PanelWindow(both, a, valve.SurfaceRange{Greatest: 10000 * unit.PSI})
	require.NoError(t, err)
	s.Sleeves[1].Friction = unit.Exactly(2400 * unit.PoundForce)
	_, err = s.PanelWindow(both, a, valve.SurfaceRange{Greatest: 10000 * unit.PSI})
	require.ErrorIs(t, err, valve.ErrNoSurfacePressure)
	require.ErrorContains(t, err, "sleeve 1 closing")
	_, err = s.Plan(Route{From: both, To: []Position{Open, Closed}, Surface: surface, Single: true,
		Permit: func(p []Position) bool { return p[0] == Open }})
	var none *NoRouteError
	require.ErrorAs(t, err, &none)
	require.NotEmpty(t, none.Refused)
	require.Contains(t, err.Error(), "to close sleeve 2: valve: no surface pressure satisfies all")
}

// With many sleeves the error stays readable, and its list whole.
func TestNoRouteNamesTheFirstRefusals(t *testing.T) {
	s := well(6)
	weak := surface
	weak.Greatest = 100 * unit.PSI
	_, err := s.Plan(Route{From: make([]Position, 6), To: []Position{Open, Open, Open, Open, Open, Open}, Surface: weak})
	var none *NoRouteError
	require.ErrorAs(t, err, &none)
	require.Len(t, none.Refused, 63, "every set of six sleeves to open")
	require.ErrorContains(t, err, "and 59 more that are refused")
}
