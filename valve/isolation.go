package valve

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// IsolationKind is how an isolation valve answers to pressure.
type IsolationKind uint8

// Kinds of isolation valves.
const (
	OpensUnderPressure IsolationKind = iota // opens when the differential rises above A
	OpensAtBleedOff                         // unlocks above A, opens when bled below B
	OpensAfterCycles                        // counts cycles of above A and below B; opens with the last bleed-off
)

// A valve that opens on the rise of its last cycle is a Row of one trigger with a
// Count.

var isolationKinds = [...]string{"opens under pressure", "opens at bleed-off", "opens after cycles"}

// String returns the kind in words.
func (k IsolationKind) String() string {
	if int(k) < len(isolationKinds) {
		return isolationKinds[k]
	}
	return fmt.Sprintf("isolation kind %d", uint8(k))
}

// MarshalText writes the kind in words.
func (k IsolationKind) MarshalText() ([]byte, error) {
	if int(k) >= len(isolationKinds) {
		return nil, fault.NewIn(scope, "", "kind of isolation valve is %d; must be one of %q", uint8(k), isolationKinds)
	}
	return []byte(isolationKinds[k]), nil
}

// UnmarshalText reads one of the kinds as String writes them.
func (k *IsolationKind) UnmarshalText(text []byte) error {
	for i, s := range isolationKinds {
		if s == string(text) {
			*k = IsolationKind(i)
			return nil
		}
	}
	return fault.NewIn(scope, "", "kind of isolation valve is %q; must be one of %q", text, isolationKinds)
}

// IsolationValve is a closed valve in the string that pressure opens, and that
// stays open.
//
// The differential is that of the side pressured from surface minus the other.
// The zero value opens at any differential above zero.
type IsolationValve struct {
	Kind   IsolationKind            `json:"kind"`
	Unlock unit.Band[unit.Pressure] `json:"unlock"` // A: opens, unlocks or counts when the differential rises to it
	Bleed  unit.Band[unit.Pressure] `json:"bleed"`  // B: opens or re-arms when it falls to it; not used by OpensUnderPressure
	Cycles int                      `json:"cycles"` // number of cycles; only used by OpensAfterCycles, from 1
}

// Row returns the valve as triggers on its differential:
//
//	opens under pressure    rising A
//	opens at bleed-off      rising A, falling B
//	opens after n cycles    rising A n times with B between, falling B
func (v IsolationValve) Row() Row {
	up := Trigger{Threshold: v.Unlock}
	down := Trigger{Threshold: v.Bleed, Direction: Falling}
	switch v.Kind {
	case OpensAtBleedOff:
		return Row{up, down}
	case OpensAfterCycles:
		up.Count, up.Rearm = v.Cycles, v.Bleed
		return Row{up, down}
	}
	return Row{up}
}

// Validate reports everything that is wrong with v: an unknown kind, bands that
// aren't finite or are out of order, B not wholly below A, Cycles out of range.
func (v IsolationValve) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Whole("Kind", int(v.Kind), 0, len(isolationKinds)-1), fault.At("Unlock", v.Unlock.Validate()))
	if v.Kind == OpensUnderPressure {
		return f.Err()
	}
	if err := v.Bleed.Validate(); err != nil {
		f.At("Bleed", err)
	} else if !(v.Bleed.Greatest < v.Unlock.Least) {
		f.New("Bleed", "goes up to %v; must be below Unlock, which begins at %v", v.Bleed.Greatest, v.Unlock.Least)
	}
	if v.Kind == OpensAfterCycles {
		f.Add(fault.Whole("Cycles", v.Cycles, 1, MaxCount))
	}
	return f.Err()
}

// PressureEvent is one ramp of surface pressure in the ledger of everything that
// the well has seen since the valve was run: tests, circulation, setting of
// packers, bleeding off.
type PressureEvent struct {
	Name    string        `json:"name"`
	Columns Columns       `json:"columns"` // at the valve, at that time
	From    unit.Pressure `json:"from"`
	To      unit.Pressure `json:"to"`
}

// PressureRecord is an event with what it did to a valve.
type PressureRecord struct {
	Event     PressureEvent            `json:"event"`
	From      unit.Band[unit.Pressure] `json:"from"` // differential at the valve
	To        unit.Band[unit.Pressure] `json:"to"`
	Outcome   Outcome                  `json:"outcome"`
	Condition Condition                `json:"condition"` // afterwards
}

// IsolationHistory is where a valve stands after a ledger.
type IsolationHistory struct {
	Records   []PressureRecord `json:"records"`
	State     TriggerState     `json:"state"`
	Condition Condition        `json:"condition"`

	// CyclesLeast and CyclesMost are the times that the differential certainly
	// and possibly rose to A with a bleed-off to B between.
	CyclesLeast int `json:"cycles_least"`
	CyclesMost  int `json:"cycles_most"`
}

// CyclesLeft returns how many more times the differential has to rise to A: at
// most, for the device that counted least; and at least.
//
//	left = n − counted
//
// Range: any history of this valve; neither is checked, and counts beyond n
// leave less than zero.
//
// Source: counting.
func (v IsolationValve) CyclesLeft(h IsolationHistory) (most, least int) {
	n := 1
	if v.Kind == OpensAfterCycles {
		n = v.Cycles
	}
	return n - h.CyclesLeast, n - h.CyclesMost
}

// After walks a ledger from the valve as run.
//
// Columns with a tolerance widen every ramp by what they may be off; see
// Row.RampWithin. Errors name the event whose pressures aren't finite or in
// order.
func (v IsolationValve) After(events []PressureEvent) (IsolationHistory, error) {
	f := fault.In(scope)
	f.Add(v.Validate())
	for i, e := range events {
		f.AtIndex("events", i, fault.Join("", fault.At("Columns", e.Columns.Validate()), fault.Finite("From", e.From), fault.Finite("To", e.To)))
	}
	if err := f.Err(); err != nil {
		return IsolationHistory{}, err
	}
	row := v.Row()
	var h IsolationHistory
	for _, e := range events {
		d := e.Columns.Differential()
		r := PressureRecord{Event: e, From: d.Shift(e.From), To: d.Shift(e.To)}
		r.Outcome = row.RampWithin(h.State, r.From.Nominal, r.To.Nominal, d.Shift(-d.Nominal))
		h.State = r.Outcome.State
		r.Condition = row.Condition(h.State)
		h.Records = append(h.Records, r)
	}
	h.Condition = row.Condition(h.State)
	h.CyclesLeast, h.CyclesMost = v.cycles(h.State.latest), v.cycles(h.State.earliest)
	return h, nil
}

func (v IsolationValve) cycles(p progress) int {
	switch {
	case p.links == 0:
		return p.counted
	case v.Kind == OpensAfterCycles:
		return v.Cycles
	}
	return 1
}

// PressureUp returns the surface window in which a rise does its part with
// certainty: opens the valve, unlocks it, or counts one cycle, while every other
// demand is met.
func (v IsolationValve) PressureUp(c Columns, surface SurfaceRange, others ...Demand) (SurfaceWindow, error) {
	return v.window(Demand{Name: "isolation valve, rising", Trigger: Trigger{Threshold: v.Unlock}, Columns: c, Fire: true}, surface, others)
}

// BleedOff returns the surface window to bleed to, in which a fall opens or
// re-arms the valve with certainty while every other demand is met.
//
// Where the column on the applied side alone keeps the differential above B, no
// surface pressure does it, and the error says how far the column must come
// down. OpensUnderPressure has no bleed-off: an error.
func (v IsolationValve) BleedOff(c Columns, surface SurfaceRange, others ...Demand) (SurfaceWindow, error) {
	if v.Kind == OpensUnderPressure {
		return SurfaceWindow{}, fault.NewIn(scope, "Kind", "is %v, which has no bleed-off differential; must be another", v.Kind)
	}
	return v.window(Demand{Name: "isolation valve, falling", Trigger: Trigger{Threshold: v.Bleed, Direction: Falling}, Columns: c, Fire: true}, surface, others)
}

// Hold returns the surface window in which a rise can't move the valve, whatever
// it has counted before, while every other demand is met: for a pressure test
// above it.
func (v IsolationValve) Hold(c Columns, surface SurfaceRange, others ...Demand) (SurfaceWindow, error) {
	return v.window(Demand{Name: "isolation valve, holding", Trigger: Trigger{Threshold: v.Unlock}, Columns: c}, surface, others)
}

func (v IsolationValve) window(own Demand, surface SurfaceRange, others []Demand) (SurfaceWindow, error) {
	if err := v.Validate(); err != nil {
		return SurfaceWindow{}, err
	}
	return Window(surface, append([]Demand{own}, others...))
}
