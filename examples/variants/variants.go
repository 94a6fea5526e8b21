// Variants checks thousands of variants of one plan and counts what becomes of
// them: here each combination of a density of its first fluid and a pressure of its
// first ramp up and down.
//
//	go run ./examples/variants              # 10,000 variants of a plan to begin with
//	go run ./examples/variants -n 200 -plan examples/installation/plans/demo.json
//
// Each variant is a clone that has some values set; the cores share the work, and
// what comes out doesn't depend on how many there are. Verdicts are of the plan as
// it is written: the cautions of the README stand for each of them.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"os/signal"
	"runtime"
	"slices"
	"sync"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// variant is one choice of values, by the paths of the plan's file.
type variant map[string]string

// outcome is what became of a variant.
type outcome struct {
	Verdict sequence.Verdict
	First   string // finding, where it isn't proved
	Err     error  // where it can't be walked
}

// variants lists n variants of a plan: the density of its first fluid 2 % to either
// side of what it is, and the first pressure that is applied and bled off 60 % to
// either side.
func variants(p *sequence.Plan, n int) []variant {
	var all []variant
	const across = 10 // densities; the rest are pressures
	for i := range n {
		v := variant{}
		f := &p.Fluids[0]
		v["fluids."+f.Name+".density"] = (f.Density.Nominal * unit.Density(0.98+0.04*float64(i%across)/(across-1))).String()
		if step, ramp, compartment, ok := firstPressure(p); ok {
			share := 0.4 + 1.2*float64(i/across)/max(1, float64((n-1)/across))
			v[fmt.Sprintf("steps.%s.ramps[%d].%s", p.Steps[step].Name, ramp, compartment)] = (p.Steps[step].Ramps[ramp][compartment] * unit.Pressure(share)).String()
		}
		all = append(all, v)
	}
	return all
}

// firstPressure is where a plan first applies a pressure to one compartment alone and
// bleeds it off.
func firstPressure(p *sequence.Plan) (step, ramp int, compartment string, ok bool) {
	for step := range p.Steps {
		for ramp, to := range p.Steps[step].Ramps {
			for name, pressure := range to {
				if bled := ramp+1 < len(p.Steps[step].Ramps) && p.Steps[step].Ramps[ramp+1][name] == 0; len(to) == 1 && pressure > 0 && bled {
					return step, ramp, name, true
				}
			}
		}
	}
	return 0, 0, "", false
}

// check checks one variant, the verdict alone.
func check(ctx context.Context, p *sequence.Plan, v variant) outcome {
	q := p.Clone()
	for path, text := range v {
		if _, err := q.Set(path, text); err != nil {
			return outcome{Err: err}
		}
	}
	r, err := sequence.Check(ctx, q, sequence.Options{Only: sequence.FindingsOnly, Workers: 1})
	if err != nil {
		return outcome{Err: err}
	}
	o := outcome{Verdict: r.Verdict}
	if len(r.Findings) > 0 {
		o.First = string(r.Findings[0].Kind) + " in " + r.Findings[0].Step
	}
	return o
}

// checkAll checks all variants on this many cores, each answer in its place.
func checkAll(ctx context.Context, p *sequence.Plan, all []variant, cores int) []outcome {
	out := make([]outcome, len(all))
	next := make(chan int)
	var group sync.WaitGroup
	for range cores {
		group.Go(func() {
			for i := range next {
				out[i] = check(ctx, p, all[i])
			}
		})
	}
	for i := range all {
		next <- i
	}
	close(next)
	group.Wait()
	return out
}

func run(ctx context.Context, name string, n int, out io.Writer) error {
	data, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	p, err := sequence.Read(data)
	if err != nil {
		return err
	}
	began := time.Now()
	counts := map[string]int{}
	for _, o := range checkAll(ctx, p, variants(p, n), runtime.GOMAXPROCS(0)) {
		switch {
		case ctx.Err() != nil:
			return ctx.Err()
		case o.Err != nil:
			counts["can't be walked: "+o.Err.Error()]++
		default:
			counts[string(o.Verdict)+"  "+o.First]++
		}
	}
	spent := time.Since(began)
	for _, what := range slices.Sorted(maps.Keys(counts)) {
		fmt.Fprintf(out, "%6d  %s\n", counts[what], what)
	}
	fmt.Fprintf(out, "%d variants in %v, %v each\n", n, spent.Round(time.Millisecond), (spent / time.Duration(max(n, 1))).Round(time.Microsecond))
	return nil
}

func main() {
	plan := flag.String("plan", "examples/installation/begin/field.json", "the plan, a JSON `file`")
	n := flag.Int("n", 10_000, "how many `variants`")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, *plan, *n, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1) //nolint:gocritic // nothing is left to be undone
	}
}
