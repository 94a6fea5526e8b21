package main

import (
	"completion.example/internal/clock"
	"completion.example/valve/sequence/record"
)

// asRunPart is what the page shows of a record.
type asRunPart struct {
	Says, Tried, Class string
	Lines              []recordLine
	Steps              []asRunStep
}

type asRunStep struct {
	Number           int
	Name, Took, Left string
	Rows             int
	Checks           []asRunCheck
}

type asRunCheck struct {
	What, Expected, Recorded, Mark, Class string
}

func asRunIn(w *work) *asRunPart {
	u := w.read
	x := &asRunPart{Says: recordMark(w.record) + ": " + u.text(w.record.Says), Tried: tried(w.record), Lines: recorded(w)}
	if x.Class = "good"; w.record.Finding != record.AsPlanned {
		x.Class = "bad"
	}
	for _, s := range w.record.Steps {
		y := asRunStep{Number: s.Number, Name: s.Name, Took: clock.Rewrite(s.Took), Left: s.Left, Rows: s.Rows}
		for _, c := range s.Checks {
			z := asRunCheck{What: u.text(c.What), Expected: u.text(c.Expected), Recorded: u.text(c.Recorded), Mark: string(c.Mark), Class: "good"}
			switch c.Mark {
			case record.Off:
				z.Mark, z.Class = "OFF", "bad"
			case record.Untold:
				z.Class = "depends"
			}
			y.Checks = append(y.Checks, z)
		}
		x.Steps = append(x.Steps, y)
	}
	return x
}
