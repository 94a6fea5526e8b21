package record

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record/internal/invent"
	"github.com/stretchr/testify/require"
)

// The records here are invented: the truth behind each is known, and nothing else
// could say whether a diagnosis is right.

func demo(t testing.TB) *sequence.Plan {
	t.Helper()
	data, err := os.ReadFile("../../../examples/installation/plans/demo.json")
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err)
	return p
}

func diagnosed(t testing.TB, p *sequence.Plan, j invent.Job) *Diagnosis {
	t.Helper()
	data, err := j.CSV(t.Context(), p)
	require.NoError(t, err)
	r, err := Read(data, p)
	require.NoError(t, err)
	d, err := Diagnose(t.Context(), p, nil, r, Options{})
	require.NoError(t, err)
	return d
}

// holds tells whether what a diagnosis calls known is true: ports by the truth's own
// walk.
func holds(t testing.TB, p *sequence.Plan, j invent.Job, d *Diagnosis) error {
	t.Helper()
	ports, err := j.Ports(t.Context(), p)
	require.NoError(t, err)
	for _, k := range d.Known {
		if is, ok := ports[k.Of]; ok && is != k.Is {
			return fmt.Errorf("%v: %s is called %s and is %s; %s", j, k.Of, k.Is, is, d.Says)
		}
	}
	return nil
}

func TestCleanRecordIsAsPlanned(t *testing.T) {
	p := demo(t)
	j := invent.Job{Seed: 1}
	d := diagnosed(t, p, j)
	require.Equal(t, AsPlanned, d.Finding, d.Says)
	require.NoError(t, holds(t, p, j, d))
	require.NotNil(t, d.Onward)
	require.Contains(t, fmt.Sprint(d.Known), "{sleeve C shut")
	require.Contains(t, fmt.Sprint(d.Known), "{release parted")
	moved := map[string]Moved{}
	for _, s := range d.Steps {
		for _, m := range s.Moved {
			moved[m.Action] = m
		}
	}
	for _, name := range []string{"isolation valve A: opens", "isolation valve B: opens", "isolation valve C: opens"} {
		require.Contains(t, moved, name, "its opening shows in the volume")
	}
}

func TestLeakIsFoundWithItsRate(t *testing.T) {
	p := demo(t)
	j := invent.Job{Seed: 2, Steps: 8, Leaks: []invent.Leak{{Step: 6, From: "tubing", To: "annulus", Rate: 0.05 * unit.Barrel}}}
	d := diagnosed(t, p, j)
	require.Equal(t, Otherwise, d.Finding, d.Says)
	require.NoError(t, holds(t, p, j, d))
	require.Contains(t, d.Says, "step 7, test the packer from below: tubing leaks")
	require.Contains(t, d.Says, "it shows in annulus")
	// 0.05 bbl a minute for 1,000 psi are 5.04 gal a minute at 2,400 psi.
	require.Regexp(t, `(4\.[89]|5\.[0-3])\d* gal a minute at 240\d|5\.\d+ gal a minute`, d.Says)
}

func TestValveThatDidNotOpen(t *testing.T) {
	p := demo(t)
	j := invent.Job{Seed: 3, Steps: 11, Stuck: []invent.Stuck{{Step: 10, Action: "isolation valve C: opens"}}}
	d := diagnosed(t, p, j)
	require.Equal(t, Otherwise, d.Finding, d.Says)
	require.Contains(t, d.Says, "“isolation valve C: opens” did not happen")
	require.NoError(t, holds(t, p, j, d))
	require.Contains(t, fmt.Sprint(d.Known), "{isolation valve C shut")
	require.True(t, slices.ContainsFunc(d.RuledOut, func(e Explanation) bool {
		return e.Says[0] == "every device moved as the programme has it" && e.Share > ruledOut
	}))
	// What goes on from there: the rest can't be as planned.
	r, err := sequence.Check(t.Context(), d.Onward, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, "isolation valve C: opens", r.Findings[0].Device)
}

func TestValveThatOpenedEarly(t *testing.T) {
	// 1,640 psi, where its band begins at 2,327: it feels 1,944 psi while the packer is set.
	p := demo(t)
	j := invent.Job{Seed: 5, Steps: 7, Share: map[string]float64{"isolation valve C: opens": -2.8}}
	d := diagnosed(t, p, j)
	require.Equal(t, Otherwise, d.Finding, d.Says)
	require.Contains(t, d.Says, "step 5, set the packer: “isolation valve C: opens” happened early")
	require.NoError(t, holds(t, p, j, d))
	require.Contains(t, fmt.Sprint(d.Known), "{isolation valve C open")
}

func TestNonsenseContradicts(t *testing.T) {
	d := diagnosed(t, demo(t), invent.Job{Seed: 4, Steps: 11, Wild: true})
	require.Equal(t, Contrary, d.Finding, d.Says)
	require.Empty(t, d.Known)
	require.Empty(t, d.Explains)
	require.Nil(t, d.Onward)
	require.Contains(t, d.Says, "Nothing that was tried explains the record")
}

// faulty are the steps of the demo whose lapse shows before the record ends: by step,
// the action.
func faulty(p *sequence.Plan) []invent.Stuck {
	var all []invent.Stuck
	for i, s := range p.Steps {
		for _, a := range s.Expect {
			if a != "packer: starts to set" {
				all = append(all, invent.Stuck{Step: i, Action: a})
			}
		}
	}
	return all
}

// TestDiagnosesHold draws jobs: what is called known is never false, and the truth is
// among what isn't ruled out, in at least 95 of 100.
func TestDiagnosesHold(t *testing.T) {
	p := demo(t)
	jobs := 45
	if testing.Short() {
		jobs = 9
	}
	random := rand.New(rand.NewPCG(20261128, 1))
	all := faulty(p)
	right, exact := 0, 0
	var wrong []string
	for n := range jobs {
		j := invent.Job{Seed: uint64(1000 + n), Factor: 1 + 0.25*random.Float64(), Noise: 0.3 + 1.2*random.Float64()}
		truth := ""
		switch n % 3 {
		case 1:
			s := all[random.IntN(len(all))]
			j.Stuck, j.Steps = []invent.Stuck{s}, min(s.Step+1+random.IntN(8), len(p.Steps))
			truth = "“" + s.Action + "” did not happen"
		case 2:
			i := []int{4, 6, 8, 10, 13}[random.IntN(5)]
			from, to := "tubing", []string{"annulus", ""}[random.IntN(2)]
			if i == 8 {
				from, to = "annulus", ""
			}
			j.Leaks, j.Steps = []invent.Leak{{Step: i, From: from, To: to, Rate: unit.Volume(0.03+0.1*random.Float64()) * unit.Barrel}}, min(i+1+random.IntN(3), len(p.Steps))
			truth = from + " leaks"
		}
		d := diagnosed(t, p, j)
		if err := holds(t, p, j, d); err != nil {
			t.Errorf("%v (truth: %s)", err, truth)
		}
		if named(d, truth) {
			right++
			if truth == "" && d.Finding == AsPlanned || truth != "" && strings.Contains(d.Says, truth) {
				exact++
			}
		} else {
			wrong = append(wrong, fmt.Sprintf("job %d, %d steps, factor %.2f noise %.2f, truth %q: %s", n, j.Steps, j.Factor, j.Noise, truth, d.Says))
		}
	}
	t.Logf("%d of %d right, %d of them as the first explanation", right, jobs, exact)
	require.GreaterOrEqual(t, float64(right), 0.95*float64(jobs), "%s", strings.Join(wrong, "\n"))
	for _, w := range wrong {
		t.Log(w)
	}
}

// named tells whether a diagnosis holds the truth for possible.
func named(d *Diagnosis, truth string) bool {
	if truth == "" {
		return d.Finding == AsPlanned
	}
	for _, e := range append(slices.Clone(d.Explains), d.Doubtful...) {
		if strings.Contains(strings.Join(e.Says, " "), truth) {
			return true
		}
	}
	return strings.Contains(strings.Join(d.Open, " "), truth)
}
