package sleeve

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

// A close line left blocked instead of vented: 3,000 psi on the open line of the
// first sleeve drives its return into the close line, which shuts the second.
func TestBlockedCloseLineDrivesOthers(t *testing.T) {
	s := well(2)
	e, err := s.Apply([]Position{Closed, Open}, Panel{Close: Setting{Mode: Blocked}, Open: []Setting{on(3000)}})
	require.NoError(t, err)
	require.Equal(t, MayClose, e[1].Motion)
	require.Equal(t, Unknown, e[1].After)

	// By hand: the close line takes 30 in³ of return in 2,650 m of bore with the
	// compressibilities of liquid and wall; the second sleeve needs 400 psi.
	gives := 1 / s.softness(s.CloseLine)
	rise := unit.Pressure(30 * float64(unit.CubicInch) * gives)
	require.Greater(t, rise, 600*unit.PSI)

	// Vented, nothing of the kind.
	e, err = s.Apply([]Position{Closed, Open}, Panel{Open: []Setting{on(3000)}})
	require.NoError(t, err)
	require.Equal(t, []Motion{Opens, Stays}, []Motion{e[0].Motion, e[1].Motion})
}

// A blocked open line doesn't hold a sleeve: it lets it go part of the way. At
// what pressure on the close line it goes all the way follows by hand.
func TestBlockedOpenLineGivesWay(t *testing.T) {
	s := well(1)
	s.Sleeves[0].Friction = unit.Exactly(1000 * unit.PoundForce)
	rise := unit.Pressure(float64(s.Sleeves[0].OpenArea*unit.Area(s.Sleeves[0].Stroke)) / s.softness(s.OpenLines[0]))
	apply := func(p unit.Pressure) Effect {
		e, err := s.Apply([]Position{Open}, Panel{Close: Setting{Pressured, p}, Open: []Setting{{Mode: Blocked}}})
		require.NoError(t, err)
		return e[0]
	}
	require.Equal(t, Stays, apply(499*unit.PSI).Motion)
	require.Equal(t, PartlyCloses, apply(501*unit.PSI).Motion)
	require.Equal(t, PartlyCloses, apply(500*unit.PSI+rise*(1-3e-7)).Motion)
	require.Equal(t, Closes, apply(500*unit.PSI+rise*(1+3e-7)).Motion)

	// Shut in with pressure, it is a hold with a limit.
	e, err := s.Apply([]Position{Open}, Panel{Close: on(3000), Open: []Setting{{Blocked, 2600 * unit.PSI}}})
	require.NoError(t, err)
	require.Equal(t, Stays, e[0].Motion)
	require.InDelta(t, 200, e[0].Margin.In(unit.PoundForce), 1e-6)
}

// The same through a blocked close line: a sleeve that stops where its own return
// balances it hasn't opened.
func TestBlockedCloseLineStopsASleeve(t *testing.T) {
	s := well(1)
	s.Sleeves[0].Friction = unit.Exactly(1000 * unit.PoundForce)
	rise := unit.Pressure(float64(s.Sleeves[0].CloseArea*unit.Area(s.Sleeves[0].Stroke)) / s.softness(s.CloseLine))
	for _, c := range []struct {
		at   unit.Pressure
		want Motion
	}{{499 * unit.PSI, Stays}, {501 * unit.PSI, PartlyOpens}, {500*unit.PSI + rise - unit.PSI, PartlyOpens}, {500*unit.PSI + rise + unit.PSI, Opens}} {
		e, err := s.Apply([]Position{Closed}, Panel{Close: Setting{Mode: Blocked}, Open: []Setting{{Pressured, c.at}}})
		require.NoError(t, err)
		require.Equal(t, c.want, e[0].Motion, "at %v", c.at)
	}
}

// Lines that can't give stop a sleeve at once, and never for certain let it
// through.
func TestRigidBlockedLine(t *testing.T) {
	s := well(2)
	s.Liquid.Compressibility = 0
	for i := range s.OpenLines {
		s.OpenLines[i].Young = 0
	}
	s.CloseLine.Young = 0
	e, err := s.Apply([]Position{Closed, Open}, Panel{Close: Setting{Mode: Blocked}, Open: []Setting{on(3000), {Mode: Blocked}}})
	require.NoError(t, err)
	require.Equal(t, MayOpen, e[0].Motion, "the other may draw what it presses in")
	for _, x := range e {
		require.False(t, math.IsNaN(float64(x.Force.Least)) || math.IsInf(float64(x.Force.Least), 0), "%+v", x)
		require.False(t, math.IsInf(float64(x.Margin), 0), "%+v", x)
	}
	e, err = s.Apply([]Position{Closed, Closed}, Panel{Close: Setting{Mode: Blocked}, Open: []Setting{on(3000)}})
	require.NoError(t, err)
	require.Equal(t, []Motion{PartlyOpens, Stays}, []Motion{e[0].Motion, e[1].Motion})
}

// What a blocked line has taken stays in it for the next operation.
func TestRunRemembersBlockedLines(t *testing.T) {
	s := well(3)
	s.CloseLine.Length = 12 * unit.Kilometre // a long line takes one return and not two
	steps, after, err := s.Run([]Position{Closed, Closed, Open}, []Operation{
		{CloseLine, Setting{Mode: Blocked}},
		{0, on(4000)}, {0, Setting{}},
		{1, on(4000)},
	}, nil)
	require.NoError(t, err)
	require.Len(t, steps, 4)
	first, second := steps[1].Effects[2], steps[3].Effects[2]
	require.Less(t, second.Force.Least, first.Force.Least, "the second return adds to the first")
	require.Equal(t, Unknown, after[2])

	// Blocked under pressure and vented again.
	steps, after, err = s.Run([]Position{Closed, Closed, Open}, []Operation{
		{2, on(3000)}, {2, Setting{Mode: Blocked}}, {CloseLine, on(3000)}, {CloseLine, Setting{}}, {2, Setting{}},
	}, []Position{Closed, Closed, Open})
	require.NoError(t, err)
	require.Equal(t, Stays, steps[2].Effects[2].Motion)
	require.Equal(t, Open, after[2])
}

// A sleeve that opens from what its blocked open line holds leaves less in it. By
// hand: all the way on a long line, the pressure falls by stroke volume over
// softness; on a short one it stops at 500 psi, where friction holds it.
func TestBlockedOpenLineEmpties(t *testing.T) {
	trapped := []Operation{{CloseLine, on(3000)}, {0, on(3000)}, {0, Setting{Mode: Blocked}}, {CloseLine, Setting{}}}
	last := func(s System, p unit.Pressure) (opened, closed Effect) {
		steps, _, err := s.Run([]Position{Closed}, append(trapped[:4:4], Operation{CloseLine, Setting{Pressured, p}}), nil)
		require.NoError(t, err)
		return steps[3].Effects[0], steps[4].Effects[0]
	}
	s := well(1)
	s.Sleeves[0].Friction = unit.Exactly(1000 * unit.PoundForce)
	opened, closed := last(s, 990*unit.PSI)
	require.Equal(t, PartlyOpens, opened.Motion)
	require.Equal(t, MayOpen, closed.Motion, "what is left in the line is known as a range")
	_, closed = last(s, 1010*unit.PSI)
	require.Equal(t, MayMove, closed.Motion)

	s.OpenLines[0].Length = 12 * unit.Kilometre
	left := 3000*unit.PSI - unit.Pressure(float64(s.Sleeves[0].OpenArea*unit.Area(s.Sleeves[0].Stroke))/s.softness(s.OpenLines[0]))
	opened, closed = last(s, left+490*unit.PSI)
	require.Equal(t, Opens, opened.Motion)
	require.Equal(t, Stays, closed.Motion)
	_, closed = last(s, left+510*unit.PSI)
	require.Equal(t, PartlyCloses, closed.Motion)
}

func FuzzApply(f *testing.F) {
	f.Add(2.0, 2.0, 1000.0, uint8(5), uint8(1), 3000.0)
	f.Fuzz(func(t *testing.T, ao, ac, friction float64, modes, at uint8, psi float64) {
		s := well(2)
		s.Sleeves[0].OpenArea, s.Sleeves[0].CloseArea = unit.Area(ao)*unit.SquareInch, unit.Area(ac)*unit.SquareInch
		s.Sleeves[0].Friction = unit.Within(unit.Force(friction)*unit.PoundForce, 0.3)
		p := unit.Pressure(psi) * unit.PSI
		panel := Panel{Setting{Mode(modes % 4), p}, []Setting{{Mode(modes / 4 % 4), p}, {Mode(modes / 16 % 4), p}}}
		before := []Position{Position(at % 3), Position(at / 3 % 3)}
		effects, err := s.Apply(before, panel)
		if err != nil {
			return
		}
		for _, e := range effects {
			for _, x := range []unit.Force{e.Force.Least, e.Force.Greatest, e.Margin} {
				if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
					t.Fatalf("%+v", e)
				}
			}
			if e.Margin < 0 {
				t.Fatalf("margin of %+v is negative", e)
			}
		}
		if _, err := s.Plan(Route{From: before, To: []Position{Open, Closed}, Surface: surface}); err != nil {
			return
		}
	})
}

func BenchmarkPlanSixSleeves(b *testing.B) {
	s := well(6)
	r := Route{From: make([]Position, 6), To: []Position{Open, Closed, Open, Closed, Open, Closed}, Surface: surface, Single: true}
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := s.Plan(r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkApply(b *testing.B) {
	s := well(6)
	panel := Panel{Close: Setting{Mode: Blocked}, Open: []Setting{on(3000)}}
	before := []Position{Closed, Open, Closed, Open, Closed, Open}
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := s.Apply(before, panel); err != nil {
			b.Fatal(err)
		}
	}
}
