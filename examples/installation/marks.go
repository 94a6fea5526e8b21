package main

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// sized writes what is left of a limit: a quantity as text, or a share.
func (u reader) sized(text string) string {
	var p unit.Pressure
	var f unit.Force
	var l unit.Length
	switch data := []byte(text); {
	case p.UnmarshalText(data) == nil:
		return u.of(p)
	case f.UnmarshalText(data) == nil:
		return u.of(f)
	case l.UnmarshalText(data) == nil:
		return u.as(l, stroke)
	}
	return u.text(text)
}

// limitWords say what a margin is left to.
func limitWords(k sequence.Kind) string {
	switch k {
	case sequence.Unintended:
		return "must not happen"
	case sequence.Missing:
		return "must happen"
	case sequence.RatingCross:
		return "rating"
	case sequence.StringLoad:
		return "string"
	case sequence.HoldingOff:
		return "holding envelope"
	case sequence.SealTravel:
		return "seal bore"
	case sequence.BalanceOff:
		return "balance wanted"
	case sequence.TestOff:
		return "test wanted"
	case sequence.Fracture:
		return "fracture pressure"
	case sequence.PullOff:
		return "rig"
	case sequence.RateOff:
		return "rate wanted"
	}
	return string(k)
}

// numberOf is the number of a step by its name, counted from 1.
func numberOf(p *sequence.Programme, name string) int {
	return 1 + slices.IndexFunc(p.Steps, func(s sequence.StepResult) bool { return s.Name == name })
}

// mark says in a word how a step comes out.
func mark(p *sequence.Programme, s *sequence.StepResult) string {
	switch {
	case s.Follows != "":
		return fmt.Sprintf("depends on step %d", numberOf(p, s.Follows))
	case !s.OK:
		return "FAILS"
	}
	return "ok"
}

// doors lists the ports that are open and shut at the end of a step; those of
// devices in doubt are told apart.
func doors(plan *sequence.Plan, s *sequence.StepResult) (open, shut, doubt []string) {
	unsure := map[string]bool{}
	for _, d := range plan.Devices {
		if !slices.Contains(s.Unknown, d.Name) {
			continue
		}
		for _, a := range d.Actions {
			for _, p := range append(slices.Clone(a.Opens), a.Closes...) {
				unsure[p] = true
			}
		}
	}
	for _, p := range s.Ports {
		switch {
		case unsure[p.Port]:
			doubt = append(doubt, p.Port)
		case p.Open:
			open = append(open, p.Port)
		default:
			shut = append(shut, p.Port)
		}
	}
	return open, shut, doubt
}
