package sequence_test

import (
	"context"
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func benchmark(b *testing.B, p *sequence.Plan, o sequence.Options) {
	b.Helper()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := sequence.Check(context.Background(), p, o); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkVerdict is what a question on the rig floor costs: the demo with one
// number changed.
func BenchmarkVerdict(b *testing.B) {
	benchmark(b, demoPlan(b), sequence.Options{Only: sequence.VerdictOnly})
}

// BenchmarkFindings is the same, where no more is asked than whether it holds.
func BenchmarkFindings(b *testing.B) {
	benchmark(b, demoPlan(b), sequence.Options{Only: sequence.FindingsOnly})
}

// BenchmarkEverything is the demo with all its windows.
func BenchmarkEverything(b *testing.B) { benchmark(b, demoPlan(b), sequence.Options{}) }

// large is a string of devices, each on a line of its own, each opening and
// closing a chamber outside the tubing, over many steps: n devices, 2·n
// compartments, m steps.
func large(n, m int) *sequence.Plan {
	p := mini()
	p.Devices, p.Steps = nil, nil
	for d := range n {
		line, chamber := fmt.Sprintf("line %d", d), fmt.Sprintf("chamber %d", d)
		depth := unit.Length(3000+150*d) * foot
		p.Compartments = append(p.Compartments,
			sequence.Compartment{Name: line, BottomMD: 9000 * foot, Fluid: "annulus fluid", Surface: true},
			sequence.Compartment{Name: chamber, TopMD: depth - 50*foot, BottomMD: depth + 50*foot, Fluid: "annulus fluid", Capacity: 0.01 * unit.BarrelPerFoot})
		p.Ports = append(p.Ports, sequence.Port{Name: chamber, Joins: []string{"tubing", chamber}, MD: depth, Open: true})
		p.Devices = append(p.Devices, sequence.Device{Name: fmt.Sprintf("device %d", d), MD: depth, Actions: []sequence.Action{
			{Name: "closes", Inside: line, Outside: "annulus", Triggers: []sequence.Trigger{rising(900*psi, 1100*psi)}, Closes: []string{chamber}, Arms: []string{"opens"}},
			{Name: "opens", Inside: "annulus", Outside: line, Triggers: []sequence.Trigger{rising(900*psi, 1100*psi)}, Opens: []string{chamber}, Arms: []string{"closes"}, Disarmed: true},
		}})
	}
	for s := range m {
		d := s / 2 % n
		line, what := fmt.Sprintf("line %d", d), "closes"
		if s%2 == 1 {
			line, what = "annulus", "opens"
		}
		p.Steps = append(p.Steps, sequence.Step{Name: fmt.Sprintf("step %d", s), Ramps: []map[string]unit.Pressure{{line: 1500 * psi}, {line: 0}},
			Expect: []string{fmt.Sprintf("device %d: %s", d, what)}})
	}
	return p
}

func TestLargePlanIsProved(t *testing.T) {
	r, err := sequence.Check(context.Background(), large(6, 24), sequence.Options{})
	require.NoError(t, err)
	require.True(t, r.OK(), "%+v", r.Findings)
}

// BenchmarkLarge is the size that the house promises: 30 devices, 60 compartments
// beside tubing and annulus, 200 steps.
func BenchmarkLarge(b *testing.B) {
	benchmark(b, large(30, 200), sequence.Options{Only: sequence.VerdictOnly})
}

// BenchmarkGrowth shows how the verdict's cost grows.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{10, 20, 40} {
		for _, m := range []int{50, 100, 200} {
			b.Run(fmt.Sprintf("devices=%d/steps=%d", n, m), func(b *testing.B) {
				benchmark(b, large(n, m), sequence.Options{Only: sequence.VerdictOnly})
			})
		}
	}
}
