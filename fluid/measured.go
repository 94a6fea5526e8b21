package fluid

import (
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
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
	Pressures    []unit.Pressure    `json:"pressures"`    // gauge, rising, two or more
	Temperatures []unit.Temperature `json:"temperatures"` // rising, two or more
	Densities    [][]unit.Density   `json:"densities"`    // by pressure, then by temperature
}

const measuredName = "measured fluid"

// Validate returns every fault of the grid.
func (m Measured) Validate() error {
	f := fault.In(scope)
	if len(m.Pressures) < 2 {
		f.New("Pressures", "has %d pressures; must have two or more", len(m.Pressures))
	}
	if len(m.Temperatures) < 2 {
		f.New("Temperatures", "has %d temperatures; must have two or more", len(m.Temperatures))
	}
	for i, p := range m.Pressures {
		at := fault.Index("Pressures", i)
		f.Add(fault.Between(at, p, -unit.Atmosphere, unit.Pressure(controlPGreatest)))
		if i > 0 && p <= m.Pressures[i-1] {
			f.New(at, "is %s; must be above the one before, %s", p.Rounded(errorDigits), m.Pressures[i-1].Rounded(errorDigits))
		}
	}
	for i, t := range m.Temperatures {
		at := fault.Index("Temperatures", i)
		f.Add(fault.Temperature(at, t, unit.Kelvin(1), unit.Kelvin(pointHottest)))
		if i > 0 && t.Kelvin() <= m.Temperatures[i-1].Kelvin() {
			f.New(at, "is %s; must be above the one before, %s", t.Rounded(errorDigits), m.Temperatures[i-1].Rounded(errorDigits))
		}
	}
	if len(m.Densities) != len(m.Pressures) {
		f.New("Densities", "has %d rows; must have one for each of %d pressures", len(m.Densities), len(m.Pressures))
	}
	for i, row := range m.Densities {
		at := fault.Index("Densities", i)
		if len(row) != len(m.Temperatures) {
			f.New(at, "has %d densities; must have one for each of %d temperatures", len(row), len(m.Temperatures))
		}
		for j, rho := range row {
			f.Add(fault.Between(fault.Index(at, j), rho, unit.KilogramPerCubicMetre, pointDensest))
		}
	}
	return f.Err()
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
		return cell{}, fault.Join(scope, faults...)
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
//
//	ρ = 1/v(p, T), v bilinear between the points
//
// Source: the caller's measurements.
func (m Measured) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	c, err := m.cell(p, t)
	if err != nil {
		return 0, err
	}
	return unit.Density(1 / c.volume()), nil
}

// Compressibility returns −(∂v/∂p)/v.
//
// Source: derivative of the surface through the points, as Measured says.
func (m Measured) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	c, err := m.cell(p, t)
	if err != nil {
		return 0, err
	}
	slope := ((1-c.b)*(c.v[1][0]-c.v[0][0]) + c.b*(c.v[1][1]-c.v[0][1])) / c.dp
	return unit.Compressibility(-slope / c.volume()), nil
}

// Expansivity returns (∂v/∂T)/v.
//
// Source: derivative of the surface through the points, as Measured says.
func (m Measured) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	c, err := m.cell(p, t)
	if err != nil {
		return 0, err
	}
	slope := ((1-c.a)*(c.v[0][1]-c.v[0][0]) + c.a*(c.v[1][1]-c.v[1][0])) / c.dT
	return unit.Expansivity(slope / c.volume()), nil
}
