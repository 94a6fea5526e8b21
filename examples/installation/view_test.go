package main

import (
	"context"
	"os"
	"strings"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// shownOf is what a page is shown of a plan: with the verdict, and with the windows.
func shownOf(t *testing.T, v *viewer, file string, o options, step int) (first, last view) {
	t.Helper()
	data, err := os.ReadFile(planFile(file))
	require.NoError(t, err)
	var all []view
	windows := map[int][]viewWindow{}
	require.NoError(t, v.show(context.Background(), data, &o, step, nil, func(x view) { all = append(all, x) }, func(step int, of []viewWindow) {
		windows[step] = of
	}))
	require.Len(t, all, 2)
	// What was told on the way is what stands there in the end, but for what opens those
	// that are empty.
	for i, s := range all[1].Steps {
		require.Len(t, windows[i+1], len(s.Windows))
		for n, w := range s.Windows {
			if w.Drawing == "" {
				w.Edges = windows[i+1][n].Edges
			}
			require.Equal(t, w, windows[i+1][n])
		}
	}
	return all[0], all[1]
}

// Seven pins are too few: the finding says why; eight are right, and the page shows
// what the command prints.
func TestAViewWhileAPlanIsChanged(t *testing.T) {
	t.Parallel()
	var v viewer
	first, last := shownOf(t, &v, "seven-pins-too-few", options{units: "plan", over: 2}, 5)
	require.Equal(t, "refuted", first.Verdict)
	require.False(t, first.Windows)
	require.Empty(t, first.Text)
	require.Equal(t, "isolation valve C: opens", first.Findings[0].Device)
	require.Nil(t, last.Changes)
	require.Equal(t, 5, last.Step)
	_, out, _ := runs("-plan", planFile("seven-pins-too-few"))
	require.Equal(t, out, last.Text)

	eight := options{units: "plan", over: 2, set: list{"devices.isolation valve C.opens.pins = 8"}}
	first, last = shownOf(t, &v, "seven-pins-too-few", eight, 99)
	require.Equal(t, "proved", first.Verdict)
	require.Equal(t, "proved", string(last.Changes.Verdict[0].Now))
	require.Len(t, last.Steps, last.Step, "the last step is the farthest")
	require.Contains(t, last.Well, "<svg")
	require.Contains(t, last.Steps[4].Windows[0].Words, "3316 psi")
	require.Contains(t, last.Steps[4].Windows[0].Drawing, "<svg")
	_, out, _ = runs("-plan", planFile("seven-pins-too-few"), "-set", "devices.isolation valve C.opens.pins = 8")
	require.Equal(t, out, last.Text)

	_, last = shownOf(t, &v, "demo", options{units: "si", gauge: list{"tubing = -3 bar"}}, 0)
	require.Equal(t, "proved", last.Verdict)
	require.Empty(t, last.Changes.Verdict, "another plan is held against itself")
	require.Contains(t, last.Notes[0], "3 bar too little")
	require.Equal(t, 1, last.Step)
}

func TestAViewThatCannotBe(t *testing.T) {
	var v viewer
	err := v.show(context.Background(), []byte(`{"name": 5}`), &options{units: "plan"}, 1, nil, nil, nil)
	require.Error(t, err)
	require.NotEmpty(t, faultsOf(err))
	ctx, stop := context.WithCancel(context.Background())
	stop()
	require.ErrorIs(t, v.show(ctx, demo, &options{units: "plan"}, 1, nil, func(view) {}, nil), context.Canceled)
}

// Every knob sets what it names, to what it holds, and its slider stands on it.
func TestKnobs(t *testing.T) {
	t.Parallel()
	for name, data := range samples() {
		if name != "demo" && name != "begin-si" && name != "horizontal-nitrogen-cushion" && !long.Wanted() {
			continue
		}
		w, _, err := beginWith(data, name, &options{units: "plan"})
		require.NoError(t, err)
		kinds := map[string]int{}
		for _, k := range knobsOf(w.plan, w.read.System) {
			kinds[k.Kind]++
			require.LessOrEqual(t, k.Least, k.Now, "%s %s", name, k.Path)
			require.GreaterOrEqual(t, k.Greatest, k.Now, "%s %s", name, k.Path)
			require.Positive(t, k.Step)
			if k.Kind == "gauge" {
				_, _, err := beginWith(data, name, &options{units: "plan", gauge: list{k.Path + " = " + k.Value}})
				require.NoError(t, err)
				continue
			}
			e, err := w.plan.Set(k.Path, k.Value)
			require.NoError(t, err, k.Path)
			require.Equal(t, k.Path, e.Path, "in full")
			require.True(t, e.Before == k.Value || strings.HasPrefix(k.Value, strings.Fields(e.Before)[0]), "%s: %s and %s", k.Path, e.Before, k.Value)
		}
		for _, kind := range []string{"pins", "density", "gauge"} {
			if name != "begin" && name != "begin-si" && (kind != "pins" || hasPins(w.plan)) {
				require.Positive(t, kinds[kind], "%s has no %s", name, kind)
			}
		}
	}
}

// hasPins tells whether any device of a plan is pinned.
func hasPins(p *sequence.Plan) bool {
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			for _, x := range a.Triggers {
				if x.Pins != nil {
					return true
				}
			}
		}
	}
	return false
}
