package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"completion.example/internal/calculator"
	"completion.example/internal/calculator/golden"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func runs(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(context.Background(), args, &o, &e)
	return code, o.String(), e.String()
}

func TestDemo(t *testing.T) {
	for name, args := range map[string][]string{
		"demo":    nil,
		"demo-si": {"-units", "si"},
		"set":     {"-set", "devices.isolation valve C.opens.pins = 6", "-units", "field"},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, errs := runs(args...)
			require.Zero(t, code, out)
			require.Empty(t, errs)
			require.Contains(t, out, calculator.Caution[:40])
			golden.Compare(t, name, out)
			narrow(t, out)
		})
	}
}

// narrow wants no line over 110 columns.
func narrow(t *testing.T, out string) {
	t.Helper()
	for _, line := range strings.Split(out, "\n") {
		require.LessOrEqual(t, utf8.RuneCountInString(line), width, line)
	}
}

// mistakes are the plans beside the demo: each has one, and it is the first thing
// that is reported.
var mistakes = map[string]struct {
	kind         sequence.Kind
	step, device string
	numbers      string
	cure         string
}{
	"setting-shears-isolation-valve": {sequence.Unintended, "set the packer", "isolation valve C: opens", "2327.5 psi at 9500 ft", `on "tubing"`},
	"packer-fluid-swapped":           {sequence.Missing, "set the packer", "packer: sets", "threshold is 1377.5 psi to 1522.5 psi", "no surface pressure"},
	"sleeves-in-wrong-order":         {sequence.Unintended, "close sleeve A", "sleeve C: closes", "1200 psi at 9450 ft", "no surface pressure"},
	"test-passes-casing-rating":      {sequence.RatingCross, "test the packer from above", "casing 9-5/8 in above the packer", "allowed 6241.3 psi", "take 562.37 psi off"},
	"cold-injection-parts-release":   {sequence.Unintended, "inject cold water", "release: parts", "52500 lbf at 8590 ft", `at most 490 psi on "tubing"`},
	"seals-leave-the-bore":           {sequence.SealTravel, "displace the tubing to base oil", "seals", "of 36.0 in", "space out"},
	"sleeve-opened-overbalanced":     {sequence.BalanceOff, "open sleeve A for its valve", "zone A", "221.96 psi overbalance", "a lighter fluid"},
	"annulus-test-with-port-shut":    {sequence.TestOff, "test the packer from above", "packer", `"annulus" less "annulus A" is -44.646 psi`, `"annulus A" is trapped`},
}

func planFile(name string) string { return filepath.Join("plans", name+".json") }

// Step, device, numbers and cure of each mistake are found first.
func TestEveryMistakeIsFound(t *testing.T) {
	for file, want := range mistakes {
		t.Run(file, func(t *testing.T) {
			code, out, errs := runs("-plan", planFile(file), "-json")
			require.Equal(t, 1, code, errs)
			var p struct{ Findings []sequence.Finding }
			require.NoError(t, json.Unmarshal([]byte(out), &p))
			f := p.Findings[0]
			require.Empty(t, f.Follows)
			require.Equal(t, want.kind, f.Kind)
			require.Equal(t, want.step, f.Step)
			require.Equal(t, want.device, f.Device)
			require.Contains(t, f.Numbers, want.numbers)
			require.Contains(t, f.Cure, want.cure)
		})
	}
	plans, err := filepath.Glob("plans/*.json")
	require.NoError(t, err)
	require.Len(t, plans, 1+len(mistakes), "a plan that no test looks at")
}

// In text the findings stand before the steps, with the first broken step in the
// verdict; a line that replays a finding does.
func TestFindingsLeadAndReplay(t *testing.T) {
	for file, want := range mistakes {
		t.Run(file, func(t *testing.T) {
			code, out, errs := runs("-plan", planFile(file))
			require.Equal(t, 1, code, errs)
			narrow(t, out)
			require.Contains(t, strings.Join(strings.Fields(out), " "), "The first step that breaks is")
			finding, first := strings.Index(out, "\n1  step "), strings.Index(out, "\n 1  run in hole")
			require.Positive(t, finding)
			require.Greater(t, first, finding, "findings come before the steps")
			require.Contains(t, out[finding:first], want.device)
			require.Contains(t, out, "Not checked by this plan: ")
			at := strings.Index(out, "   replay     -world '")
			if at < 0 {
				require.Contains(t, out, "every value nominal")
				return
			}
			world := out[at+len("   replay     -world '"):]
			world = strings.Join(strings.Fields(world[:strings.Index(world, "'\n")]), " ")
			code, out, errs = runs("-plan", planFile(file), "-world", world)
			require.Equal(t, 1, code, errs)
			require.Contains(t, out, "One world alone was walked")
			require.Contains(t, out, want.device)
		})
	}
}

func TestStepsAfterAFailedOneDependOnIt(t *testing.T) {
	_, out, _ := runs("-plan", planFile("sleeves-in-wrong-order"))
	require.Contains(t, out, " 4  close sleeve A  [FAILS]")
	require.Contains(t, out, " 5  set the packer  [depends on step 4]")
	require.NotContains(t, out[strings.Index(out, " 5  set the packer"):], "[ok]")
	require.Contains(t, out, "NOT SURE")
}

// A newcomer changes a pin count: what changed is told verdict first, the first
// broken step leads, and the pressures of that step are shown.
func TestSetTellsWhatChanged(t *testing.T) {
	code, out, errs := runs("-set", "devices.isolation valve C.opens.pins = 5")
	require.Equal(t, 1, code, errs)
	require.Contains(t, out, "Set: devices.isolation valve C.actions.opens.triggers[0].pins.count = 5 (was 7).")
	order := []string{"REFUTED", "isolation valve C: opens", "What has changed", "verdict: proved → refuted",
		"first step that breaks: none → 5, set the packer", "finding  step 5", "window   step 5", "margin   step 5"}
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

func TestExplainAndPressures(t *testing.T) {
	_, out, _ := runs("-explain", "-pressures")
	require.Contains(t, out, "m = near - felt = ")
	require.Contains(t, out, "sand face C")
	narrow(t, out)
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
	ctx := &stopping{Context: context.Background(), verdict: make(chan struct{})}
	err = w.finish(ctx, &o, before, func(float64, string) {})
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
	verdict chan struct{}
	asked   int
}

func (s *stopping) Err() error {
	s.asked++
	if s.asked > 400 {
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

// JSON for machines: one unit a quantity, without loss, so that it reads back to
// what the package found.
func TestJSONReadsBackToTheSameBits(t *testing.T) {
	code, out, errs := runs("-json", "-units", "si")
	require.Zero(t, code, errs)
	var got sequence.Programme
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	plan, err := sequence.Read(demo)
	require.NoError(t, err)
	want, err := sequence.Check(context.Background(), plan, sequence.Options{})
	require.NoError(t, err)
	require.Len(t, got.Steps, len(want.Steps))
	for i := range want.Steps {
		a, b := want.Steps[i], got.Steps[i]
		for k := range a.Windows {
			require.Equal(t, a.Windows[k].Planned, b.Windows[k].Planned)
			for n := range a.Windows[k].Intervals {
				require.Equal(t, a.Windows[k].Intervals[n].Least, b.Windows[k].Intervals[n].Least)
				require.Equal(t, a.Windows[k].Intervals[n].Greatest, b.Windows[k].Intervals[n].Greatest)
			}
		}
		require.Equal(t, a.Triggers, b.Triggers)
		require.Equal(t, a.Balance, b.Balance)
		require.Equal(t, a.Tests, b.Tests)
		require.Equal(t, a.Volumes, b.Volumes)
		for k := range a.Points {
			require.Equal(t, a.Points[k].Pressures, b.Points[k].Pressures)
		}
	}
	for _, unit := range []string{` psi"`, ` ft"`, ` lbf"`, ` bbl"`} {
		for _, line := range strings.Split(out, "\n") {
			if strings.Contains(line, unit) && !strings.Contains(line, `"exact"`) { // which is replayed as the plan writes it
				t.Fatalf("a line in another unit: %s", line)
			}
		}
	}
	require.Contains(t, out, `"pressure": "bar"`)

	code, out, errs = runs("-json", "-set", "devices.isolation valve C.opens.pins = 5")
	require.Equal(t, 1, code, errs)
	var d struct {
		Edits   []sequence.Edit
		Changes *changed
	}
	require.NoError(t, json.Unmarshal([]byte(out), &d))
	require.Equal(t, "5", d.Edits[0].Now)
	require.Equal(t, "refuted", d.Changes.Verdict[0].Now)
}

func TestSchedule(t *testing.T) {
	file := filepath.Join(t.TempDir(), "schedule.csv")
	code, _, errs := runs("-csv", file, "-units", "si")
	require.Zero(t, code, errs)
	f, err := os.Open(file)
	require.NoError(t, err)
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.NoError(t, f.Close())
	steps := map[string]bool{}
	for _, r := range rows[1:] {
		steps[r[0]] = true
		require.Len(t, r, len(rows[0]))
	}
	require.Len(t, steps, 26)
	require.Contains(t, rows, rows[6])
	found := false
	for _, r := range rows {
		if r[1] == "set the packer" && r[3] == "hold" {
			found = true
			require.Equal(t, []string{"tubing", "1", "bar", "179.3", "162.6", "205.6"}, r[4:10])
		}
	}
	require.True(t, found)
}
