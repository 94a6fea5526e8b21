package sequence_test

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// undulating is a lateral that lands at 6,000 ft, rises to 8,000, falls to 9,000 and rises
// to its end at 10,000 ft: its high points are at 8,000 and 10,000 ft.
func undulating(layers ...sequence.Layer) *sequence.Plan {
	p := &sequence.Plan{Name: "undulating", Well: sequence.Well{MD: 10000 * foot}}
	at := func(md, inclination float64) { // station
		p.Well.Path = append(p.Well.Path, sequence.Station{MD: feet(md), Inclination: unit.Angle(inclination) * unit.Degree})
	}
	at(0, 0)
	at(4000, 0)
	at(6000, 90)
	at(6100, 95)
	at(7900, 95)
	at(8100, 85)
	at(8900, 85)
	at(9100, 95)
	at(10000, 95)
	p.Fluids = []sequence.Fluid{{Name: "brine"}, {Name: "oil"}, {Name: "heavy brine"}}
	setDensity(&p.Fluids[0], 9)
	setDensity(&p.Fluids[1], 7)
	setDensity(&p.Fluids[2], 11)
	p.Compartments = []sequence.Compartment{{Name: "tubing", BottomMD: 10000 * foot, Surface: true, Layers: layers}}
	addAction(p, "gauge", "tubing", "", rising(19000*psi, 19000*psi))
	p.Devices[0].MD = 3000 * foot
	p.Steps = []sequence.Step{{Name: "look"}}
	return p
}

func layersOf(parts ...any) []sequence.Layer {
	var all []sequence.Layer
	for i := 0; i < len(parts); i += 2 {
		all = append(all, sequence.Layer{Fluid: parts[i].(string), ToMD: feet(float64(parts[i+1].(int)))})
	}
	return all
}

// Oil is named where it collects, as gas is: under brine in the upright hole it rises to
// surface; past the first high point of the lateral, to that; towards the toe where the hole
// rises there. On brine it stays, and brines mix.
func TestOilCollectsAtHighPoints(t *testing.T) {
	for name, x := range map[string]struct {
		layers []sequence.Layer
		says   string // empty: nothing
	}{
		"on brine":            {layersOf("oil", 3000, "brine", 10000), ""},
		"under brine":         {layersOf("brine", 3000, "oil", 5000, "brine", 10000), `"oil" stands under "brine" in "tubing" at 3000 ft: it rises and collects at the high point at 0 ft`},
		"brines":              {layersOf("heavy brine", 3000, "brine", 10000), ""},
		"at the first high":   {layersOf("brine", 7000, "oil", 8400, "brine", 10000), `a pocket of "oil" stands in "tubing" about the high point at 8000 ft`},
		"beyond it":           {layersOf("brine", 8500, "oil", 8800, "brine", 10000), `"oil" stands under "brine" in "tubing" at 8500 ft: it rises and collects at the high point at 8000 ft`},
		"in front of it":      {layersOf("brine", 6500, "oil", 7000, "brine", 10000), `"oil" stands under "brine" in "tubing" at 7000 ft: it rises and collects at the high point at 8000 ft`},
		"in front of the toe": {layersOf("brine", 9200, "oil", 9500, "brine", 10000), `"oil" stands under "brine" in "tubing" at 9500 ft: it rises and collects at the high point at 10000 ft`},
		"at the toe":          {layersOf("brine", 9500, "oil", 10000), ""},
	} {
		t.Run(name, func(t *testing.T) {
			said := strings.Join(verdict(t, undulating(x.layers...)).Unchecked, "\n")
			if x.says == "" {
				require.NotContains(t, said, "high point")
				return
			}
			require.Contains(t, said, `after step "look": `+x.says)
		})
	}
}

// Gas and oil at an open port are named where they would pass through it, from under a
// heavier fluid on its other side; not where that ends at the port.
func TestWhatRisesThroughAPortIsNamed(t *testing.T) {
	p := gaugeWell()
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "oil"})
	setDensity(&p.Fluids[1], 7)
	p.Compartments[0].Fluid = "oil"
	addPort(p, "door", "tubing", "annulus", true)
	p.Steps = []sequence.Step{{Name: "look", Allow: []sequence.Flow{sequence.Circulation}}}
	md := 500 * foot
	p.Ports[0].MD = md
	said := strings.Join(verdict(t, p).Unchecked, "\n")
	require.Contains(t, said, `"oil" stands in "tubing" at "door", which is open at `+md.Rounded(5)+` to "brine" in "annulus": it rises through that and collects at the high point at 0 ft, which isn't followed`)
	p.Compartments[1].TopMD, p.Compartments[1].Surface = md, false
	setTrapped(&p.Compartments[1], 100)
	require.NotContains(t, strings.Join(verdict(t, p).Unchecked, "\n"), "high point")
}
