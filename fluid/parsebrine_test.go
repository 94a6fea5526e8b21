package fluid_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

func TestParseBrine(t *testing.T) {
	want, err := fluid.KrookBoyce(fluid.SystemCaCl2, 11.3*unit.PoundPerGallon)
	require.NoError(t, err)
	for _, text := range []string{"CaCl2 11.3 lb/gal", " CaCl2  11.3lb/gal "} {
		got, err := fluid.ParseBrine(text)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	_, err = fluid.ParseBrine("salt 11.3")
	require.ErrorContains(t, err, `system: brine system is "salt"`)
	require.ErrorContains(t, err, "density: unit: cannot read")
	_, err = fluid.ParseBrine("CaCl2 15 lb/gal")
	require.ErrorIs(t, err, fluid.ErrOutsideRange)
	_, err = fluid.ParseBrine("")
	require.Error(t, err)
}

func ExampleParseBrine() {
	b, err := fluid.ParseBrine("CaCl2 11.3 lb/gal")
	if err != nil {
		fmt.Println(err)
		return
	}
	rho, err := b.Density(5000*unit.PSI, unit.Fahrenheit(200))
	fmt.Println(rho.Rounded(5), err)
	// Output: 11.042 lb/gal <nil>
}

// A column of calcium chloride brine in a warm hole: what it weighs at the
// bottom, and what its density at the mixing plant would make of it.
func ExampleParseBrine_column() {
	depth := 12_000 * unit.Foot
	brine := unit.Must(fluid.ParseBrine("CaCl2 11.3 lb/gal"))
	warm := unit.Must(hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.4 * unit.FahrenheitPer100Feet}.Profile(depth))
	column := unit.Must(hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: brine, BottomTVD: depth}}, warm, hydrostatics.Reference{}))
	fmt.Println(unit.Must(column.At(depth)).Rounded(4), "as at 70 degF:", hydrostatics.Pressure(brine.At70F, depth).Rounded(4))
	// Output: 6943 psi as at 70 degF: 7044 psi
}
