package main

import (
	"fmt"
	"strings"

	"completion.example/internal/clock"
	"completion.example/valve/sequence"
)

// timeWords says how long a step takes, and how long it has been at its end.
func (u reader) timeWords(t *sequence.Times) string {
	var parts []string
	for _, p := range t.Parts {
		parts = append(parts, clock.Rewrite(p.Takes)+" "+u.text(p.What))
	}
	return fmt.Sprintf("%s (%s); %s since the beginning at its end", clock.Rewrite(t.Total), strings.Join(parts, ", "), clock.Rewrite(t.Since))
}

// decisions say what is done where a step doesn't show what it expects, and what tells
// one case from the other at surface.
func (u reader) decisions(p *sequence.Programme, s *sequence.StepResult) []string {
	b := s.Otherwise
	if b == nil {
		return nil
	}
	then := "there it ends"
	if b.Then != "" {
		then = fmt.Sprintf("then with step %d, %s", numberOf(p, b.Then), b.Then)
	}
	all := []string{fmt.Sprintf("%s not seen: go on with step %d, %s; %s", strings.Join(b.Not, ", or "), numberOf(p, b.First), b.First, then)}
	told := map[string]int{}
	for _, x := range b.Tells {
		if told[x.Not]++; told[x.Not] <= 3 {
			all = append(all, fmt.Sprintf("%s is told by: %s, %s: %s; %s where it is stuck", x.Not, x.What, x.Point, u.sized(x.Seen), u.sized(x.Stuck)))
		}
	}
	for _, name := range b.Not {
		if told[name] == 0 {
			all = append(all, fmt.Sprintf("NOTHING at surface tells whether %s has happened: no pressure and no volume that differs", name))
		}
	}
	return all
}
