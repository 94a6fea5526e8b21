package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// surface writes the way of each surface pressure that moves in a step and of
// those that are not zero, the pull and the wellhead pressure.
func surface(s *sequence.StepResult) []string {
	var lines []string
	for k, r := range s.Points[0].Surface {
		values := []string{r.Pressure.Rounded(digits)}
		moves := r.Pressure != 0
		for _, p := range s.Points[1:] {
			now := p.Surface[k].Pressure
			moves = moves || now != 0
			values = append(values, now.Rounded(digits))
		}
		if !moves {
			continue
		}
		text := r.Compartment + ": " + strings.Join(slices.Compact(values), " → ")
		if r.Shut && s.Points[len(s.Points)-1].Surface[k].Shut {
			text += " (shut in)"
		}
		lines = append(lines, text)
	}
	for _, f := range s.Pull {
		lines = append(lines, "pull until the weight indicator shows "+f.Rounded(digits))
	}
	if s.Wellhead != nil {
		lines = append(lines, "flow at "+s.Wellhead.Rounded(digits)+" at the wellhead")
	}
	return lines
}

func event(e sequence.Event) string {
	text := e.Action
	if e.Partial != "" {
		text += " (" + e.Partial + ")"
	}
	switch {
	case e.Differential != nil:
		text += fmt.Sprintf(" at a differential of %s", e.Differential.Rounded(digits))
	case e.Balance != nil:
		text += fmt.Sprintf(" at %s on its joint, weight indicator %s", e.Balance.Rounded(digits), e.Pull.Rounded(digits))
	}
	var at []string
	for _, r := range e.Surface {
		if r.Pressure != 0 {
			at = append(at, fmt.Sprintf("%s %s", r.Compartment, r.Pressure.Rounded(digits)))
		}
	}
	if len(at) > 0 {
		text += ", with " + strings.Join(at, ", ")
	}
	for _, x := range e.Across {
		if x.Differential == 0 {
			text += "; nothing across it"
		} else {
			text += fmt.Sprintf("; %s across it, from %s to %s", x.Differential.Rounded(digits), x.From, x.To)
		}
	}
	return text
}

func extreme(t sequence.TriggerResult) sequence.Level {
	if t.Direction == valve.Falling {
		return t.Least
	}
	return t.Greatest
}

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
		if t.Intended {
			continue
		}
		if x := t.Margin.Share(near(t)); x < share {
			best, share = t, x
		}
	}
	return best, !math.IsInf(share, 1)
}

func window(x *sequence.Window) string {
	return x.Compartment + ": " + x.Words()
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
	for _, p := range s.Points {
		if p.String != nil && (!ok || p.String.Usage >= most.String.Usage) {
			most, ok = p, true
		}
	}
	return most, ok
}

func stringWords(p sequence.Point) string {
	x := p.String
	use := fmt.Sprintf("%.0f %% of its %s limit (%s)", 100*x.Usage, x.Limit, p.Label)
	if x.Free {
		return fmt.Sprintf("free: it comes up with %s on the weight indicator, %s", x.Reading.Rounded(digits), use)
	}
	return fmt.Sprintf("hook %s, %s at the packer, %s, %s", x.Reading.Rounded(digits), tension(x.Packer), seals(x), use)
}

func seals(x *sequence.StringAt) string {
	var all []string
	for _, s := range x.Seals {
		all = append(all, s.Name+" "+travel(s.Travel)+" since landing")
	}
	return strings.Join(all, ", ")
}

func tension(f unit.Force) string {
	if f < 0 {
		return (-f).Rounded(digits) + " of compression"
	}
	return f.Rounded(digits) + " of tension"
}

func travel(l unit.Length) string {
	if l < 0 {
		return fmt.Sprintf("%.1f in up", -l.In(unit.Inch))
	}
	return fmt.Sprintf("%.1f in down", l.In(unit.Inch))
}

func balance(d unit.Pressure) string {
	if d < 0 {
		return (-d).Rounded(digits) + " underbalance"
	}
	return d.Rounded(digits) + " overbalance"
}

// tested writes a line of the test sheet.
func tested(t sequence.TestResult) string {
	text := fmt.Sprintf("%s from %s: differential %s; wanted %s to %s", t.Barrier, t.Side,
		t.Differential.Rounded(digits), t.Goal.Least.Rounded(digits), t.Goal.Greatest.Rounded(digits))
	if t.Hold != "" {
		text += fmt.Sprintf("; hold %s, no less than %s at the end", t.Hold, t.Floor.Rounded(digits))
	}
	if t.Criterion != "" {
		text += " (" + t.Criterion + ")"
	}
	return text
}

// pumped writes a volume: what to pump, or what to expect back.
func pumped(v sequence.Volume) (head, text string) {
	if v.Volume < 0 {
		return "back", fmt.Sprintf("%s out of %s (%s)", (-v.Volume).Rounded(3), v.Compartment, v.What)
	}
	return "pump", fmt.Sprintf("%s into %s (%s)", v.Volume.Rounded(3), v.Compartment, v.What)
}
