package flow_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// followed is a displacement of two stages in a well whose sides change their bore, with an opening
// at the end of the pipe, losses on both sides and a back pressure.
func followed() flow.Displacement {
	mud := func(name string, density unit.Density, n float64) flow.PumpedFluid {
		return flow.PumpedFluid{Name: name, Density: density, Rheology: flow.PowerLaw(0.4, n)}
	}
	return flow.Displacement{
		Well: flow.Well{
			Pipe: []flow.ConduitSection{
				{Name: "upper pipe", Conduit: flow.Conduit{Outer: 0.11}, Length: 1200, BottomTVD: 1150, Minor: 3},
				{Name: "lower pipe", Conduit: flow.Conduit{Outer: 0.08}, Length: 700, BottomTVD: 1600}},
			Annulus: []flow.ConduitSection{
				{Name: "upper annulus", Conduit: flow.Conduit{Outer: 0.22, Inner: 0.127}, Length: 900, BottomTVD: 880},
				{Name: "lower annulus", Conduit: flow.Conduit{Outer: 0.2, Inner: 0.1}, Length: 1000, BottomTVD: 1600, Minor: 5}},
			Exit: flow.Orifices{Count: 1, Diameter: 0.03, Discharge: 0.95}},
		InPipe: mud("old", 1250, 0.7), InAnnulus: mud("old", 1250, 0.7),
		Stages: []flow.Stage{
			{Liquid: mud("spacer", 1100, 0.9), Volume: 9, Rate: 0.010},
			{Liquid: mud("new", 1030, 0.8), Volume: 60, Rate: 0.016}},
		BackPressure: 3e5, Output: 0.015, Every: 7,
	}
}

// section is one in the direction of flow.
type section struct {
	flow.ConduitSection
	side    string
	area    float64
	drop    float64 // of vertical depth along the flow
	lastOne bool    // before the exit
}

func along(d flow.Displacement) (all []section) {
	side := func(list []flow.ConduitSection, up bool, name string) (s []section) {
		top := 0.0
		for _, x := range list {
			c := x.Conduit
			area := math.Pi / 4 * (float64(c.Outer*c.Outer) - float64(c.Inner*c.Inner))
			one := section{ConduitSection: x, side: name, area: area, drop: float64(x.BottomTVD) - top}
			top = float64(x.BottomTVD)
			if up {
				one.drop = -one.drop
				s = append([]section{one}, s...)
			} else {
				s = append(s, one)
			}
		}
		return s
	}
	if d.Reverse {
		all = side(d.Well.Annulus, false, "annulus")
		all[len(all)-1].lastOne = true
		return append(all, side(d.Well.Pipe, true, "pipe")...)
	}
	all = side(d.Well.Pipe, false, "pipe")
	all[len(all)-1].lastOne = true
	return append(all, side(d.Well.Annulus, true, "annulus")...)
}

// what stands at coordinate x, a volume from the inlet, when v is pumped: the last pumped stands first.
func stands(d flow.Displacement, exit, x, v float64) flow.PumpedFluid {
	for i := len(d.Stages) - 1; i >= 0; i-- {
		before := 0.0
		for _, s := range d.Stages[:i] {
			before += float64(s.Volume)
		}
		pumped := math.Min(v-before, float64(d.Stages[i].Volume))
		if pumped <= 0 {
			continue
		}
		if x < v-before && x > v-before-pumped {
			return d.Stages[i].Liquid
		}
	}
	first, second := d.InPipe, d.InAnnulus
	if d.Reverse {
		first, second = second, first
	}
	if x-v < exit {
		return first
	}
	return second
}

// A displacement followed from inlet to outlet in pieces of one liquid: friction of
// each by Stream.Friction, weight by its density.
func TestDisplacementFollowed(t *testing.T) {
	for _, reverse := range []bool{false, true} {
		d := followed()
		d.Reverse = reverse
		s, err := d.Schedule()
		require.NoError(t, err)
		legs := along(d)
		exit, total := 0.0, 0.0
		var ends []float64
		for _, l := range legs {
			total += l.area * float64(l.Length)
			ends = append(ends, total)
			if l.lastOne {
				exit = total
			}
		}
		starts := []float64{0, 9}
		work := func(v, rate float64) (pump, static, friction, bottom float64) {
			pump, static = float64(d.BackPressure), float64(d.BackPressure)
			cuts := append([]float64{0}, ends...)
			for _, c := range append(starts, -exit) {
				if at := v - c; at > 0 && at < total {
					cuts = append(cuts, at)
				}
			}
			slices.Sort(cuts)
			for i := len(cuts) - 2; i >= 0; i-- {
				a, b := cuts[i], cuts[i+1]
				if b-a < 1e-12 {
					continue
				}
				j, _ := slices.BinarySearch(ends, (a+b)/2)
				l := legs[j]
				x := stands(d, exit, (a+b)/2, v)
				fr, err := flow.Stream{Conduit: l.Conduit, Rheology: x.Rheology, Density: x.Density, Rate: unit.FlowRate(rate)}.Friction()
				require.NoError(t, err)
				part := (b - a) / (l.area * float64(l.Length))
				speed := rate / l.area
				lost := part * (float64(fr.Gradient)*float64(l.Length) + l.Minor*float64(x.Density)*speed*speed/2)
				weight := float64(x.Density) * g * l.drop * part
				pump, static, friction = pump+lost-weight, static-weight, friction+lost
				if a == exit || math.Abs(a-exit) < 1e-12 {
					bottom = pump
					o := stands(d, exit, exit-1e-9, v)
					v := rate / (math.Pi / 4 * 0.03 * 0.03 * 0.95)
					pump, friction = pump+float64(o.Density)*v*v/2, friction+float64(o.Density)*v*v/2
					if reverse { // the annulus is before the exit
						bottom = pump
					}
				}
			}
			return pump, static, friction, bottom
		}
		for _, p := range s.Points {
			v, rate := float64(p.Volume), float64(p.Rate)
			seconds := v / 0.010
			if v > 9 {
				seconds = 900 + (v-9)/0.016
			}
			require.InDelta(t, seconds, p.Time.Seconds(), 1e-6, "%v", p.Volume)
			require.InEpsilon(t, v/0.015+1, p.Strokes+1, 1e-12)
			matches := false
			for _, near := range []float64{v - 1e-8, v + 1e-8} {
				pump, static, friction, bottom := work(math.Max(near, 0), rate)
				same := func(want float64, got unit.Pressure) bool {
					return math.Abs(want-float64(got)) < 1e-7*math.Abs(want)+20 // some pascals for the step aside
				}
				matches = matches || same(pump, p.PumpPressure) && same(static, p.Static) && same(friction, p.Friction) && same(bottom, p.Bottom)
			}
			pump, static, friction, bottom := work(v, rate)
			require.True(t, matches, "reverse %v: at %v: %v, followed %.0f %.0f %.0f %.0f", reverse, v, p, pump, static, friction, bottom)
			require.InEpsilon(t, float64(p.Bottom)/(g*1600), float64(p.Equivalent), 1e-12)
		}

		// A point at each end of a stage, each multiple of Every, and wherever a front meets the end of a section.
		want := []float64{0, 9, 69}
		for v := 7.0; v < 69; v += 7 {
			want = append(want, v)
		}
		for _, e := range ends {
			for _, c := range append(starts, -exit) {
				if v := e + c; v > 0 && v < 69 {
					want = append(want, v)
				}
			}
		}
		slices.Sort(want)
		want = slices.CompactFunc(want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
		var got []float64
		for i, p := range s.Points {
			got = append(got, float64(p.Volume))
			if i > 0 {
				require.NotEqual(t, s.Points[i-1], p)
			}
		}
		got = slices.CompactFunc(got, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
		require.InDeltaSlice(t, want, got, 1e-9)

		// The extremes are the first of the greatest and the first of the least.
		by := func(of func(flow.Point) unit.Pressure) func(a, b flow.Point) int {
			return func(a, b flow.Point) int { return cmp.Compare(of(a), of(b)) }
		}
		pump := by(func(p flow.Point) unit.Pressure { return p.PumpPressure })
		bottom := by(func(p flow.Point) unit.Pressure { return p.Bottom })
		require.Equal(t, slices.MaxFunc(s.Points, pump), s.GreatestPump)
		require.Equal(t, slices.MaxFunc(s.Points, bottom), s.GreatestBottom)
		require.Equal(t, slices.MinFunc(s.Points, bottom), s.LeastBottom)
		require.Equal(t, unit.Volume(69), s.Pumped)
		require.InDelta(t, 900+60/0.016, s.Duration.Seconds(), 1e-6)

		// What is where: each side is full, from top to bottom, and a batch's spans hold its volume.
		for _, v := range []unit.Volume{0, 5, 9, 20, 33, 69} {
			filled := map[string]float64{}
			for _, batch := range s.At(v) {
				held := 0.0
				for _, x := range batch.Spans {
					i := slices.IndexFunc(legs, func(l section) bool { return l.Name == x.Section })
					held += legs[i].area * float64(x.LowerMD-x.UpperMD)
					filled[x.Section] += float64(x.LowerMD - x.UpperMD)
					top := 0.0
					for _, l := range append(slices.Clone(d.Well.Pipe), d.Well.Annulus...) {
						if l.Name == "upper annulus" {
							top = 0
						}
						if l.Name == x.Section {
							require.GreaterOrEqual(t, float64(x.UpperMD), top-1e-9)
							require.LessOrEqual(t, float64(x.LowerMD), top+float64(l.Length)+1e-9)
						}
						top += float64(l.Length)
					}
				}
				require.InDelta(t, float64(batch.Volume), held, 1e-9, "%v of %v", v, batch.Name)
			}
			require.Len(t, filled, 4)
			for _, l := range legs {
				require.InDelta(t, float64(l.Length), filled[l.Name], 1e-9)
			}
		}

		// Events, in order of volume, each at its own time.
		require.True(t, slices.IsSortedFunc(s.Events, func(a, b flow.Event) int { return cmp.Compare(a.Volume, b.Volume) }))
		seen := map[string]float64{}
		for _, e := range s.Events {
			v := float64(e.Volume)
			seen[e.What] = v
			seconds := v / 0.010
			if v > 9 {
				seconds = 900 + (v-9)/0.016
			}
			require.InDelta(t, seconds, e.Time.Seconds(), 1e-6, e.What)
		}
		wants := map[string]float64{"start of new": 9, "spacer at the exit": exit, "new at the exit": 9 + exit, "spacer at the outlet": total, "new at the outlet": 9 + total}
		for what, v := range wants {
			if v > 69 {
				require.NotContains(t, seen, what)
				continue
			}
			require.InDelta(t, v, seen[what], 1e-9, what)
			delete(seen, what)
		}
		require.Empty(t, seen)
	}
}

// With one liquid all through there are no events, and what comes back is one.
func TestScheduleOfOneLiquid(t *testing.T) {
	d := followed()
	d.InPipe, d.InAnnulus = d.Stages[0].Liquid, d.Stages[0].Liquid
	d.Stages, d.Every = d.Stages[:1], 2
	s, err := d.Schedule()
	require.NoError(t, err)
	require.Greater(t, len(s.Points), 3)
	require.Empty(t, s.Events)
	require.Len(t, s.Returns, 1)
	require.InDelta(t, 9, float64(s.Returns[0].Volume), 1e-9)
}

// Ends of ranges that a schedule checks, each on it and just beyond.
func TestDisplacementRanges(t *testing.T) {
	tries := func(change func(*flow.Displacement)) error {
		d := followed()
		change(&d)
		return d.Validate()
	}
	for n, ok := range map[int]bool{0: false, 1: true, 100: true, 101: false} {
		err := tries(func(d *flow.Displacement) { d.Stages = slices.Repeat(d.Stages[:1], n) })
		require.Equal(t, ok, err == nil, n)
		if !ok {
			require.ErrorContains(t, err, fmt.Sprintf("Stages: has %d stages; must have from 1 to 100", n))
		}
	}
	require.NoError(t, tries(func(d *flow.Displacement) { d.BackPressure = 1e9 }))
	require.Error(t, tries(func(d *flow.Displacement) { d.BackPressure = unit.Pressure(math.Nextafter(1e9, 2e9)) }))
	// 20,000 points: 200 sections times 98 stages and the two liquids that are there.
	many := func(stages int) error {
		return tries(func(d *flow.Displacement) {
			d.Every = 0
			d.Stages = slices.Repeat(d.Stages[:1], stages)
			short := func(list []flow.ConduitSection, n int) []flow.ConduitSection {
				list = slices.Repeat(list[:1], n)
				for i := range list {
					list[i].Length, list[i].BottomTVD = 10, unit.Length(i+1)
				}
				return list
			}
			d.Well.Pipe, d.Well.Annulus = short(d.Well.Pipe, 100), short(d.Well.Annulus, 100)
		})
	}
	require.NoError(t, many(98))
	require.ErrorContains(t, many(99), "make with 200 sections and 99 stages too many points; must be at most 20000")
	require.NoError(t, tries(func(d *flow.Displacement) { d.Every = 69.0 / 20_000 }))
	require.ErrorContains(t, tries(func(d *flow.Displacement) { d.Every = 69.0 / 20_001 }), "must make at most 20000 points")

	// The same liquid at both ends, nozzles and sections.
	for n, ok := range map[int]bool{0: false, 1: true, 10_000: true, 10_001: false} {
		o := flow.Orifices{Count: n, Diameter: 0.01, Discharge: 0.9}
		require.Equal(t, ok, o.Validate() == nil, n)
	}
	for n, ok := range map[int]bool{500: true, 501: false} {
		w := followed().Well
		w.Pipe = slices.Repeat(w.Pipe[1:], n)
		for i := range w.Pipe {
			w.Pipe[i].BottomTVD = 1600 * unit.Length(i+1) / unit.Length(n)
		}
		require.Equal(t, ok, w.Validate() == nil, n)
	}
	for end, ok := range map[unit.Length]bool{1600.001: true, 1600.0010000005: false, 1599.999: true, 1599.998: false} {
		w := followed().Well
		w.Annulus = slices.Clone(w.Annulus)
		w.Annulus[1].BottomTVD = end
		require.Equal(t, ok, w.Validate() == nil, end)
	}
	one := flow.Well{Pipe: followed().Well.Pipe[:1], Annulus: followed().Well.Annulus[:1]}
	require.ErrorContains(t, one.Validate(), "must end with Pipe")
	for depth, ok := range map[unit.Length]bool{15e3: true, 15000.001: false} {
		one.Pipe[0].Length, one.Pipe[0].BottomTVD = 16e3, depth
		one.Annulus[0].Length, one.Annulus[0].BottomTVD = 16e3, depth
		require.Equal(t, ok, one.Validate() == nil, depth)
	}
	require.ErrorContains(t, flow.Well{Pipe: followed().Well.Pipe}.Validate(), "Annulus: has 0 sections")
	require.ErrorContains(t, flow.Well{Annulus: followed().Well.Annulus}.Validate(), "Pipe: has 0 sections")
}

// What the working shows, and what it leaves out: strokes without a pump's output, the equivalent
// density where there is no depth, the inner pipe where there is none.
func TestWorkingOfASchedule(t *testing.T) {
	names := func(s flow.Schedule) (all []string) {
		for _, step := range s.Steps() {
			all = append(all, step.Name+" by "+step.Equation)
		}
		return all
	}
	d := followed()
	s, err := d.Schedule()
	require.NoError(t, err)
	full := names(s)
	require.Len(t, full, 7)
	require.Equal(t, []string{"volume of the pipe side, upper pipe by pi/4*D*D*L", "volume of the pipe side, lower pipe by pi/4*D*D*L",
		"volume of the annulus side, upper annulus by pi/4*(D*D-d*d)*L"}, full[:3])
	require.Equal(t, "strokes in all by V/o", full[4])
	require.Equal(t, "greatest equivalent density at the bottom by P/(g*z)", full[6])
	d.Output = 0
	for i := range 2 {
		d.Well.Pipe[i].BottomTVD, d.Well.Annulus[i].BottomTVD = 0, 0
	}
	s, err = d.Schedule()
	require.NoError(t, err)
	require.Len(t, names(s), 5)
	require.Zero(t, s.Points[0].Equivalent)

	c := flow.Circulation{Well: followed().Well, Liquid: followed().InPipe, Rate: 0.01}
	r, err := c.Solve()
	require.NoError(t, err)
	require.Len(t, r.Steps(), 2)
	require.Equal(t, "P/(g*z)", r.Steps()[1].Equation)
	c.Well = d.Well
	r, err = c.Solve()
	require.NoError(t, err)
	require.Len(t, r.Steps(), 1)
}

// A circulation followed: losses of fittings on both sides count, and one nozzle is a nozzle.
func TestCirculationFollowed(t *testing.T) {
	d := followed()
	rate, rho := 0.012, float64(d.InPipe.Density)
	for _, reverse := range []bool{false, true} {
		r, err := flow.Circulation{Well: d.Well, Liquid: d.InPipe, Rate: unit.FlowRate(rate), BackPressure: 2e5, Reverse: reverse}.Solve()
		require.NoError(t, err)
		lost := map[string]float64{}
		for _, x := range append(slices.Clone(d.Well.Pipe), d.Well.Annulus...) {
			fr, err := flow.Stream{Conduit: x.Conduit, Rheology: d.InPipe.Rheology, Density: d.InPipe.Density, Rate: unit.FlowRate(rate)}.Friction()
			require.NoError(t, err)
			v := rate / (math.Pi / 4 * (float64(x.Conduit.Outer*x.Conduit.Outer) - float64(x.Conduit.Inner*x.Conduit.Inner)))
			lost[x.Name] = float64(fr.Gradient)*float64(x.Length) + x.Minor*rho*v*v/2
		}
		v := rate / (math.Pi / 4 * 0.03 * 0.03 * 0.95)
		nozzle := rho * v * v / 2
		pipe, annulus := lost["upper pipe"]+lost["lower pipe"], lost["upper annulus"]+lost["lower annulus"]
		require.InEpsilon(t, pipe, float64(r.PipeLoss), 1e-12)
		require.InEpsilon(t, annulus, float64(r.AnnulusLoss), 1e-12)
		require.InEpsilon(t, nozzle, float64(r.ExitLoss), 1e-12)
		require.InEpsilon(t, 2e5+pipe+annulus+nozzle, float64(r.PumpPressure), 1e-12)
		bottom, shoe := 2e5+annulus+rho*g*1600, 2e5+lost["upper annulus"]+rho*g*880
		if reverse {
			bottom, shoe = 2e5+pipe+nozzle+rho*g*1600, 2e5+pipe+nozzle+lost["lower annulus"]+rho*g*880
		}
		require.InEpsilon(t, bottom, float64(r.Bottom.Pressure), 1e-12)
		require.InEpsilon(t, shoe, float64(r.Nodes[0].Pressure), 1e-12)
	}
}

// What falls by itself: nothing against a yield stress that holds, or where nothing drives.
func TestFallHeldByAYieldStress(t *testing.T) {
	d := followed()
	d.Well.Exit, d.BackPressure, d.Every = flow.Orifices{}, 0, 0
	stiff := flow.Bingham(10*unit.Centipoise, 200)
	d.InPipe.Rheology, d.InAnnulus.Rheology = stiff, stiff
	d.Stages = []flow.Stage{{Liquid: flow.PumpedFluid{Name: "heavier", Density: 1255, Rheology: stiff}, Volume: 9, Rate: 0.01}}
	s, err := d.Schedule()
	require.NoError(t, err)
	_, err = s.FallRate(5)
	require.ErrorIs(t, err, flow.ErrNoFall, "5 kg/m3 in 500 m is some 0.25 bar against 4 τ0 L/D of hundreds")
	_, err = s.FallRate(0)
	require.ErrorIs(t, err, flow.ErrNoFall)
	require.Equal(t, time.Duration(900)*time.Second, s.Duration)
}

// Where the first point is the greatest or the least, it is told; a stage that goes on with the same
// liquid is no front.
func TestExtremesAtTheStart(t *testing.T) {
	heavy, light := followed().InPipe, followed().Stages[1].Liquid
	heavy.Density, heavy.Name = 1500, "heavy"
	check := func(inPipe, with flow.PumpedFluid) flow.Schedule {
		d := followed()
		d.InPipe, d.Every = inPipe, 1
		d.Stages = []flow.Stage{{Liquid: with, Volume: 8, Rate: 0.002}, {Liquid: with, Volume: 3, Rate: 0.002}}
		s, err := d.Schedule()
		require.NoError(t, err)
		for _, e := range s.Events {
			require.NotContains(t, e.What, "start of")
		}
		for _, p := range s.Points {
			require.LessOrEqual(t, p.PumpPressure, s.GreatestPump.PumpPressure)
			require.LessOrEqual(t, p.Bottom, s.GreatestBottom.Bottom)
			require.GreaterOrEqual(t, p.Bottom, s.LeastBottom.Bottom)
		}
		return s
	}
	s := check(heavy, heavy)
	require.Equal(t, s.Points[0], s.LeastBottom, "the annulus gets heavier")
	s = check(light, heavy)
	require.Equal(t, s.Points[0], s.GreatestPump, "the pipe gets heavier")
	require.Equal(t, s.Points[0], s.GreatestBottom, "the annulus gets lighter")
}
