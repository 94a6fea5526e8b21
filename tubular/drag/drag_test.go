package drag_test

import (
	"encoding/json"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func tubing() tubular.Pipe {
	return tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
}

func path(t testing.TB, stations ...[3]float64) *hydrostatics.Path {
	t.Helper()
	var list []hydrostatics.Station
	for _, s := range stations {
		list = append(list, hydrostatics.Station{MD: unit.Length(s[0]) * unit.Foot, Inclination: unit.Angle(s[1]) * unit.Degree, Azimuth: unit.Angle(s[2]) * unit.Degree})
	}
	p, err := hydrostatics.NewPath(list)
	require.NoError(t, err)
	return p
}

// straight is 9,000 ft of tubing in a straight hole in 9.5 lb/gal brine.
func straight(t testing.TB, inclination float64) drag.String {
	return drag.String{
		Sections: []drag.PipeSection{{Pipe: tubing(), Length: 9000 * unit.Foot}}, BottomMD: 9000 * unit.Foot,
		Path:         path(t, [3]float64{0, inclination, 0}, [3]float64{9000, inclination, 0}),
		HoleSections: []drag.HoleSection{{BottomMD: 9000 * unit.Foot, Friction: 0.25, Hole: 6.184 * unit.Inch}},
		Inside:       9.5 * unit.PoundPerGallon, Outside: 9.5 * unit.PoundPerGallon,
	}
}

// horizontal is a well with a build, a turn and a level end, a liner below tubing.
func horizontal(t testing.TB, azimuth float64) drag.String {
	s := straight(t, 0)
	s.Path = path(t, [3]float64{0, 0, azimuth}, [3]float64{3000, 0, azimuth}, [3]float64{5000, 45, azimuth}, [3]float64{7000, 60, azimuth + 50},
		[3]float64{9000, 90, azimuth + 50}, [3]float64{12000, 90, azimuth + 50})
	s.Sections = []drag.PipeSection{
		{Pipe: tubing(), Length: 9000 * unit.Foot},
		{Pipe: tubular.Pipe{OD: 5 * unit.Inch, ID: 4.276 * unit.Inch, Weight: 18 * unit.PoundPerFoot, Material: tubular.Steel()}, Length: 3000 * unit.Foot},
	}
	s.BottomMD = 12000 * unit.Foot
	s.HoleSections = []drag.HoleSection{
		{BottomMD: 9500 * unit.Foot, Friction: 0.2, Hole: 8.535 * unit.Inch},
		{BottomMD: 12000 * unit.Foot, Friction: 0.3, Hole: 8.5 * unit.Inch},
	}
	return s
}

func prepare(t testing.TB, s drag.String) *drag.Prepared {
	t.Helper()
	p, err := s.Prepare()
	require.NoError(t, err)
	return p
}

func near(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	require.LessOrEqualf(t, math.Abs(got-want), tolerance, "%s = %.10g, want %.10g", name, got, want)
}

func TestRotatingIsBuoyedWeightOverTrueVerticalDepth(t *testing.T) {
	for _, inc := range []float64{0, 30, 90} {
		s := straight(t, inc)
		w := tubing().BuoyedWeight(s.Inside, s.Outside)
		want := float64(w) * float64(s.BottomMD) * math.Cos(inc*math.Pi/180)
		near(t, "rotating", float64(prepare(t, s).HookLoad(drag.Rotating, 0)), want, 1e-6)
		if inc == 0 { // and all motions alike in a vertical hole
			near(t, "pulled", float64(prepare(t, s).HookLoad(drag.Pulled, 0)), want, 1e-6)
			near(t, "run in", float64(prepare(t, s).HookLoad(drag.RunIn, 0)), want, 1e-6)
		}
	}
	// By hand: 9.3 lb/ft less 9.5 lb/gal on 2.590 in2 of steel at the end.
	near(t, "klbf", prepare(t, straight(t, 0)).HookLoad(drag.Rotating, 0).In(unit.Kilopound), 9.3*9-9.5*4/77*9*2.590, 0.002)
}

func TestInclineIsTheClosedForm(t *testing.T) {
	for _, inc := range []float64{5, 45, 76, 90} {
		s := straight(t, inc)
		w := tubing().BuoyedWeight(s.Inside, s.Outside)
		for _, m := range []drag.Motion{drag.Rotating, drag.RunIn, drag.Pulled} {
			want := drag.Incline(m, w, s.BottomMD, unit.Angle(inc)*unit.Degree, 0.25)
			require.InDelta(t, float64(want), float64(prepare(t, s).HookLoad(m, 0)), 1e-6, "%v at %g°", m, inc)
		}
	}
}

func TestCapstan(t *testing.T) {
	// A pull so great that weight is nothing beside it.
	for _, turn := range [][2]float64{{80, 0}, {20, 0}} {
		s := straight(t, 0)
		s.Path = path(t, [3]float64{0, 0, 0}, [3]float64{9000, turn[0], turn[1]})
		far := 1e12 * unit.PoundForce
		want := drag.Capstan(far, 0.25, unit.Angle(turn[0])*unit.Degree)
		require.InEpsilon(t, float64(want), float64(prepare(t, s).HookLoad(drag.Pulled, far)), 2e-6)
		require.InEpsilon(t, float64(drag.Capstan(far, -0.25, unit.Angle(turn[0])*unit.Degree)), float64(prepare(t, s).HookLoad(drag.RunIn, far)), 2e-6)
	}
	// A turn in a level hole.
	s := straight(t, 0)
	s.Path = path(t, [3]float64{0, 90, 10}, [3]float64{9000, 90, 100})
	require.InEpsilon(t, float64(drag.Capstan(1e12, 0.25, 90*unit.Degree)), float64(prepare(t, s).HookLoad(drag.Pulled, 1e12)), 2e-6)
}

// TestBuildIsTheClosedForm pulls a string around a build whose tension holds it
// to the high side. With α the inclination and R the radius, going up,
// dF/dα = -(μ*F + w*R*(cosα - μ*sinα)), which has a closed answer.
func TestBuildIsTheClosedForm(t *testing.T) {
	s := straight(t, 0)
	s.Path = path(t, [3]float64{0, 0, 0}, [3]float64{9000, 60, 0})
	w, μ := float64(tubing().BuoyedWeight(s.Inside, s.Outside)), 0.25
	α, r := math.Pi/3, float64(s.BottomMD)/(math.Pi/3)
	far := 300e3 * unit.PoundForce // enough to lift it off the low side all along
	// Particular solution A*sinα + B*cosα of F' + μ*F = -w*R*(cosα - μ*sinα).
	a := -w * r * (1 - μ*μ) / (1 + μ*μ)
	b := -w * r * 2 * μ / (1 + μ*μ)
	c := (float64(far) - a*math.Sin(α) - b*math.Cos(α)) * math.Exp(μ*α)
	want := c + b
	s.Spacing = 5 * unit.Foot
	require.InEpsilon(t, want, float64(prepare(t, s).HookLoad(drag.Pulled, far)), 1e-6)
}

func TestRefiningConvergesWithOrderTwo(t *testing.T) {
	at := func(spacing unit.Length, m drag.Motion) float64 {
		s := horizontal(t, 20)
		s.Spacing = spacing
		return float64(prepare(t, s).HookLoad(m, 20*unit.Kilopound))
	}
	for _, m := range []drag.Motion{drag.RunIn, drag.Pulled} {
		best := at(1*unit.Foot, m)
		coarse, half := math.Abs(at(200*unit.Foot, m)-best), math.Abs(at(100*unit.Foot, m)-best)
		order := math.Log2(coarse / half)
		t.Logf("%v: order %.2f, error at 100 ft %.1e", m, order, half/best)
		require.InDelta(t, 2, order, 0.3)
	}
}

func TestFrictionOnlyEverHinders(t *testing.T) {
	p := prepare(t, horizontal(t, 20))
	l := p.Loads()
	require.Less(t, l.RunIn, l.Rotating)
	require.Greater(t, l.Pulled, l.Rotating)
	require.Equal(t, l.Pulled-l.Rotating, l.Drag())
	require.Positive(t, float64(l.Torque))

	smooth := horizontal(t, 20)
	for k := range smooth.HoleSections {
		smooth.HoleSections[k].Friction = 0
	}
	free := prepare(t, smooth).Loads()
	require.InDelta(t, float64(free.Rotating), float64(free.RunIn), 1e-6)
	require.InDelta(t, float64(free.Rotating), float64(free.Pulled), 1e-6)
	require.Zero(t, free.Torque)
}

func TestTurningThePathChangesNothing(t *testing.T) {
	want := prepare(t, horizontal(t, 20)).Loads()
	got := prepare(t, horizontal(t, 255)).Loads()
	require.InEpsilon(t, float64(want.Pulled), float64(got.Pulled), 1e-12)
	require.InEpsilon(t, float64(want.RunIn), float64(got.RunIn), 1e-12)
	require.InEpsilon(t, float64(want.Torque), float64(got.Torque), 1e-12)
}

func TestSplittingASectionChangesNothing(t *testing.T) {
	s := horizontal(t, 20)
	s.Spacing = 100 * unit.Foot
	want := prepare(t, s).Loads()
	s.Sections = []drag.PipeSection{
		{Pipe: s.Sections[0].Pipe, Length: 5000 * unit.Foot}, {Pipe: s.Sections[0].Pipe, Length: 4000 * unit.Foot},
		{Pipe: s.Sections[1].Pipe, Length: 1000 * unit.Foot}, {Pipe: s.Sections[1].Pipe, Length: 2000 * unit.Foot},
	}
	require.Empty(t, cmp.Diff(want, prepare(t, s).Loads()))
}

func TestPartlyRunStringLeavesTheRestAbove(t *testing.T) {
	s := horizontal(t, 20)
	s.BottomMD = 3500 * unit.Foot // 3,000 ft of liner and 500 ft of tubing below the table
	w := func(k int) float64 { return float64(s.Sections[k].Pipe.BuoyedWeight(s.Inside, s.Outside)) }
	tvd, err := s.Path.TVD(s.BottomMD)
	require.NoError(t, err)
	want := w(0)*float64(500*unit.Foot) + w(1)*float64(tvd-500*unit.Foot)
	near(t, "rotating", float64(prepare(t, s).HookLoad(drag.Rotating, 0)), want, 1e-6)
}

func TestTorqueOfALevelStringByHand(t *testing.T) {
	s := straight(t, 90)
	w := float64(tubing().BuoyedWeight(s.Inside, s.Outside))
	near(t, "torque", float64(prepare(t, s).Torque(0)), 0.25*w*float64(s.BottomMD)*float64(3.5*unit.Inch)/2, 1e-6)
}

func TestEndForceIsTheInverse(t *testing.T) {
	p := prepare(t, horizontal(t, 20))
	for _, m := range []drag.Motion{drag.Rotating, drag.RunIn, drag.Pulled} {
		for _, end := range []unit.Force{-20 * unit.Kilopound, 0, 5 * unit.Kilopound, 90 * unit.Kilopound} {
			got, err := p.EndForce(m, p.HookLoad(m, end))
			require.NoError(t, err)
			require.InDelta(t, float64(end), float64(got), 1e-3, "%v", m)
		}
	}
	_, err := p.EndForce(drag.Pulled, unit.Force(math.NaN()))
	require.Error(t, err)
}

func TestProfileAgreesWithHookLoad(t *testing.T) {
	p := prepare(t, horizontal(t, 20))
	for _, m := range []drag.Motion{drag.Rotating, drag.RunIn, drag.Pulled} {
		nodes := p.Profile(m, 3*unit.Kilopound)
		require.Len(t, nodes, p.Size())
		require.Equal(t, p.HookLoad(m, 3*unit.Kilopound), nodes[0].Force)
		require.Zero(t, nodes[0].MD)
		require.Equal(t, 3*unit.Kilopound, nodes[len(nodes)-1].Force)
	}
	require.Equal(t, p.Torque(0), p.Profile(drag.Rotating, 0)[0].Torque)

	// Weight set down in a level hole buckles the string where it passes the
	// sinusoidal load.
	level := prepare(t, straight(t, 90))
	require.False(t, level.Profile(drag.Rotating, -7*unit.Kilopound)[0].Buckles)
	require.True(t, level.Profile(drag.Rotating, -70*unit.Kilopound)[0].Buckles)

	// In a vertical hole it takes Lubinski's 1.94*(E*I*w²)^(1/3) at the lower end.
	upright := straight(t, 0)
	w := upright.Sections[0].Pipe.BuoyedWeight(upright.Inside, upright.Outside)
	critical := 1.94 * math.Cbrt(float64(tubing().Material.Young)*float64(tubing().SecondMoment())*float64(w)*float64(w))
	n := prepare(t, upright).Size() - 1
	require.False(t, prepare(t, upright).Profile(drag.RunIn, unit.Force(-0.99*critical))[n].Buckles)
	require.True(t, prepare(t, upright).Profile(drag.RunIn, unit.Force(-1.01*critical))[n].Buckles)
}

func TestClosedFormsAreHomogeneous(t *testing.T) {
	dimension.Check(t, dimension.Free, func(f unit.Force) unit.Force { return drag.Capstan(f, 0.25, 1) }, 5*unit.Kilopound)
	dimension.Check(t, dimension.Free, func(w unit.WeightPerLength, l unit.Length) unit.Force {
		return drag.Incline(drag.Pulled, w, l, 0.7, 0.25)
	}, 9*unit.PoundPerFoot, 9000*unit.Foot)
}

func TestFaultsComeTogether(t *testing.T) {
	s := horizontal(t, 20)
	s.Sections[0].Length = -5
	s.HoleSections[0].Friction = 7
	s.HoleSections[1].Hole = 2 * unit.Inch
	s.Inside = unit.Density(math.NaN())
	_, err := s.Prepare()
	for _, field := range []string{"Sections[0].Length", "HoleSections[0].Friction: is 7", "HoleSections[1].Hole", "Inside"} {
		require.ErrorContains(t, err, field)
	}
	_, err = drag.String{}.Prepare()
	require.ErrorContains(t, err, "Path: is missing")
}

func TestMotionText(t *testing.T) {
	for _, m := range []drag.Motion{drag.Rotating, drag.RunIn, drag.Pulled} {
		text, err := json.Marshal(m)
		require.NoError(t, err)
		var back drag.Motion
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, m, back)
	}
	_, err := drag.Motion(9).MarshalText()
	require.Error(t, err)
	var m drag.Motion
	require.ErrorContains(t, m.UnmarshalText([]byte("flying")), "pulled")
}

func TestHookLoadAllocatesNothing(t *testing.T) {
	p := prepare(t, horizontal(t, 20))
	require.Zero(t, testing.AllocsPerRun(10, func() { p.HookLoad(drag.Pulled, 0) }))
}

func BenchmarkHookLoadThousandNodes(b *testing.B) {
	s := horizontal(b, 20)
	s.Spacing = 12 * unit.Foot
	p := prepare(b, s)
	var sink unit.Force
	b.ReportAllocs()
	for b.Loop() {
		sink += p.HookLoad(drag.Pulled, 0)
	}
	b.ReportMetric(float64(p.Size()), "nodes")
	_ = sink
}

func BenchmarkPrepareThousandNodes(b *testing.B) {
	s := horizontal(b, 20)
	s.Spacing = 12 * unit.Foot
	for b.Loop() {
		if _, err := s.Prepare(); err != nil {
			b.Fatal(err)
		}
	}
}
