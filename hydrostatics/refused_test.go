package hydrostatics_test

import (
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

// compressed is a fluid of a density that varies.
type compressed struct{}

func (compressed) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	return unit.Density(1000 + 1e-6*float64(p)), nil
}
