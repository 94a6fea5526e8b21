package valve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

func psiBand(least, greatest float64) unit.Band[unit.Pressure] {
	return unit.Band[unit.Pressure]{
		Least:    unit.Pressure(least) * unit.PSI,
		Nominal:  unit.Pressure((least+greatest)/2) * unit.PSI,
		Greatest: unit.Pressure(greatest) * unit.PSI,
	}
}

func ExampleTrigger_Ramp() {
	shear := Trigger{Threshold: psiBand(2850, 3150)}
	o := shear.Ramp(TriggerState{}, 0, 3000*unit.PSI)
	fmt.Println(o.Verdict, "-", shear.Condition(o.State))
	fmt.Println(o.Margin.Near.Rounded(4), "past the weakest,", (-o.Margin.Far).Rounded(4), "short of the strongest")
	o = shear.Ramp(o.State, 0, 3150*unit.PSI)
	fmt.Println(o.Verdict, "-", shear.Condition(o.State))
	// Output:
	// may fire - unknown
	// 150 psi past the weakest, 150 psi short of the strongest
	// must fire - fired
}

// The bounds of a band belong to it: at the least value a device may fire, at
// the greatest it must.
func TestTriggerAtTheEndsOfItsBand(t *testing.T) {
	for _, c := range []struct {
		at   float64
		want Firing
	}{
		{2849.999, CannotFire}, {2850, MayFire}, {2850.001, MayFire},
		{3149.999, MayFire}, {3150, MustFire}, {3150.001, MustFire},
	} {
		rising := Trigger{Threshold: psiBand(2850, 3150)}
		at := unit.Pressure(c.at) * unit.PSI
		require.Equal(t, c.want, rising.Ramp(TriggerState{}, 0, at).Verdict, "rising to %v", at)
		require.Equal(t, c.want, rising.Ramp(TriggerState{}, at, 0).Verdict, "falling from %v counts as having been there", at)
		falling := rising.Reversed()
		require.Equal(t, c.want, falling.Ramp(TriggerState{}, 0, -at).Verdict, "falling to %v", -at)
		require.Equal(t, rising.MarginOf(at), falling.MarginOf(-at))
	}
	exact := Trigger{Threshold: unit.Exactly(1000 * unit.PSI)}
	require.Equal(t, CannotFire, exact.Ramp(TriggerState{}, 0, unit.Pressure(math.Nextafter(float64(1000*unit.PSI), 0))).Verdict)
	require.Equal(t, MustFire, exact.Ramp(TriggerState{}, 0, 1000*unit.PSI).Verdict)
}

func TestTriggerUnknownStays(t *testing.T) {
	tr := Trigger{Threshold: psiBand(2000, 2400)}
	s := tr.Ramp(TriggerState{}, 0, 2100*unit.PSI).State
	require.Equal(t, Unknown, tr.Condition(s))
	o := tr.Ramp(s, 2100*unit.PSI, 0)
	require.Equal(t, MayHaveFired, o.Verdict, "bleeding off fires nothing")
	require.Equal(t, Unknown, tr.Condition(o.State), "and clears nothing up")
	require.Equal(t, MayHaveFired, tr.Ramp(o.State, 0, 2100*unit.PSI).Verdict, "it saw as much before")
	require.Equal(t, MayFire, tr.Ramp(o.State, 0, 2101*unit.PSI).Verdict)
	low, high, ok := o.State.Seen()
	require.True(t, ok)
	require.Zero(t, low)
	require.Equal(t, 2100*unit.PSI, high)
	o = tr.Ramp(o.State, 0, 2400*unit.PSI)
	require.Equal(t, MustFire, o.Verdict)
	require.Equal(t, AlreadyFired, tr.Ramp(o.State, 0, 5000*unit.PSI).Verdict)
}

func TestTriggerCounts(t *testing.T) {
	tr := Trigger{Threshold: psiBand(1900, 2100), Count: 3, Rearm: psiBand(400, 600)}
	require.NoError(t, tr.Validate())
	var s TriggerState
	up := func(to float64) Outcome { o := tr.Ramp(s, 0, unit.Pressure(to)*unit.PSI); s = o.State; return o }
	down := func(from, to float64) {
		s = tr.Ramp(s, unit.Pressure(from)*unit.PSI, unit.Pressure(to)*unit.PSI).State
	}
	require.Equal(t, CannotFire, up(2500).Verdict)
	down(2500, 0)
	require.Equal(t, CannotFire, up(2000).Verdict, "perhaps the second")
	latest, earliest := s.Counted()
	require.Equal(t, []int{1, 2}, []int{latest, earliest})
	down(2000, 500) // perhaps re-armed
	s = tr.Ramp(s, 500*unit.PSI, 2500*unit.PSI).State
	require.Equal(t, Unknown, tr.Condition(s), "two or three times")
	down(2500, 0)
	require.Equal(t, MustFire, up(2500).Verdict)
}

// A staircase that never comes back to Rearm counts once.
func TestTriggerCountsOncePerCycle(t *testing.T) {
	tr := Trigger{Threshold: unit.Exactly(2000 * unit.PSI), Count: 2, Rearm: unit.Exactly(500 * unit.PSI)}
	s := TriggerState{}
	for _, to := range []float64{2200, 600, 2200, 501, 3000} {
		s = tr.Ramp(s, 600*unit.PSI, unit.Pressure(to)*unit.PSI).State
	}
	require.Equal(t, Armed, tr.Condition(s))
	s = tr.Ramp(s, 3000*unit.PSI, 500*unit.PSI).State
	require.Equal(t, MustFire, tr.Ramp(s, 500*unit.PSI, 2000*unit.PSI).Verdict)
}

func TestRowInOneRamp(t *testing.T) {
	row := Row{
		{Threshold: unit.Exactly(1000 * unit.PSI)},
		{Threshold: unit.Exactly(2000 * unit.PSI)},
		{Threshold: unit.Exactly(300 * unit.PSI), Direction: Falling},
	}
	require.NoError(t, row.Validate())
	o := row.Ramp(TriggerState{}, 0, 2500*unit.PSI)
	require.Equal(t, CannotFire, o.Verdict)
	certain, possible := o.State.Links()
	require.Equal(t, 2, certain)
	require.Equal(t, 2, possible)
	require.Equal(t, MustFire, row.Ramp(o.State, 2500*unit.PSI, 0).Verdict)
	require.Equal(t, Fired, row.Condition(row.Done()))
}

func TestTriggerNaNIsUnknown(t *testing.T) {
	nan := unit.Pressure(math.NaN())
	for _, tr := range []Trigger{
		{Threshold: psiBand(100, 200)},
		{Threshold: psiBand(100, 200), Direction: Falling},
		{Threshold: psiBand(100, 200), Count: 5, Rearm: psiBand(10, 20)},
	} {
		o := tr.Ramp(TriggerState{}, 150*unit.PSI, nan)
		require.Equal(t, MayFire, o.Verdict)
		require.Equal(t, MayFire, tr.Ramp(TriggerState{}, nan, 150*unit.PSI).Verdict)
	}
}

func TestTriggerCheck(t *testing.T) {
	for name, tr := range map[string]Trigger{
		"band turned":       {Threshold: unit.Band[unit.Pressure]{Least: 2, Nominal: 1, Greatest: 3}},
		"NaN":               {Threshold: unit.Exactly(unit.Pressure(math.NaN()))},
		"direction":         {Direction: 2},
		"negative count":    {Count: -1},
		"rearm too high":    {Threshold: psiBand(500, 600), Count: 2, Rearm: psiBand(400, 500)},
		"rearm too low":     {Threshold: psiBand(500, 600), Count: 2, Direction: Falling},
		"rearm turned":      {Threshold: psiBand(500, 600), Count: 2, Rearm: unit.Band[unit.Pressure]{Least: 2}},
		"count without end": {Count: MaxCount + 1, Threshold: psiBand(500, 600)},
	} {
		require.Error(t, tr.Validate(), name)
		require.Error(t, Row{tr}.Validate(), name)
	}
	require.NoError(t, Trigger{}.Validate())
	require.Error(t, Row{}.Validate())
	require.NotPanics(t, func() { Row{}.Ramp(TriggerState{}, 0, 1) })
}

// device is a plain simulation of one device with known thresholds, stepped in
// small steps: an independent way to the bounds.
type device struct {
	at, rearm []unit.Pressure
	link      int
	counted   int
	out       bool
}

func (d *device) step(row Row, p unit.Pressure) {
	for d.link < len(row) {
		tr := row[d.link]
		level, falling := d.at[d.link], tr.Direction == Falling
		if d.out {
			level, falling = d.rearm[d.link], !falling
		}
		if falling && p > level || !falling && p < level {
			return
		}
		if d.out {
			d.out = false
			continue
		}
		d.counted++
		d.out = true
		if d.counted >= max(tr.Count, 1) {
			d.link++
			d.counted, d.out = 0, false
		}
	}
}

func TestRowBoundsEveryDevice(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	in := func(b unit.Band[unit.Pressure]) unit.Pressure {
		switch random.IntN(4) {
		case 0:
			return b.Least
		case 1:
			return b.Greatest
		}
		return b.Least + unit.Pressure(random.Float64())*(b.Greatest-b.Least)
	}
	rows := []Row{
		{{Threshold: psiBand(50, 60)}},
		{{Threshold: psiBand(30, 40), Direction: Falling}},
		{{Threshold: psiBand(55, 70)}, {Threshold: psiBand(20, 30), Direction: Falling}},
		{{Threshold: psiBand(55, 70), Count: 3, Rearm: psiBand(30, 45)}, {Threshold: psiBand(30, 45), Direction: Falling}},
		{{Threshold: psiBand(20, 30)}, {Threshold: psiBand(60, 75), Direction: Falling}},
		{{Threshold: psiBand(55, 60), Count: 2, Rearm: psiBand(30, 45)}, {Threshold: psiBand(70, 85)}, {Threshold: psiBand(10, 20), Direction: Falling, Count: 2, Rearm: psiBand(40, 50)}},
	}
	tally := map[Condition]int{}
	for _, row := range rows {
		require.NoError(t, row.Validate())
		for run := 0; run < 150; run++ {
			devices := make([]device, 12)
			for i := range devices {
				for _, tr := range row {
					devices[i].at = append(devices[i].at, in(tr.Threshold))
					devices[i].rearm = append(devices[i].rearm, in(tr.Rearm))
				}
			}
			var s TriggerState
			from := unit.Pressure(0)
			for ramp := 0; ramp < 12; ramp++ {
				to := unit.Pressure(random.IntN(101)) * unit.PSI
				before := s
				var off unit.Band[unit.Pressure]
				if run%3 == 0 {
					off = psiBand(-6*random.Float64(), 6*random.Float64())
				}
				o := row.RampWithin(s, from, to, off)
				s = o.State
				for i := range devices {
					had := devices[i].link >= len(row)
					d := in(off)
					const steps = 40
					for k := 0; k <= steps; k++ {
						p := from + (to-from)*unit.Pressure(k)/steps
						if k == steps {
							p = to
						}
						devices[i].step(row, p+d)
					}
					fired := devices[i].link >= len(row)
					switch o.Verdict {
					case CannotFire:
						require.False(t, fired, "row %v from %v to %v", row, from, to)
					case MustFire, AlreadyFired:
						require.True(t, fired, "row %v from %v to %v", row, from, to)
					case MayHaveFired:
						require.Equal(t, had, fired, "row %v from %v to %v after %+v", row, from, to, before)
					}
				}
				tally[row.Condition(s)]++
				from = to
			}
		}
	}
	require.Greater(t, tally[Armed], 500)
	require.Greater(t, tally[Unknown], 500)
	require.Greater(t, tally[Fired], 500)
}

// The two bounds are reached: a row without tolerance is never unknown.
func TestRowWithoutToleranceIsNeverUnknown(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	row := Row{{Threshold: unit.Exactly(60 * unit.PSI), Count: 3, Rearm: unit.Exactly(30 * unit.PSI)}, {Threshold: unit.Exactly(30 * unit.PSI), Direction: Falling}}
	for run := 0; run < 200; run++ {
		var s TriggerState
		from := unit.Pressure(0)
		for ramp := 0; ramp < 20; ramp++ {
			to := unit.Pressure(random.IntN(101)) * unit.PSI
			s = row.Ramp(s, from, to).State
			from = to
			require.NotEqual(t, Unknown, row.Condition(s))
		}
	}
}
