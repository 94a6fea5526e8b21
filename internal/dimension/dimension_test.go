package dimension

import (
	"errors"
	"math"
	"reflect"
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
	c.faults = 0
	Check(c, Free, func(k unit.Consistency) unit.Consistency { return k }, unit.Consistency(5))
	require.Positive(t, c.faults, "a number without a fixed dimension")
}

// Each by the formula that defines it.
func TestDimensionsOfDerivedQuantities(t *testing.T) {
	Check(t, Free, func(q unit.FlowRate, rho unit.Density, dp unit.Pressure) unit.FlowCoefficient {
		return unit.FlowCoefficient(float64(q) * math.Sqrt(float64(rho)/float64(dp)))
	}, unit.FlowRate(0.01), unit.Density(850), unit.Pressure(2e6))
	Check(t, Free, func(rho unit.Density, q unit.FlowRate) unit.MassRate {
		return unit.MassRate(float64(rho) * float64(q))
	}, unit.Density(850), unit.FlowRate(0.01))
	Check(t, Free, func(q unit.FlowRate, mu unit.Viscosity, a unit.Area, g unit.Gradient) unit.Permeability {
		return unit.Permeability(float64(q) * float64(mu) / float64(a) / float64(g)) // Darcy
	}, unit.FlowRate(0.01), unit.Viscosity(0.001), unit.Area(3), unit.Gradient(5000))
	Check(t, Free, func(v unit.Velocity, d unit.Length) unit.ShearRate {
		return unit.ShearRate(8 * float64(v) / float64(d))
	}, unit.Velocity(2), unit.Length(0.07))
	Check(t, Free, func(k unit.Conductivity, rho unit.Density, c unit.SpecificHeat) unit.Diffusivity {
		return unit.Diffusivity(float64(k) / (float64(rho) * float64(c)))
	}, unit.Conductivity(2.5), unit.Density(2600), unit.SpecificHeat(900))
	Check(t, Free, func(k unit.Conductivity, d unit.Length) unit.HeatTransfer {
		return unit.HeatTransfer(float64(k) / float64(d))
	}, unit.Conductivity(2.5), unit.Length(0.01))
	Check(t, Free, func(v unit.Velocity, dt unit.TemperatureDifference) unit.SpecificHeat {
		return unit.SpecificHeat(float64(v) * float64(v) / 2 / float64(dt)) // heat of braking
	}, unit.Velocity(20), unit.TemperatureDifference(3))
}

// Departure finds a hidden foot, a hidden gravity, and a range that ends.
func TestDeparture(t *testing.T) {
	depart := func(s Scaling, f any, args ...any) (bool, error) {
		in := make([]reflect.Value, len(args))
		for i, a := range args {
			in[i] = reflect.ValueOf(a)
			require.True(t, Scalable(in[i]))
		}
		return Departure(s, reflect.ValueOf(f), in)
	}
	area := func(l unit.Length) unit.Area { return unit.Area(l * l) }
	feet := func(l unit.Length) float64 { return l.In(unit.Foot) }
	fall := func(t unit.Length) unit.Velocity { return unit.Velocity(math.Sqrt(2 * 9.80665 * float64(t))) }
	short := func(l unit.Length) (unit.Length, error) {
		if l > 1 {
			return 0, errors.New("too long")
		}
		return l, nil
	}
	narrow := func(l unit.Length) (unit.Length, error) {
		if l > 1 || l < 0.5 {
			return 0, errors.New("out of range")
		}
		return l, nil
	}
	refused, err := depart(Free, area, unit.Length(3))
	require.NoError(t, err)
	require.False(t, refused)
	_, err = depart(Free, feet, unit.Length(3))
	require.ErrorContains(t, err, "not homogeneous")
	_, err = depart(Free, fall, unit.Length(3))
	require.ErrorContains(t, err, "not homogeneous")
	_, err = depart(Gravity, fall, unit.Length(3))
	require.NoError(t, err)
	_, err = depart(Free, short, unit.Length(1))
	require.NoError(t, err, "scaled down where it can't be scaled up")
	refused, err = depart(Free, narrow, unit.Length(1))
	require.ErrorContains(t, err, "out of range")
	require.True(t, refused)
	require.False(t, Scalable(reflect.ValueOf(unit.Celsius(5))))
	require.False(t, Scalable(reflect.ValueOf(unit.Consistency(5))))
}
