package fault

import (
	"fmt"
	"math"
	"time"

	"completion.example/hydrostatics/unit"
)

// Number is a quantity of package unit, or a plain number.
type Number interface{ ~float64 }

// Between wants a finite number from least to greatest, both included.
func Between[N Number](path string, v, least, greatest N) error {
	if v >= least && v <= greatest && finite(v) {
		return nil
	}
	switch {
	case !finite(least) && !finite(greatest):
		return must(path, v, "be finite")
	case !finite(greatest):
		return must(path, v, "be at least %s", least)
	case !finite(least):
		return must(path, v, "be at most %s", greatest)
	}
	return must(path, v, "be from %s to %s", least, greatest)
}

// Finite wants a number that is neither NaN nor infinite.
func Finite[N Number](path string, v N) error {
	if finite(v) {
		return nil
	}
	return must(path, v, "be finite")
}

// Above wants a finite number greater than low.
func Above[N Number](path string, v, low N) error {
	if v > low && finite(v) {
		return nil
	}
	return must(path, v, "be above %s", low)
}

// AtLeast wants a finite number of least or more.
func AtLeast[N Number](path string, v, least N) error {
	if v >= least && finite(v) {
		return nil
	}
	return must(path, v, "be at least %s", least)
}

// AtMost wants a finite number of greatest or less.
func AtMost[N Number](path string, v, greatest N) error {
	if v <= greatest && finite(v) {
		return nil
	}
	return must(path, v, "be at most %s", greatest)
}

// AboveTo wants a number greater than low, up to greatest.
func AboveTo[N Number](path string, v, low, greatest N) error {
	if v > low && v <= greatest && finite(v) {
		return nil
	}
	return must(path, v, "be above %s and at most %s", low, greatest)
}

// Inside wants a number between low and high, neither included.
func Inside[N Number](path string, v, low, high N) error {
	if v > low && v < high && finite(v) {
		return nil
	}
	return must(path, v, "be above %s and below %s", low, high)
}

// Temperature wants one from least to greatest, both included.
func Temperature(path string, t, least, greatest unit.Temperature) error {
	if k := t.Kelvin(); k >= least.Kelvin() && k <= greatest.Kelvin() {
		return nil
	}
	shown := t.Rounded(digits)
	if shown == least.Rounded(digits) || shown == greatest.Rounded(digits) {
		shown = t.String()
	}
	return New(path, "is %s; must be from %s to %s", shown, least.Rounded(digits), greatest.Rounded(digits))
}

// AboveZero wants a temperature above absolute zero.
func AboveZero(path string, t unit.Temperature) error {
	if k := t.Kelvin(); k > 0 && !math.IsInf(k, 0) {
		return nil
	}
	return New(path, "is %v; must be above absolute zero", t)
}

// Duration wants one from least to greatest, both included.
func Duration(path string, d, least, greatest time.Duration) error {
	if d >= least && d <= greatest {
		return nil
	}
	return New(path, "is %v; must be from %v to %v", d, least, greatest)
}

// Whole wants a whole number from least to greatest, both included.
func Whole(path string, n, least, greatest int) error {
	if n >= least && n <= greatest {
		return nil
	}
	return New(path, "is %d; must be from %d to %d", n, least, greatest)
}

// Given wants a name or other text.
func Given(path, text string) error {
	if text != "" {
		return nil
	}
	return New(path, "is missing")
}

func finite[N Number](v N) bool { return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0) }

// digits of a value in a message.
const digits = 6

// must words a fault of a number; the value keeps its unit, and is not rounded
// onto a limit that it isn't.
func must[N Number](path string, v N, want string, limits ...N) error {
	shown := given(v)
	words := make([]any, len(limits))
	for i, l := range limits {
		w := rounded(l)
		if w == shown && v != l {
			shown = fmt.Sprint(v)
		}
		words[i] = w
	}
	return New(path, "is %s; must "+want, append([]any{shown}, words...)...)
}

// given writes v as somebody may have typed it, or else rounded.
func given[N Number](v N) string {
	if q, ok := any(v).(fmt.Stringer); ok && finite(v) {
		if s := q.String(); len(s) <= short {
			return s
		}
	}
	return rounded(v)
}

// rounded writes a quantity in the trade's unit.
func rounded[N Number](v N) string {
	if r, ok := any(v).(interface{ Rounded(int) string }); ok {
		return r.Rounded(digits)
	}
	return unit.Significant(float64(v), digits)
}

// short is a text of so few digits that somebody may have typed it.
const short = 12

// Plain is Between for a plain number in a unit that has no quantity, such as
// rev/min.
func Plain(path string, v, least, greatest float64, in string) error {
	err := Between(path, v, least, greatest)
	if err == nil {
		return nil
	}
	w := func(x float64) string { return unit.Significant(x, digits) + " " + in }
	return New(path, "is %s; must be from %s to %s", w(v), w(least), w(greatest))
}
