package sequence_test

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// worked is the value of the line of a working that has this name, or the first whose
// name begins like this.
func worked(t *testing.T, steps []working.Step, name string) float64 {
	t.Helper()
	for _, s := range steps {
		if s.Name == name {
			return s.Value.SI()
		}
	}
	for _, s := range steps {
		if strings.HasPrefix(s.Name, name) {
			return s.Value.SI()
		}
	}
	require.Fail(t, "no line", name)
	return 0
}

// equals is equal but for what rounding takes of the forces that a figure is the
// difference of.
func equals(t *testing.T, want, got float64, what string) {
	t.Helper()
	require.InDelta(t, want, got, 1e-9*(math.Abs(want)+1e5), what)
}

// Every line of the working adds up to its value, to 1e-9, and the values are the
// figures of the step: in every step of the demo, landed, pressured, pulled, parted.
func TestTheWorkingOfTheStringAddsUpToItsFigures(t *testing.T) {
	plans := []*sequence.Plan{demoPlan(t), landed(), jointed(60000 * unit.PoundForce), sealed(4.5 * unit.Inch)}
	closed := jointed(60000 * unit.PoundForce)
	closed.String.Top, closed.String.HangerSeal = sequence.TopClosed, 9*unit.Inch
	closed.String.Drag = unit.Exactly(4000 * unit.PoundForce)
	closed.Steps[0].Ramps = closed.Steps[0].Ramps[:1]
	closed.Steps[1].Ramps = []map[string]unit.Pressure{{"annulus": 700 * psi}}
	plans = append(plans, closed)
	points := 0
	for _, p := range plans {
		for _, s := range verdict(t, p).Steps {
			for _, at := range s.Points {
				x, steps := at.String, at.String.Steps()
				workingtest.Check(t, steps)
				points++
				equals(t, float64(x.Hanger), worked(t, steps, "wall force at the top"), "hanger")
				equals(t, float64(x.Reading), worked(t, steps, "weight indicator"), "reading")
				for n, j := range x.Joints {
					if !j.Parted {
						equals(t, float64(j.Balance), worked(t, steps, "balance of “"+j.Action), "balance")
						equals(t, float64(j.Effective), worked(t, steps, "effective force above “"+j.Action), "effective")
					}
					require.Equal(t, j.Action, x.Joints[n].Action)
				}
				for _, h := range x.Holds {
					equals(t, float64(h.Effective), worked(t, steps, "effective force above "+h.Name), "effective")
					if h.Held {
						equals(t, float64(h.Load), worked(t, steps, "load on "+h.Name), "load")
						equals(t, float64(h.Wall), worked(t, steps, "wall force above "+h.Name), "wall")
					}
				}
				for _, seal := range x.Seals {
					equals(t, float64(seal.Ring), worked(t, steps, "ring of "+seal.Name), "ring")
					require.InDelta(t, float64(seal.Travel), worked(t, steps, "travel of "+seal.Name), 1e-9, "travel")
				}
				equals(t, float64(x.Buckled), worked(t, steps, "buckled length"), "buckled")
				require.InDelta(t, x.Usage, worked(t, steps, "use of"), 1e-9)
			}
		}
	}
	require.Greater(t, points, 50)
}

// What the packer carried at worst isn't what it ends with. It takes hold between
// 3,206 and 3,544 psi; at 3,600 psi the end pulls it down by what was pumped since,
// (1 − 2ν)·Ai a psi; bled off, it is pulled up by (1 − 2ν)·p·Ai.
//
// Source: Lubinski, Althouse & Logan (1962) for a closed end and ballooning; by hand.
func TestTheWorstForcesOfAStep(t *testing.T) {
	p := landed()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(80000 * unit.PoundForce)
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.Len(t, r.Steps[0].Forces, 1)
	f := r.Steps[0].Forces[0]
	require.Equal(t, "packer", f.Place)
	require.Equal(t, 9000*foot, f.Depth)
	require.InDelta(t, -0.4*(3600-3375*0.95)*bore, f.Load.Least.In(unit.PoundForce), 60)
	require.InDelta(t, 0.4*3375*1.05*bore, f.Load.Greatest.In(unit.PoundForce), 100)
	require.InDelta(t, 0.4*3375*bore, f.Load.Final.In(unit.PoundForce), 1)
	require.Equal(t, "ramp 1", f.Load.LeastAt)
	require.Equal(t, "ramp 2", f.Load.GreatestAt)
	// Wall and effective force are two things: pi·Ai − po·Ao lies between them.
	end := lastString(r, 0)
	require.InDelta(t, f.Wall.Final.In(unit.PoundForce)+column(9.5, 9000)*(outside-bore), f.Effective.Final.In(unit.PoundForce), 1)
	require.Equal(t, end.Holds[0].Wall, f.Wall.Final)
	// No draw passes what is told.
	low, high := p.Clone(), p.Clone()
	for n, q := range []*sequence.Plan{low, high} {
		q.Devices[0].Actions[0].Triggers[0] = rising(3375*psi*unit.Pressure(0.95+0.1*float64(n)), 3375*psi*unit.Pressure(0.95+0.1*float64(n)))
		for _, at := range verdict(t, q).Steps[0].Points {
			require.GreaterOrEqual(t, at.String.Packer, f.Load.Least-1)
			require.LessOrEqual(t, at.String.Packer, f.Load.Greatest+1)
		}
	}
}
