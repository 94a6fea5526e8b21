package valve

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// ErrNoPinCount says that no number of the pins at hand parts inside a window.
var ErrNoPinCount = errors.New("valve: no pin count does it")

// PinFit is how a set of pins stands in a window: below the window the pins
// must hold, and at its top they must have parted.
type PinFit struct {
	Pins  Pins                  `json:"pins"`
	Force unit.Band[unit.Force] `json:"force"` // full band of the set

	Holds unit.Force `json:"holds"` // Force.Least − window.Least: positive if the pins hold below the window
	Parts unit.Force `json:"parts"` // window.Greatest − Force.Greatest: positive if they have parted at its top
}

// Fits tells whether the whole band lies in the window.
func (f PinFit) Fits() bool { return f.Holds >= 0 && f.Parts >= 0 }

// Margin is the smaller of the two margins.
func (f PinFit) Margin() unit.Force { return min(f.Holds, f.Parts) }

// In returns how the pins stand in a window of force: for pins planned, and for
// pins really found in the device. The window's nominal value is not used. A
// window of pressure is turned into one of force by ForceOn.
//
//	holds = F(least) − window(least), parts = window(greatest) − F(greatest)
//
// Source: definition of a window.
func (p Pins) In(window unit.Band[unit.Force]) (PinFit, error) {
	f, err := p.Force()
	if err := fault.Join(scope, err, checkWindow(window)); err != nil {
		return PinFit{}, err
	}
	return PinFit{Pins: p, Force: f, Holds: f.Least - window.Least, Parts: window.Greatest - f.Greatest}, nil
}

// NoPinCountError carries the numbers behind ErrNoPinCount: for every kind of
// pin the count that comes nearest.
type NoPinCountError struct {
	Window  unit.Band[unit.Force]
	Nearest []PinFit // one for each kind, best first

	// Tolerance is the largest tolerance of the best set with which it would
	// fit; negative if its nominal value lies outside the window.
	Tolerance float64
}

func (e *NoPinCountError) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%v: window %s to %s", ErrNoPinCount, e.Window.Least.Rounded(4), e.Window.Greatest.Rounded(4))
	for _, f := range e.Nearest {
		fmt.Fprintf(&b, "; %d pins of %s part at %s to %s", f.Pins.Count, f.Pins.Strength.Rounded(4),
			f.Force.Least.Rounded(4), f.Force.Greatest.Rounded(4))
		if f.Holds < 0 {
			fmt.Fprintf(&b, ", %s too early", (-f.Holds).Rounded(3))
		}
		if f.Parts < 0 {
			fmt.Fprintf(&b, ", %s too late", (-f.Parts).Rounded(3))
		}
	}
	if len(e.Nearest) > 0 && e.Tolerance >= 0 {
		fmt.Fprintf(&b, "; %d pins would do with a tolerance of %.2f %%", e.Nearest[0].Pins.Count, 100*e.Tolerance)
	}
	return b.String()
}

// Is makes errors.Is(err, ErrNoPinCount) true.
func (e *NoPinCountError) Is(target error) bool { return target == ErrNoPinCount }

// PinCounts returns every set of pins of one kind that holds below a window and
// has parted at its top, with the widest margins first. Count in stock is the
// number of pins of that kind at hand, or of holes for them in the device.
//
//	n·S·k·(1 − t) ≥ window.Least  and  n·S·k·(1 + t) ≤ window.Greatest
//
// Kinds are not mixed in one set. Where no count does it the error is a
// *NoPinCountError. It is also an error if stock is empty, or an entry or the
// window is out of range.
//
// Source: definition of the parting force, see Pins.Force.
func PinCounts(stock []Pins, window unit.Band[unit.Force]) ([]PinFit, error) {
	faults := fault.In(scope)
	faults.Add(checkWindow(window))
	if len(stock) == 0 {
		faults.New("stock", "is empty; must be one kind of pins or more")
	}
	for i, p := range stock {
		faults.AtIndex("stock", i, p.Validate())
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	var fits, nearest []PinFit
	for _, kind := range stock {
		var best PinFit
		for n := 1; n <= kind.Count; n++ {
			p := kind
			p.Count = n
			f, err := p.In(window)
			if err != nil {
				return nil, err
			}
			if f.Fits() {
				fits = append(fits, f)
			}
			if n == 1 || f.Margin() > best.Margin() {
				best = f
			}
		}
		nearest = append(nearest, best)
	}
	byMargin := func(a, b PinFit) int { return cmp.Compare(b.Margin(), a.Margin()) }
	if len(fits) > 0 {
		slices.SortStableFunc(fits, byMargin)
		return fits, nil
	}
	slices.SortStableFunc(nearest, byMargin)
	f := nearest[0].Force.Nominal
	return nil, &NoPinCountError{
		Window:    window,
		Nearest:   nearest,
		Tolerance: min(float64((f-window.Least)/f), float64((window.Greatest-f)/f)),
	}
}

func checkWindow(w unit.Band[unit.Force]) error { return fault.At("window", w.Validate()) }
