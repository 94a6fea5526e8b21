package main

import (
	"fmt"
	"math"
	"strconv"

	"completion.example/valve/sequence"
)

// windowBar draws a window: where the pressure or the pull may lie, what is
// planned, and what fails at the ends.
func windowBar(u reader, s *sequence.StepResult, w *sequence.Window) markup {
	p := pressure
	if w.Planned.Axial() {
		p = force
	}
	value := func(l sequence.Level) float64 { return u.in(u.shown(w, l), p) }
	planned := value(w.Planned)
	end := 1.25 * max(planned, u.in(sequence.PressureLevel(u.gauge(w.Compartment, stood(s, w))), p))
	for _, x := range spans(w) {
		if x.Above != "" {
			end = max(end, 1.15*value(x.Greatest))
		}
		if x.Below != "" {
			end = max(end, 1.25*value(x.Least))
		}
	}
	if !bleeds(s, w) && planned > 0 {
		end = min(end, 4*planned) // so that the planned value isn't pressed to the left
	}
	if end <= 0 {
		end = 1
	}
	step := nice(end / 6)
	c := &canvas{wide: 560, high: 74}
	const left, wide, top, high = 14.0, 530.0, 24.0, 18.0
	at := func(x float64) float64 { return left + wide*min(max(x/end, 0), 1) }
	c.box(left, top, wide, high, "track")
	var labels []float64
	var words []string
	for _, x := range spans(w) {
		a, b := value(x.Least), value(x.Greatest)
		if x.Above == "" {
			b = end
		}
		c.box(at(a), top, at(b)-at(a), high, "good")
		if x.Below != "" {
			c.line(at(a), top-3, at(a), top+high+5, "limit")
			labels, words = append(labels, at(a)), append(words, u.limitNumber(w, x.Least, up))
		}
		if x.Above != "" && b <= end {
			c.line(at(b), top-3, at(b), top+high+5, "limit")
			labels, words = append(labels, at(b)), append(words, u.limitNumber(w, x.Greatest, down))
		}
	}
	moved := spread(labels, 48, left+14, left+wide-14)
	for x := 0.0; x <= end+step/100; x += step {
		c.line(at(x), top+high, at(x), top+high+4, "tick")
		text, free := strconv.FormatFloat(x, 'f', -1, 64), true
		for n, l := range moved {
			free = free && math.Abs(l-at(x)) > 4*float64(len(text)+len(words[n]))+6
		}
		if free {
			c.text(at(x), top+high+16, "middle", "num", "%s", text)
		}
	}
	for n := range labels {
		c.line(labels[n], top+high+5, moved[n], top+high+8, "limit")
		c.text(moved[n], top+high+18, "middle", "num strong", "%s", words[n])
	}
	c.add(`<path d="M%.1f %.1f l-6 -9 h12 z" class="planned"/>`, at(planned), top-1)
	c.line(at(planned), top-1, at(planned), top+high, "plannedline")
	anchor, x := "middle", at(planned)
	switch {
	case x > left+wide-60:
		anchor, x = "end", x+6
	case x < left+60:
		anchor, x = "start", x-6
	}
	c.text(x, 10, anchor, "num strong", "%s", u.number(u.shown(w, w.Planned), p)+" "+u.symbol(p)+" planned")
	c.text(left+wide, top+high+30, "end", "soft", "%s", u.symbol(p))
	return markup(c.svg("bar", fmt.Sprintf("window: %s", u.window(s, w))))
}
