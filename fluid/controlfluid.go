package fluid

import (
	"fmt"
	"math"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// ControlFluid is a hydraulic fluid, or any other, known by its maker's table
// of points by temperature at atmospheric pressure.
//
//	ρ(p, T) = ρ(T)/(1 − κ·p)
//
// ρ(T) is by straight lines between points; viscosity by straight lines in its
// logarithm. κ is the mean isothermal compressibility up to p; zero is taken as
// incompressible.
//
// Range: from the first to the last point's temperature, −1 atm to 30,000 psi;
// no extrapolation. There must be two points or more, rising in temperature.
//
// Errors: *RangeError; ErrNoData for a viscosity that the points don't have.
// Build one with a struct literal; it is checked on every call, so Validate is
// only needed to find faults early.
type ControlFluid struct {
	Points      []ControlPoint       `json:"points"`
	Compression unit.Compressibility `json:"compression"` // mean, isothermal; such as 3e-6 1/psi
}

// ControlPoint is one line of a maker's table.
type ControlPoint struct {
	Temperature unit.Temperature `json:"temperature"`
	Density     unit.Density     `json:"density"`
	Viscosity   unit.Viscosity   `json:"viscosity"` // zero where not given
}

const (
	controlName      = "control fluid"
	controlPGreatest = 30000 * unit.PSI
)

// Validate returns every fault of the table.
func (c ControlFluid) Validate() error {
	f := fault.In(scope)
	if len(c.Points) < 2 {
		f.New("Points", "has %d points; must have two or more", len(c.Points))
	}
	f.Add(fault.Between("Compression", c.Compression, 0, brineCompression))
	for i, point := range c.Points {
		f.AtIndex("Points", i, point.Validate())
		if i > 0 && !(point.Temperature.Kelvin() > c.Points[i-1].Temperature.Kelvin()) {
			f.New(fault.Index("Points", i)+".Temperature", "is %s; must be above the point before, %s",
				point.Temperature.Rounded(errorDigits), c.Points[i-1].Temperature.Rounded(errorDigits))
		}
	}
	return f.Err()
}

// Limits that no hydraulic fluid comes near.
const (
	pointDensest      = 1e4 * unit.KilogramPerCubicMetre
	pointLeastViscous = 1e-6 * unit.Centipoise
	pointMostViscous  = 1e6 * unit.Centipoise
	pointHottest      = 1000 // K
)

func (p ControlPoint) sound() bool {
	return within(p.Temperature.Kelvin(), 1, pointHottest) && within(float64(p.Density), 1, float64(pointDensest)) &&
		p.viscous()
}

// viscous tells whether the viscosity is that of a liquid, or zero for not known.
func (p ControlPoint) viscous() bool {
	return p.Viscosity == 0 || within(float64(p.Viscosity), float64(pointLeastViscous), float64(pointMostViscous))
}

// Validate returns every fault of the point.
func (p ControlPoint) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Temperature("Temperature", p.Temperature, unit.Kelvin(1), unit.Kelvin(pointHottest)),
		fault.Between("Density", p.Density, unit.KilogramPerCubicMetre, pointDensest))
	if !p.viscous() {
		f.Add(fault.Between("Viscosity", p.Viscosity, pointLeastViscous, pointMostViscous))
	}
	return f.Err()
}

// valid is Validate without its texts.
func (c ControlFluid) valid() bool {
	if len(c.Points) < 2 || !within(float64(c.Compression), 0, float64(brineCompression)) {
		return false
	}
	for i, point := range c.Points {
		if !point.sound() || i > 0 && !(point.Temperature.Kelvin() > c.Points[i-1].Temperature.Kelvin()) {
			return false
		}
	}
	return true
}

// bracket returns the points around t and how far t lies between them.
func (c ControlFluid) bracket(p unit.Pressure, t unit.Temperature) (a, b ControlPoint, share float64, err error) {
	if !c.valid() {
		return a, b, 0, c.Validate()
	}
	first, last := c.Points[0].Temperature, c.Points[len(c.Points)-1].Temperature
	if T := t.Kelvin(); !within(T, first.Kelvin(), last.Kelvin()) || !within(float64(p), -float64(unit.Atmosphere), float64(controlPGreatest)) {
		var faults []error
		if !within(T, first.Kelvin(), last.Kelvin()) {
			faults = append(faults, outside(controlName, "temperature", t, first, last))
		}
		if !within(float64(p), -float64(unit.Atmosphere), float64(controlPGreatest)) {
			faults = append(faults, outside(controlName, "pressure", p, -unit.Atmosphere, controlPGreatest))
		}
		return a, b, 0, fault.Join(scope, faults...)
	}
	i := sort.Search(len(c.Points)-2, func(i int) bool { return t.Kelvin() < c.Points[i+1].Temperature.Kelvin() })
	a, b = c.Points[i], c.Points[i+1]
	return a, b, float64(t.Sub(a.Temperature) / b.Temperature.Sub(a.Temperature)), nil
}

// Density returns ρ(T)/(1 − κ·p).
//
// Source: the maker's points, as ControlFluid says.
func (c ControlFluid) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	a, b, share, err := c.bracket(p, t)
	if err != nil {
		return 0, err
	}
	return (a.Density + unit.Density(share)*(b.Density-a.Density)) / unit.Density(1-float64(c.Compression)*float64(p)), nil
}

// Compressibility returns κ/(1 − κ·p), the slope of the same formula.
func (c ControlFluid) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	if _, _, _, err := c.bracket(p, t); err != nil {
		return 0, err
	}
	return c.Compression / unit.Compressibility(1-float64(c.Compression)*float64(p)), nil
}

// Expansivity returns −(∂ρ/∂T)/ρ of the straight line that t lies on, at a point
// of the line above it.
//
// Source: derivative of the line between two points.
func (c ControlFluid) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	a, b, share, err := c.bracket(p, t)
	if err != nil {
		return 0, err
	}
	rho := a.Density + unit.Density(share)*(b.Density-a.Density)
	return unit.Expansivity(float64(a.Density-b.Density) / (float64(rho) * float64(b.Temperature.Sub(a.Temperature)))), nil
}

// Viscosity returns the viscosity at t, without an effect of pressure.
//
//	ln µ is straight between the points
//
// Source: the maker's points, as ControlFluid says.
func (c ControlFluid) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	a, b, share, err := c.bracket(p, t)
	if err != nil {
		return 0, err
	}
	if a.Viscosity == 0 || b.Viscosity == 0 {
		return 0, fmt.Errorf("%w: the points of the %s around %s have no viscosity", ErrNoData, controlName, t.Rounded(errorDigits))
	}
	return a.Viscosity * unit.Viscosity(math.Pow(float64(b.Viscosity/a.Viscosity), share)), nil
}
