package valve

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

// Columns of 9.5 lb/gal in the tubing and 8.8 lb/gal outside at 9,000 ft, as in
// the needs: 0.7 lb/gal over 9,000 ft is 4/77 · 0.7 · 9,000 = 327.3 psi.
func columns(inside, outside, depth float64) Columns {
	head := func(lbgal float64) unit.Band[unit.Pressure] {
		return unit.Exactly(unit.Pressure(lbgal*depth*4/77) * unit.PSI)
	}
	return Columns{Applied: head(inside), Opposing: head(outside)}
}

func ExampleIsolationValve_PressureUp() {
	v := IsolationValve{Kind: OpensAtBleedOff, Unlock: psiBand(2850, 3150), Bleed: psiBand(400, 600)}
	c := columns(9.5, 8.8, 9000)
	surface := SurfaceRange{Greatest: 5000 * unit.PSI}
	packer := Demand{Name: "packer setting pins", Trigger: Trigger{Threshold: psiBand(3800, 4200)}, Columns: c}
	w, err := v.PressureUp(c, surface, packer)
	fmt.Println(w.Least.Rounded(5), w.Greatest.Rounded(5), err)
	w, err = v.BleedOff(c, surface)
	fmt.Println(w.Least.Rounded(5), w.Greatest.Rounded(5), err)
	packer.Trigger.Threshold = psiBand(3000, 3300)
	_, err = v.PressureUp(c, surface, packer)
	fmt.Println(err)
	// Output:
	// 2822.7 psi 3472.7 psi <nil>
	// 0 psi 72.727 psi <nil>
	// valve: no surface pressure satisfies all: isolation valve, rising needs at least 2823 psi, packer setting pins needs less than 2673 psi; short by 150 psi
}

func TestColumnsDifferential(t *testing.T) {
	d := Columns{Applied: psiBand(90, 110), Opposing: psiBand(40, 60)}.Differential()
	require.InDelta(t, 30, d.Least.In(unit.PSI), 1e-9)
	require.InDelta(t, 50, d.Nominal.In(unit.PSI), 1e-9)
	require.InDelta(t, 70, d.Greatest.In(unit.PSI), 1e-9)
}

// A column that keeps the differential above B can't be bled off at surface:
// 1.5 lb/gal over 9,000 ft is 701 psi, and the valve opens at 400 psi.
func TestBleedOffImpossible(t *testing.T) {
	v := IsolationValve{Kind: OpensAtBleedOff, Unlock: psiBand(2850, 3150), Bleed: psiBand(400, 600)}
	_, err := v.BleedOff(columns(10.5, 9, 9000), SurfaceRange{Greatest: 5000 * unit.PSI})
	var none *NoSurfacePressureError
	require.ErrorAs(t, err, &none)
	require.ErrorIs(t, err, ErrNoSurfacePressure)
	require.InDelta(t, 400-1.5*9000*4/77, none.Ceiling.Surface.In(unit.PSI), 1e-9)
	require.Zero(t, none.Floor.Surface)

	v.Kind = OpensUnderPressure
	_, err = v.BleedOff(columns(9, 9, 9000), SurfaceRange{})
	require.Error(t, err)
	require.NotErrorIs(t, err, ErrNoSurfacePressure)
}

// Every surface pressure in a window does what was asked, and just outside it
// doesn't: the window and the ramp are two ways to the same thing.
func TestWindowAgreesWithRamp(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	found := 0
	for run := 0; run < 2000; run++ {
		lo := 500 + 3000*random.Float64()
		up := Trigger{Threshold: psiBand(lo, lo+200*random.Float64())}
		hi := 500 + 3000*random.Float64()
		other := Trigger{Threshold: psiBand(hi, hi+200*random.Float64())}
		c := columns(8+4*random.Float64(), 8+4*random.Float64(), 8000)
		c.Applied.Greatest += 40 * unit.PSI
		c.Opposing.Least -= 25 * unit.PSI
		demands := []Demand{{"a", up, c, true}, {"b", other, c, false}}
		// The other device seen from the other side is the same device.
		mirrored := []Demand{demands[0], {"b", other.Reversed(), c, false}}
		mirrored[1].Columns.Applied, mirrored[1].Columns.Opposing = c.Opposing, c.Applied
		w, err := Window(SurfaceRange{Greatest: 6000 * unit.PSI}, demands)
		if err != nil {
			require.ErrorIs(t, err, ErrNoSurfacePressure)
			continue
		}
		found++
		d := c.Differential()
		fires := func(tr Trigger, ps unit.Pressure) Firing {
			return Row{tr}.RampWithin(TriggerState{}, math.MaxFloat64*-1, d.Nominal+ps, d.Shift(-d.Nominal)).Verdict
		}
		const step = 0.01 * unit.PSI
		require.Equal(t, MustFire, fires(up, w.Least+step))
		require.Equal(t, CannotFire, fires(other, w.Greatest-step))
		if w.Floor.Name == "a" {
			require.NotEqual(t, MustFire, fires(up, w.Least-step))
		}
		if w.Ceiling.Name == "b" {
			require.NotEqual(t, CannotFire, fires(other, w.Greatest+step))
		}
	}
	require.Greater(t, found, 300)
}

func TestReversedIsItsOwnInverse(t *testing.T) {
	tr := Trigger{Threshold: psiBand(100, 200), Count: 3, Rearm: psiBand(10, 20)}
	require.Equal(t, tr, tr.Reversed().Reversed())
	require.NoError(t, tr.Reversed().Validate())
	a, b := TriggerState{}, TriggerState{}
	for _, to := range []unit.Pressure{150, 15, 150, 5, 300, 0, 300} {
		to *= unit.PSI
		a = tr.Ramp(a, 0, to).State
		b = tr.Reversed().Ramp(b, 0, -to).State
		require.Equal(t, tr.Condition(a), tr.Reversed().Condition(b))
		require.Equal(t, a.earliest, b.earliest)
		require.Equal(t, a.latest, b.latest)
	}
}

func TestIsolationLedger(t *testing.T) {
	v := IsolationValve{Kind: OpensAfterCycles, Unlock: psiBand(1900, 2100), Bleed: psiBand(300, 500), Cycles: 4}
	level := columns(9, 9, 9000)
	event := func(name string, from, to float64) PressureEvent {
		return PressureEvent{name, level, unit.Pressure(from) * unit.PSI, unit.Pressure(to) * unit.PSI}
	}
	h, err := v.After([]PressureEvent{
		event("tubing test", 0, 2500), event("bleed off", 2500, 0),
		event("circulate", 0, 1200), event("stop", 1200, 0),
		event("set packer", 0, 2000), event("bleed off", 2000, 0),
	})
	require.NoError(t, err)
	require.Equal(t, Armed, h.Condition)
	require.Equal(t, []int{1, 2}, []int{h.CyclesLeast, h.CyclesMost}, "2,000 psi lies in the band")
	most, least := v.CyclesLeft(h)
	require.Equal(t, []int{3, 2}, []int{most, least})
	require.Len(t, h.Records, 6)
	require.InDelta(t, 100, h.Records[4].Outcome.Margin.Near.In(unit.PSI), 1e-6)
	require.InDelta(t, -100, h.Records[4].Outcome.Margin.Far.In(unit.PSI), 1e-6)

	// Two more cycles open the one that counted twice: unknown.
	h, err = v.After(append(eventsOf(h), event("cycle", 0, 2500), event("bleed", 2500, 0), event("cycle", 0, 2500), event("bleed", 2500, 0)))
	require.NoError(t, err)
	require.Equal(t, Unknown, h.Condition)
	h, err = v.After(append(eventsOf(h), event("cycle", 0, 2500), event("bleed", 2500, 200)))
	require.NoError(t, err)
	require.Equal(t, Fired, h.Condition, "locked open")
	require.Equal(t, 4, h.CyclesLeast)
}

func eventsOf(h IsolationHistory) (events []PressureEvent) {
	for _, r := range h.Records {
		events = append(events, r.Event)
	}
	return events
}

// A fluid swap between two equal surface pressures makes the second unlock what
// the first didn't: 1.1 lb/gal over 9,000 ft is 514 psi.
func TestIsolationLedgerKnowsFluids(t *testing.T) {
	v := IsolationValve{Kind: OpensAtBleedOff, Unlock: psiBand(2850, 3150), Bleed: psiBand(-600, -550)}
	to := 2700 * unit.PSI
	h, err := v.After([]PressureEvent{
		{"test", columns(8.4, 8.4, 9000), 0, to}, {"bleed", columns(8.4, 8.4, 9000), to, 0},
		{"test, heavy fluid in", columns(9.5, 8.4, 9000), 0, to},
	})
	require.NoError(t, err)
	require.Equal(t, CannotFire, h.Records[0].Outcome.Verdict)
	require.Equal(t, 0, h.CyclesMost-h.CyclesLeast)
	require.Equal(t, 1, h.CyclesLeast)

	// The same with columns known to ±100 psi: unlocked perhaps at the first.
	wide := columns(8.4, 8.4, 9000)
	wide.Applied.Least -= 200 * unit.PSI
	wide.Applied.Greatest += 200 * unit.PSI
	h, err = v.After([]PressureEvent{{"test", wide, 0, to}})
	require.NoError(t, err)
	require.Equal(t, []int{0, 1}, []int{h.CyclesLeast, h.CyclesMost})
}

func TestIsolationRefuses(t *testing.T) {
	nan := unit.Pressure(math.NaN())
	for name, v := range map[string]IsolationValve{
		"kind":          {Kind: 5},
		"NaN":           {Unlock: unit.Exactly(nan)},
		"bleed above":   {Kind: OpensAtBleedOff, Unlock: psiBand(100, 200), Bleed: psiBand(50, 100)},
		"NaN bleed":     {Kind: OpensAtBleedOff, Unlock: psiBand(100, 200), Bleed: unit.Exactly(nan)},
		"no cycles":     {Kind: OpensAfterCycles, Unlock: psiBand(100, 200), Bleed: psiBand(5, 10)},
		"endless cycle": {Kind: OpensAfterCycles, Unlock: psiBand(100, 200), Bleed: psiBand(5, 10), Cycles: MaxCount + 1},
	} {
		_, err := v.After(nil)
		require.Error(t, err, name)
		_, err = v.PressureUp(Columns{}, SurfaceRange{})
		require.Error(t, err, name)
		require.NotErrorIs(t, err, ErrNoSurfacePressure, name)
	}
	var good IsolationValve
	_, err := good.After([]PressureEvent{{Name: "test", To: nan}})
	require.ErrorContains(t, err, "events[0].To: is NaN")
	_, err = good.PressureUp(Columns{Applied: unit.Exactly(nan)}, SurfaceRange{})
	require.Error(t, err)
	for _, s := range []SurfaceRange{{Least: 2, Greatest: 1}, {Least: nan}, {Greatest: unit.Pressure(math.Inf(1))}} {
		_, err = Window(s, nil)
		require.Error(t, err)
	}
	// What must not move at zero can't be held at zero.
	_, err = Window(SurfaceRange{}, []Demand{{Name: "pin"}})
	require.ErrorIs(t, err, ErrNoSurfacePressure)
}

func TestKindsAsText(t *testing.T) {
	for k := OpensUnderPressure; k <= OpensAfterCycles; k++ {
		text, err := json.Marshal(map[string]IsolationKind{"kind": k})
		require.NoError(t, err)
		var back map[string]IsolationKind
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, k, back["kind"])
	}
	var k IsolationKind
	require.Error(t, k.UnmarshalText([]byte("flapper")))
	for _, d := range []Direction{Rising, Falling} {
		text, err := d.MarshalText()
		require.NoError(t, err)
		var back Direction
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, d, back)
	}
}
