package sequence

import (
	"fmt"
	"strings"
)

// Advice is the smallest change of its kind with which a window that is empty opens:
// the step is then proved with a pressure, or a pull, in that window, and no step on
// the way to it fails that hasn't failed before.
type Advice struct {
	Kind AdviceKind `json:"kind"`
	Does string     `json:"does"`           // what is changed, for people
	Step int        `json:"step,omitempty"` // that it mends, counted from 1, where that is an earlier one
	// Edits are what Plan.Set is to be given, in order.
	Edits  []Edit     `json:"edits,omitempty"`
	Places int        `json:"places,omitempty"` // by how many the step is put later; negative: earlier
	Window []Interval `json:"window"`           // as it is then
	Value  Level      `json:"value"`            // that value in it which is nearest to the planned one
	Proves bool       `json:"proves"`           // with that value the whole plan is proved
	Fails  string     `json:"fails,omitempty"`  // else the first step that isn't
}

// AdviceKind is what is changed.
type AdviceKind string

// The kinds of advice. What is smallest is known to one pin (beyond twelve by halving), to
// one place, and to the step in which the plan's own number is whole: 0.1 lb/gal or 10 kg/m³, 10 psi or 1 bar;
// that of a density between two of 1, 2, 4, 8, 16 and 32 such steps by halving. With
// another pressure or pull the step is proved with all else as planned; with the others
// the window is at least 50 psi, or 5,000 lbf, wide, or holds the planned value.
const (
	ChangePins     AdviceKind = "pins"
	ChangeDensity  AdviceKind = "density"
	ChangePressure AdviceKind = "pressure"
	ChangePull     AdviceKind = "pull"
	ChangeOrder    AdviceKind = "order"
)

// Words writes what is to be changed, what the window is then, and what becomes of the
// whole plan.
func (a *Advice) Words() string {
	w := Window{Intervals: a.Window}
	text := a.Does + ": then " + w.Words() + " does it"
	if a.Step > 0 {
		text = fmt.Sprintf("what mends step %d, ", a.Step) + text
	}
	switch {
	case a.Proves:
		return text + ", and with " + a.Value.Rounded(digits) + " the whole plan is proved"
	case a.Fails != "":
		return text + "; step “" + a.Fails + "” then still fails"
	}
	return text
}

// adviceWords writes all that opens a window in one line.
func (w *Window) adviceWords() string {
	var parts []string
	for i := range w.Opens {
		parts = append(parts, w.Opens[i].Words())
	}
	return strings.Join(parts, "; or ")
}
