package fluid

import (
	"errors"
	"fmt"
	"sort"

	"completion.example/hydrostatics/unit"
)

// Measured is a liquid whose density was measured, or given by its maker, on a
// grid of pressures and temperatures: a base oil, a synthetic, a heavy brine.
//
// Between the points specific volume, 1/ρ, goes by straight lines in pressure
// and temperature. Outside the grid there is no answer.
//
// Errors: *RangeError outside the grid; what Validate returns where the grid
// isn't one. Expansivity and Compressibility are the slopes of the same
// surface, and so jump at the lines of the grid.
type Measured struct {
	Pressures    []unit.Pressure    // gauge, rising, two or more
	Temperatures []unit.Temperature // rising, two or more
	Densities    [][]unit.Density   // by pressure, then by temperature
}

const measuredName = "measured fluid"

// Validate returns every fault of the grid.
func (m Measured) Validate() error {
	var faults []error
	if len(m.Pressures) < 2 || len(m.Temperatures) < 2 {
		faults = append(faults, fmt.Errorf("fluid: %s: %d pressures and %d temperatures; there must be two or more of each",
			measuredName, len(m.Pressures), len(m.Temperatures)))
	}
	for i, p := range m.Pressures {
		if !within(float64(p), -float64(unit.Atmosphere), float64(unit.Pressure(controlPGreatest))) || i > 0 && p <= m.Pressures[i-1] {
			faults = append(faults, fmt.Errorf("fluid: %s: pressure %d is %s; it must rise and lie within -1 atm and %s",
				measuredName, i+1, p.Rounded(errorDigits), unit.Pressure(controlPGreatest).Rounded(errorDigits)))
		}
	}
	for i, t := range m.Temperatures {
		if !within(t.Kelvin(), 1, pointHottest) || i > 0 && t.Kelvin() <= m.Temperatures[i-1].Kelvin() {
			faults = append(faults, fmt.Errorf("fluid: %s: temperature %d is %s; it must rise and lie within %s and %s",
				measuredName, i+1, t.Rounded(errorDigits), unit.Kelvin(1).Rounded(errorDigits), unit.Kelvin(pointHottest).Rounded(errorDigits)))
		}
	}
	if len(m.Densities) != len(m.Pressures) {
		faults = append(faults, fmt.Errorf("fluid: %s: %d rows of densities for %d pressures", measuredName, len(m.Densities), len(m.Pressures)))
	}
	for i, row := range m.Densities {
		if len(row) != len(m.Temperatures) {
			faults = append(faults, fmt.Errorf("fluid: %s: row %d has %d densities for %d temperatures", measuredName, i+1, len(row), len(m.Temperatures)))
		}
		for j, rho := range row {
			if !within(float64(rho), 1, float64(pointDensest)) {
				faults = append(faults, outside(fmt.Sprintf("%s, row %d", measuredName, i+1), fmt.Sprintf("density %d", j+1), rho, unit.KilogramPerCubicMetre, pointDensest))
			}
		}
	}
	return errors.Join(faults...)
}

// cell holds the four specific volumes around a state and its place among them.
type cell struct {
	v      [2][2]float64 // by pressure, then temperature
	dp, dT float64
	a, b   float64 // shares along pressure and temperature
}

func (c *cell) volume() float64 {
	return (1-c.a)*((1-c.b)*c.v[0][0]+c.b*c.v[0][1]) + c.a*((1-c.b)*c.v[1][0]+c.b*c.v[1][1])
}

func (m Measured) cell(p unit.Pressure, t unit.Temperature) (cell, error) {
	if err := m.Validate(); err != nil {
		return cell{}, err
	}
	np, nt := len(m.Pressures), len(m.Temperatures)
	var faults []error
	if !within(float64(p), float64(m.Pressures[0]), float64(m.Pressures[np-1])) {
		faults = append(faults, outside(measuredName, "pressure", p, m.Pressures[0], m.Pressures[np-1]))
	}
	if !within(t.Kelvin(), m.Temperatures[0].Kelvin(), m.Temperatures[nt-1].Kelvin()) {
		faults = append(faults, outside(measuredName, "temperature", t, m.Temperatures[0], m.Temperatures[nt-1]))
	}
	if faults != nil {
		return cell{}, errors.Join(faults...)
	}
	i := sort.Search(np-2, func(i int) bool { return p < m.Pressures[i+1] })
	j := sort.Search(nt-2, func(j int) bool { return t.Kelvin() < m.Temperatures[j+1].Kelvin() })
	c := cell{dp: float64(m.Pressures[i+1] - m.Pressures[i]), dT: float64(m.Temperatures[j+1].Sub(m.Temperatures[j]))}
	c.a = float64(p-m.Pressures[i]) / c.dp
	c.b = float64(t.Sub(m.Temperatures[j])) / c.dT
	for k := range 2 {
		for l := range 2 {
			c.v[k][l] = 1 / float64(m.Densities[i+k][j+l])
		}
	}
	return c, nil
}

// Density returns the density.
func (m Measured) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	c, err := m.cell(p, t)
	if err != nil {
		return 0, err
	}
	return unit.Density(1 / c.volume()), nil
}

// Compressibility returns −(∂v/∂p)/v.
func (m Measured) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	c, err := m.cell(p, t)
	if err != nil {
		return 0, err
	}
	slope := ((1-c.b)*(c.v[1][0]-c.v[0][0]) + c.b*(c.v[1][1]-c.v[0][1])) / c.dp
	return unit.Compressibility(-slope / c.volume()), nil
}

// Expansivity returns (∂v/∂T)/v.
func (m Measured) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	c, err := m.cell(p, t)
	if err != nil {
		return 0, err
	}
	slope := ((1-c.a)*(c.v[0][1]-c.v[0][0]) + c.a*(c.v[1][1]-c.v[1][0])) / c.dT
	return unit.Expansivity(slope / c.volume()), nil
}
