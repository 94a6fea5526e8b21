package fluid

import "completion.example/hydrostatics/unit"

// Constant is a fluid whose density is taken as the same at every pressure and
// temperature: mud by its weight, a cement slurry, a first estimate. It has the
// slopes too, both zero, so that it stands wherever a liquid is asked for. In a
// column hydrostatics.Incompressible does the same, and may be nothing, as an
// empty hole is.
//
// What that costs: water at 15,000 ft is about 1 % denser or lighter than at
// surface, depending on whether pressure or heat wins. The zero value is an
// error.
type Constant struct {
	Value unit.Density `json:"value"` // the density, positive
}

// Density returns the constant density. It returns a *RangeError where the
// density isn't positive.
func (c Constant) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	if err := positive("constant density", "Density", c.Value, float64(c.Value)); err != nil {
		return 0, err
	}
	return c.Value, nil
}

// UniformDensity tells that the density is constant, so that a column can use
// the closed form; false where the density isn't positive.
func (c Constant) UniformDensity() (unit.Density, bool) {
	return c.Value, positive("", "", c.Value, float64(c.Value)) == nil
}

// Compressibility is zero.
func (c Constant) Compressibility(unit.Pressure, unit.Temperature) (unit.Compressibility, error) {
	return 0, nil
}

// Expansivity is zero.
func (c Constant) Expansivity(unit.Pressure, unit.Temperature) (unit.Expansivity, error) {
	return 0, nil
}
