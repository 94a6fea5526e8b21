package sequence_test

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/fault"
	"completion.example/internal/long"
	"completion.example/internal/strictjson"
	"completion.example/valve/sequence"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// A plan that was read, made or changed in Go is written by encoding/json and reads
// back as the same plan: all that are shipped, and random ones.
func TestEveryPlanReadsBackAsWritten(t *testing.T) {
	t.Parallel()
	same := func(t *testing.T, p *sequence.Plan) {
		t.Helper()
		text, err := json.Marshal(p)
		require.NoError(t, err)
		back, err := sequence.Read(text)
		require.NoError(t, err, "%s", text)
		require.Empty(t, cmp.Diff(p, back, cmpopts.EquateEmpty(), cmp.AllowUnexported(unit.Temperature{}), cmpopts.IgnoreUnexported(sequence.Plan{}, sequence.Step{})))
	}
	for name, p := range shippedPlans(t) {
		t.Run(name, func(t *testing.T) {
			same(t, p)
			for i := range p.Steps { // and as a program would change it
				p.Steps[i].Note, p.Steps[i].Temperature = "changed", sequence.Undisturbed
			}
			if p.Well.Temperatures[sequence.Undisturbed] != nil {
				same(t, p)
			}
		})
	}
	read := 0
	for n := range uint64(long.Size(10, 100)) {
		p := plainPlan(7, n)
		if p.Validate() != nil {
			continue
		}
		read++
		same(t, p)
		same(t, p.Clone())
	}
	require.Greater(t, read, long.Size(5, 75))
	same(t, rich())
	same(t, large(long.Size(2, 5), long.Size(5, 20)))
}

// Keys that were renamed are still read under their old names, which are those of the
// tags of the types; a key that stands under both is refused.
func TestOldNamesOfKeysAreStillRead(t *testing.T) {
	old := map[string]string{}
	var look func(t reflect.Type)
	seen := map[reflect.Type]bool{}
	look = func(t reflect.Type) {
		if seen[t] {
			return
		}
		seen[t] = true
		switch t.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Map:
			look(t.Elem())
		case reflect.Struct:
			for i := range t.NumField() {
				if names := strictjson.Names(t.Field(i)); len(names) > 1 {
					old[names[0]] = names[1]
				}
				look(t.Field(i).Type)
			}
		}
	}
	look(reflect.TypeFor[sequence.Plan]())
	for now, before := range map[string]string{
		"held_at": "held at", "seal_bore": "seal bore", "bites_from": "bites from", "depth_error": "depth error", "lock_down": "lock down",
		"temperature_errors": "temperature errors", "water_cut": "water cut", "displace": "swap", "pressure_change": "squeeze",
	} {
		require.Equal(t, before, old[now])
	}
	for name, p := range shippedPlans(t) {
		text, err := json.Marshal(p)
		require.NoError(t, err)
		before := string(text)
		for now, was := range old {
			before = strings.ReplaceAll(before, `"`+now+`":`, `"`+was+`":`)
		}
		q, err := sequence.Read([]byte(strings.Replace(before, `"version":1,`, "", 1)))
		require.NoError(t, err, name)
		q.Version = p.Version
		require.Empty(t, cmp.Diff(p, q, cmpopts.EquateEmpty(), cmp.AllowUnexported(unit.Temperature{}), cmpopts.IgnoreUnexported(sequence.Plan{}, sequence.Step{})), name)
	}
	both := strings.Replace(string(demo(t)), `"held_at":`, `"held at": "8600 ft", "held_at":`, 1)
	_, err := sequence.Read([]byte(both))
	require.ErrorContains(t, err, "string.held_at: stands twice: it is the old name of held_at")
}

func TestANewerVersionIsRefused(t *testing.T) {
	_, err := sequence.Read([]byte(strings.Replace(string(demo(t)), `"version": 1`, `"version": 2`, 1)))
	require.EqualError(t, err, "version: is 2; must be 1, the newest form that is known here, or left out")
	p := demoPlan(t)
	require.Equal(t, 1, p.Version)
	p.Version = -1
	require.ErrorContains(t, p.Validate(), "version: is -1")
	p.Version = 0
	require.NoError(t, p.Validate())
}

// hangs is longer than any machine takes to refuse what it wouldn't read: what these
// limits are there for once took minutes.
const hangs = 30 * time.Second

// What is too much to be walked is refused in one line each, and at once.
func TestAPlanIsNotAsLargeAsItLikes(t *testing.T) {
	for want, change := range map[string]func(p *sequence.Plan){
		"devices: has 10000 entries; must be from 0 to 500": func(p *sequence.Plan) {
			for len(p.Devices) < 10_000 {
				p.Devices = append(p.Devices, p.Devices[0])
			}
		},
		"steps: has 20000 entries; must be from 0 to 2000": func(p *sequence.Plan) {
			for len(p.Steps) < 20_000 {
				p.Steps = append(p.Steps, p.Steps[0])
			}
		},
		"steps[0].ramps: has 1000000 entries; must be from 0 to 1000": func(p *sequence.Plan) {
			p.Steps[0].Ramps = make([]map[string]unit.Pressure, 1_000_000)
		},
		"note: has 100000000 bytes; must be 100000 at most": func(p *sequence.Plan) { p.Note = strings.Repeat("n", 100_000_000) },
		"steps[1].note: has 200000 bytes; must be 100000 at most": func(p *sequence.Plan) {
			p.Steps[1].Note = strings.Repeat("n", 200_000)
		},
		"well.path: has 6000 entries; must be from 0 to 5000": func(p *sequence.Plan) { p.Well.Path = make([]sequence.Station, 6000) },
		"devices[0].actions: has 5001 entries; must be from 0 to 5000": func(p *sequence.Plan) {
			p.Devices[0].Actions = make([]sequence.Action, 5001)
		},
		"holds more than 400000 values": func(p *sequence.Plan) {
			for i := range p.Devices {
				p.Devices[i].Actions = make([]sequence.Action, 4500)
			}
		},
	} {
		t.Run(want, func(t *testing.T) {
			p := demoPlan(t)
			change(p)
			began := time.Now()
			err := p.Validate()
			require.Less(t, time.Since(began), hangs)
			require.ErrorContains(t, err, want)
			require.Len(t, fault.List(err), 1)
		})
	}
	began := time.Now()
	_, err := sequence.Read(append(demo(t), make([]byte, 100<<20)...))
	require.ErrorContains(t, err, "bytes long; a plan must be 16777216 at most")
	require.Less(t, time.Since(began), hangs)
}

// The greatest plan that is taken is answered, or given up when its caller does:
// TestCheckStopsSoonAfterItIsCancelled.
func TestTheGreatestPlanIsTaken(t *testing.T) {
	p := large(1, 2)
	step := p.Steps[len(p.Steps)-1]
	for len(p.Steps) < 2000 {
		p.Steps = append(p.Steps, step)
		p.Steps[len(p.Steps)-1].Name = "step " + strings.Repeat("i", 1+len(p.Steps))
	}
	require.NoError(t, p.Validate())
}
