package pins

import (
	"completion.example/hydrostatics/unit/display"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

// over turns a force into the pressure that makes it.
func over(f unit.Force, area unit.Area) unit.Pressure {
	return unit.Pressure(float64(f) / float64(area))
}

// installed holds the pins really in the device against the window.
func installed(u *calculator.Units, a *calculator.Answer, pins valve.Pins, area unit.Area, window unit.Band[unit.Pressure]) error {
	f, err := pins.In(valve.ForceOn(window, area))
	if err != nil {
		return err
	}
	a.Results = append(a.Results, calculator.Result{Name: "those installed suit the window", Value: f.Fits()})
	early, late := over(-f.Holds, area), over(-f.Parts, area)
	if early > 0 {
		a.Notes = append(a.Notes, fmt.Sprintf("those installed may part %s below the window", u.Format(early, display.Usual)))
	}
	if late > 0 {
		a.Notes = append(a.Notes, fmt.Sprintf("those installed may still hold %s above the window", u.Format(late, display.Usual)))
	}
	a.Failed = !f.Fits()
	return nil
}

// nearest says in pressures why no count does it.
func nearest(u *calculator.Units, none *valve.NoPinCountError, area unit.Area) []string {
	var notes []string
	for _, f := range none.Nearest {
		b := f.Force
		text := fmt.Sprintf("no pin count does it; the nearest: with %d they part at %s to %s", f.Pins.Count, u.Format(over(b.Least, area), display.Usual), u.Format(over(b.Greatest, area), display.Usual))
		if f.Holds < 0 {
			text += fmt.Sprintf(", %s too early", u.Format(over(-f.Holds, area), display.Usual))
		}
		if f.Parts < 0 {
			text += fmt.Sprintf(", %s too late", u.Format(over(-f.Parts, area), display.Usual))
		}
		notes = append(notes, text)
	}
	if none.Tolerance >= 0 && len(none.Nearest) > 0 {
		notes = append(notes, fmt.Sprintf("with %d it would take pins within %.2f %%", none.Nearest[0].Pins.Count, 100*none.Tolerance))
	}
	return notes
}
