package record

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"completion.example/hydrostatics/unit"
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
// clean record of it leaves nothing called known that is false.
func TestCleanRecordsOfOtherPlans(t *testing.T) {
	var files []string
	for _, pattern := range []string{"plans", "begin"} {
		some, err := filepath.Glob("../../../examples/installation/" + pattern + "/*.json")
		require.NoError(t, err)
		files = append(files, some...)
	}
	require.NotEmpty(t, files)
	for n, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		p, err := sequence.Read(data)
		require.NoError(t, err)
		j := invent.Job{Seed: uint64(200 + n)}
		d := diagnosed(t, p, j)
		require.NoError(t, holds(t, p, j, d), file)
		require.Equal(t, AsPlanned, d.Finding, "%s: %s", file, d.Says)
	}
}
