package main

import "strings"

// inUnits is an error with its numbers in the units of the output: a depth isn't 2.38 km
// where the plan is in metres.
type inUnits struct {
	error
	units units
}

func (e inUnits) Error() string { return once(e.units.text(e.error.Error())) }

// once leaves out what is said again in brackets: a diameter that was in inches and in
// millimetres.
func once(text string) string {
	words := strings.Split(text, " ")
	for i := 2; i+1 < len(words); i++ {
		if again := words[i] + " " + words[i+1]; strings.HasPrefix(again, "(") && strings.TrimRight(again[1:], "),;") == words[i-2]+" "+words[i-1] {
			words[i-1] += again[strings.Index(again, ")")+1:]
			words = append(words[:i], words[i+2:]...)
		}
	}
	return strings.Join(words, " ")
}

func (e inUnits) Unwrap() error { return e.error }
