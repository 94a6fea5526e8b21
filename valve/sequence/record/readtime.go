package record

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"completion.example/internal/spelling"
)

// time reads the time of a row.
func (x *reading) time(line int, text string, r *row) bool {
	var t float64
	if x.seconds > 0 {
		if x.comma {
			text = strings.ReplaceAll(text, ",", ".")
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || math.IsNaN(v) || math.Abs(v) > 1e12 {
			x.fault(line, "time", "is %q; must be a number", text)
			return false
		}
		t = v * x.seconds
	} else {
		v, clock, err := clockTime(text)
		if err != nil {
			x.fault(line, "time", "is %q; must be such as 15:04:05 or 2026-03-01T15:04:05Z; a number needs a unit in the head: time [min]", text)
			return false
		}
		t = v
		if clock {
			if t += x.day; len(x.record.rows) > 0 && t < x.last-12*3600 {
				x.day += 24 * 3600 // midnight has passed
				t += 24 * 3600
			}
		}
	}
	if len(x.record.rows) == 0 {
		x.began, x.last = t, t
	}
	if t < x.last {
		x.fault(line, "time", "is %s; it must not go back", text)
		return false
	}
	x.last, r.time = t, t-x.began
	return true
}

func clockTime(text string) (seconds float64, clock bool, err error) {
	for _, layout := range [2]string{"15:04:05", "15:04"} {
		if t, err := time.Parse(layout, text); err == nil {
			return t.Sub(time.Date(0, 1, 1, 0, 0, 0, 0, time.UTC)).Seconds(), true, nil
		}
	}
	for _, layout := range [3]string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02 15:04:05"} {
		if t, err := time.Parse(layout, text); err == nil {
			return float64(t.Unix()) + float64(t.Nanosecond())/1e9, false, nil
		}
	}
	return 0, false, errors.New("no time")
}

// named finds the step of a row.
func (x *reading) named(line int, text string, r *row) {
	i := -1
	var names []string
	for k, s := range x.plan.Steps {
		names = append(names, s.Name)
		// A name may stand twice in a plan: the next is meant.
		if s.Name == text && (i < 0 || i < x.step && k >= x.step) {
			i = k
		}
	}
	if n, err := strconv.Atoi(text); err == nil && i < 0 && n >= 1 && n <= len(names) {
		i = n - 1
	}
	switch {
	case i < 0:
		hint := fmt.Sprintf("; there are 1 to %d, or their names", len(names))
		if near := spelling.Near(text, names); len(near) > 0 {
			hint = fmt.Sprintf("; did you mean %q?", near[0])
		}
		x.fault(line, "step", "is %q; the plan has no such step%s", text, hint)
		r.step = len(names)
	case i < x.step && x.step < len(names):
		x.fault(line, "step", "is %q; the plan has it before %q", text, names[x.step])
		r.step = len(names)
	default:
		r.step = i
	}
}
