package hydrostatics

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// UTube is tubing and annulus that join at an open port: fluid flows from the
// heavier leg to the lighter one until their pressures at the port agree.
//
// Densities are constant, the surface pressures hold, fluids don't mix or pass
// each other in a leg, and the end is where the columns would come to rest: in
// the well they swing past it. What stands above a level weighs nothing.
type UTube struct {
	Path    *Path       `json:"path"`    // of the well; nil for a vertical one
	PortMD  unit.Length `json:"port_md"` // MD
	Tubing  Leg         `json:"tubing"`
	Annulus Leg         `json:"annulus"`
}

// Side names a leg of a U-tube.
type Side int

// The sides. Neither says that nothing moves.
const (
	Neither Side = iota
	Tubing
	Annulus
)

func (s Side) String() string {
	switch s {
	case Neither:
		return "neither"
	case Tubing:
		return "tubing"
	case Annulus:
		return "annulus"
	}
	return fmt.Sprintf("Side(%d)", int(s))
}

// MarshalText writes the side's name.
func (s Side) MarshalText() ([]byte, error) {
	if s < Neither || s > Annulus {
		return nil, fault.NewIn(scope, "", "is %v; must be a side of a U-tube: neither, tubing or annulus", s)
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads the side's name.
func (s *Side) UnmarshalText(text []byte) error {
	for _, one := range [...]Side{Neither, Tubing, Annulus} {
		if one.String() == string(text) {
			*s = one
			return nil
		}
	}
	return fault.NewIn(scope, "", "is %q; must be a side of a U-tube: neither, tubing or annulus", text)
}

// LegAtRest is how a leg comes to rest.
type LegAtRest struct {
	LevelMD  unit.Length   `json:"level_md"` // MD of the top of the liquid
	LevelTVD unit.Length   `json:"level_tvd"`
	Before   unit.Pressure `json:"before"`  // at the port before it opened
	Surface  unit.Pressure `json:"surface"` // held on top of the leg
	Filled   []Standing    `json:"filled"`  // before the port opened, from the level down
	Settled  []Standing    `json:"settled"` // at rest; nothing where the leg stands empty
}

// AtRest is how a U-tube comes to rest.
type AtRest struct {
	Falling      Side          `json:"falling"`      // the heavier leg
	Differential unit.Pressure `json:"differential"` // at the port before it opened: tubing minus annulus
	Holding      unit.Pressure `json:"holding"`      // more surface pressure on the lighter leg, which keeps everything where it is
	Moved        unit.Volume   `json:"moved"`        // through the port
	Returned     unit.Volume   `json:"returned"`     // out of the top of the lighter leg
	Pressure     unit.Pressure `json:"pressure"`     // at the port, at rest
	Tubing       LegAtRest     `json:"tubing"`
	Annulus      LegAtRest     `json:"annulus"`
}

// Rest opens the port and returns how the legs come to rest. If the heavier
// leg empties before they balance, gas would pass the port: ErrNoBalance.
//
// The balance is
//
//	pt + Σ ρi·g·Δhi (tubing) = pa + Σ ρi·g·Δhi (annulus)
//
// with each fluid moved along its leg by the volume that has passed. The first
// volume at which it holds is the answer, found between the volumes at which a
// fluid's end meets a change of section, surface or port; between those the
// difference runs straight in a vertical well.
//
// Source: balance of the columns and of the volumes.
func (u UTube) Rest() (AtRest, error) {
	path := u.Path
	if path == nil {
		var err error
		if path, err = Vertical(u.PortMD); err != nil {
			return AtRest{}, err
		}
	}
	if err := fault.Join(scope,
		fault.Between("PortMD", u.PortMD, slackDepth, path.TotalDepth()),
		fault.At("Tubing", u.Tubing.check(u.PortMD)), fault.At("Annulus", u.Annulus.check(u.PortMD)),
	); err != nil {
		return AtRest{}, err
	}
	tubing, annulus := u.Tubing.bore(path, u.PortMD), u.Annulus.bore(path, u.PortMD)
	r := AtRest{}
	r.Tubing.Before, r.Annulus.Before = unit.Pressure(tubing.fallen(0)), unit.Pressure(annulus.fallen(0))
	r.Tubing.Surface, r.Annulus.Surface = u.Tubing.Surface, u.Annulus.Surface
	r.Tubing.Filled, r.Annulus.Filled = tubing.afterFall(0), annulus.afterFall(0)
	r.Differential = r.Tubing.Before - r.Annulus.Before
	r.Holding = unit.Pressure(math.Abs(float64(r.Differential)))
	falling, rising := tubing, annulus
	switch {
	case r.Differential > 0:
		r.Falling = Tubing
	case r.Differential < 0:
		r.Falling = Annulus
		falling, rising = annulus, tubing
	}
	v := 0.0
	if r.Falling != Neither {
		var err error
		if v, err = balance(falling, rising); err != nil {
			return AtRest{}, fmt.Errorf("hydrostatics: the %v empties to the port and still outweighs the other leg: %w", r.Falling, err)
		}
	}
	r.Moved = unit.Volume(v)
	r.Returned = unit.Volume(math.Max(rising.top[0]+v-rising.whole, 0))
	r.Pressure = unit.Pressure(falling.fallen(v))
	down, up := &r.Tubing, &r.Annulus
	if r.Falling == Annulus {
		down, up = up, down
	}
	down.Settled, up.Settled = falling.afterFall(v), rising.afterRise(v, falling)
	down.LevelMD, up.LevelMD = unit.Length(falling.md(falling.top[0]-v)), unit.Length(rising.md(rising.top[0]+v))
	down.LevelTVD, up.LevelTVD = unit.Length(falling.tvd(float64(down.LevelMD))), unit.Length(rising.tvd(float64(up.LevelMD)))
	if err := fault.Join(scope, fault.Finite("differential", r.Differential), fault.Finite("volume moved", r.Moved),
		fault.Finite("volume returned", r.Returned), fault.Finite("pressure at rest", r.Pressure)); err != nil {
		return AtRest{}, err
	}
	return r, nil
}

// balance returns the first volume at which the legs agree.
func balance(falling, rising *bore) (float64, error) {
	// A curved path bends the difference between events, so look inside too.
	const looks = 8
	difference := func(v float64) float64 { return falling.fallen(v) - rising.risen(v, falling) }
	at := events(falling, rising)
	for i := range len(at) - 1 {
		a := at[i]
		for k := 1; k <= looks; k++ {
			b := at[i] + (at[i+1]-at[i])*float64(k)/looks
			if difference(b) <= 0 {
				return root.Find(difference, a, b, 0)
			}
			a = b
		}
	}
	return 0, ErrNoBalance
}
