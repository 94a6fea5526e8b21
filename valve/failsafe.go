package valve

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// FailSafeCase is a condition in which a safety valve must close with its
// control line vented at surface.
type FailSafeCase struct {
	Name    string       `json:"name"`
	Control unit.Density `json:"control"` // in the control line: the heaviest that can get into it

	// What backs the piston, at its least: a pressure at surface, and the density
	// of the column between. Both zero where nothing can be counted on.
	BackingSurface unit.Pressure `json:"backing_surface"`
	BackingDensity unit.Density  `json:"backing_density"`
}

// FailSafeColumns are the fluids around a safety valve.
type FailSafeColumns struct {
	Control unit.Density `json:"control"` // control fluid
	Annulus unit.Density `json:"annulus"` // heaviest that the annulus can hold, and that a leak can put into a line
	Second  unit.Density `json:"second"`  // balance fluid in the second line
	Backing unit.Density `json:"backing"` // lightest in the annulus, of an annulus-backed valve: gas counts as zero
}

// FailSafeCases returns the conditions that a valve's setting depth has to
// answer for.
//
// Every kind: the control line as filled, and the control line with annulus fluid
// in it after a leak. In both, backing is at its least: none for a tubing-backed
// valve, whose tubing may be empty and without pressure; the second line's column
// for a line-backed one, and besides none, for a second line that has lost its
// fluid; for an annulus-backed one the lightest annulus, and besides none, for an
// annulus that is empty.
//
// Where a case's density isn't known give it as zero, and it is left out.
func (v SafetyValve) FailSafeCases(c FailSafeColumns) []FailSafeCase {
	var cases []FailSafeCase
	add := func(name string, control, backing unit.Density) {
		if control != 0 {
			cases = append(cases, FailSafeCase{Name: name, Control: control, BackingDensity: backing})
		}
	}
	for _, line := range [...]struct {
		name    string
		density unit.Density
	}{{"control fluid in the line", c.Control}, {"annulus fluid in the line", c.Annulus}} {
		switch v.Backing {
		case LineBacked:
			if c.Second != 0 {
				add(line.name+", second line full", line.density, c.Second)
			}
			add(line.name+", second line lost", line.density, 0)
		case AnnulusBacked:
			if c.Backing != 0 {
				add(line.name+", annulus at its lightest", line.density, c.Backing)
			}
			add(line.name+", annulus lost", line.density, 0)
		default:
			add(line.name+", no backing", line.density, 0)
		}
	}
	return cases
}

// FailSafeDepth is the deepest setting in one case.
type FailSafeDepth struct {
	Case      FailSafeCase  `json:"case"`
	TVD       unit.Length   `json:"tvd"`      // deepest at which the valve closes for certain; zero if Anywhere
	Anywhere  bool          `json:"anywhere"` // the backing is no lighter than the control line, or hardly so: no limit in any well
	Available unit.Pressure `json:"available"`
}

// FailSafe is a safety valve's setting depth.
type FailSafe struct {
	Cases     []FailSafeDepth `json:"cases"`
	Governing FailSafeDepth   `json:"governing"` // the shallowest

	closes, margin unit.Pressure
}

// ErrNotFailSafe says that a valve doesn't close at any depth in some case.
var ErrNotFailSafe = errors.New("valve: not fail safe at any depth")

// FailSafe returns the deepest setting at which the valve closes for certain in
// every case, with its control line vented at surface.
//
//	D = (pc − m + pbs) / (g·(ρc − ρb))
//
//	pc   closing differential, least
//	m    margin
//	pbs  backing pressure at surface, ρb density of the backing column
//	ρc   density in the control line
//
// Without backing that is D = (pc − m)/(gradient of the heaviest fluid). Depth is
// true vertical under the place where the line is vented. A line that is vented
// against a pressure, as into the sea at the sea bed, needs that much more
// margin.
//
// Where the margin takes all of the closing differential the error is
// ErrNotFailSafe, with the case and its numbers. Other errors name what is out of
// range; no cases is one.
//
// Source: API RP 14B / ISO 10417, fail-safe setting depth (from memory).
func (v SafetyValve) FailSafe(margin unit.Pressure, cases []FailSafeCase) (FailSafe, error) {
	faults := fault.In(scope)
	faults.Add(v.Validate(), fault.AtLeast("margin", margin, 0))
	if len(cases) == 0 {
		faults.New("cases", "is empty; must be one case or more to be fail safe in")
	}
	for i, c := range cases {
		faults.AtIndex("cases", i, c.Validate())
	}
	if err := faults.Err(); err != nil {
		return FailSafe{}, err
	}
	f := FailSafe{closes: v.Closes.Least, margin: margin}
	for _, c := range cases {
		d := FailSafeDepth{Case: c, Available: v.Closes.Least - margin + c.BackingSurface}
		gradient := hydrostatics.Gradient(c.Control - c.BackingDensity)
		switch {
		case !(d.Available > 0):
			faults.Add(fmt.Errorf("%w: %q: closing differential of %v less a margin of %v with a backing of %v at surface leaves %v",
				ErrNotFailSafe, c.Name, v.Closes.Least.Rounded(4), margin.Rounded(4), c.BackingSurface.Rounded(4), d.Available.Rounded(4)))
		case !(gradient > 0):
			d.Anywhere = true
		default:
			d.TVD = unit.Length(float64(d.Available) / float64(gradient))
			// A column so nearly balanced that the depth is beyond any well.
			d.Anywhere = d.TVD > maxDepth
			if d.Anywhere {
				d.TVD = 0
			}
		}
		f.Cases = append(f.Cases, d)
	}
	if err := faults.Err(); err != nil {
		return FailSafe{}, err
	}
	f.Governing = f.Cases[0]
	for _, d := range f.Cases[1:] {
		if !d.Anywhere && (f.Governing.Anywhere || d.TVD < f.Governing.TVD) {
			f.Governing = d
		}
	}
	return f, nil
}

// Validate reports everything that is wrong with c.
func (c FailSafeCase) Validate() error {
	return fault.Join(scope, fault.Between("Control", c.Control, 0, maxDensity),
		fault.Between("BackingDensity", c.BackingDensity, 0, maxDensity), fault.AtLeast("BackingSurface", c.BackingSurface, 0))
}
