package choke

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// ErrNoFlow says that the pressures drive nothing from upstream to downstream.
var ErrNoFlow = errors.New("choke: no flow in this direction")

// ErrChoked says that no downstream pressure makes the choke pass that much.
var ErrChoked = errors.New("choke: choked below the wanted rate")

// ErrNoSize says that no opening passes the wanted rate.
var ErrNoSize = errors.New("choke: no opening passes the wanted rate")

// finite tells whether x is a plain number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// scope stands before every fault of this package.
const scope = "choke"

// Limits that nothing comes near, so that every answer is a number.
const (
	leastViscosity = 1e-9 * unit.PascalSecond
	mostViscosity  = 1e6 * unit.PascalSecond
	mostDensity    = 1e5 * unit.KilogramPerCubicMetre
	mostPressure   = 1e10 * unit.Pascal
	leastRecovery  = 0.01
)

// density reports one that isn't of any fluid.
func density(d unit.Density) error {
	return fault.AboveTo("Density", d, 0, mostDensity)
}

// viscosity reports one that isn't of any fluid; zero stands for turbulent flow.
func viscosity(μ unit.Viscosity) error {
	if μ == 0 {
		return nil
	}
	return fault.Between("Viscosity", μ, leastViscosity, mostViscosity)
}

// pressures turns gauge into absolute, here and nowhere else in the package,
// and reports what can't drive flow from 1 to 2.
func pressures(upstream, downstream unit.Pressure) (p1, p2 float64, err error) {
	p1, p2 = float64(upstream+unit.Atmosphere), float64(downstream+unit.Atmosphere)
	plausible := func(name string, p unit.Pressure) error {
		if p > mostPressure {
			return fault.AtMost(name, p, mostPressure)
		}
		return fault.AtLeast(name, p, -unit.Atmosphere) // vacuum
	}
	f := fault.In(scope)
	f.Add(plausible("upstream", upstream), plausible("downstream", downstream))
	if !f.Any() && p1 < p2 {
		f.Add(fmt.Errorf("%w: upstream %v is below downstream %v", ErrNoFlow, upstream.Rounded(5), downstream.Rounded(5)))
	}
	return p1, p2, f.Err()
}
