package record

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record/internal/invent"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the demo's invented records anew")

// shipped are the demo's records: jobs that never were.
var shipped = map[string]invent.Job{
	"clean.csv":              {Seed: 11, Steps: 11, Every: 20},
	"leak.csv":               {Seed: 12, Steps: 8, Every: 20, Leaks: []invent.Leak{{Step: 6, From: "tubing", To: "annulus", Rate: 0.04 * unit.Barrel}}},
	"valve-did-not-open.csv": {Seed: 13, Steps: 11, Every: 20, Stuck: []invent.Stuck{{Step: 10, Action: "isolation valve C: opens"}}},
}

func TestShippedRecords(t *testing.T) {
	p := demo(t)
	for name, job := range shipped {
		path := filepath.Join("../../../examples/installation/records", name)
		data, err := job.CSV(t.Context(), p)
		require.NoError(t, err)
		if *update {
			require.NoError(t, os.WriteFile(path, data, 0o600))
		}
		kept, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, string(data), string(kept), "%s isn't what its job makes; go test ./valve/sequence/record -run Shipped -update", name)
	}
}

// Other wells than the demo's: what each plan's own walk shows is as planned, and a
// clean record of it leaves nothing called known that is false. Where the thresholds
// drawn make a device move that doesn't with nominal ones, or the other way round, just
// that is found, if anything shows it. A plan with a branch goes the way of what is seen.
func TestCleanRecordsOfOtherPlans(t *testing.T) {
	var files []string
	for _, pattern := range []string{"plans", "begin"} {
		some, err := filepath.Glob("../../../examples/installation/" + pattern + "/*.json")
		require.NoError(t, err)
		files = append(files, some...)
	}
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			p, err := sequence.Read(data)
			require.NoError(t, err)
			if len(p.Steps) > 8 && filepath.Base(file) != "demo.json" {
				long.Skip(t, "many steps")
			}
			cleanRecordOf(t, p, invent.Job{Seed: seedOf(file)})
		})
	}
}

// seedOf is a file's own: another file beside it doesn't change it.
func seedOf(file string) uint64 {
	h := fnv.New32a()
	h.Write([]byte(filepath.Base(file)))
	return uint64(h.Sum32())
}

func cleanRecordOf(t *testing.T, p *sequence.Plan, j invent.Job) {
	t.Helper()
	p, left := taken(t, p)
	data, err := j.CSV(t.Context(), p)
	require.NoError(t, err)
	r, err := Read(without(t, data, left), p)
	require.NoError(t, err)
	d, err := Diagnose(t.Context(), p, nil, r, Options{})
	require.NoError(t, err)
	j.Steps = r.Steps()[len(r.Steps())-1] + 1 // what comes after it isn't in the record
	require.NoError(t, holds(t, p, j, d))
	done, err := j.Happened(t.Context(), p)
	require.NoError(t, err)
	if more := others(t, p, done); len(more) > 0 {
		// Otherwise, and what it was; as planned only where no instrument shows it.
		require.Contains(t, []Finding{Otherwise, AsPlanned}, d.Finding, d.Says)
		if d.Finding == Otherwise {
			require.Contains(t, d.Says, more[0])
		}
		return
	}
	require.Equal(t, AsPlanned, d.Finding, d.Says)
}

// taken is a plan along one way through its branches, and the numbers of the steps that
// don't lie on it.
func taken(t *testing.T, p *sequence.Plan, done ...int) (*sequence.Plan, map[string]bool) {
	t.Helper()
	p, err := p.Derive()
	require.NoError(t, err)
	q, way, err := p.Taken(done)
	require.NoError(t, err)
	left := map[string]bool{}
	for i, x := range way.Left {
		if x {
			left[strconv.Itoa(i+1)] = true
		}
	}
	return q, left
}

// without takes steps out of a record.
func without(t *testing.T, data []byte, steps map[string]bool) []byte {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	require.NoError(t, err)
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	for _, x := range rows {
		if !steps[x[1]] {
			require.NoError(t, w.Write(x))
		}
	}
	w.Flush()
	return b.Bytes()
}

// others are the actions that happened where the plan's nominal walk has none, or the
// other way round, in words.
func others(t *testing.T, p *sequence.Plan, done [][]string) []string {
	t.Helper()
	p, err := p.Derive()
	require.NoError(t, err)
	f, err := sequence.Follow(p)
	require.NoError(t, err)
	var all []string
	var at *sequence.Situation
	for i := range done {
		seen, next, err := f.Step(t.Context(), at, i, nil)
		require.NoError(t, err)
		at = next
		var meant []string
		for _, e := range seen.Events {
			if e.Partial == "" {
				meant = append(meant, e.Action)
			}
		}
		for _, name := range done[i] {
			if !slices.Contains(meant, name) {
				all = append(all, fmt.Sprintf("step %d, %s: “%s” happened", i+1, p.Steps[i].Name, name))
			}
		}
		for _, name := range meant {
			if !slices.Contains(done[i], name) {
				all = append(all, fmt.Sprintf("step %d, %s: “%s” did not happen", i+1, p.Steps[i].Name, name))
			}
		}
	}
	return all
}

// A plan whose mistake lies at the low end of a band: with pins that weak it is made,
// in the last row on the way up, and found for what it is.
func TestMovesInItsBandAtTheEndOfALeg(t *testing.T) {
	long.Skip(t, "a few diagnoses")
	data, err := os.ReadFile("../../../examples/installation/plans/setting-shears-isolation-valve.json")
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err)
	for n, share := range []float64{0.02, 0.1, 0.17} {
		j := invent.Job{Seed: 214 + uint64(n), Steps: 9, Share: map[string]float64{"isolation valve C: opens": share}}
		d := diagnosed(t, p, j)
		require.Equal(t, Otherwise, d.Finding, d.Says)
		require.NoError(t, holds(t, p, j, d))
		require.Contains(t, d.Says, "step 5, set the packer: “isolation valve C: opens” happened as it may by its band, though not by its nominal threshold")
		require.Contains(t, fmt.Sprint(d.Known), "{isolation valve C open")
		require.NotNil(t, d.Onward)
	}
}
