package everyslot

import (
	"encoding/csv"
	"maps"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// limit is an end of a permitted range: of two numbers next to each other one is
// taken and the other refused.
type limit struct {
	call, slot    string
	says          string // what the refusal begins with
	taken, refuse float64
}

var (
	limitsFile  = filepath.Join("testdata", "limits.csv")
	limitsTitle = []string{"call", "slot", "says", "taken", "refused"}
)

// TestLimitsAreOnRecord holds every end of every permitted range that a call checks
// against those on record, to the last bit, on both sides: one that moves is meant
// to. -update finds those of new slots and of limits that have moved.
func TestLimitsAreOnRecord(t *testing.T) {
	if runtime.GOARCH != "amd64" {
		t.Skip("limits that are worked out may differ in their last bit here")
	}
	list, _ := subjects(t)
	places := map[string]place{}
	for _, s := range list {
		if textual(s.name) || !returnsError(s.f.Type()) {
			continue
		}
		for _, at := range slots(s.args) {
			if (at.kind.Kind() == reflect.Float64 || at.kind == temperature) && excuseOf(s.name, at.path) == "" {
				places[s.name+" "+at.path] = place{s, at}
			}
		}
	}
	recorded := readLimits(t)
	holds := func(l limit) string {
		p, ok := places[l.call+" "+l.slot]
		switch {
		case !ok:
			return "isn't there any more"
		case !p.refuses(l.refuse, l.says):
			return "takes " + number(l.refuse)
		case p.refuses(l.taken, l.says):
			return "refuses " + number(l.taken)
		}
		return ""
	}
	if *update {
		recorded = slices.DeleteFunc(recorded, func(l limit) bool { return holds(l) != "" })
		writeLimits(t, found(list, places, recorded))
		recorded = readLimits(t)
	}
	parts := map[string][]limit{}
	for _, l := range recorded {
		pkg := packageOf(l.call)
		parts[pkg] = append(parts[pkg], l)
	}
	for _, pkg := range slices.Sorted(maps.Keys(parts)) {
		t.Run(strings.ReplaceAll(pkg, "/", "-"), func(t *testing.T) {
			for _, l := range parts[pkg] {
				if fault := holds(l); fault != "" {
					t.Errorf("%s: %s (%s) %s; -update writes the limits anew", l.call, l.slot, l.says, fault)
				}
			}
		})
	}
	t.Logf("%d limits", len(recorded))
}

// place is a slot of a call.
type place struct {
	s  subject
	at slot
}

// refuses tells whether the call refuses a number in the slot for what it says.
func (p place) refuses(x float64, says string) bool {
	v := reflect.New(p.at.kind).Elem()
	if p.at.kind == temperature {
		v.Set(reflect.ValueOf(unit.Kelvin(x)))
	} else {
		v.SetFloat(x)
	}
	results, panicked := call(p.s.f, p.at.put(v))
	if panicked != "" || !failed(results) {
		return false
	}
	for line := range strings.Lines(results[len(results)-1].Interface().(error).Error()) {
		if strings.HasPrefix(strings.TrimSpace(line), says+": is ") {
			return true
		}
	}
	return false
}

// says is what the refusal of NaN begins with; empty where it names no field.
func (p place) says() string {
	v := reflect.New(p.at.kind).Elem()
	if p.at.kind == temperature {
		v.Set(reflect.ValueOf(unit.Kelvin(math.NaN())))
	} else {
		v.SetFloat(math.NaN())
	}
	results, panicked := call(p.s.f, p.at.put(v))
	if panicked != "" || !failed(results) {
		return ""
	}
	for line := range strings.Lines(results[len(results)-1].Interface().(error).Error()) {
		if says, _, ok := strings.Cut(strings.TrimSpace(line), ": is NaN"); ok {
			return says
		}
	}
	return ""
}

// found adds the limits that aren't on record. A field that is checked with many
// others of its struct is on record for one call of each package; a call's own
// arguments, and the fields of its receiver, for each.
func found(list []subject, places map[string]place, recorded []limit) []limit {
	one := func(call, slot, says string) string {
		pkg := packageOf(call)
		if strings.Count(slot, ".")+strings.Count(slot, "[") <= 1 && strings.HasPrefix(slot, "argument") && strings.Count(says, ".") == 0 && !strings.HasPrefix(slot, "argument 0.") {
			return call + " " + says
		}
		return pkg + " " + says
	}
	have := map[string]bool{}
	for _, l := range recorded {
		have[one(l.call, l.slot, l.says)] = true
	}
	for _, s := range list {
		if textual(s.name) || !returnsError(s.f.Type()) {
			continue
		}
		for _, at := range slots(s.args) {
			p, ok := places[s.name+" "+at.path]
			if !ok {
				continue
			}
			says := p.says()
			if says == "" || have[one(s.name, at.path, says)] {
				continue
			}
			have[one(s.name, at.path, says)] = true
			now := value(at.now)
			if p.refuses(now, says) {
				continue
			}
			for _, end := range []float64{-math.MaxFloat64, math.MaxFloat64} {
				if p.refuses(end, says) {
					if taken, refused, ok := p.between(now, end, says); ok {
						recorded = append(recorded, limit{s.name, at.path, says, taken, refused})
					}
				}
			}
		}
	}
	slices.SortStableFunc(recorded, func(a, b limit) int {
		return strings.Compare(a.call+" "+a.slot, b.call+" "+b.slot)
	})
	return recorded
}

// packageOf cuts a call's name before the first dot of its last element.
func packageOf(call string) string {
	slash := strings.LastIndex(call, "/") + 1
	return call[:slash+strings.Index(call[slash:], ".")]
}

func value(v reflect.Value) float64 {
	if v.Type() == temperature {
		return v.Interface().(unit.Temperature).Kelvin()
	}
	return v.Float()
}

// between halves the floats between one that is taken and one that isn't; not ok
// where a call takes too long for a test.
func (p place) between(taken, refused float64, says string) (float64, float64, bool) {
	for {
		begun := time.Now()
		middle := inOrder(order(taken)/2 + order(refused)/2 + (order(taken)%2+order(refused)%2)/2)
		if middle == taken || middle == refused {
			return taken, refused, true
		}
		if p.refuses(middle, says) {
			refused = middle
		} else {
			taken = middle
		}
		if time.Since(begun) > 100*time.Millisecond {
			return taken, refused, false
		}
	}
}

// order numbers the floats by size; both zeros are one.
func order(x float64) int64 {
	n := int64(math.Float64bits(math.Abs(x)))
	if x < 0 {
		return -n
	}
	return n
}

func inOrder(n int64) float64 {
	if n < 0 {
		return -math.Float64frombits(uint64(-n))
	}
	return math.Float64frombits(uint64(n))
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func readLimits(t *testing.T) (all []limit) {
	f, err := os.Open(limitsFile)
	if os.IsNotExist(err) && *update {
		return nil
	}
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Equal(t, limitsTitle, rows[0])
	for _, r := range rows[1:] {
		taken, err1 := strconv.ParseFloat(r[3], 64)
		refused, err2 := strconv.ParseFloat(r[4], 64)
		require.NoError(t, err1)
		require.NoError(t, err2)
		all = append(all, limit{r[0], r[1], r[2], taken, refused})
	}
	return all
}

func writeLimits(t *testing.T, all []limit) {
	require.NoError(t, os.MkdirAll("testdata", 0o755))
	f, err := os.Create(limitsFile)
	require.NoError(t, err)
	rows := [][]string{limitsTitle}
	for _, l := range all {
		rows = append(rows, []string{l.call, l.slot, l.says, number(l.taken), number(l.refuse)})
	}
	require.NoError(t, csv.NewWriter(f).WriteAll(rows))
	require.NoError(t, f.Close())
}
