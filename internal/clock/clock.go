// Package clock writes and reads lengths of time as people do: "2 h 15 min".
package clock

import (
	"strconv"
	"strings"
	"time"
)

// Words writes a time in hours, minutes and seconds, rounded to a second from a minute
// on, to 10 ms from a second on and to a millisecond below.
func Words(d time.Duration) string {
	sign := ""
	if d < 0 {
		sign, d = "-", d.Abs()
	}
	switch {
	case d >= time.Minute:
		d = d.Round(time.Second)
	case d >= time.Second:
		d = d.Round(10 * time.Millisecond)
	default:
		d = d.Round(time.Millisecond)
	}
	hours, rest := d/time.Hour, d%time.Hour
	minutes, seconds := rest/time.Minute, rest%time.Minute
	var parts []string
	if hours != 0 {
		parts = append(parts, strconv.FormatInt(int64(hours), 10)+" h")
	}
	if minutes != 0 || hours != 0 && seconds != 0 {
		parts = append(parts, strconv.FormatInt(int64(minutes), 10)+" min")
	}
	if seconds != 0 || len(parts) == 0 {
		parts = append(parts, strconv.FormatFloat(seconds.Seconds(), 'f', -1, 64)+" s")
	}
	return sign + strings.Join(parts, " ")
}

// Parse reads "2 h 15 min" and "30 min", and what time.ParseDuration reads.
func Parse(text string) (time.Duration, error) {
	return time.ParseDuration(strings.ReplaceAll(strings.Join(strings.Fields(text), ""), "min", "m"))
}

// Rewrite writes the text of a time for people; what isn't one stays as it is.
func Rewrite(text string) string {
	d, err := Parse(text)
	if err != nil {
		return text
	}
	return Words(d)
}
