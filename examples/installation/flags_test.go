package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A newcomer changes a pin count: what changed is told verdict first, the first
// broken step leads, and the pressures of that step are shown.
func TestSetTellsWhatChanged(t *testing.T) {
	t.Parallel()
	code, out, errs := runs("-set", "steps.test the packer from below.ramps[0].tubing = 2000 psi")
	require.Equal(t, 1, code, errs)
	require.Contains(t, out, "Set: steps.test the packer from below.ramps[0].tubing = 2000 psi (was 2400 psi).")
	order := []string{"REFUTED", "test off plan", "What has changed", "verdict: proved → refuted",
		"first step that breaks: none → 7, test the packer from below", "finding  step 7", "window   step 8", "margin   step 7"}
	at := 0
	for _, want := range order {
		i := strings.Index(out[at:], want)
		require.GreaterOrEqual(t, i, 0, "%q is missing, or stands too early", want)
		at += i
	}
	narrow(t, out)

	code, out, _ = runs("-set", "devices.isolation valve C.opens.pins = 7")
	require.Zero(t, code)
	require.Contains(t, out, "nothing of verdict, findings and windows, and no margin by more than 2 %")

	code, same, _ := runs("-against", "plans/setting-shears-isolation-valve.json")
	require.Zero(t, code)
	require.Contains(t, same, "verdict: refuted → proved")
}

// A gauge that shows 3 bar too little: 43.5 psi more stands at the packer where
// the plan wants a reading, and all readings are the gauge's.
func TestGaugeThatReadsWrong(t *testing.T) {
	code, out, errs := runs("-gauge", "tubing = -3 bar", "-pressures")
	require.Zero(t, code, errs)
	require.Contains(t, out, "Gauge: that of tubing shows 43.5 psi too little.")
	step := out[strings.Index(out, "\n 5  set the packer"):strings.Index(out, "\n 6  ")]
	require.Contains(t, step, "→ 2600 → 0 psi", "what the gauge is taken to")
	_, plain, _ := runs("-pressures")
	plain = plain[strings.Index(plain, "\n 5  set the packer"):strings.Index(plain, "\n 6  ")]
	require.Contains(t, plain, "hold tubing: 2358 psi to 2983 psi")
	require.Contains(t, step, "hold tubing: 2315 psi to 2939 psi", "43.5 psi less on the gauge, rounded inwards")

	_, _, errs = runs("-gauge", "tubbing = -3 bar")
	require.Contains(t, errs, "no compartment")
	_, _, errs = runs("-gauge", "tubing = -3")
	require.Contains(t, errs, "no unit given")
	_, _, errs = runs("-gauge", "tubing")
	require.Contains(t, errs, "compartment = error")
	_, _, errs = runs("-gauge", "annulus A = 1 psi")
	require.Contains(t, errs, "gauge at surface")
}

func TestBadInput(t *testing.T) {
	code, out, errs := runs("-paln", "x")
	require.Equal(t, 2, code)
	require.Empty(t, out)
	require.Contains(t, errs, "did you mean -plan?")
	for flag, meant := range map[string]string{"-sett": "-set", "-gage": "-gauge", "-worlds": "-world", "-shema": "-schema", "-untis": "-units", "-reprt": "-report",
		"-flor": "-floor", "-papper": "-paper", "-revison": "-revision", "-dat": "-date", "-csvv": "-csv", "-ower": "-over", "-explan": "-explain", "-agianst": "-against", "-mew": "-new"} {
		code, out, errs := runs(flag, "x")
		require.Equal(t, 2, code, flag)
		require.Empty(t, out)
		require.Contains(t, errs, "did you mean "+meant+"?")
	}
	for _, x := range []struct {
		want string
		args []string
	}{
		{"nowhere.json", []string{"-plan", "nowhere.json"}},
		{`did you mean "isolation valve C"?`, []string{"-set", "devices.isolaton valve C.opens.pins = 6"}},
		{"path = value", []string{"-set", "devices.isolation valve C.opens.pins"}},
		{"must be from", []string{"-set", "string.hanger = 10000 ft"}},
		{`did you mean "sleeve A: closes"?`, []string{"-world", "sleave A: closes = 1290 psi"}},
		{"its band is from", []string{"-world", "sleeve A: closes = 1390 psi"}},
		{"there are field, si or plan", []string{"-units", "metric"}},
		{"there are a4 and letter", []string{"-paper", "a3"}},
		{"-floor is of the report", []string{"-floor"}},
		{"from 0 to 100 percent", []string{"-over", "-1"}},
		{"-5", []string{"-samples", "-5"}},
		{"Give it one there, or with -set 'fluids.NAME.density", []string{"-spread-density", "0.005"}},
		{"its temperatures have none", []string{"-spread-temperature=5 degF"}},
		{"a value with a space wants quotes", []string{"-set", "name", "=", "x"}},
	} {
		code, out, errs := runs(x.args...)
		require.Equal(t, 2, code, x.args)
		require.Empty(t, out, "nothing half-run")
		require.Contains(t, errs, x.want)
	}

	file := filepath.Join(t.TempDir(), "hole.json")
	require.NoError(t, os.WriteFile(file, []byte(`{"name": "hole", "wel": {}, "fluids": [{"name": "mud", "density": "9"}]}`), 0o600))
	code, out, errs = runs("-plan", file)
	require.Equal(t, 2, code)
	require.Empty(t, out)
	require.Contains(t, errs, "wel: unknown field")
	require.Contains(t, errs, "fluids[0].density: unit:")

	code, out, _ = runs("-h")
	require.Zero(t, code)
	require.Contains(t, out, "-report")
	require.Contains(t, out, "PLAN.md", "where the key table is")
}

// Stopped at once nothing is known; exit 2 with one line.
func TestHowOftenItGoesWrong(t *testing.T) {
	code, out, errs := runs("-samples", "50", "-seed", "3")
	require.Zero(t, code, errs)
	require.Contains(t, out, "in 50 draws (seed 3)")
	require.Contains(t, out, "the plan as a whole: 0.00 %", "what is proved never fails")
	code, out, errs = runs("-plan", planFile("setting-shears-isolation-valve"), "-samples", "300", "-even", "-floor", "-report", filepath.Join(t.TempDir(), "r.html"))
	require.Equal(t, 1, code, errs)
	require.NotContains(t, out, "the plan as a whole: 0.00 %")
	require.Contains(t, out, "isolation valve C: opens")
	narrow(t, out)
}

func TestStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, errs bytes.Buffer
	require.Equal(t, 2, run(ctx, nil, &out, &errs))
	require.Empty(t, out.String())
	require.Equal(t, "stopped before anything was known\n", errs.String())
}

// Stopped while the windows are sought, the verdict stands and says what is
// missing.
func TestStoppedWithWhatIsKnown(t *testing.T) {
	var o options
	require.NoError(t, calculator.Parse(flags(&o), nil))
	w, before, err := begin(&o)
	require.NoError(t, err)
	_, err = sequence.Check(context.Background(), w.plan, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	ctx := &stopping{Context: context.Background()}
	err = w.finish(ctx, &o, before, func(share float64, _ string) {
		if share > 0.4 { // the verdict is known, and a first window
			ctx.stop.Store(true)
		}
	})
	require.NoError(t, err)
	require.True(t, w.stopped)
	var out bytes.Buffer
	require.NoError(t, printText(&out, o, w))
	require.Contains(t, out.String(), "PROVED")
	require.Contains(t, out.String(), "STOPPED before all was known")
}

// stopping is done as soon as it has been given out twice: once for the verdict.
type stopping struct {
	context.Context
	stop atomic.Bool
}

func (s *stopping) Err() error {
	if s.stop.Load() {
		return context.Canceled
	}
	return nil
}

func TestProgressOnATerminalAlone(t *testing.T) {
	var quiet, loud bytes.Buffer
	p := newProgress(&quiet, false)
	p.tell(0.5, "windows")
	p.done()
	require.Empty(t, quiet.String())
	require.False(t, isTerminal(&quiet))

	p = newProgress(&loud, true)
	p.tell(0.5, "windows")
	p.write(p.started.Add(3 * time.Second))
	require.Equal(t, "\r 50 %  windows, 3 s (Ctrl-C stops with what is known)", loud.String())
	p.done()
	require.True(t, strings.HasSuffix(loud.String(), "\r"), "the line is taken away")
	f, err := os.Create(filepath.Join(t.TempDir(), "x"))
	require.NoError(t, err)
	require.False(t, isTerminal(f))
	require.NoError(t, f.Close())
}
