package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/clock"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// reader is whom an output is for: in which units, and what gauges are known to
// read wrong at surface.
type reader struct {
	units
	gauges map[string]unit.Pressure // reading less true pressure
}

// gauge is what the gauge of a compartment shows.
func (u reader) gauge(compartment string, p unit.Pressure) unit.Pressure {
	if p == 0 {
		return 0
	}
	return p + u.gauges[compartment]
}

// moves is how a surface pressure moves in a step.
type moves struct {
	compartment string
	values      []unit.Pressure // by the gauge; equal ones that follow each other once
	shut        bool
}

// surface lists the surface pressures that move in a step or aren't zero.
func (u reader) surface(s *sequence.StepResult) []moves {
	var all []moves
	for k, r := range s.Points[0].Surface {
		m := moves{compartment: r.Compartment, shut: r.Shut && s.Points[len(s.Points)-1].Surface[k].Shut}
		any := false
		for _, p := range s.Points {
			x := u.gauge(r.Compartment, p.Surface[k].Pressure)
			any = any || x != 0
			if n := len(m.values); n == 0 || m.values[n-1] != x {
				m.values = append(m.values, x)
			}
		}
		if any {
			all = append(all, m)
		}
	}
	return all
}

// apply says what is done at surface.
func (u reader) apply(s *sequence.StepResult) []string {
	var lines []string
	for _, m := range u.surface(s) {
		var values []string
		for _, v := range m.values {
			values = append(values, u.number(v, pressure))
		}
		text := m.compartment + ": " + strings.Join(slices.Compact(values), " → ") + " " + u.symbol(pressure)
		if m.shut {
			text += " (shut in)"
		}
		lines = append(lines, text)
	}
	for _, f := range s.Pull {
		lines = append(lines, "pull until the weight indicator shows "+u.of(f))
	}
	if s.Wellhead != nil {
		lines = append(lines, "flow at "+u.of(*s.Wellhead)+" at the wellhead")
	}
	return lines
}

// rise says how fast a pressure is changed.
func (u reader) rise(r sequence.Rise) string {
	text := fmt.Sprintf("%s %s → %s: %s/min, %.3g min", r.Compartment, u.number(u.gauge(r.Compartment, r.From), pressure), u.of(u.gauge(r.Compartment, r.To)), u.of(r.PerMinute), r.Minutes)
	rate := display.PumpRate
	if max(r.Pump, -r.Pump) < unit.LitrePerMinute {
		rate = display.SmallRate // of a control line
	}
	switch {
	case r.Pump > 0:
		text += ", pump " + u.as(r.Pump, rate)
	case r.Pump < 0:
		text += ", comes back at " + u.as(-r.Pump, rate)
	}
	return text
}

// byHand says what is done by hand, and what then stands across what it opens.
func (u reader) byHand(a sequence.ActResult) string {
	text := a.Act
	if !a.Done {
		text += " (NOT DONE: it can't be)"
	}
	return text + u.across(a.Across)
}

// across says what stands across ports that open.
func (u reader) across(all []sequence.Across) string {
	text := ""
	for _, x := range all {
		if x.Differential == 0 {
			text += "; nothing across it"
		} else {
			text += fmt.Sprintf("; %s across it, from %s to %s", u.of(x.Differential), x.From, x.To)
		}
	}
	return text
}

// happening says what moves, and what it felt.
func (u reader) happening(e sequence.Event) string {
	text := e.Action
	if e.Partial != "" {
		text += " (" + e.Partial + ")"
	}
	switch {
	case e.ByHand:
		text += ", by hand"
	case e.Differential != nil:
		text += " at a differential of " + u.of(*e.Differential)
	case e.Balance != nil:
		text += fmt.Sprintf(" at %s on its joint, weight indicator %s", u.of(*e.Balance), u.of(e.Pull))
	}
	if at := u.readings(e.Surface); len(at) > 0 {
		text += ", with " + strings.Join(at, ", ")
	}
	if e.ByHand {
		return text // what stood across it is said of the act
	}
	return text + u.across(e.Across)
}

// readings lists the gauges that show something.
func (u reader) readings(all []sequence.Reading) []string {
	var at []string
	for _, r := range all {
		if r.Pressure != 0 {
			at = append(at, r.Compartment+" "+u.of(u.gauge(r.Compartment, r.Pressure)))
		}
	}
	return at
}

// extreme is what comes nearest to the trigger of all that is felt.
func extreme(t sequence.TriggerResult) sequence.Level {
	if t.Direction == valve.Falling {
		return t.Least
	}
	return t.Greatest
}

// near is the end of the threshold's band that is felt first.
func near(t sequence.TriggerResult) sequence.Level {
	if t.Direction == valve.Falling {
		return t.Threshold.Greatest
	}
	return t.Threshold.Least
}

// nearest is the action that isn't intended and comes nearest to its band, as a
// share of it.
func nearest(s *sequence.StepResult) (sequence.TriggerResult, bool) {
	best, share := sequence.TriggerResult{}, math.Inf(1)
	for _, t := range s.Triggers {
		x := math.Abs(t.Margin.Share(near(t)))
		if t.Margin.Negative() {
			x = -x
		}
		if !t.Intended && x < share {
			best, share = t, x
		}
	}
	return best, !math.IsInf(share, 1)
}

func mostUsed(s *sequence.StepResult) (sequence.RatingResult, bool) {
	var most sequence.RatingResult
	for _, r := range s.Ratings {
		if r.Usage > most.Usage {
			most = r
		}
	}
	return most, most.Usage > 0
}

// mostLoaded is where in a step the string is nearest to its limit.
func mostLoaded(s *sequence.StepResult) (most sequence.Point, ok bool) {
	return mostUsing(s, stringOf)
}

func stringOf(p sequence.Point) *sequence.StringAt { return p.String }

func outerOf(p sequence.Point) *sequence.StringAt { return p.OuterString }

func mostUsing(s *sequence.StepResult, of func(sequence.Point) *sequence.StringAt) (most sequence.Point, ok bool) {
	for _, p := range s.Points {
		if x := of(p); x != nil && (!ok || x.Usage >= of(most).Usage) {
			most, ok = p, true
		}
	}
	return most, ok
}

func (u reader) balance(d unit.Pressure) string {
	if d < 0 {
		return u.of(-d) + " underbalance"
	}
	return u.of(d) + " overbalance"
}

// tested writes a line of the test sheet.
func (u reader) tested(t sequence.TestResult) string {
	text := fmt.Sprintf("%s from %s: differential %s; wanted %s to %s", t.Barrier, t.Side, u.of(t.Differential), u.of(t.Goal.Least), u.of(t.Goal.Greatest))
	if t.Hold != "" {
		text += fmt.Sprintf("; hold %s, no less than %s at the end", clock.Rewrite(t.Hold), u.of(t.Floor))
	}
	if t.Warming != 0 {
		text += "; warming or cooling alone makes " + u.of(t.Warming) + " of it"
	}
	if t.Leak > 0 {
		text += fmt.Sprintf("; a leak of %s takes as much as may be lost", u.as(t.Leak, display.SmallRate))
	}
	if t.Criterion != "" {
		text += " (" + t.Criterion + ")"
	}
	return text
}

// pumped writes a volume: what to pump, or what to expect back.
func (u reader) pumped(v sequence.VolumeMoved) (head, text string) {
	if v.Volume < 0 {
		return "back", fmt.Sprintf("%s out of %s (%s)", u.size(-v.Volume), v.Compartment, v.What)
	}
	return "pump", fmt.Sprintf("%s into %s (%s)", u.size(v.Volume), v.Compartment, v.What)
}

// size writes a volume: that of a control line isn't one of a pit.
func (u reader) size(v unit.Volume) string {
	if v < 0.25*unit.Barrel {
		return u.as(v, smallVolume)
	}
	return u.of(v)
}

func (u reader) zone(z sequence.ZoneRate) string {
	if z.Takes {
		return fmt.Sprintf("%s takes %s; %s at the sand face", z.Formation, u.of(-z.Rate), u.of(z.Sandface))
	}
	return fmt.Sprintf("%s gives %s, of it %s water; %s at the sand face", z.Formation, u.of(z.Rate), u.of(z.Water), u.of(z.Sandface))
}

func (u reader) flow(f sequence.FlowAt) string {
	return fmt.Sprintf("%s from %s to %s, driven by %s", f.Kind, f.From, f.To, u.of(f.Differential))
}
