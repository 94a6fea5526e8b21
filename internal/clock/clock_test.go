package clock_test

import (
	"testing"
	"time"

	"completion.example/internal/clock"
	"github.com/stretchr/testify/require"
)

func TestWords(t *testing.T) {
	for _, c := range []struct {
		d    time.Duration
		want string
	}{
		{0, "0 s"}, {1500 * time.Microsecond, "0.002 s"}, {-90 * time.Second, "-1 min 30 s"}, {12340 * time.Millisecond, "12.34 s"},
		{30 * time.Minute, "30 min"}, {2*time.Hour + 15*time.Minute, "2 h 15 min"}, {2*time.Hour + 53*time.Second, "2 h 0 min 53 s"},
		{time.Hour, "1 h"}, {26 * time.Hour, "26 h"}, {59*time.Minute + 59999*time.Millisecond, "1 h"},
	} {
		require.Equal(t, c.want, clock.Words(c.d))
		back, err := clock.Parse(c.want)
		require.NoError(t, err)
		require.InDelta(t, c.d.Seconds(), back.Seconds(), 0.5)
	}
}

func TestParseReadsWhatPeopleAndGoWrite(t *testing.T) {
	for text, want := range map[string]time.Duration{"2 h 15 min": 135 * time.Minute, "15m": 15 * time.Minute, "1h30m0s": 90 * time.Minute, "2.5 h": 150 * time.Minute, "45 s": 45 * time.Second} {
		got, err := clock.Parse(text)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	for _, text := range []string{"", "15", "15 minutes", "noon"} {
		_, err := clock.Parse(text)
		require.Error(t, err, text)
		require.Equal(t, text, clock.Rewrite(text))
	}
	require.Equal(t, "30 min", clock.Rewrite("30m0s"))
}
