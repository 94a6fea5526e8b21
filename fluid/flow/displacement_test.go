package flow_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

var (
	spacer = flow.PumpedFluid{Name: "spacer", Density: 1250 * unit.KilogramPerCubicMetre, Rheology: flow.PowerLaw(0.5, 0.6)}
	brine  = flow.PumpedFluid{Name: "brine", Density: 1120 * unit.KilogramPerCubicMetre, Rheology: flow.Newtonian(1.3 * unit.Centipoise)}
)

func job() flow.Displacement {
	return flow.Displacement{
		Well: well(), InPipe: heavy, InAnnulus: heavy, BackPressure: 2e5,
		Stages: []flow.Stage{{Liquid: spacer, Volume: 6, Rate: 0.008}, {Liquid: brine, Volume: 80, Rate: 0.012}},
		Output: 0.0167,
	}
}

// cells works a moment out another way: the well cut into thin slices, each with
// the liquid at its middle.
func cells(t *testing.T, d flow.Displacement, pumped float64) (pump, bottom float64) {
	t.Helper()
	var rate unit.FlowRate
	edge := 0.0
	for _, s := range d.Stages {
		rate = s.Rate
		if edge += float64(s.Volume); pumped < edge {
			break
		}
	}
	at := func(v float64, inlet float64) flow.PumpedFluid { // v from the inlet
		x := v - pumped
		if x > inlet {
			if d.Reverse {
				return d.InPipe
			}
			return d.InAnnulus
		}
		if x > 0 {
			if d.Reverse {
				return d.InAnnulus
			}
			return d.InPipe
		}
		for _, s := range d.Stages {
			if x += float64(s.Volume); x > 0 {
				return s.Liquid
			}
		}
		return d.Stages[len(d.Stages)-1].Liquid
	}
	type slice struct {
		s    flow.ConduitSection
		drop float64
		in   bool
	}
	const n = 1000
	var way []slice
	add := func(sections []flow.ConduitSection, down, in bool) {
		top := 0.0
		var these []slice
		for _, s := range sections {
			dz := (float64(s.BottomTVD) - top) / n
			top = float64(s.BottomTVD)
			if !down {
				dz = -dz
			}
			for range n {
				these = append(these, slice{s, dz, in})
			}
		}
		if !down {
			for i, j := 0, len(these)-1; i < j; i, j = i+1, j-1 {
				these[i], these[j] = these[j], these[i]
			}
		}
		way = append(way, these...)
	}
	inlet := float64(d.Well.PipeVolume())
	if d.Reverse {
		inlet = float64(d.Well.AnnulusVolume())
		add(d.Well.Annulus, true, true)
		add(d.Well.Pipe, false, false)
	} else {
		add(d.Well.Pipe, true, true)
		add(d.Well.Annulus, false, false)
	}
	known := map[string]flow.Friction{}
	v := 0.0
	pump = float64(d.BackPressure)
	bottom = pump
	for _, x := range way {
		dv := float64(x.s.Conduit.Volume(x.s.Length)) / n
		l := at(v+dv/2, inlet)
		v += dv
		key := x.s.Name + l.Name
		f, ok := known[key]
		if !ok {
			var err error
			f, err = flow.Stream{Conduit: x.s.Conduit, Rheology: l.Rheology, Density: l.Density, Rate: rate}.Friction()
			require.NoError(t, err)
			known[key] = f
		}
		dp := float64(f.Loss(x.s.Length))/n + float64(flow.MinorLoss(x.s.Minor, l.Density, f.Velocity))/n - float64(l.Density)*g*x.drop
		pump += dp
		if !x.in {
			bottom += dp
		}
	}
	loss := float64(d.Well.Exit.Loss(at(inlet, inlet).Density, rate))
	pump += loss
	if d.Reverse {
		bottom += loss // the annulus side is before the exit
	}
	return pump, bottom
}

func TestScheduleMeetsSlices(t *testing.T) {
	for _, reverse := range []bool{false, true} {
		d := job()
		d.Reverse, d.Every = reverse, 1.7
		if reverse {
			d.InPipe = spacer
		}
		s, err := d.Schedule()
		require.NoError(t, err)
		// Between two points the curve is straight: hold its middle.
		checked := 0
		for i := 1; i < len(s.Points); i++ {
			a, b := s.Points[i-1], s.Points[i]
			if b.Volume-a.Volume < 1e-9 {
				continue
			}
			middle := float64(a.Volume+b.Volume) / 2
			pump, bottom := cells(t, d, middle)
			// A slice holds one liquid: up to half of one is another's, with its
			// weight and friction. The pressures are some 40 MPa.
			const slack = 3e4
			require.InDelta(t, pump, float64(a.PumpPressure+b.PumpPressure)/2, slack, "%v at %v", reverse, middle)
			require.InDelta(t, bottom, float64(a.Bottom+b.Bottom)/2, slack, "%v at %v", reverse, middle)
			checked++
		}
		require.Greater(t, checked, 50)
	}
}

// One liquid all the way is a circulation.
func TestScheduleOfOneLiquidIsCirculation(t *testing.T) {
	d := job()
	d.Stages = []flow.Stage{{Liquid: heavy, Volume: 50, Rate: 0.012}}
	s, err := d.Schedule()
	require.NoError(t, err)
	c, err := flow.Circulation{Well: d.Well, Liquid: heavy, Rate: 0.012, BackPressure: d.BackPressure}.Solve()
	require.NoError(t, err)
	for _, p := range s.Points {
		near(t, float64(c.PumpPressure), float64(p.PumpPressure), 1e-9)
		near(t, float64(c.Bottom.Pressure), float64(p.Bottom), 1e-9)
		near(t, float64(c.Bottom.Equivalent), float64(p.Equivalent), 1e-9)
		near(t, 2e5, float64(p.Static), 1e-6)
	}
	require.Empty(t, s.UTubes)
	require.Empty(t, s.Events)
}

// Volumes, strokes and times by hand.
func TestScheduleCounts(t *testing.T) {
	d := job()
	s, err := d.Schedule()
	require.NoError(t, err)
	pipe, total := float64(d.Well.PipeVolume()), float64(d.Well.PipeVolume()+d.Well.AnnulusVolume())
	want := []flow.Event{
		{What: "start of brine", Volume: 6},
		{What: "spacer at the exit", Volume: unit.Volume(pipe)},
		{What: "brine at the exit", Volume: unit.Volume(pipe + 6)},
		{What: "spacer at the outlet", Volume: unit.Volume(total)},
		{What: "brine at the outlet", Volume: unit.Volume(total + 6)},
	}
	for i := range want {
		v := float64(want[i].Volume)
		seconds := min(v, 6)/0.008 + max(v-6, 0)/0.012
		want[i].Time = time.Duration(seconds * 1e9)
		want[i].Strokes = v / 0.0167
	}
	if diff := cmp.Diff(want, s.Events, cmpopts.EquateApprox(1e-12, 0),
		cmp.Comparer(func(a, b unit.Volume) bool { return math.Abs(float64(a/b)-1) < 1e-12 }),
		cmp.Comparer(func(a, b time.Duration) bool { return (a - b).Abs() < time.Microsecond })); diff != "" {
		t.Errorf("Events (-want +got):\n%s", diff)
	}
	require.Equal(t, unit.Volume(86), s.Pumped)
	workingtest.Check(t, s.Steps())
	require.Len(t, s.Steps(), len(d.Well.Pipe)+len(d.Well.Annulus)+3)
	require.Empty(t, flow.Schedule{}.Steps())
	near(t, 6/0.008+80/0.012, s.Duration.Seconds(), 1e-9)
	near(t, 86/0.0167, s.Strokes, 1e-12)
	// What comes back is what goes in.
	var back unit.Volume
	for _, r := range s.Returns {
		back += r.Volume
	}
	near(t, 86, float64(back), 1e-12)
	require.Equal(t, "mud", s.Returns[0].Name)
	near(t, total, float64(s.Returns[0].Volume), 1e-12)
	require.Equal(t, "spacer", s.Returns[1].Name)
	near(t, 6, float64(s.Returns[1].Volume), 1e-12)
	// At the end the well is full of brine, and its static pressures say so.
	last := s.Points[len(s.Points)-1]
	near(t, 2e5, float64(last.Static), 1e-6)
	require.Equal(t, unit.Volume(86), last.Volume)
	for i := 1; i < len(s.Points); i++ {
		require.GreaterOrEqual(t, s.Points[i].Volume, s.Points[i-1].Volume)
		require.GreaterOrEqual(t, s.Points[i].Time, s.Points[i-1].Time)
	}
}

// Light fluid after heavy mud: with all the brine in the tubing and the mud still
// outside, shutting in shows the difference of the columns, by hand.
func TestStaticPressureOfMixedColumns(t *testing.T) {
	d := job()
	d.BackPressure = 0
	d.Stages = []flow.Stage{{Liquid: brine, Volume: d.Well.PipeVolume(), Rate: 0.01}}
	s, err := d.Schedule()
	require.NoError(t, err)
	last := s.Points[len(s.Points)-1]
	near(t, (1500-1120)*g*2300, float64(last.Static), 1e-9)
}

func TestSlugs(t *testing.T) {
	d := job()
	s, err := d.Schedule()
	require.NoError(t, err)
	for _, v := range []unit.Volume{0, 3, 6, 10, 30, 70, 86} {
		batches := s.At(v)
		var sum unit.Volume
		for _, x := range batches {
			sum += x.Volume
			var spans unit.Volume
			for _, y := range x.Spans {
				for _, section := range append(d.Well.Pipe, d.Well.Annulus...) {
					if section.Name == y.Section {
						spans += section.Conduit.Volume(y.LowerMD - y.UpperMD)
					}
				}
			}
			near(t, float64(x.Volume), float64(spans), 1e-9)
		}
		near(t, float64(d.Well.PipeVolume()+d.Well.AnnulusVolume()), float64(sum), 1e-9)
	}
	// 6 m³ of spacer just pumped: at the top of the tubing, by hand.
	batches := s.At(6)
	require.Equal(t, "spacer", batches[0].Name)
	near(t, 6/(math.Pi/4*math.Pow(2.992*0.0254, 2)), float64(batches[0].Length()), 1e-9)
	require.Zero(t, batches[0].Spans[0].UpperMD)
	require.Nil(t, s.At(-1))
	require.Nil(t, s.At(87))
	require.Nil(t, flow.Schedule{}.At(0))
}

func BenchmarkSchedule(b *testing.B) {
	b.ReportAllocs()
	d := job()
	d.Every = 0.1
	for b.Loop() {
		_, _ = d.Schedule()
	}
}

func ExampleDisplacement_Schedule() {
	depth := 9000 * unit.Foot
	d := flow.Displacement{
		Well: flow.Well{
			Pipe:    []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Length: depth, BottomTVD: depth}},
			Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: depth, BottomTVD: depth}},
		},
		InPipe:    flow.PumpedFluid{Name: "mud", Density: 11 * unit.PoundPerGallon, Rheology: flow.Bingham(15*unit.Centipoise, 8*unit.PoundForcePer100SquareFeet)},
		InAnnulus: flow.PumpedFluid{Name: "mud", Density: 11 * unit.PoundPerGallon, Rheology: flow.Bingham(15*unit.Centipoise, 8*unit.PoundForcePer100SquareFeet)},
		Stages: []flow.Stage{{
			Liquid: flow.PumpedFluid{Name: "brine", Density: 9.5 * unit.PoundPerGallon, Rheology: flow.Newtonian(1.5 * unit.Centipoise)},
			Volume: 310 * unit.Barrel, Rate: 3 * unit.BarrelPerMinute,
		}},
	}
	s, err := d.Schedule()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range s.Events {
		fmt.Println(e, "after", e.Time.Round(time.Minute))
	}
	fmt.Println("greatest pump pressure", s.GreatestPump.PumpPressure.Rounded(3), "at", s.GreatestPump.Volume.Rounded(3))
	// Output:
	// brine at the exit at 78.27 bbl after 26m0s
	// brine at the outlet at 305.5 bbl after 1h42m0s
	// greatest pump pressure 1022 psi at 78.3 bbl
}
