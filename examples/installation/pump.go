package main

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// mostPumpPoints is how many lines a pump's schedule has.
const mostPumpPoints = 8

// pumping says what a pump does: the way, the schedule of pressure against volume, and
// what comes back.
func (u reader) pumping(s *sequence.StepResult, n int) []string {
	p := &s.Pumps[n]
	lines := []string{fmt.Sprintf("into %s at %s, out at %s; %s on the way", p.Into, u.pumpRate(p.Rate), p.To, u.of(p.Way))}
	for k, at := range p.Points {
		if len(p.Points) > mostPumpPoints && k != len(p.Points)-1 && k*(mostPumpPoints-1)%(len(p.Points)-1) >= mostPumpPoints-1 {
			continue
		}
		shows := "the pump shows " + u.of(at.Pressure)
		if at.Falls {
			shows = "the fluid falls by itself: " + u.of(-at.Pressure) + " are lacking to hold it"
		}
		if len(p.Points) > 1 || at.Pumped > 0 {
			shows = u.of(at.Pumped) + " pumped: " + shows
		}
		lines = append(lines, shows)
	}
	if len(p.Points) > 0 {
		last := p.Points[len(p.Points)-1].Pumped
		if last > 0 {
			lines = append(lines, "takes "+minutes(last, p.Rate))
		}
	}
	for _, v := range p.Returns {
		lines = append(lines, fmt.Sprintf("%s of %s go out at %s", u.of(v.Volume), v.What, v.Compartment))
	}
	if p.Greatest > 0 {
		lines = append(lines, "proved up to "+u.pumpRate(p.Greatest))
	}
	return lines
}

// pumpRate is a rate by the minute, as pumps have them.
func (u reader) pumpRate(q unit.FlowRate) string {
	if u.symbol(rate) == "bbl/d" {
		return fmt.Sprintf("%.3g bbl/min", q.In(unit.BarrelPerMinute))
	}
	return u.of(q)
}

// minutes is how long a volume takes at a rate.
func minutes(v unit.Volume, q unit.FlowRate) string {
	return fmt.Sprintf("%.0f min", float64(v)/float64(q)/60)
}
