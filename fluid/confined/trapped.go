package confined

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// ErrVoid says that a space gets larger than its liquid: the liquid would have
// to be in tension, so a void of vapour opens and the pressure is the vapour's.
var ErrVoid = errors.New("confined: the liquid no longer fills the space")

// Fill is one of the fluids in a space.
type Fill struct {
	Name   string           `json:"name"`
	Fluid  Fluid            `json:"fluid"`
	Volume unit.Volume      `json:"volume"` // at the starting pressure and temperature
	From   unit.Temperature `json:"from"`
	To     unit.Temperature `json:"to"`
}

// Trapped is a closed space between two states.
type Trapped struct {
	Space    Space         `json:"space"`
	Fills    []Fill        `json:"fills"`
	Pressure unit.Pressure `json:"pressure"` // before, at the mean depth of the space
	// HeatOuter and HeatInner are the warming of the walls; HeatInner counts
	// only in an annulus.
	HeatOuter unit.TemperatureDifference `json:"heat_outer"`
	HeatInner unit.TemperatureDifference `json:"heat_inner"`
	Squeeze   unit.Volume                `json:"squeeze"` // taken from the space: a piston moved in, a wall bent in
}

// Outcome is what a trapped space comes to.
type Outcome struct {
	Before unit.Pressure `json:"before"`
	After  unit.Pressure `json:"after"`
	Rise   unit.Pressure `json:"rise"`   // After - Before; negative on cooling
	Volume unit.Volume   `json:"volume"` // of the space before

	FluidExpansion unit.Volume          `json:"fluid_expansion"` // what the fluids would grow by at the pressure before
	WallExpansion  unit.Volume          `json:"wall_expansion"`  // what the space grows by with the heat of its walls
	WallCompliance unit.Compressibility `json:"wall_compliance"` // of the space
	Ballooning     unit.Volume          `json:"ballooning"`      // what the space grows by with the pressure
	Compression    unit.Volume          `json:"compression"`     // what the pressure takes from the fluids
	Squeeze        unit.Volume          `json:"squeeze"`

	// Estimate is the rise by the linear formula with the fluids' mean
	// compressibility at the start: a check by hand.
	Estimate        unit.Pressure        `json:"estimate"`
	Compressibility unit.Compressibility `json:"compressibility"` // of the fluids at the start
}

// mostTrapped is the highest pressure looked at.
const mostTrapped = 2000 * unit.Megapascal

// Solve returns the pressure at which the mass of every fluid fits the space,
//
//	Σ mi/ρi(p, Ti) = V0 [1 + wall expansion + C (p - p0)] - squeeze,    mi = Vi ρi(p0, Ti0)
//
// to 1e-12 of the pressure. The fluids' own densities decide; the wall is
// linear. A fluid that leaves its range of pressure or temperature is an error,
// as is a liquid that shrinks away from its space (ErrVoid).
//
// Source: conservation of mass; API RP 90-2 calls the effect thermally induced
// annular pressure (title from memory).
func (t Trapped) Solve() (Outcome, error) {
	if err := t.Validate(); err != nil {
		return Outcome{}, err
	}
	m, v0, err := t.masses()
	if err != nil {
		return Outcome{}, err
	}
	C := float64(t.Space.Compliance())
	growth := v0 * t.Space.Expansion(t.HeatOuter, t.HeatInner)
	squeeze := float64(t.Squeeze)
	p0 := float64(t.Pressure)
	o := Outcome{
		Before: t.Pressure, Volume: unit.Volume(v0), WallExpansion: unit.Volume(growth),
		WallCompliance: unit.Compressibility(C), Squeeze: t.Squeeze,
	}
	hot, err := t.volume(m, p0)
	if err != nil {
		return Outcome{}, err
	}
	o.FluidExpansion = unit.Volume(hot - v0)
	cv, err := t.compliance(m, p0, hot)
	if err != nil {
		return Outcome{}, err
	}
	o.Compressibility = unit.Compressibility(cv / v0)
	excess := hot - (v0 + growth - squeeze)
	if math.Abs(excess) < 1e-14*v0 {
		excess = 0 // nothing has changed but last bits
	}
	stiff := cv + v0*C
	if !(stiff > 0) {
		return Outcome{}, fmt.Errorf("confined: neither fluids nor walls give way: a rigid space full of incompressible fluid has no finite pressure")
	}
	o.Estimate = unit.Pressure(excess / stiff)
	after, err := t.balance(m, v0, C, growth-squeeze, excess/stiff)
	if err != nil {
		return Outcome{}, err
	}
	o.After, o.Rise = unit.Pressure(after), unit.Pressure(after-p0)
	o.Ballooning = unit.Volume(v0 * C * (after - p0))
	o.Compression = o.FluidExpansion - (o.WallExpansion + o.Ballooning - o.Squeeze)
	return o, nil
}

// balance finds the pressure. It brackets it by steps of the linear estimate, so
// that no fluid is asked far beyond the answer.
func (t Trapped) balance(m []float64, v0, C, growth, estimate float64) (float64, error) {
	p0 := float64(t.Pressure)
	var failed error
	miss := func(p float64) float64 {
		v, err := t.volume(m, p)
		if err != nil {
			failed = err
			return math.NaN()
		}
		return (v - v0 - growth - v0*C*(p-p0)) / v0
	}
	if estimate == 0 {
		return p0, nil
	}
	a := p0
	var b float64
	for i := 0; ; i++ {
		b = p0 + estimate*(1.02+0.4*float64(i))
		if b < 0 {
			b = 0
		}
		y := miss(b)
		if failed != nil {
			return 0, fmt.Errorf("confined: on the way to about %v: %w", unit.Pressure(p0+estimate).Rounded(4), failed)
		}
		if (y <= 0) == (estimate > 0) || y == 0 {
			break
		}
		if b == 0 {
			return 0, fmt.Errorf("%w: %.3g of its volume is missing at zero pressure", ErrVoid, -y)
		}
		if b > float64(mostTrapped) || i > 500 {
			return 0, fmt.Errorf("confined: no balance up to %s", mostTrapped.Rounded(6))
		}
		a = b
	}
	p, err := root.Find(miss, a, b, 1e-13*math.Abs(b))
	if failed != nil {
		return 0, failed
	}
	return p, err
}

// Validate reports everything that is wrong with t.
func (t Trapped) Validate() error {
	f := fault.In("confined")
	f.At("Space", t.Space.Validate())
	if len(t.Fills) == 0 || len(t.Fills) > 100 {
		f.New("Fills", "has %d fills; must have from 1 to 100", len(t.Fills))
	}
	cold, hot := unit.Kelvin(100), unit.Kelvin(1500)
	for i, x := range t.Fills {
		at := fault.Index("Fills", i)
		if x.Fluid == nil {
			f.New(at+".Fluid", "is missing")
		}
		f.Add(fault.AboveTo(at+".Volume", x.Volume, 0, 1e6*unit.CubicMetre))
		f.Add(fault.Temperature(at+".From", x.From, cold, hot))
		f.Add(fault.Temperature(at+".To", x.To, cold, hot))
	}
	f.Add(fault.Between("Pressure", t.Pressure, 0, mostTrapped))
	f.Add(fault.Between("HeatOuter", t.HeatOuter, -1000*unit.KelvinDifference, 1000*unit.KelvinDifference))
	f.Add(fault.Between("HeatInner", t.HeatInner, -1000*unit.KelvinDifference, 1000*unit.KelvinDifference))
	if err := f.Err(); err != nil {
		return err
	}
	var v unit.Volume
	for _, x := range t.Fills {
		v += x.Volume
	}
	f.Add(fault.Between("Squeeze", t.Squeeze, -v, v))
	return f.Err()
}

// masses returns the fluids' masses and the volume of the space before.
func (t Trapped) masses() (m []float64, v0 float64, err error) {
	m = make([]float64, len(t.Fills))
	for i, x := range t.Fills {
		ρ, err := density(x, t.Pressure, x.From)
		if err != nil {
			return nil, 0, err
		}
		m[i] = float64(x.Volume) * ρ
		v0 += float64(x.Volume)
	}
	return m, v0, nil
}

// volume is that of the fluids after, at a pressure.
func (t Trapped) volume(m []float64, p float64) (float64, error) {
	v := 0.0
	for i, x := range t.Fills {
		ρ, err := density(x, unit.Pressure(p), x.To)
		if err != nil {
			return 0, err
		}
		v += m[i] / ρ
	}
	return v, nil
}

// compliance is -dV/dp of the fluids after, by a difference over a step that
// both a liquid and a gas bear.
func (t Trapped) compliance(m []float64, p, v float64) (float64, error) {
	h := 1e4 + 1e-4*p
	w, err := t.volume(m, p+h)
	if err != nil {
		return 0, err
	}
	return (v - w) / h, nil
}

func density(x Fill, p unit.Pressure, at unit.Temperature) (float64, error) {
	ρ, err := x.Fluid.Density(p, at)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", x.Name, err)
	}
	if !(ρ > 0 && ρ <= math.MaxFloat64) {
		return 0, fmt.Errorf("confined: %s has a density of %v at %v and %v", x.Name, ρ, p, at)
	}
	return float64(ρ), nil
}

// PressurePerDegree returns the rise of a trapped liquid's pressure per
// warming, in Pa/K, liquid and wall warming alike,
//
//	dp/dT = (αf - αw)/(c + C)
//
// with the volume expansivities of liquid and wall (3α for a free pipe), the
// liquid's compressibility and the wall's compliance. The linear form of
// Trapped.Solve, for small differences.
//
// Range: c + C above zero, not checked: infinite or NaN where nothing gives.
// Small differences, over which all four stay what they are.
//
// Source: the form of API Std 521 for a trapped liquid.
func PressurePerDegree(liquid, wall unit.Expansivity, c, compliance unit.Compressibility) float64 {
	return float64(liquid-wall) / float64(c+compliance)
}
