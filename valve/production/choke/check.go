package choke

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// ErrNoFlow says that the pressures drive nothing from upstream to downstream.
var ErrNoFlow = errors.New("choke: no flow in this direction")

// ErrChoked says that no downstream pressure makes the choke pass that much.
var ErrChoked = errors.New("choke: choked below the wanted rate")

// ErrNoSize says that no opening passes the wanted rate.
var ErrNoSize = errors.New("choke: no opening passes the wanted rate")

// finite tells whether x is a plain number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// positive reports a quantity that must be above zero and isn't.
func positive[Q unit.Scalar](name string, q Q) error {
	if finite(float64(q)) && q > 0 {
		return nil
	}
	return fmt.Errorf("choke: %s is %v; it must be above zero", name, q)
}

// notNegative reports a quantity that must be zero or more and isn't.
func notNegative[Q unit.Scalar](name string, q Q) error {
	if finite(float64(q)) && q >= 0 {
		return nil
	}
	return fmt.Errorf("choke: %s is %v; it must be zero or more", name, q)
}

// within reports a number outside lo < x ≤ hi.
func within(name string, x, lo, hi float64) error {
	if x > lo && x <= hi {
		return nil
	}
	return fmt.Errorf("choke: %s is %v; it must be above %g and at most %g", name, x, lo, hi)
}

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
	if d > 0 && d <= mostDensity {
		return nil
	}
	return fmt.Errorf("choke: density is %v; it must be above zero and at most %v", d, mostDensity)
}

// viscosity reports one that isn't of any fluid; zero stands for turbulent flow.
func viscosity(μ unit.Viscosity) error {
	if μ == 0 || μ >= leastViscosity && μ <= mostViscosity {
		return nil
	}
	return fmt.Errorf("choke: viscosity is %v; it must be %v to %v, or zero for turbulent flow", μ, leastViscosity, mostViscosity)
}

// pressures turns gauge into absolute, here and nowhere else in the package,
// and reports what can't drive flow from 1 to 2.
func pressures(upstream, downstream unit.Pressure) (p1, p2 float64, err error) {
	p1, p2 = float64(upstream+unit.Atmosphere), float64(downstream+unit.Atmosphere)
	var faults []error
	for _, p := range [...]struct {
		name     string
		gauge    unit.Pressure
		absolute float64
	}{{"upstream", upstream, p1}, {"downstream", downstream, p2}} {
		if !(p.absolute >= 0 && p.gauge <= mostPressure) {
			faults = append(faults, fmt.Errorf("choke: %s pressure is %v; it must be %v (vacuum) to %v", p.name, p.gauge, -unit.Atmosphere, mostPressure))
		}
	}
	if faults == nil && p1 < p2 {
		faults = append(faults, fmt.Errorf("%w: upstream %v is below downstream %v", ErrNoFlow, upstream.Rounded(5), downstream.Rounded(5)))
	}
	return p1, p2, errors.Join(faults...)
}
