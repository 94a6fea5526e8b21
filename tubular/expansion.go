package tubular

import (
	"fmt"
	"sort"

	"gonum.org/v1/gonum/integrate"
	"gonum.org/v1/gonum/interp"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Expansion is a linear expansion coefficient that changes with temperature: a
// table of instantaneous values, straight between them. It is written and read by
// the name of its table.
type Expansion struct {
	name        string
	temperature []float64 // °F, rising
	coefficient []float64 // 1/°F
}

// CarbonSteel returns the expansion of carbon and low-alloy steel from 70 to
// 700 °F. It is 6.4e-6 1/°F at 70 °F, and 6.9e-6, the trade's constant, at 200.
//
// Source: ASME BPVC Section II Part D (2001/2003), Table TE-1, Group 1,
// coefficient A. Integrating it gives the table's mean coefficient B and
// expansion C.
func CarbonSteel() Expansion {
	return Expansion{
		name:        carbonSteel,
		temperature: []float64{70, 100, 150, 200, 250, 300, 350, 400, 450, 500, 550, 600, 650, 700},
		coefficient: []float64{6.4e-6, 6.5e-6, 6.7e-6, 6.9e-6, 7.1e-6, 7.3e-6, 7.5e-6, 7.7e-6, 7.8e-6, 8.0e-6, 8.2e-6, 8.4e-6, 8.5e-6, 8.6e-6},
	}
}

const carbonSteel = "carbon steel"

// MarshalText writes the name of the table, "carbon steel"; the zero value has none.
func (x Expansion) MarshalText() ([]byte, error) {
	if x.name == "" {
		return nil, errNoTable
	}
	return []byte(x.name), nil
}

// UnmarshalText reads the name of a table.
func (x *Expansion) UnmarshalText(text []byte) error {
	if string(text) != carbonSteel {
		return fault.NewIn("tubular", "", "Expansion is %q; must be %q", text, carbonSteel)
	}
	*x = CarbonSteel()
	return nil
}

var errNoTable = fault.NewIn("tubular", "", "Expansion is the zero value; must be a table, such as CarbonSteel()")

// Strain returns how much longer each length becomes from one temperature to the
// other, the integral of the coefficient. It is an error when a temperature is
// outside the table.
//
//	ε = ∫ α dT
//
// Source: definition; the table is Expansion's.
func (x Expansion) Strain(from, to unit.Temperature) (float64, error) {
	a, err1 := x.integral(from)
	b, err2 := x.integral(to)
	if err := fault.Join("tubular", err1, err2); err != nil {
		return 0, err
	}
	return b - a, nil
}

// Mean returns the mean coefficient between two temperatures, to put into
// Material.Expansion; between equal ones that of the temperature itself.
//
//	α = ε/(T2 − T1)
//
// Errors: those of Strain.
//
// Source: Strain.
func (x Expansion) Mean(from, to unit.Temperature) (unit.Expansivity, error) {
	d := to.Sub(from)
	if d == 0 {
		α, err := x.at(from.Fahrenheit())
		return unit.Expansivity(α) * unit.PerFahrenheit, err
	}
	ε, err := x.Strain(from, to)
	if err != nil {
		return 0, err
	}
	return unit.Expansivity(ε / float64(d)), nil
}

// integral is the strain from the start of the table to f.
func (x Expansion) integral(t unit.Temperature) (float64, error) {
	f := t.Fahrenheit()
	α, err := x.at(f)
	if err != nil {
		return 0, err
	}
	n := sort.SearchFloat64s(x.temperature, f) // nodes below f
	if n == 0 {
		return 0, nil
	}
	ts := append(append(make([]float64, 0, n+1), x.temperature[:n]...), f)
	αs := append(append(make([]float64, 0, n+1), x.coefficient[:n]...), α)
	return integrate.Trapezoidal(ts, αs), nil
}

// at is the coefficient at f °F.
func (x Expansion) at(f float64) (float64, error) {
	n := len(x.temperature)
	if n == 0 {
		return 0, errNoTable
	}
	// Temperatures are kept in kelvin, which may move the table's ends by a last bit.
	const slack = 1e-9
	if !(f >= x.temperature[0]-slack && f <= x.temperature[n-1]+slack) {
		return 0, fault.NewIn("tubular", "Temperature", "is %.6g degF; must be from %v degF to %v degF for expansion", f, x.temperature[0], x.temperature[n-1])
	}
	var line interp.PiecewiseLinear
	if err := line.Fit(x.temperature, x.coefficient); err != nil {
		return 0, fmt.Errorf("tubular: Expansion: %w", err)
	}
	return line.Predict(f), nil
}
