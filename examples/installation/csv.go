package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"strings"
)

// writeSchedule writes the schedule for a spreadsheet: a line for every window,
// and one for a step that has none. Numbers stand alone; their unit is in the head.
func writeSchedule(name string, w *work) error {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if err := schedule(f, w); err != nil {
		f.Close() //nolint:errcheck // the first error counts
		return err
	}
	return f.Close()
}

func schedule(out io.Writer, w *work) error {
	u := w.read
	c := csv.NewWriter(out)
	c.Write([]string{"step", "name", "result", "what", "compartment", "ramp", "unit", "planned", "least", "greatest", //nolint:errcheck // Flush keeps it
		"apply", "moves", "pump and expect back", "open", "shut", "barriers"})
	for i := range w.programme.Steps {
		s := &w.programme.Steps[i]
		var moved, volumes, barriers []string
		for _, e := range s.Events {
			moved = append(moved, u.happening(e))
		}
		for _, v := range s.Volumes {
			head, text := u.pumped(v)
			volumes = append(volumes, head+" "+text)
		}
		for _, b := range s.Barriers {
			if b.Stands {
				barriers = append(barriers, b.Name)
			}
		}
		open, shut, _ := doors(w.plan, s)
		start := []string{fmt.Sprint(i + 1), s.Name, mark(w.programme, s)}
		end := []string{strings.Join(u.apply(s), "; "), strings.Join(moved, "; "), strings.Join(volumes, "; "),
			strings.Join(open, ", "), strings.Join(shut, ", "), strings.Join(barriers, ", ")}
		row := func(middle ...string) { c.Write(append(append(start, middle...), end...)) } //nolint:errcheck // Flush keeps it
		lines := 0
		for n := range s.Windows {
			x := &s.Windows[n]
			verb, of := held(s, x)
			p := pressure
			if x.Planned.Axial() {
				p = force
			}
			planned := u.number(u.shown(x, x.Planned), p)
			for _, in := range x.Intervals {
				row(verb, of, fmt.Sprint(x.Ramp), u.symbol(p), planned, u.limitNumber(x, in.Least, up), u.limitNumber(x, in.Greatest, down))
				lines++
			}
			if none := "none"; !x.Open() {
				if x.Awaits > 0 {
					none = fmt.Sprintf("depends on step %d", x.Awaits)
				}
				row(verb, of, fmt.Sprint(x.Ramp), u.symbol(p), planned, none, none)
				lines++
			}
		}
		if lines == 0 {
			row("", "", "", "", "", "", "")
		}
	}
	c.Flush()
	return c.Error()
}
