package confined_test

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func TestReadRecord(t *testing.T) {
	want := confined.Record{
		{At: 0, Pressure: 5000 * unit.PSI, Temperature: unit.Fahrenheit(70)},
		{At: 90 * time.Second, Pressure: 4990 * unit.PSI, Temperature: unit.Fahrenheit(71.5)},
	}
	same := cmp.Comparer(func(a, b unit.Temperature) bool { return a == b })
	for name, text := range map[string]string{
		"units in the head":   "time/min,pressure/psi,temperature/degF\n0,5000,70\n1.5,4990,71.5\n",
		"units in the values": "time,pressure,temperature\n0s,5000 psi,70 degF\n1m30s,4990 psi,71.5 degF\n",
		"another order":       "# gauge at the pump\npressure/psi,temperature/degF,time/s\n5000,70,0\n4990, 71.5, 90\n",
		"byte order mark":     "\ufefftime/s,pressure/psi,temperature/degF\r\n0,5000,70\r\n90,4990,71.5\r\n",
	} {
		got, err := confined.ReadRecord(strings.NewReader(text))
		require.NoError(t, err, name)
		if diff := cmp.Diff(want, got, same); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	got, err := confined.ReadRecord(strings.NewReader("time/h,pressure/bar\n0,100\n0.5,99.5\n"))
	require.NoError(t, err)
	require.Equal(t, confined.Record{{Pressure: 100 * unit.Bar}, {At: 30 * time.Minute, Pressure: 99.5 * unit.Bar}}, got)
}

func TestReadRecordSaysWhatAndWhere(t *testing.T) {
	for text, want := range map[string]string{
		"":                                       "line 1: is missing",
		"time/min\n0\n":                          `no column "pressure"`,
		"time/min,pressure/psi,flow\n":           `"flow"; must be time, pressure or temperature`,
		"time/min,time/s,pressure/psi\n":         `"time" twice`,
		"time/day,pressure/psi\n":                `unit of time is "day"`,
		"time/min,pressure/furlong\n":            "furlong",
		"time/min,pressure/psi\n0,5000\n1,x\n":   "line 3.pressure",
		"time/min,pressure/psi\n0,5000\nNaN,1\n": "line 3.time",
		"time/min,pressure/psi\n0,5000\n1\n":     "wrong number of fields",
		"time/min,pressure/psi\n0,5000\n":        "1 samples",
		"time/min,pressure/psi\n1,5000\n1,5000":  "must be after the sample before it",
		"time/min,pressure/psi\n1,5000\n2,-1":    "[1].Pressure",
		"time,pressure\n0,5000 psi\n1,5000 psi":  "missing unit",
		"time/min,pressure\n0,5000\n1,5000 psi":  "line 2.pressure",
	} {
		_, err := confined.ReadRecord(strings.NewReader(text))
		require.ErrorContains(t, err, want, "%q", text)
	}
	// No more than ten faults.
	_, err := confined.ReadRecord(strings.NewReader("time/min,pressure/psi\n" + strings.Repeat("a,b\n", 100)))
	require.LessOrEqual(t, strings.Count(err.Error(), "\n"), 11)
	err = confined.Record{{Temperature: warm}, {At: 1e9}}.Validate()
	require.ErrorContains(t, err, "in all or in none")
}

func FuzzReadRecord(f *testing.F) {
	f.Add("time/min,pressure/psi,temperature/degF\n0,5000,70\n5,4990,71.5\n")
	f.Add("time,pressure\n0s,5000 psi\n1m30s,4990 psi\n")
	f.Add("time,pressure\n\"0000000000000")
	f.Add("time/h,pressure/bar\n0,1e300\n1e-300,1\n9999999,2")
	f.Add("\"time/s\",pressure/MPa\n-5,1\n\n#x\n6,1\n")
	f.Fuzz(func(t *testing.T, text string) {
		r, err := confined.ReadRecord(strings.NewReader(text))
		if err != nil {
			return
		}
		require.NoError(t, r.Validate())
		for _, c := range confined.Presets() {
			x := confined.PressureTest{Record: r, Criterion: c, Start: r[0].At, PerDegree: 1e5}
			j, err := x.Judge()
			if err != nil {
				continue
			}
			for _, v := range []float64{float64(j.Fall), j.Decline, float64(j.PerHour), float64(j.PerHourError), float64(j.Late), float64(j.Corrected)} {
				if v != v || v-v != 0 {
					t.Fatalf("%q: %+v", text, j)
				}
			}
		}
	})
}

func BenchmarkReadRecord(b *testing.B) {
	var s strings.Builder
	s.WriteString("time/s,pressure/psi,temperature/degF\n")
	for i := range 3600 {
		s.WriteString(strconv.Itoa(i) + ",5000.5,70.1\n")
	}
	b.ReportAllocs()
	for b.Loop() {
		_, _ = confined.ReadRecord(strings.NewReader(s.String()))
	}
}
