package sleeve

import (
	"math"
	"math/rand/v2"
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
	require.Equal(t, PartlyCloses, apply(500*unit.PSI+rise-unit.PSI).Motion)
	require.Equal(t, Closes, apply(500*unit.PSI+rise+unit.PSI).Motion)

	// Shut in with pressure, it is a hold with a limit.
	e, err := s.Apply([]Position{Open}, Panel{Close: on(3000), Open: []Setting{{Blocked, 2600 * unit.PSI}}})
	require.NoError(t, err)
	require.Equal(t, Stays, e[0].Motion)
	require.InDelta(t, 200, e[0].Margin.In(unit.PoundForce), 1e-6)
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

// simulate moves pistons of known friction in small steps, in a random order,
// until none moves any more: an independent way to what can happen.
func simulate(s System, panel Panel, x, friction []float64, random *rand.Rand) []float64 {
	heads, err := s.prepare()
	if err != nil {
		panic(err)
	}
	const steps = 200
	n := len(x)
	at := make([]int, n)
	for i := range at {
		at[i] = int(math.Round(x[i] * steps))
	}
	l := s.hold(panel)
	shut := l.close.low
	open := make([]float64, n)
	for i := range open {
		open[i] = l.open[i].low
	}
	for still := 0; still < 40; {
		still++
		for _, i := range random.Perm(n) {
			if random.IntN(3) == 0 {
				continue // each at its own pace
			}
			v := s.Sleeves[i]
			ao, ac := float64(v.OpenArea), float64(v.CloseArea)
			force := (open[i]+heads[i])*ao - (shut+heads[i])*ac
			move := 0
			if force >= friction[i] && at[i] < steps {
				move = 1
			} else if -force >= friction[i] && at[i] > 0 {
				move = -1
			}
			if move == 0 {
				continue
			}
			still = 0
			at[i] += move
			dx := float64(move) * float64(v.Stroke) / steps
			if l.open[i].blocked {
				open[i] -= ao * dx / s.softness(s.OpenLines[i])
			}
			if l.close.blocked {
				shut += ac * dx / s.softness(s.CloseLine)
			}
		}
	}
	for i := range x {
		x[i] = float64(at[i]) / steps
	}
	return x
}

func TestApplyBoundsEveryWell(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	tally := map[Motion]int{}
	for run := 0; run < 1500; run++ {
		s := well(3)
		s.CloseLine.Length *= unit.Length(1 + 4*random.Float64())
		before := make([]Position, 3)
		panel := Panel{Open: make([]Setting, 3)}
		setting := func() Setting {
			t := Setting{Mode(random.IntN(3)), unit.Pressure(random.IntN(40)*100) * unit.PSI}
			if t.Mode == Blocked && random.IntN(2) == 0 {
				t.Pressure = 0
			}
			return t
		}
		for i := range before {
			before[i] = Position(random.IntN(3))
			panel.Open[i] = setting()
			s.Sleeves[i].CloseArea *= unit.Area(0.95 + 0.1*random.Float64())
			s.OpenLines[i].Length *= unit.Length(1 + 4*random.Float64())
		}
		panel.Close = setting()
		effects, err := s.Apply(before, panel)
		require.NoError(t, err)
		for try := 0; try < 3; try++ {
			x, friction := make([]float64, 3), make([]float64, 3)
			for i, p := range before {
				switch p {
				case Open:
					x[i] = 1
				case Unknown:
					x[i] = float64(random.IntN(11)) / 10
				}
				f := effects[i].Resistance
				friction[i] = float64(f.Least) + random.Float64()*float64(f.Greatest-f.Least)
			}
			start := append([]float64{}, x...)
			x = simulate(s, panel, x, friction, random)
			for i, e := range effects {
				tally[e.Motion]++
				switch e.Motion {
				case Stays:
					require.Equal(t, start[i], x[i], "%+v\n%+v", panel, e)
				case Opens:
					require.Equal(t, 1.0, x[i], "%+v\n%+v", panel, e)
				case Closes:
					require.Equal(t, 0.0, x[i], "%+v\n%+v", panel, e)
				case PartlyOpens, MayOpen:
					require.GreaterOrEqual(t, x[i], start[i], "%+v\n%+v", panel, e)
				case PartlyCloses, MayClose:
					require.LessOrEqual(t, x[i], start[i], "%+v\n%+v", panel, e)
				}
				if e.Motion == PartlyOpens && e.Before == Closed {
					require.Less(t, x[i], 1.0)
				}
				if e.Motion == PartlyCloses && e.Before == Open {
					require.Greater(t, x[i], 0.0)
				}
			}
		}
	}
	for m := Stays; m <= MayMove; m++ {
		if m != MayMove {
			require.Greater(t, tally[m], 20, "%v", m)
		}
	}
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
