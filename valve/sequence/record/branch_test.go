package record

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record/internal/invent"
	"github.com/stretchr/testify/require"
)

// The records here are invented, as in the other tests of this package.

func shippedPlan(t *testing.T, name string) *sequence.Plan {
	t.Helper()
	data, err := os.ReadFile("../../../examples/installation/plans/" + name + ".json")
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err)
	return p
}

// A valve that doesn't open, and the branch that is done then: the steps recorded say
// which way was taken, and the record says why. Done the other way round, the way of
// what is seen is taken.
func TestRecordSaysWhichBranchWasTaken(t *testing.T) {
	p := shippedPlan(t, "branch-shifts-without-equalising")
	for _, stuck := range []bool{false, true} {
		j := invent.Job{Seed: 31}
		var done []int
		if stuck {
			done = []int{2}
			j.Stuck = []invent.Stuck{{Step: 1, Action: "formation valve: opens"}}
			j.Steps = 3
		}
		q, left := taken(t, p, done...)
		data, err := j.CSV(t.Context(), q)
		require.NoError(t, err)
		r, err := Read(without(t, data, left), p)
		require.NoError(t, err)
		d, err := Diagnose(t.Context(), p, nil, r, Options{})
		require.NoError(t, err)
		if !stuck {
			require.Equal(t, AsPlanned, d.Finding, d.Says)
			continue
		}
		require.Equal(t, Otherwise, d.Finding, d.Says)
		require.Contains(t, d.Says, "“formation valve: opens” did not happen")
		require.Equal(t, 3, d.Steps[2].Number)
		require.Equal(t, "shift the valve by coiled tubing", d.Steps[2].Name)
		require.Contains(t, d.Steps[2].Left, "by hand")
		require.NotNil(t, d.Onward)
		require.Len(t, d.Onward.Steps, 4)
		_, err = sequence.Check(t.Context(), d.Onward, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		// No tank and no gauge tells that: that the branch was done does.
		r, err = Read([]byte(noVolumes), p)
		require.NoError(t, err)
		d, err = Diagnose(t.Context(), p, nil, r, Options{})
		require.NoError(t, err)
		require.Equal(t, Otherwise, d.Finding, d.Says)
		require.Contains(t, d.Says, "“formation valve: opens” did not happen")
	}
}

// noVolumes is a record of pressures alone, with the branch.
const noVolumes = `time [min],step,tubing pressure [psi]
0,1,0
1,1,0
2,1,0
3,1,0
10,2,0
12,2,1400
14,2,2800
15,2,2800
16,2,2800
18,2,0
19,2,0
20,2,1400
21,2,2800
22,2,2800
23,2,1400
24,2,0
25,2,0
40,3,0
41,3,0
42,3,0
43,3,0
`

// Steps of two ways can't both have been done.
func TestRecordOfTwoWaysIsRefused(t *testing.T) {
	p := shippedPlan(t, "branch-shifts-without-equalising")
	p.Steps[1].Otherwise.Then = "end"
	q := p.Expanded()
	rows := "time [min],step,tubing pressure [psi]\n"
	for i := range q.Steps {
		for k := range 5 {
			rows += fmt.Sprintf("%d,%d,0\n", 10*i+k, i+1)
		}
	}
	r, err := Read([]byte(rows), p)
	require.NoError(t, err)
	_, err = Diagnose(t.Context(), p, nil, r, Options{})
	require.ErrorContains(t, err, "step 4, produce, isn't on the way that goes on from step 3, shift the valve by coiled tubing")
}

// What is pumped through the well: 350 bbl go in, and as many come back. 320 bbl are
// seen, and so is a pump that shows another pressure than the friction of clean pipe
// makes.
func TestPumpedVolumesAndPressure(t *testing.T) {
	p := shippedPlan(t, "bullhead-breaks-the-toe-zone")
	programme, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	greatest := unit.Pressure(0)
	for _, x := range programme.Steps[1].Pumps[0].Points {
		greatest = max(greatest, x.Pressure)
	}
	require.Positive(t, greatest)
	for _, c := range []struct {
		pump              unit.Pressure
		volume            unit.Volume
		volumes, greatest Mark
	}{
		{pump: greatest, volume: 350 * unit.Barrel, volumes: OK, greatest: OK},
		{pump: 2 * greatest, volume: 350 * unit.Barrel, volumes: OK, greatest: Off},
		{pump: greatest, volume: 320 * unit.Barrel, volumes: Off, greatest: OK},
	} {
		done := p.Clone()
		done.Steps[1].Pump[0].Volume = c.volume
		data, err := invent.Job{Seed: 41, Steps: 2, Pump: c.pump}.CSV(t.Context(), done)
		require.NoError(t, err)
		r, err := Read(data, p)
		require.NoError(t, err)
		d, err := Diagnose(t.Context(), p, programme, r, Options{})
		require.NoError(t, err)
		require.Contains(t, d.Steps[1].Left, "only volumes")
		marks := map[string]Mark{}
		for _, x := range d.Steps[1].Checks {
			marks[x.What] = x.Mark
			if strings.HasSuffix(x.What, "came back") {
				require.Equal(t, "350 bbl", x.Expected)
			}
		}
		require.Equal(t, c.volumes, marks["annulus: pumped"])
		require.Equal(t, c.volumes, marks["tubing: came back"])
		require.Equal(t, c.greatest, marks["annulus, greatest while pumping"])
	}
}
