package tubular

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Stuck at a joint, in the second pipe, at the very end, and free.
func TestFreePointEnds(t *testing.T) {
	sections := []HangingSection{{Pipe: workedPipe, Length: 1000}, {Pipe: workedPipe, Length: 500}}
	const pull = unit.Force(1e5)
	e := workedPipe.Stretch(pull, 1000)
	at := func(stretch unit.Length) (StuckDepth, error) {
		return FreePoint{Sections: sections, Stretch: stretch, Pull: pull}.Find()
	}
	d, err := at(e)
	require.NoError(t, err)
	require.Equal(t, 0, d.Section)
	require.InDelta(t, 1000, float64(d.Depth), 1e-9)
	d, err = at(e * 1.25)
	require.NoError(t, err)
	require.Equal(t, 1, d.Section)
	require.InDelta(t, 1250, float64(d.Depth), 1e-9)
	require.InDelta(t, 250, float64(d.Into), 1e-9)
	for _, more := range []unit.Length{1, 1 + 0.9e-12} {
		d, err = at(e * 1.5 * more)
		require.NoError(t, err, "stuck at its very end, or free by rounding alone")
		require.InDelta(t, 1500, float64(d.Depth), 1e-8)
	}
	_, err = at(e * 1.5 * (1 + 1e-11))
	var free *FreeError
	require.ErrorAs(t, err, &free)
	names := ""
	for _, s := range func() []string {
		d, err := at(e * 1.25)
		require.NoError(t, err)
		var list []string
		for _, s := range d.Steps() {
			list = append(list, s.Name)
		}
		return list
	}() {
		names += s + "; "
	}
	require.Contains(t, names, "stretch of section 1;")
	require.Contains(t, names, "free length in section 2;")
	require.Nil(t, StuckDepth{}.Steps())
}
