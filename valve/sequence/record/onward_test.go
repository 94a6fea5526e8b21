package record

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record/internal/invent"
	"github.com/stretchr/testify/require"
)

// branching is the shipped plan with a branch, and a step in front of it.
func branching(t *testing.T) *sequence.Plan {
	p := shippedPlan(t, "branch-shifts-without-equalising")
	test := sequence.Step{Name: "test the tubing", Ramps: []map[string]unit.Pressure{{"tubing": 300 * unit.PSI}, {"tubing": 0}}}
	p.Steps = append([]sequence.Step{p.Steps[0], test}, p.Steps[1:]...)
	return p
}

// diagnosedAfter is what a record of the first steps of a plan says.
func diagnosedAfter(t *testing.T, p *sequence.Plan, j invent.Job) *Diagnosis {
	t.Helper()
	q, left := taken(t, p)
	data, err := j.CSV(t.Context(), q)
	require.NoError(t, err)
	r, err := Read(without(t, data, left), p)
	require.NoError(t, err)
	d, err := Diagnose(t.Context(), p, nil, r, Options{})
	require.NoError(t, err)
	require.NotNil(t, d.Onward, d.Says)
	return d
}

func stepNames(p *sequence.Plan) (names []string) {
	for _, s := range p.Steps {
		names = append(names, s.Name)
	}
	return names
}

// A branch that is still to come when the record ends stays in the plan from there, and
// is judged: the plan's verdict is that which it had. So it is for a plan whose branches
// were written out.
func TestBranchesToComeStay(t *testing.T) {
	for _, p := range []*sequence.Plan{branching(t), branching(t).Expanded()} {
		d := diagnosedAfter(t, p, invent.Job{Seed: 31, Steps: 2})
		require.Equal(t, AsPlanned, d.Finding, d.Says)
		require.Equal(t, []string{"take the well over", "test the tubing", "cycle the valve to its end", "produce"}, stepNames(d.Onward))
		o := d.Onward.Steps[2].Otherwise
		require.NotNil(t, o)
		require.Len(t, o.Steps, 1)
		require.Equal(t, "shift the valve by coiled tubing", o.Steps[0].Name)
		require.Len(t, d.Onward.Expanded().Steps, 5)
		was, err := sequence.Check(t.Context(), branching(t), sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		now, err := sequence.Check(t.Context(), d.Onward, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		require.Equal(t, was.Verdict, now.Verdict)
		require.Equal(t, was.Findings[0].Step, now.Findings[0].Step)
		// Written and read it is the same.
		text, err := sequence.Write(d.Onward)
		require.NoError(t, err)
		again, err := sequence.Read(text)
		require.NoError(t, err)
		require.NotNil(t, again.Steps[2].Otherwise)
	}
}

// Where the record ends with the step whose valve it shows stuck, its branch is what
// comes next; where it opened, the branch is over.
func TestABranchIsNextWhereItsStepFailed(t *testing.T) {
	p := branching(t)
	stuck := diagnosedAfter(t, p, invent.Job{Seed: 31, Steps: 3, Stuck: []invent.Stuck{{Step: 2, Action: "formation valve: opens"}}})
	require.Equal(t, Otherwise, stuck.Finding, stuck.Says)
	require.Equal(t, []string{"take the well over", "test the tubing", "cycle the valve to its end", "shift the valve by coiled tubing", "produce"}, stepNames(stuck.Onward))
	require.Nil(t, stuck.Onward.Steps[2].Otherwise)
	opened := diagnosedAfter(t, p, invent.Job{Seed: 31, Steps: 3})
	require.Equal(t, AsPlanned, opened.Finding, opened.Says)
	require.Equal(t, []string{"take the well over", "test the tubing", "cycle the valve to its end", "produce"}, stepNames(opened.Onward))
	require.Nil(t, opened.Onward.Steps[2].Otherwise)
}
