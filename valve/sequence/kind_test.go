package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/controlline"
	"completion.example/valve/sequence"
	"completion.example/valve/sleeve"
	"github.com/stretchr/testify/require"
)

// ends are a band's: the least, the nominal and the greatest.
func ends[Q unit.Scalar](b unit.Band[Q]) []Q { return []Q{b.Least, b.Nominal, b.Greatest} }

// movesAt is what is applied on a compartment as something happens in a step, in psi.
func movesAt(t *testing.T, p *sequence.Plan, step int, action, partial, on string) float64 {
	t.Helper()
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	for _, e := range r.Steps[step].Events {
		if e.Action != action || (e.Partial != "") != (partial != "") {
			continue
		}
		for _, x := range e.Surface {
			if x.Compartment == on {
				return x.Pressure.In(psi)
			}
		}
	}
	require.Fail(t, "doesn't move", "%s in step %d: %+v", action, step, r.Steps[step].Events)
	return 0
}

func near9(t *testing.T, want unit.Pressure, got float64) {
	t.Helper()
	require.InDelta(t, want.In(psi), got, 1e-9*max(1, want.In(psi)))
}

// withLines is a well with two lines to 1,000 ft.
func withLines() *sequence.Plan {
	p := gaugeWell()
	for _, name := range []string{"open line", "close line"} {
		p.Compartments = append(p.Compartments, p.Compartments[0])
		p.Compartments[len(p.Compartments)-1].Name = name
	}
	addPort(p, "door", "tubing", "annulus", false)
	return p
}

// At which surface pressures a device of each kind moves in a plan is what the library's
// own function says of the same device, at both ends of its bands and between.
func TestEachKindMovesWhereTheLibrarySaysSo(t *testing.T) {
	t.Run("sleeve", func(t *testing.T) {
		m := sleeve.Sleeve{Name: "s", TVD: 1000 * foot, OpenArea: 3 * unit.SquareInch, CloseArea: 2.5 * unit.SquareInch, Stroke: 6 * unit.Inch, Across: band(200, 50),
			Friction:        unit.Band[unit.Force]{Least: 2700 * unit.PoundForce, Nominal: 3000 * unit.PoundForce, Greatest: 3300 * unit.PoundForce},
			PerDifferential: 0.8 * unit.SquareInch, Inside: "tubing", Outside: "annulus"}
		line := controlline.Line{Length: 1000 * foot, TVD: 1000 * foot, OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch}
		s := sleeve.System{Sleeves: []sleeve.Sleeve{m}, OpenLines: []controlline.Line{line}, CloseLine: line, Liquid: controlline.LineFluid{Density: 9 * ppg, Viscosity: unit.Centipoise}}
		want, err := s.Shifting(0)
		require.NoError(t, err)
		for n := range 3 {
			p := withLines()
			p.Devices = []sequence.Device{{Name: "sleeve", MD: 1000 * foot, Kind: &sequence.Model{Sleeve: &sequence.SleeveModel{OpenLine: "open line", CloseLine: "close line",
				Port: "door", OpenArea: m.OpenArea, CloseArea: m.CloseArea, Friction: unit.Exactly(ends(m.Friction)[n]), Across: unit.Exactly(ends(m.Across)[n]), PerDifferential: m.PerDifferential}}}}
			p.Steps = []sequence.Step{{Name: "open", Ramps: []map[string]pressure{{"open line": 3000 * psi}, {"open line": 0}}, Expect: []string{"sleeve: opens"}},
				{Name: "close", Ramps: []map[string]pressure{{"close line": 3000 * psi}}, Expect: []string{"sleeve: closes"}}}
			near9(t, ends(want.Open)[n], movesAt(t, p, 0, "sleeve: opens", "", "open line"))
			near9(t, ends(want.Close)[n], movesAt(t, p, 1, "sleeve: closes", "", "close line"))
		}
	})
	t.Run("isolation valve", func(t *testing.T) {
		v := valve.IsolationValve{Unlock: unit.Band[pressure]{Least: 1000 * psi, Nominal: 1050 * psi, Greatest: 1100 * psi}, Bleed: unit.Band[pressure]{Least: 700 * psi, Nominal: 750 * psi, Greatest: 800 * psi}, Cycles: 3}
		chamber := 200 * psi
		range20 := valve.SurfaceRange{Greatest: 20000 * psi}
		for _, kind := range []valve.IsolationKind{valve.OpensUnderPressure, valve.OpensAtBleedOff, valve.OpensAfterCycles} {
			for n := range 3 {
				x := v
				x.Kind, x.Unlock, x.Bleed = kind, unit.Exactly(ends(v.Unlock)[n]), unit.Exactly(ends(v.Bleed)[n])
				columns := valve.Columns{Applied: unit.Exactly(unit.Pressure(9*psiPerFootPpg*1000) * psi), Opposing: unit.Exactly(chamber)}
				up, err := x.PressureUp(columns, range20)
				require.NoError(t, err)
				p := withLines()
				p.Devices = []sequence.Device{{Name: "valve", MD: 1000 * foot, Kind: &sequence.Model{Isolation: &sequence.IsolationModel{Inside: "tubing", Chamber: &chamber, Port: "door",
					Opens: kind, Unlock: x.Unlock, Bleed: x.Bleed, Cycles: v.Cycles}}}}
				p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(1500, 0, 1500, 0, 1500, 0), Expect: []string{"valve: opens"}, Allow: []sequence.Flow{sequence.Circulation}}}
				if kind == valve.OpensUnderPressure {
					near9(t, up.Least, movesAt(t, p, 0, "valve: opens", "", "tubing"))
					continue
				}
				near9(t, up.Least, movesAt(t, p, 0, "valve: opens", "partly", "tubing"))
				down, err := x.BleedOff(columns, range20)
				require.NoError(t, err)
				near9(t, down.Greatest, movesAt(t, p, 0, "valve: opens", "", "tubing"))
				if kind == valve.OpensAfterCycles { // as often as that
					p.Steps[0].Ramps = tubingTo(1500, 0, 1500, 0)
					r := verdict(t, p)
					require.Equal(t, sequence.Missing, r.Findings[0].Kind)
				}
			}
		}
	})
	t.Run("safety valve", func(t *testing.T) {
		v := valve.SafetyValve{Opens: unit.Band[pressure]{Least: 1500 * psi, Nominal: 1600 * psi, Greatest: 1700 * psi}, Closes: unit.Band[pressure]{Least: 700 * psi, Nominal: 800 * psi, Greatest: 900 * psi}}
		for _, backing := range []string{"", "close line"} {
			state := valve.ControlState{TVD: 1000 * foot, Density: 9 * ppg}
			if backing != "" { // a balance line, with as much above it
				v.Backing = valve.TubingBacked
				state.Backing = unit.Exactly(unit.Pressure(9*psiPerFootPpg*1000) * psi)
			}
			want, err := v.Pressures(state)
			require.NoError(t, err)
			for n := range 3 {
				p := withLines()
				p.Devices = []sequence.Device{{Name: "valve", MD: 1000 * foot, Kind: &sequence.Model{Safety: &sequence.SafetyModel{Line: "open line", Backing: backing, Port: "door",
					Opens: unit.Exactly(ends(v.Opens)[n]), Closes: unit.Exactly(ends(v.Closes)[n])}}}}
				p.Steps = []sequence.Step{{Name: "open", Ramps: []map[string]pressure{{"open line": 3000 * psi}, {"open line": 0}}, Expect: []string{"valve: opens", "valve: closes"}, Allow: []sequence.Flow{sequence.Circulation}}}
				near9(t, ends(want.Open)[n], movesAt(t, p, 0, "valve: opens", "", "open line"))
				near9(t, ends(want.Closed)[n], movesAt(t, p, 0, "valve: closes", "", "open line"))
			}
		}
	})
}

// A control line by its kind has the capacity, the bore and the ratings of controlline.Line,
// and what passes those is a finding.
func TestAControlLineByItsKind(t *testing.T) {
	line := controlline.Line{OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch, Yield: 30000 * psi}
	ratings, err := line.Ratings()
	require.NoError(t, err)
	p := withLines()
	for i := 2; i < 4; i++ {
		p.Compartments[i].Capacity = 0
		p.Compartments[i].Kind = &sequence.LineModel{Size: line.OD, Wall: line.Wall}
	}
	p.Compartments[2].Kind.Yield, p.Compartments[2].Kind.Around = line.Yield, "annulus"
	addAction(p, "gauge", "open line", "", rising(19000*psi, 19000*psi))
	p.Steps = []sequence.Step{{Name: "press", Ramps: []map[string]pressure{{"open line": ratings.Working}}}}
	q := p.Expanded()
	require.Equal(t, line.Capacity(), q.Compartments[2].Capacity)
	require.Equal(t, []sequence.Bore{{To: 1000 * foot, Outer: line.ID(), OuterWall: line.Wall}}, q.Compartments[3].Bores)
	require.Len(t, q.Ratings, 1)
	require.Equal(t, unit.Exactly(ratings.Working), q.Ratings[0].Burst)
	require.Equal(t, unit.Exactly(ratings.Collapse), q.Ratings[0].Collapse)
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	p.Steps[0].Ramps[0]["open line"] += psi
	require.Equal(t, sequence.RatingCross, verdict(t, p).Findings[0].Kind)

	for says, edit := range map[string]func(k *sequence.LineModel, c *sequence.Compartment){
		"two walls must be less than the size":  func(k *sequence.LineModel, _ *sequence.Compartment) { k.Wall = k.Size },
		"stands beside a capacity or bores":     func(_ *sequence.LineModel, c *sequence.Compartment) { c.Capacity = line.Capacity() },
		"belongs to a yield strength":           func(k *sequence.LineModel, _ *sequence.Compartment) { k.Around = "" },
		"compartments[2].kind.factor: belongs":  func(k *sequence.LineModel, _ *sequence.Compartment) { k.Yield, k.Around, k.Factor = 0, "", 1.1 },
		"no compartment \"nowhere\"":            func(k *sequence.LineModel, _ *sequence.Compartment) { k.Around = "nowhere" },
		"compartments[2].kind.yield: gives no ": func(k *sequence.LineModel, _ *sequence.Compartment) { k.Yield = -psi },
	} {
		q := p.Clone()
		edit(q.Compartments[2].Kind, &q.Compartments[2])
		require.ErrorContains(t, q.Validate(), says)
	}
}
