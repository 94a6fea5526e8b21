package sequence_test

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	gocmp "github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// shippedPlans are all plan files of the examples.
func shippedPlans(t testing.TB) map[string]*sequence.Plan {
	t.Helper()
	all, err := everyShipped()
	require.NoError(t, err)
	require.Greater(t, len(all), 20)
	own := map[string]*sequence.Plan{}
	for name, p := range all {
		own[name] = p.Clone()
	}
	return own
}

// everyShipped is read once.
var everyShipped = sync.OnceValues(func() (map[string]*sequence.Plan, error) {
	all := map[string]*sequence.Plan{}
	for _, pattern := range []string{"*.json", "*/*.json", "../begin/*.json"} {
		files, err := filepath.Glob(filepath.Join("../../examples/installation/plans", pattern))
		if err != nil {
			return nil, err
		}
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			p, err := sequence.Read(data)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", file, err)
			}
			all[filepath.Base(file)] = p
		}
	}
	return all, nil
})

// shuffle puts every list of a plan whose order says nothing in another one. The
// order of steps, ramps, pulls, pumps, acts, displacements, triggers, layers, bores,
// sections, casings, strings, tallies, of the path, of what has happened, of what may have,
// and of what a device is expected to do is the plan's. What it gives back are the names of
// conditions, which have numbers by their order, as they are now and were before.
func shuffle(p *sequence.Plan, r *rand.Rand) (now, before []string) {
	mix(r, p.Fluids)
	mix(r, p.Formations)
	mix(r, p.Compartments)
	mix(r, p.Ports)
	mix(r, p.Devices)
	mix(r, p.Ratings)
	mix(r, p.Barriers)
	for i := range p.Ports {
		mix(r, p.Ports[i].Joins)
	}
	for i := range p.Devices {
		mix(r, p.Devices[i].Actions)
		for k := range p.Devices[i].Actions {
			a := &p.Devices[i].Actions[k]
			for n, was := range shuffleAction(a, r) {
				name := p.Devices[i].Name + ": " + a.Name + ", condition "
				now, before = append(now, fmt.Sprint(name, n+1)), append(before, fmt.Sprint(name, was+1))
			}
		}
	}
	if p.String != nil {
		mix(r, p.String.Seals)
		mix(r, p.String.Tools)
	}
	if a := p.Assembly; a != nil {
		mix(r, a.Perforations)
		mix(r, a.Lines)
		mix(r, a.Without)
		for i := range a.Lines {
			mix(r, a.Lines[i].Names)
		}
	}
	if b := p.Begin; b != nil {
		mix(r, b.Open)
		mix(r, b.Shut)
		mix(r, b.ShutIn)
		mix(r, b.Flowed)
		mix(r, b.If)
		for _, s := range b.Trapped {
			mix(r, s.With)
		}
		for _, name := range slices.Sorted(maps.Keys(b.Progress)) {
			mix(r, b.Progress[name])
		}
	}
	shuffleSteps(p.Steps, r)
	return now, before
}

// shuffleAction tells where each of the conditions was.
func shuffleAction(a *sequence.Action, r *rand.Rand) []int {
	mix(r, a.Opens)
	mix(r, a.Closes)
	mix(r, a.Arms)
	mix(r, a.Disarms)
	was := r.Perm(max(len(a.All), len(a.Any)))
	for _, list := range []*[]sequence.Condition{&a.All, &a.Any} {
		if old := *list; len(old) > 0 {
			*list = nil
			for _, n := range was {
				*list = append(*list, old[n])
			}
		}
	}
	if a.Areas != nil {
		mix(r, a.Areas.On)
	}
	for _, c := range append(a.All[:len(a.All):len(a.All)], a.Any...) {
		if c.Areas != nil {
			mix(r, c.Areas.On)
		}
	}
	return was
}

func shuffleSteps(steps []sequence.Step, r *rand.Rand) {
	for i := range steps {
		s := &steps[i]
		mix(r, s.Balance)
		mix(r, s.Tests)
		mix(r, s.Allow)
		mix(r, s.Shut)
		var devices []sequence.Device // also those that follow from an assembly
		for _, name := range s.Expect {
			d, _, _ := strings.Cut(name, ": ")
			if !slices.ContainsFunc(devices, func(x sequence.Device) bool { return x.Name == d }) {
				devices = append(devices, sequence.Device{Name: d})
			}
		}
		s.Expect = mixedExpect(r, devices, s.Expect)
		for k := range s.Do {
			mix(r, s.Do[k].Through)
		}
		if s.Otherwise != nil {
			mix(r, s.Otherwise.Not)
			shuffleSteps(s.Otherwise.Steps, r)
		}
	}
}

func mix[T any](r *rand.Rand, list []T) {
	r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
}

// inOrder are the ways in which two programmes may differ: the order of lists, the
// last bits of numbers, and which of several equal choices is the witness.
var inOrder = gocmp.Options{
	near,
	sorted(func(x sequence.TriggerResult) string { return x.Action }),
	sorted(func(x sequence.RatingResult) string { return x.Name }),
	sorted(func(x sequence.BalanceResult) string { return x.Compartment + x.Formation + x.Point }),
	sorted(func(x sequence.TestResult) string { return x.Barrier + x.Side }),
	sorted(func(x sequence.BarrierResult) string { return x.Name }),
	sorted(func(x sequence.VolumeMoved) string { return x.Compartment + x.What }),
	sorted(func(x sequence.ZoneRate) string { return x.Formation }),
	sorted(func(x sequence.PortState) string { return x.Port }),
	sorted(func(x sequence.Reading) string { return x.Compartment }),
	sorted(func(x sequence.Event) string { return x.Action + x.Partial }),
	sorted(func(x sequence.Across) string { return x.Port }),
	sorted(func(x sequence.PressureAt) string { return x.Device + "," + x.Compartment }),
	sorted(func(x sequence.Choice) string { return x.Path }),
	sorted(func(x string) string { return x }),
	cmpopts.IgnoreFields(sequence.StepResult{}, "Points"), // samePoints is quicker
	cmpopts.IgnoreFields(sequence.Finding{}, "Witness", "Assumed", "Numbers", "Says"),
	cmpopts.IgnoreFields(sequence.Margin{}, "At", "Slopes"),
	cmpopts.IgnoreFields(sequence.Programme{}, "Branches"),
	cmpopts.EquateEmpty(),
}

func sorted[T any](key func(T) string) gocmp.Option {
	return cmpopts.SortSlices(func(a, b T) int { return cmp.Compare(key(a), key(b)) })
}

// The order of a list in a file is nobody's order.
func TestOrderOfListsChangesNothing(t *testing.T) {
	for name, p := range shippedPlans(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			if len(p.Steps) > 8 && name != "demo.json" {
				long.Skip(t, "many steps")
			}
			var o sequence.Options
			if !long.Wanted() {
				o.Only = sequence.VerdictOnly
			}
			if os.Getenv("SEQUENCE_PLANS") == "" && (slices.ContainsFunc(p.Fluids, func(f sequence.Fluid) bool {
				return f.Kind == sequence.Nitrogen || f.Kind == sequence.Methane || f.Kind == sequence.NaturalGas
			}) || len(p.Steps) > 8 && name != "demo.json") {
				o.Only = sequence.VerdictOnly // windows with gas, and what opens them, take many seconds
			}
			a, err := sequence.Check(context.Background(), p, o)
			require.NoError(t, err)
			q := p.Clone()
			now, before := shuffle(q, rand.New(rand.NewPCG(7, 11)))
			b, err := sequence.Check(context.Background(), q, o)
			require.NoError(t, err)
			if len(now) > 0 {
				b = renamed(t, b, now, before)
			}
			require.Empty(t, gocmp.Diff(a, b, inOrder))
			for i := range a.Steps {
				samePoints(t, a.Steps[i], b.Steps[i])
			}
		})
	}
}

// renamed has other names for some things.
func renamed(t *testing.T, p *sequence.Programme, now, before []string) *sequence.Programme {
	text, err := json.Marshal(p)
	require.NoError(t, err)
	var pairs []string
	for i := range now {
		pairs = append(pairs, now[i], before[i])
	}
	q := new(sequence.Programme)
	require.NoError(t, json.Unmarshal([]byte(strings.NewReplacer(pairs...).Replace(string(text))), q))
	return q
}

func samePoints(t *testing.T, a, b sequence.StepResult) {
	t.Helper()
	require.Len(t, b.Points, len(a.Points), a.Name)
	values := func(p sequence.Point) map[string]float64 {
		all := map[string]float64{}
		for _, x := range p.Pressures {
			all[x.Device+" in "+x.Compartment] = float64(x.Pressure)
		}
		for _, x := range p.Surface {
			all[x.Compartment] = float64(x.Pressure)
		}
		for _, x := range p.Flows {
			all[string(x.Kind)+" from "+x.From+" to "+x.To] = float64(x.Differential)
		}
		if x := p.String; x != nil {
			all["string"], all["reading"], all["packer"], all["usage"] = float64(x.Hanger), float64(x.Reading), float64(x.Packer), x.Usage
		}
		return all
	}
	for n := range a.Points {
		x, y := values(a.Points[n]), values(b.Points[n])
		require.Len(t, y, len(x))
		for what := range x {
			if !rounding(x[what], y[what]) {
				t.Errorf("%s, %s, %s: %v and %v", a.Name, a.Points[n].Label, what, x[what], y[what])
			}
		}
	}
}

// The answer doesn't depend on the workers, to the last bit.
func TestWorkersChangeNothing(t *testing.T) {
	for _, name := range []string{"demo.json", "window-in-two-parts.json", "two-late-two-early.json"} {
		p := shippedPlans(t)[name]
		var first *sequence.Programme
		for _, workers := range []int{1, 7} {
			r, err := sequence.Check(context.Background(), p, sequence.Options{Workers: workers})
			require.NoError(t, err)
			if first == nil {
				first = r
			}
			require.Empty(t, gocmp.Diff(first, r, gocmp.AllowUnexported(sequence.Level{}), cmpopts.IgnoreUnexported(sequence.Window{}, sequence.Choice{}, sequence.StringAt{}, sequence.Point{}, sequence.TimePart{})), "%s, %d workers", name, workers)
		}
	}
}

// Whoever asks may stop asking.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := sequence.Check(ctx, demoPlan(t), sequence.Options{})
	require.ErrorIs(t, err, context.Canceled)

	p := large(30, 200)
	ctx, cancel = context.WithTimeout(context.Background(), 100*time.Millisecond)
	defer cancel()
	_, err = sequence.Check(ctx, p, sequence.Options{})
	late := time.Now()
	deadline, _ := ctx.Deadline()
	require.ErrorIs(t, err, context.DeadlineExceeded)
	require.Less(t, late.Sub(deadline), hangs) // 50 ms on a quiet machine: TestCheckStopsSoonAfterItIsCancelled
}
