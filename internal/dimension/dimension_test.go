package dimension

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

type pull struct {
	Force  unit.Force
	Length unit.Length
	Area   []unit.Area
}

type catch struct {
	testing.TB
	faults int
}

func (c *catch) Helper()               {}
func (c *catch) Errorf(string, ...any) { c.faults++ }

func TestCheckTellsHomogeneousFromNot(t *testing.T) {
	in := pull{3000, 7.7, []unit.Area{0.003}}
	Check(t, Free, func(p pull, e unit.Pressure) (unit.Length, error) {
		return unit.Length(float64(p.Force) * float64(p.Length) / float64(p.Area[0]) / float64(e)), nil
	}, in, unit.Pressure(2e11))
	Check(t, Free, func(a unit.Area) unit.Length { return unit.Length(math.Sqrt(float64(a))) }, unit.Area(0.3))
	Check(t, Gravity, func(d unit.Density, h unit.Length) unit.Pressure {
		return unit.Pressure(9.80665 * float64(d) * float64(h))
	}, unit.Density(1100), unit.Length(3000))

	c := &catch{TB: t}
	Check(c, Free, func(d unit.Density, h unit.Length) unit.Pressure {
		return unit.Pressure(9.80665 * float64(d) * float64(h))
	}, unit.Density(1100), unit.Length(3000))
	require.Positive(t, c.faults, "gravity inside is not free")
	c.faults = 0
	Check(c, Free, func(p pull) unit.Length { return p.Length + 0.0254 }, in)
	require.Positive(t, c.faults, "a hidden inch")
	c.faults = 0
	Check(c, Free, func(p unit.Pressure) unit.Force { return unit.Force(p) }, unit.Pressure(5))
	require.Positive(t, c.faults, "a wrong dimension")
}
