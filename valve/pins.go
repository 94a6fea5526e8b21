package valve

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Pins are shear pins or screws of one kind that part together.
//
// The zero value has no pins and is an error wherever it is used.
type Pins struct {
	Count    int        `json:"count"`
	Strength unit.Force `json:"strength"` // of one pin, nominal, at the temperature of its test

	// Tolerance is the largest relative deviation of one pin's strength, such
	// as 0.05. It is an input: ±5 to ±10 % is common practice, and the test of
	// the lot delivered is better.
	Tolerance float64 `json:"tolerance"`

	// TemperatureFactor is the strength at the device's temperature over the
	// strength tested. Zero stands for 1.
	TemperatureFactor float64 `json:"temperature_factor"`

	Correlation Correlation `json:"correlation"`
}

// Correlation says how the deviations of pins in one device go together.
type Correlation uint8

// The two extremes. Pins of one bar and heat treatment err the same way.
const (
	Lot         Correlation = iota // all pins deviate alike
	Independent                    // each pin deviates by itself
)

// String returns "lot" or "independent".
func (c Correlation) String() string {
	switch c {
	case Lot:
		return "lot"
	case Independent:
		return "independent"
	}
	return fmt.Sprintf("correlation %d", uint8(c))
}

// MarshalText writes "lot" or "independent".
func (c Correlation) MarshalText() ([]byte, error) {
	if c > Independent {
		return nil, fault.NewIn(scope, "", "pin correlation is %d; must be one of lot and independent", uint8(c))
	}
	return []byte(c.String()), nil
}

// UnmarshalText reads "lot" or "independent".
func (c *Correlation) UnmarshalText(text []byte) error {
	switch string(text) {
	case "lot":
		*c = Lot
	case "independent":
		*c = Independent
	default:
		return fault.NewIn(scope, "", "pin correlation is %q; must be one of lot or independent", text)
	}
	return nil
}

// Force returns the force that parts the pins.
//
//	F = n·S·k·(1 ± t)
//
//	n  number of pins
//	S  strength of one pin
//	k  temperature factor
//	t  tolerance of one pin
//
// The band is the full one, whatever the correlation: all pins of a device can
// be weak together. Use it for every safety decision; LikelyForce is the
// narrower statistical statement.
//
// Errors name each field that is out of range: Count under 1, Strength not
// positive, Tolerance outside 0 to 1 (1 itself excluded), TemperatureFactor
// negative or above 2.
//
// Source: definition; that tolerances of screws from one lot add up in full is
// common practice.
func (p Pins) Force() (unit.Band[unit.Force], error) {
	if err := p.Validate(); err != nil {
		return unit.Band[unit.Force]{}, err
	}
	return p.spread(p.Tolerance), nil
}

// LikelyForce returns the band of the parting force that holds with the
// confidence that Tolerance has for one pin.
//
//	F = n·S·k·(1 ± t/√n)   independent pins
//	F = n·S·k·(1 ± t)      pins of one lot
//
// It is not a bound: don't use it to show that pins hold or part. Errors as for
// Force.
//
// Source: variance of a sum of independent variables.
func (p Pins) LikelyForce() (unit.Band[unit.Force], error) {
	if err := p.Validate(); err != nil {
		return unit.Band[unit.Force]{}, err
	}
	if p.Correlation == Independent {
		return p.spread(p.Tolerance / math.Sqrt(float64(p.Count))), nil
	}
	return p.spread(p.Tolerance), nil
}

// PressureOn returns the differential that parts the pins when it acts on an
// area.
//
//	Δp = F/A
//
// The area must be positive; other errors as for Force. Source: definition.
func (p Pins) PressureOn(area unit.Area) (unit.Band[unit.Pressure], error) {
	f, err := p.Force()
	return onArea(f, area, err)
}

// LikelyPressureOn returns LikelyForce over an area; it is not a bound.
func (p Pins) LikelyPressureOn(area unit.Area) (unit.Band[unit.Pressure], error) {
	f, err := p.LikelyForce()
	return onArea(f, area, err)
}

// ForceOn returns the force window that a pressure window makes on an area, the
// inverse of PressureOn.
//
// Range: any window; an area from zero up, which isn't checked: below it the
// ends of the window change places.
func ForceOn(window unit.Band[unit.Pressure], area unit.Area) unit.Band[unit.Force] {
	a := float64(area)
	return unit.Band[unit.Force]{
		Least:    unit.Force(float64(window.Least) * a),
		Nominal:  unit.Force(float64(window.Nominal) * a),
		Greatest: unit.Force(float64(window.Greatest) * a),
	}
}

func onArea(f unit.Band[unit.Force], area unit.Area, err error) (unit.Band[unit.Pressure], error) {
	a := float64(area)
	if err := fault.Join(scope, err, fault.Above("area", area, 0)); err != nil {
		return unit.Band[unit.Pressure]{}, err
	}
	p := unit.Band[unit.Pressure]{
		Least:    unit.Pressure(float64(f.Least) / a),
		Nominal:  unit.Pressure(float64(f.Nominal) / a),
		Greatest: unit.Pressure(float64(f.Greatest) / a),
	}
	if err := p.Validate(); err != nil {
		return unit.Band[unit.Pressure]{}, fault.NewIn(scope, "", "%v on %v: %w", f.Greatest, area, err)
	}
	return p, nil
}

func (p Pins) spread(t float64) unit.Band[unit.Force] {
	return unit.Within(unit.Force(float64(p.Count)*float64(p.Strength)*p.factor()), t)
}

func (p Pins) factor() float64 {
	if p.TemperatureFactor == 0 {
		return 1
	}
	return p.TemperatureFactor
}

const (
	maxPins       = 10_000
	maxPinFactor  = 2
	maxPinNewtons = 1e12
)

// Validate reports everything that is wrong with p.
func (p Pins) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Whole("Count", p.Count, 1, maxPins), fault.AboveTo("Strength", p.Strength, 0, maxPinNewtons))
	if !(p.Tolerance >= 0 && p.Tolerance < 1) {
		f.New("Tolerance", "is %v; must be at least 0 and below 1", p.Tolerance)
	}
	f.Add(fault.Between("TemperatureFactor", p.TemperatureFactor, 0, maxPinFactor)) // 0 stands for 1
	if p.Correlation > Independent {
		f.New("Correlation", "is %d; must be lot or independent", p.Correlation)
	}
	return f.Err()
}
