package packer

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// An envelope has at most ten thousand corners; a share is above nought and at most the whole.
func TestLimitsOnEitherSide(t *testing.T) {
	for n, ok := range map[int]bool{maxVertices: true, maxVertices + 1: false} {
		var p Polygon
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			p.Vertices = append(p.Vertices, Load{Differential: unit.Pressure(5e7 * cos), Axial: unit.Force(1e6 * sin)})
		}
		_, err := p.Envelope()
		if ok {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, "10000")
		}
	}
	for x, ok := range map[float64]bool{0: false, 1e-300: true, 1: true, math.Nextafter(1, 2): false, math.NaN(): false} {
		f := fault.In("packer")
		checkShare(&f, "Share", x)
		require.Equal(t, ok, f.Err() == nil, "%v", x)
	}
	// a place to cut may begin at surface
	for top, ok := range map[unit.Length]bool{0: true, -1e-9: false, 100: false} {
		n := NotParted{Release: Release{Pull: Pull{Sections: []movement.StringSection{{BottomMD: 100}}}}, Intervals: []CutInterval{{Name: "above", TopMD: top, BottomMD: 100}}}
		err := n.validate()
		require.Equal(t, !ok, err != nil && strings.Contains(err.Error(), "Intervals[0]: above is "), "%v: %v", top, err)
	}
}

// What a pressure gains on pins depends on the pipe: by hand, pins of 10 N of which 5 are missing, a seal of 0.1 m. A
// pipe as wide as the seal gains nothing; for the rig, which stands last, the whole seal counts.
func TestWhatAPressureGains(t *testing.T) {
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	for _, x := range []struct {
		bore, part, rig float64 // of the pipe; what the part and the rig may pull
		pressure        float64
		available       bool
	}{
		{0.08, 5, 20, 5 / (area(0.1) - area(0.08)), true},
		{0.08, 20, 5, 5 / area(0.1), true},
		{0.08, 10, 5, 5 / area(0.1), true}, // short of nothing
		{0.1, 5, 20, 0, false},
		{0.1, 20, 5, 5 / area(0.1), true},
	} {
		var o Options
		r := Release{Components: []Component{{Name: "pipe", MD: 10}}, Pins: unit.Band[unit.Force]{Greatest: 10},
			Pull: Pull{Seal: 0.1, Sections: []movement.StringSection{{BottomMD: 100, Pipe: tubular.Pipe{OD: 0.12, ID: unit.Length(x.bore)}}}}}
		NotParted{Release: r}.withPressure(&o, Parting{Most: 5, Parts: []ComponentLoad{{Most: unit.Force(x.part), Component: Component{MD: 10}}, {Most: unit.Force(x.rig)}}})
		require.Equal(t, x.available, o.PressureAvailable)
		require.InDelta(t, x.pressure, float64(o.Pressure), 1e-6, "%v", x)
	}
}
