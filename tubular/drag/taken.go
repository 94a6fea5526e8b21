package drag

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"gonum.org/v1/gonum/interp"
)

// Taken is what the hole takes along a string: Total and Share are Drag and
// DragShare of movement.Conditions.
type Taken struct {
	// Total is what friction adds to the hook load: positive when pulled, negative
	// when run in, zero while rotating.
	Total unit.Force `json:"total"`
	share interp.PiecewiseLinear
	known bool
}

// Taken returns what the hole takes from a motion with an effective force at the
// lower end: at every depth the force less that of the string turned on the spot.
//
//	ΔF(md) = F(moving) − F(turning)
//
// Errors: a string that wasn't prepared; a force that isn't finite.
//
// Source: HookLoad; Profile.
func (p *Prepared) Taken(m Motion, end unit.Force) (*Taken, error) {
	if p.Size() < 2 {
		return nil, errUnprepared
	}
	if err := fault.Finite("end", end); err != nil {
		return nil, fault.Join(scope, err)
	}
	moving, still := p.Profile(m, end), p.Profile(Rotating, end)
	t := &Taken{Total: moving[0].Force - still[0].Force}
	if !(math.Abs(float64(t.Total)) > 0) || math.IsInf(float64(t.Total), 0) {
		return t, nil
	}
	depths, shares := make([]float64, len(moving)), make([]float64, len(moving))
	for i := range moving {
		depths[i], shares[i] = float64(moving[i].MD), float64((moving[i].Force-still[i].Force)/t.Total)
	}
	if err := t.share.Fit(depths, shares); err != nil {
		return nil, fmt.Errorf("drag: share along the string: %w", err)
	}
	t.known = true
	return t, nil
}

// Share returns the share of Total that the string bears at a measured depth: 1 at
// the top, 0 at the lower end and below.
func (t *Taken) Share(md unit.Length) float64 {
	if t == nil || !t.known {
		return 0
	}
	return t.share.Predict(float64(md))
}

// Spread is one string in one hole with its friction factors at the least, the
// nominal and the greatest that they may be.
type Spread struct {
	Least    *Prepared `json:"least"`
	Nominal  *Prepared `json:"nominal"`
	Greatest *Prepared `json:"greatest"`
}

// PrepareSpread prepares the string three times: with the friction factors given
// for its zones, from the top down, at both ends, and with those of the zones
// themselves for the nominal ones.
func (s String) PrepareSpread(least, greatest []float64) (Spread, error) {
	var out Spread
	if len(least) != len(s.HoleSections) || len(greatest) != len(s.HoleSections) {
		return out, fault.NewIn(scope, "least, greatest", "number %d and %d; must be one for each of %d sections of hole", len(least), len(greatest), len(s.HoleSections))
	}
	for k, z := range s.HoleSections {
		if !(least[k] <= z.Friction && z.Friction <= greatest[k]) {
			return out, fault.NewIn(scope, fault.Index("HoleSections", k)+".Friction", "is %g; must be from its least of %g to its greatest of %g", z.Friction, least[k], greatest[k])
		}
	}
	with := func(factors []float64) (*Prepared, error) {
		t := s
		t.HoleSections = append([]HoleSection(nil), s.HoleSections...)
		for k := range t.HoleSections {
			t.HoleSections[k].Friction = factors[k]
		}
		return t.Prepare()
	}
	var err error
	if out.Nominal, err = s.Prepare(); err != nil {
		return Spread{}, err
	}
	if out.Least, err = with(least); err != nil {
		return Spread{}, err
	}
	out.Greatest, err = with(greatest)
	return out, err
}
