package proof

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// shutters is a well without weight: compartment 0 is driven, 1 stays at nothing, and
// pocket 2+i is shut off from 0 where the pressure reaches band i. Pockets 2 and 3 have
// a wall between them.
func shutters(peak, wall float64, bands ...[2]float64) *Problem {
	n := &well.Network{Fluids: []well.Fluid{{Name: "nothing"}}, Devices: len(bands)}
	for i := range len(bands) + 2 {
		n.Compartments = append(n.Compartments, well.Compartment{Name: fmt.Sprint("c", i), Formation: -1, Volume: 1, Surface: i < 2,
			Depths: []well.Depth{{}, {MD: 1}}, Layers: []well.Layer{{Bottom: well.Depth{MD: 1}}}})
	}
	step := walk.Step{Name: "step", Temperature: -1, Ramps: [][]walk.Move{{{Compartment: 0, To: affine.Const(peak)}}}}
	for i, b := range bands {
		half := (b[1] - b[0]) / 2
		n.Symbols = append(n.Symbols, well.Symbol{Name: fmt.Sprint(i), Middle: b[0] + half, Half: half})
		n.Ports = append(n.Ports, well.Port{A: 0, B: i + 2, Open: true})
		n.Actions = append(n.Actions, well.Action{Name: fmt.Sprint("a", i), Device: i, Inside: 0, Outside: 1, Closes: []int{i},
			Row: []well.Trigger{{Level: affine.Form{C: b[0] + half, T: []affine.Term{{Symbol: i, C: half}}}, Count: 1}}})
		step.Expect = append(step.Expect, []int{i})
	}
	n.Prepare()
	l := &judge.Limits{Steps: []judge.Goals{{}}}
	l.Ratings = []judge.Rating{{Inside: 2, Outside: 3, Depths: [][2]int{{0, 0}}, Burst: affine.Const(wall), HasBurst: true}}
	return &Problem{Network: n, Steps: []walk.Step{step}, Limits: l}
}

const kPa = 1000.0 // so that margins are far above what counts as nothing

func prove(t *testing.T, p *Problem) *Outcome {
	t.Helper()
	out, err := p.Prove(context.Background(), Options{})
	require.NoError(t, err)
	return out
}

var rating = judge.Key{Kind: judge.Inside}

// Shut at 90 to 110 and 60 to 80 kPa, the wall sees no more than 50: one late, one
// early. The margin of a wall of 60 is 10, and the choice that attains it is that corner.
func TestTheLeastMarginAndWhoAttainsIt(t *testing.T) {
	p := shutters(200*kPa, 60*kPa, [2]float64{90 * kPa, 110 * kPa}, [2]float64{60 * kPa, 80 * kPa})
	out := prove(t, p)
	require.True(t, out.Decided())
	require.Empty(t, out.Failures)
	m := out.Judge.Margins[rating]
	require.InDelta(t, 10*kPa, m.Least, 1e-3)
	require.InDeltaSlice(t, []float64{1, -1}, m.Point(), 1e-9)
	require.False(t, m.Enclosed)
	run, err := p.At(m.Point()).Walk(context.Background(), affine.Box(0, nil), Options{})
	require.NoError(t, err)
	require.InDelta(t, 10*kPa, run.Judge.Margins[rating].Least, 1e-3, "and a walk of numbers sees it there")
}

// A wall of 40 is passed by some, with a witness that a walk of numbers repeats; one of
// 50 just bears it, one of 50 less a hair doesn't.
func TestRefutedWithAWitness(t *testing.T) {
	for wall, fails := range map[float64]bool{40: true, 49.999999: true, 50: false, 50.000001: false} {
		p := shutters(200*kPa, wall*kPa, [2]float64{90 * kPa, 110 * kPa}, [2]float64{60 * kPa, 80 * kPa})
		out := prove(t, p)
		require.True(t, out.Decided())
		require.Equal(t, fails, len(out.Failures) == 1, "%v", wall)
		if !fails {
			continue
		}
		f := out.Failures[0]
		e := f.Witness
		require.Greater(t, 100+10*e[0]-(70+10*e[1]), wall-1e-6)
		require.Less(t, f.Shown.Least, 0.0)
		require.Equal(t, rating, f.Shown.Key)
	}
}

// Whatever is proved of all choices holds for each: no draw sees less than the least
// margin, and the drawer says of each choice what a walk of it says.
func TestNoDrawSeesLess(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 37))
	fails, holds := 0, 0
	for trial := range 150 {
		var bands [][2]float64
		for range 2 + random.IntN(4) {
			least := 50 + 10*float64(random.IntN(6))
			bands = append(bands, [2]float64{least * kPa, (least + 5 + 10*float64(random.IntN(4))) * kPa})
		}
		p := shutters(float64(100+10*random.IntN(10))*kPa, float64(10+10*random.IntN(6))*kPa, bands...)
		out := prove(t, p)
		d, err := p.Drawer(context.Background())
		require.NoError(t, err)
		for range 30 {
			e := make([]float64, len(bands))
			for k := range e {
				e[k] = 2*random.Float64() - 1
				if random.IntN(2) == 0 {
					e[k] = math.Copysign(1, e[k])
				}
			}
			run, err := p.At(e).Walk(context.Background(), affine.Box(0, nil), Options{})
			require.NoError(t, err)
			for key, m := range run.Judge.Margins {
				all := out.Judge.Margins[key]
				require.NotNil(t, all, "trial %d: %v", trial, key)
				require.GreaterOrEqual(t, m.Least, all.Least-1e-3, "trial %d at %v: %v", trial, e, key)
			}
			failed := len(run.Judge.Passed()) > 0
			require.Equal(t, failed, d.Judge(e).Fails, "trial %d at %v", trial, e)
			if failed {
				fails++
				require.NotEmpty(t, out.Failures, "trial %d", trial)
			} else {
				holds++
			}
		}
		for _, f := range out.Failures {
			require.NotNil(t, f.Witness, "trial %d: %v", trial, f.Key)
		}
	}
	require.Greater(t, fails, 500)
	require.Greater(t, holds, 500)
}

// The peak as a symbol: below 110 the first shutter may not come, and above nothing is
// wrong. What is bad is told in pieces that leave no gap.
func TestWindowByHand(t *testing.T) {
	p := shutters(200*kPa, 60*kPa, [2]float64{90 * kPa, 110 * kPa}, [2]float64{60 * kPa, 80 * kPa})
	out := prove(t, p)
	bad, err := p.Window(context.Background(), out.Before[0], Held{Step: 0, Least: 0, Greatest: 500 * kPa, Planned: 200 * kPa, Fine: 10,
		Set: func(s *walk.Step, to affine.Form) { s.Ramps = [][]walk.Move{{{Compartment: 0, To: to}}} }}, new(Singles))
	require.NoError(t, err)
	slices.SortFunc(bad, func(a, b Bad) int { return cmp.Compare(a.Least, b.Least) })
	edge := 0.0
	for _, b := range bad {
		require.NotNil(t, b.Margin)
		require.Equal(t, judge.Omission, b.Margin.Kind)
		require.LessOrEqual(t, b.Least, edge+1e-3)
		edge = max(edge, b.Greatest)
	}
	require.InDelta(t, 110*kPa, edge, 1)
}

// Budgets and contexts end a walk: what isn't decided is said so.
func TestGivenUp(t *testing.T) {
	p := shutters(200*kPa, 60*kPa, [2]float64{60 * kPa, 110 * kPa}, [2]float64{60 * kPa, 110 * kPa}, [2]float64{60 * kPa, 110 * kPa})
	out, err := p.Prove(context.Background(), Options{Budget: 2})
	require.NoError(t, err)
	require.ErrorIs(t, out.Open, walk.ErrBudget)
	require.False(t, out.Decided())
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = p.Prove(ctx, Options{})
	require.ErrorIs(t, err, context.Canceled)
}

// What is only enclosed is walked: with a doubt far above the margin the drawer still says of each choice
// what a walk of it says, and with one that is below nothing it needs none.
func TestWhatIsEnclosedIsWalked(t *testing.T) {
	p := shutters(200*kPa, 40*kPa, [2]float64{90 * kPa, 110 * kPa}, [2]float64{60 * kPa, 80 * kPa})
	for _, doubt := range []float64{0, 5 * kPa, 500 * kPa} {
		d, err := p.Drawer(context.Background())
		require.NoError(t, err)
		require.NotEmpty(t, d.parts)
		for i := range d.parts {
			d.parts[i].By.R, d.parts[i].certain = doubt, doubt == 0
		}
		for e, fails := range map[[2]float64]bool{{1, -1}: true, {0.9, -0.9}: true, {0, 0}: false, {-1, 1}: false, {0.2, 0}: false} {
			require.Equal(t, fails, d.Judge(e[:]).Fails, "%v with %v", e, doubt)
		}
	}
}
