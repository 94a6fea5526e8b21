package production

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// The single index of zones at other depths: the datum's pressure is that at the zone less the head
// between, nafta.wiki, Multi-layer IPR, worked by hand.
func TestEquivalentWithHeads(t *testing.T) {
	j, p := Equivalent(Straight{Index: 2, Static: 300e5, Head: 20e5}, Straight{Index: 3, Static: 250e5, Head: -10e5})
	require.Equal(t, unit.ProductivityIndex(5), j)
	require.InEpsilon(t, (2*280e5+3*260e5)/5, float64(p), 1e-15)
}

// What isn't finite, either way; a share of no zone.
func TestNumbersOutOfTheirLists(t *testing.T) {
	require.False(t, finite(math.Inf(1)))
	require.False(t, finite(math.Inf(-1)))
	require.False(t, finite(math.NaN()))
	require.True(t, finite(-1))
	f := &Flow{Rate: 1, Zones: []ZoneFlow{{Rate: 1}}}
	require.Zero(t, f.Share(-1))
	require.Zero(t, f.Share(1))
	require.Equal(t, 1.0, f.Share(0))
	require.Zero(t, (*Flow)(nil).Share(0))
}

// Rows of a table are numbered from one, below its heading.
func TestRowsOfAnOutflowTable(t *testing.T) {
	_, err := ReadOutflowTable(strings.NewReader("rate,pressure\n1 m3/d,5 MPa\nmuch,6 MPa\n"))
	require.ErrorContains(t, err, "row 2.rate")
	_, err = ReadOutflowTable(strings.NewReader("rate,pressure\nmuch,5 MPa\n2 m3/d,6 MPa\n"))
	require.ErrorContains(t, err, "row 1.rate")
	require.NotContains(t, err.Error(), "row 2")
	up := OutflowTable{{Rate: 1, Pressure: 5e6}, {Rate: 2, Pressure: 4e6}, {Rate: 3, Pressure: 6e6}, {Rate: 4, Pressure: 7e6}}
	require.NoError(t, up.Validate())
	up[3].Pressure = 5.5e6
	require.ErrorContains(t, up.Validate(), "[3].Pressure: is "+unit.Pressure(5.5e6).String()+"; must be at least the "+unit.Pressure(6e6).String())
}

// One choke needs a density to flow through it.
func TestOneChokeNeedsADensity(t *testing.T) {
	z := Zone{Name: "a", Inflow: inflow.LiquidDeliverability{Reservoir: 3e7, Index: 1e-9}}
	require.NoError(t, z.Validate())
	z.Chokes = choke.Table{{Name: "open", Coefficient: 1e-4}}
	require.ErrorContains(t, z.Validate(), "Density")
	z.Density = 800
	require.NoError(t, z.Validate())
}

// A prepared well isn't written, and says what to write.
func TestNetworkIsNotWritten(t *testing.T) {
	_, err := json.Marshal(Network{})
	require.ErrorContains(t, err, "write the Well")
	require.ErrorContains(t, json.Unmarshal([]byte("{}"), &Network{}), "write the Well")
}
