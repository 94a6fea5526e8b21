package record

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/internal/outage"
	"completion.example/valve/sequence/record/internal/invent"
	"github.com/stretchr/testify/require"
)

// leaving is a context that is given up from one look at it on.
type leaving struct {
	context.Context
	looks *outage.Counter
}

func (c leaving) Err() error {
	if c.looks.Fails() {
		return context.Canceled
	}
	return nil
}

// Given up wherever it may be looked at, a diagnosis is none, and says why.
func TestADiagnosisThatIsGivenUpIsNone(t *testing.T) {
	p := shippedPlan(t, "branch-shifts-without-equalising")
	r, err := Read([]byte(noVolumes), p)
	require.NoError(t, err)
	ways := outage.EachWay(long.Size(8, 1), func(looks *outage.Counter, fails bool) {
		d, err := Diagnose(leaving{t.Context(), looks}, p, nil, r, Options{})
		if !fails {
			require.NoError(t, err)
			return
		}
		require.ErrorIs(t, err, context.Canceled)
		require.Nil(t, d)
	})
	require.NotZero(t, ways)
}

// What can't be read of a record is said by its line.
func TestRowsThatCannotBeRead(t *testing.T) {
	p := shippedPlan(t, "branch-shifts-without-equalising")
	for says, text := range map[string]string{
		"names no instrument, such as tubing pressure [psi]":                      "time [min],step\n0,1\n",
		`time: has the unit "d"; there are s, min and h, or none for clock times`: "time [d],step,tubing pressure [psi]\n0,1,0\n",
		"has 4 cells; the first line names 3 columns":                             "time [s],step,tubing pressure [psi]\n0,1,0,7\n",
		"offset must stand before the first row that was read":                    "time [s],step,tubing pressure [psi]\n0,1,0\noffset,,3\n",
		"tubing pressure: ":           "time [s],step,tubing pressure [psi]\noffset,,high\n0,1,0\n",
		"is -3; must not be negative": "time [s],step,tubing pressure [psi]\nwithin,,-3\n0,1,0\n",
		"is 0; it must not go back":   "time [s],step,tubing pressure [psi]\n5,1,0\n0,1,0\n",
	} {
		_, err := Read([]byte(text), p)
		require.ErrorContains(t, err, says)
	}
	// Hours, whole dates, and rows of nothing.
	hours, err := Read([]byte("time [h],step,tubing pressure [psi]\n0,1,0\n,,\n0.5,1,14\n0.6,1,14\n0.7,1,14\n"), p)
	require.NoError(t, err)
	dates, err := Read([]byte("time,step,tubing pressure [psi]\n2031-02-28T23:50:00,1,0\n2031-03-01T00:20:00,1,14\n2031-03-01T00:26:00,1,14\n2031-03-01T00:32:00,1,14\n"), p)
	require.NoError(t, err)
	for _, r := range []*Record{hours, dates} {
		require.Len(t, r.rows, 4)
		require.InDelta(t, 1800, r.rows[1].time, 1e-9)
	}
	_, err = Read(nil, &sequence.Plan{Assembly: &sequence.Assembly{}})
	require.Error(t, err, "a tally that makes no plan")
	_, err = Diagnose(t.Context(), &sequence.Plan{Assembly: &sequence.Assembly{}}, nil, hours, Options{})
	require.Error(t, err)

	_, err = json.Marshal(hours)
	require.ErrorContains(t, err, "Record")
	require.ErrorContains(t, json.Unmarshal([]byte("{}"), hours), "Record")
	require.Equal(t, "pressure in out weight", strings.Join([]string{pressure.String(), in.String(), out.String(), weight.String()}, " "))
	require.Equal(t, "tubing", first(nil))
}

// A row too many is one too many.
func TestRecordsThatAreTooLong(t *testing.T) {
	long.Skip(t, "half a million rows")
	p := shippedPlan(t, "branch-shifts-without-equalising")
	_, err := Read([]byte("time [s],step,tubing pressure [psi]\n"+strings.Repeat("0,1,0\n", mostRows+2)), p)
	require.ErrorContains(t, err, "is one row too many; there may be ")
}

// Sums of squares by hand: of a column that never changes, or of as few rows as there are columns, what is left is that about
// the mean; a column that is the other's double adds nothing.
func TestWhatARegressionLeaves(t *testing.T) {
	y := []float64{1, 2, 3, 6}
	about := 4.0 + 1 + 0 + 9 // the mean is 3
	require.InDelta(t, about, regression(y), 1e-12)
	require.InDelta(t, about, regression(y, []float64{5, 5, 5, 5}), 1e-12)
	require.InDelta(t, 0.5, regression(y[:2], []float64{1, 2}), 1e-12, "two rows, one column")
	// y on 1 2 3 4: slope 8/5, so that 14 - (8/5)²·5 = 1.2 is left.
	x := []float64{1, 2, 3, 4}
	require.InDelta(t, 1.2, regression(y, x), 1e-6)
	require.InDelta(t, 1.2, regression(y, x, []float64{2, 4, 6, 8}), 1e-6)
	_, ok := bends(y, x, x, x, 0, 3)
	require.False(t, ok, "fewer than nine rows show no bend")
}

// Gaps at the beginning have the first reading, at the end the last, and between two lie on the line.
func TestGapsInReadings(t *testing.T) {
	n := math.NaN()
	require.Equal(t, []float64{3, 3, 3, 4, 5, 5, 5}, filled([]float64{n, n, 3, n, 5, n, n}))
	require.True(t, math.IsNaN(filled([]float64{n})[0]))
	require.Equal(t, []float64{7}, fitted([]float64{7, 8}, []int{0}))
	still := []float64{1, 1}
	require.False(t, straight([]float64{0, 0}, []float64{0, 0}, []float64{0, 0}, still), "nothing has moved")
	require.True(t, straight([]float64{0, 0}, []float64{5, 10}, []float64{10, 20}, still))
	require.False(t, straight([]float64{0, 0}, []float64{5, 13}, []float64{10, 20}, still))
	require.False(t, straight([]float64{0, 0}, []float64{5, 25}, []float64{10, 20}, still), "beyond its end")
	require.Equal(t, "7 gal", between(7*float64(unit.Gallon), 7*float64(unit.Gallon)))
}

// A release that doesn't part at the highest pull is found, with what its parting was meant at, and is out of the plan from there.
func TestAReleaseThatDidNotPart(t *testing.T) {
	long.Skip(t, "the demo, checked and diagnosed")
	p := demo(t)
	j := invent.Job{Seed: 9, Stuck: []invent.Stuck{{Step: len(p.Steps) - 1, Action: "release: parts"}}}
	programme, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	data, err := j.CSV(t.Context(), p)
	require.NoError(t, err)
	r, err := Read(data, p)
	require.NoError(t, err)
	d, err := Diagnose(t.Context(), p, programme, r, Options{})
	require.NoError(t, err)
	require.Equal(t, Otherwise, d.Finding, d.Says)
	require.Contains(t, d.Says, "“release: parts” did not happen")
	require.True(t, (&Moved{Action: "release: parts"}).find(d.Onward).Disarmed)
	last := d.Steps[len(d.Steps)-1]
	i := slices.IndexFunc(last.Checks, func(c Check) bool { return strings.Contains(c.What, "weight indicator, highest") })
	require.GreaterOrEqual(t, i, 0, "%+v", last.Checks)
	require.Contains(t, last.Checks[i].Expected, "release: parts parts at")
}

// What didn't move, and is armed by something else, has levels from there on that nothing reaches: on the side from which it is come to.
// What is expected of it, and the branch that is for it alone, are out.
func TestWhatDidNotMoveNeverDoes(t *testing.T) {
	for _, x := range []struct {
		axial, falls bool
		pressure     float64
		tension      float64
	}{{false, false, 50_000, 0}, {false, true, -50_000, 0}, {true, false, 0, 5_000_000}, {true, true, 0, -5_000_000}} {
		p := shippedPlan(t, "branch-shifts-without-equalising")
		dev := &p.Devices[0]
		name := dev.Name + ": " + dev.Actions[0].Name
		dev.Actions = append(dev.Actions, sequence.Action{Name: "arms it", Arms: []string{dev.Actions[0].Name}})
		a := &dev.Actions[0]
		a.Axial = x.axial
		if a.Triggers = a.Triggers[:1]; x.falls {
			a.Triggers[0].Direction = valve.Falling
		}
		p.Steps[0].Expect = []string{name}
		p.Steps[0].Otherwise = &sequence.Otherwise{Not: []string{name}, Steps: []sequence.Step{{Name: "again", Expect: []string{name}}}}
		again := p.Steps[0].Otherwise.Steps
		d := &diagnoser{given: p, whole: p, left: make([]bool, len(p.Steps))}
		onward, err := d.onward(&node{faults: []lapse{{step: 0, action: name}}})
		require.NoError(t, err)
		got := (&Moved{Action: name}).find(onward).Triggers[0]
		require.Nil(t, got.Pins)
		if x.axial {
			require.InDelta(t, x.tension, got.Tension.Nominal.In(unit.PoundForce), 1e-6)
		} else {
			require.InDelta(t, x.pressure, got.Threshold.Nominal.In(unit.PSI), 1e-9)
		}
		expectNot(&p.Steps[0], name)
		require.Nil(t, p.Steps[0].Otherwise)
		require.Empty(t, again[0].Expect)
	}
}

// What instruments show is told by a pressure, the weight indicator, or what flows.
func TestWhatShowsOtherwise(t *testing.T) {
	leg := func(psi, lbf float64) *sequence.Seen {
		return &sequence.Seen{Legs: []sequence.Leg{{To: []sequence.Reading{{Compartment: "tubing", Pressure: unit.Pressure(psi) * unit.PSI}}, Weight: unit.Force(lbf) * unit.PoundForce, Stretches: []sequence.Stretch{{}}}}}
	}
	require.Empty(t, differs(leg(1000, 9000), leg(1070, 9500)))
	require.Contains(t, differs(leg(1000, 9000), leg(1080, 9000)), "tubing shows 1000 psi, or 1080 psi if so")
	require.Contains(t, differs(leg(1000, 9000), leg(1000, 6000)), "the weight indicator shows 9000 lbf, or 6000 lbf if so")
	require.Empty(t, differs(leg(1000, 9000), &sequence.Seen{}), "it ends before")
}

// A plan that can't be walked with what the record shows of it is refused: along its own way by what keeps it, along one with
// a fault by that.
func TestThresholdsThatCannotBeWalked(t *testing.T) {
	p := shippedPlan(t, "branch-shifts-without-equalising")
	p.Steps = p.Steps[:1]
	p.Steps[0].Do = []sequence.Act{{Drain: "tubing"}} // nothing carries it
	d := &diagnoser{search: search{ctx: t.Context(), opt: &Options{}, frames: map[int]*frame{}}, given: p, whole: p}
	d.plan = p
	_, err := d.again([]lapse{{step: 0, action: "formation valve: opens"}}, 0)
	require.EqualError(t, err, "record: it can't be walked with the thresholds that it shows")
	_, err = d.again(nil, 0)
	require.ErrorContains(t, err, "no formation is joined to it")
	require.Nil(t, d.early(&node{}, &sequence.Seen{}, 0), "nothing was expected")
}
