package sequence

import (
	"fmt"
	"math"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/clock"
)

// TimePart is something that takes its time in a step.
type TimePart struct {
	What  string `json:"what"`
	Takes string `json:"takes"` // such as "1h30m0s"

	takes time.Duration
}

// Times are how long a step takes, as far as the plan says.
type Times struct {
	Total string     `json:"total"`
	Since string     `json:"since"` // at its end, since the beginning of the programme; of a branch, since that of the branch
	Parts []TimePart `json:"parts"`
}

// duration reads a time that has been checked; nothing where it is left out.
func duration(text string) time.Duration {
	d, _ := clock.Parse(text)
	return d
}

// span checks a time.
func (v *validation) span(path, text string) {
	if d, err := clock.Parse(text); text != "" && (err != nil || d <= 0 || d > mostTime) {
		v.fault(path, "is %q; write a time such as 15 min or 1 h 30 min, above nothing and no more than %v", text, mostTime)
	}
}

// mostTime is more than any job on a well takes.
const mostTime = 10000 * time.Hour

// times adds up what takes time in a step: what is pumped at a rate, how fast
// surface pressures are changed, what is held, and
// what the plan says for the rest.
func (s *Step) times(ramps time.Duration) []TimePart {
	var all []TimePart
	add := func(what string, d time.Duration) {
		if d > 0 {
			all = append(all, TimePart{what, d.String(), d})
		}
	}
	if s.Takes != "" {
		add("as the plan says", duration(s.Takes))
	}
	for _, a := range s.Do {
		add(a.String(), duration(a.Takes))
	}
	for _, p := range s.Pump {
		if p.Rate > 0 && p.Volume > 0 {
			add(fmt.Sprintf("pump %s into %s", p.Volume.Rounded(4), p.Into), time.Duration(float64(p.Volume)/float64(p.Rate)*float64(time.Second)).Round(time.Second))
		}
	}
	add("change surface pressures", ramps)
	for n, h := range s.Hold {
		add(fmt.Sprintf("hold after ramp %d", n+1), duration(h))
	}
	for _, t := range s.Tests {
		add("hold the test of "+t.Barrier+" from "+t.Side, duration(t.Hold))
	}
	return all
}

// rise is how fast the step changes pressures, in a minute; zero: nobody says.
func (s *Step) rise(p *Plan) unit.Pressure {
	if s.Rise != 0 {
		return s.Rise
	}
	return p.Rules.Rise
}

// rampTime is how long the ramps of a step take at the rate at which surface pressures
// are changed: each as long as the one that goes furthest.
func (k *checker) rampTime(i int) time.Duration {
	s := &k.plan.Steps[i]
	rise := s.rise(k.plan)
	if !(rise > 0) {
		return 0
	}
	minutes := 0.0
	for n := range s.Ramps {
		if n+1 >= len(k.standstills[i]) {
			break
		}
		before, after := k.standstills[i][n].world.State, k.standstills[i][n+1].world.State
		far := 0.0
		for name := range s.Ramps[n] {
			c := k.by.compartment[name]
			far = max(far, math.Abs(after.Gauge(c).F.C-before.Gauge(c).F.C))
		}
		minutes += far / float64(rise)
	}
	return time.Duration(minutes * float64(time.Minute)).Round(time.Second)
}

// timing adds the times of all steps up. A branch has its own sum: it isn't on the way
// of the plan.
func (k *checker) timing() {
	main, branch := time.Duration(0), time.Duration(0)
	known := false
	for i := range k.plan.Steps {
		s := &k.plan.Steps[i]
		sum := &main
		if s.flow != nil && s.flow.of >= 0 {
			if sum = &branch; s.flow.first {
				branch = 0
			}
		}
		parts := s.times(k.rampTime(i))
		if len(parts) == 0 {
			continue
		}
		total := time.Duration(0)
		for _, p := range parts {
			total += p.takes
		}
		*sum += total
		k.programme.Steps[i].Time = &Times{Total: total.String(), Since: sum.String(), Parts: parts}
		known = known || sum == &main
	}
	if known {
		k.programme.Takes = main.String()
	}
}
