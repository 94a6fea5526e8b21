package sequence_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// The longest tool that passes either string as it lies after each step - landed, held and
// bled off, heated until it is a helix - what can be set down in it with all slacked off, and
// how much of it is buckled are those of tubular/movement and tubular/drag for the same two
// strings, put together here a second time, to 1e-9.
func TestWhatPassesBothStringsIsThatOfTubular(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 61))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	limited, buckled := 0, 0
	for range 4 {
		p := twoStrings()
		hot := between(230, 300)
		p.Well.Temperatures["hot"] = []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(hot)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(hot)}}
		p.OuterString.Temperatures = map[string]string{"hot": "half"}
		slant := unit.Angle(between(10, 40)) * unit.Degree
		p.Well.Path = []sequence.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}}
		density := [3]unit.Density{}
		for k := range density {
			density[k] = unit.Density(between(8.5, 10)) * ppg
			p.Fluids[k].Density = unit.Exactly(density[k])
		}
		inside, outside := sequence.Factor(between(0.1, 0.35)), sequence.Factor(between(0.1, 0.35))
		p.String.Friction = []sequence.Friction{{To: 9000 * foot, Factor: unit.Exactly(inside)}}
		p.OuterString.Friction = []sequence.Friction{{To: 9000 * foot, Factor: unit.Exactly(outside)}}
		p.String.Tools = []sequence.Tool{{Name: "gauge", Diameter: 2.3 * unit.Inch}}
		p.OuterString.Tools = []sequence.Tool{{Name: "drift", Diameter: 4.7 * unit.Inch}}
		p.Steps = append([]sequence.Step{{Name: "landed"}}, p.Steps[0], p.Steps[1], sequence.Step{Name: "heat", Temperature: "hot"})
		p.Steps[1].Ramps[0] = map[string]unit.Pressure{"between the strings": 2700 * psi, "inner bore": 2700 * psi} // whatever the fluids
		p.Steps[2].Ramps[0] = map[string]unit.Pressure{"inner bore": 3800 * psi}
		r := verdict(t, p)

		made := putTogether(t, p)
		path, small, large, inner, outer, pair, state := made.path, made.small, made.large, made.inner, made.outer, made.pair, made.state
		at := func(step int, action string, k int) unit.Pressure {
			return eventOf(t, r.Steps[step], action).Surface[k].Pressure
		}
		oc, ic := state(0, 0, 150, 150)
		s, err := outer.Land(oc)
		require.NoError(t, err)
		stand, err := pair.Land(s, oc, ic)
		require.NoError(t, err)
		check := func(step int) {
			l, err := pair.Load(stand, oc, ic)
			require.NoError(t, err)
			got := &r.Steps[step]
			require.Len(t, got.Passage, 2)
			for k, x := range []struct {
				up       *movement.MadeUp
				l        *movement.Loading
				diameter unit.Length
				buckled  unit.Length
				of       drag.String
				down     *sequence.SetDown
			}{
				{inner, &l.Inner, 2.3 * unit.Inch, lastString(r, step).Buckled, drag.String{Sections: []drag.PipeSection{{Pipe: small, Length: 8500 * foot}}, BottomMD: 8500 * foot,
					HoleSections: []drag.HoleSection{{BottomMD: 9000 * foot, Friction: float64(inside), Hole: 4.892 * unit.Inch}}, Inside: density[0], Outside: density[1]}, got.SetDown},
				{outer, &l.Outer, 4.7 * unit.Inch, lastOuter(r, step).Buckled, drag.String{Sections: []drag.PipeSection{{Pipe: large, Length: 9000 * foot}}, BottomMD: 9000 * foot,
					HoleSections: []drag.HoleSection{{BottomMD: 9000 * foot, Friction: float64(outside), Hole: 8.535 * unit.Inch}}, Inside: density[1], Outside: density[2]}, got.OuterSetDown},
			} {
				longest, where, bends := x.up.LongestTool(x.l, x.diameter)
				require.Equal(t, bends, got.Passage[k].Limited)
				if bends {
					limited++
					require.InEpsilon(t, float64(longest), float64(got.Passage[k].Longest), 1e-9)
					require.Equal(t, where, got.Passage[k].At)
				}
				require.InDelta(t, float64(x.l.BuckledLength), float64(x.buckled), 1e-9*9000)
				if x.buckled > 0 {
					buckled++
				}
				x.of.Path, x.of.Spacing = path, 250*foot
				hole, err := x.of.Prepare()
				require.NoError(t, err)
				most, err := hole.MostSetDown()
				require.NoError(t, err)
				require.InEpsilon(t, float64(most.Weight), float64(x.down.Arrives), 1e-9)
				require.InEpsilon(t, float64(most.Slacked), float64(x.down.Slacked), 1e-9)
				require.InDelta(t, most.Passes, x.down.Passes, 1e-9)
				require.Equal(t, most.Locked(), x.down.Locked)
				require.InDelta(t, float64(most.Helical), float64(x.down.Helical), 1e-9*9000)
			}
		}
		check(0)
		oc, ic = state(at(1, "packer: sets", 0), at(1, "packer: sets", 1), 150, 150)
		stand, err = pair.TakeHoldOuter(stand, 0, oc, ic)
		require.NoError(t, err)
		oc, ic = state(0, 0, 150, 150)
		check(1)
		oc, ic = state(at(2, "anchor: sets", 0), 0, 150, 150)
		stand, err = pair.TakeHold(stand, 0, oc, ic)
		require.NoError(t, err)
		oc, ic = state(300*psi, 0, 150, 150)
		check(2)
		oc, ic = state(300*psi, 0, 110, hot)
		check(3)
	}
	require.GreaterOrEqual(t, limited, 4, "something bends a string")
	require.GreaterOrEqual(t, buckled, 4)
}
