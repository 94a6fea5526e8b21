package hydrostatics_test

import (
	"runtime"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := hydrostatics.Bullhead{}.Schedule(1)
	assert.ErrorContains(t, err, "Influx: is missing; say what stands in the well")
	assert.ErrorContains(t, err, "Sections: are missing; give the bore from surface down to the formation")
	_, err = hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: compressed{}, BottomTVD: 100}}, nil, hydrostatics.Reference{})
	assert.ErrorContains(t, err, "has a density that varies; the column must have a temperature profile")
	column, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(1000), BottomTVD: 100}}, nil, hydrostatics.Reference{})
	assert.NoError(t, err)
	assert.ErrorContains(t, column.Profile([]unit.Length{1, 2}, make([]unit.Pressure, 1)), "dst: has 1 places; must have as many as there are depths, 2")
	var none *hydrostatics.Column
	_, err = none.Depth(1)
	assert.ErrorContains(t, err, "the column has no layers")
	assert.ErrorIs(t, err, hydrostatics.ErrOutsideColumn)
	_, err = none.At(1)
	assert.ErrorContains(t, err, "the column has no layers")
	_, err = hydrostatics.NewPath(nil)
	assert.ErrorContains(t, err, "stations: is empty; must be one station or more")
	_, err = hydrostatics.NewPath([]hydrostatics.Station{{}})
	assert.ErrorContains(t, err, "stations: end at MD 0 ft; must have a station below")
	_, err = (*hydrostatics.Path)(nil).At(1)
	assert.ErrorContains(t, err, "the path has no stations")
	assert.ErrorIs(t, err, hydrostatics.ErrOutsidePath)
	_, err = hydrostatics.MaximumSurfacePressure(column, nil)
	assert.ErrorContains(t, err, "points: is empty; must be one weak point or more: nothing limits the surface pressure")
	_, err = hydrostatics.NewTemperatureProfile(nil)
	assert.ErrorContains(t, err, "points: is empty; must be one point or more")
}

// A density with steps in it can't be integrated, and one without end makes no pressure.
func TestDensitiesThatCannotBeIntegrated(t *testing.T) {
	warm, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Kelvin(300)}})
	assert.NoError(t, err)
	for f, says := range map[hydrostatics.Fluid]string{jagged{}: "hydrostatics: the fluid's density isn't smooth enough to be integrated", endless{}: "hydrostatics: the pressure is not finite at TVD "} {
		_, err = hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, BottomTVD: 5000}}, warm, hydrostatics.Reference{})
		assert.Error(t, err)
		if runtime.GOARCH == "amd64" || runtime.GOARCH == "386" || f != (endless{}) { // which comes first hangs on fused operations
			assert.ErrorContains(t, err, says)
		}
	}
}

type jagged struct{}

func (jagged) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	return 1000 + unit.Density(int64(p*1e3)%977), nil
}

type endless struct{}

func (endless) Density(unit.Pressure, unit.Temperature) (unit.Density, error) { return 1e305, nil }

// compressed is a fluid of a density that varies.
type compressed struct{}

func (compressed) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	return unit.Density(1000 + 1e-6*float64(p)), nil
}
