package sequence_test

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// What a pull is limited by is said: rig, hanger, connection, packer by its envelope and by
// the load that unseats it; the hanger's by hand 140,000 lbf and the block of 20,000. With
// all of them the least governs. Pins that part at 161,196 lbf at the latest and a rig of
// 155,000 leave no window, and both limits are told.
func TestWhatLimitsAPullIsSaid(t *testing.T) {
	t.Parallel()
	window := func(change func(p *sequence.Plan)) sequence.Window {
		p := landed()
		p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(500000 * unit.PoundForce)
		p.String.Drag = unit.Band[unit.Force]{Least: 4000 * unit.PoundForce, Nominal: 5000 * unit.PoundForce, Greatest: 6000 * unit.PoundForce}
		p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{130000 * unit.PoundForce}})
		change(p)
		r, err := sequence.Check(t.Context(), p, sequence.Options{})
		require.NoError(t, err)
		require.Len(t, r.Steps[1].Windows, 1)
		return r.Steps[1].Windows[0]
	}
	rig := func(p *sequence.Plan) { p.String.Rig = 185000 * unit.PoundForce }
	hanger := func(p *sequence.Plan) { p.String.HangerRating = 140000 * unit.PoundForce }
	connection := func(p *sequence.Plan) { p.String.Sections[0].Joint = 150000 * unit.PoundForce }
	unseats := func(p *sequence.Plan) {
		p.Devices[0].Actions = append(p.Devices[0].Actions, sequence.Action{Name: "unseats", Axial: true, Unseats: true,
			Triggers: []sequence.Trigger{{Tension: unit.Within(40000*unit.PoundForce, 0.1)}}})
	}
	envelope := func(p *sequence.Plan) {
		far := func(d unit.Pressure, f unit.Force) packer.Load {
			return packer.Load{Differential: d * psi, Axial: f * unit.PoundForce}
		}
		p.Holding = &sequence.Holding{Below: "below", Above: "annulus", MD: 9000 * foot, Envelope: packer.Polygon{
			Vertices: []packer.Load{far(-9000, -90000), far(9000, -90000), far(9000, 30000), far(-9000, 30000)}}}
	}
	hangs := 9000*9.3 - column(9.5, 9000)*(outside-bore)
	for name, x := range map[string]struct {
		change func(p *sequence.Plan)
		above  string
		most   float64
	}{
		"rig":        {rig, "the rig's rating", 185000},
		"hanger":     {hanger, "the hanger's rating", 160000},
		"connection": {connection, "connection limit", 170000},
		"unseats":    {unseats, "packer: unseats", 20000 + hangs + 4000 + 36000},
		"envelope":   {envelope, "the packer is overloaded", 20000 + hangs + 4000 + 30000},
		"all":        {func(p *sequence.Plan) { rig(p); hanger(p); connection(p); unseats(p); envelope(p) }, "the packer is overloaded", 20000 + hangs + 4000 + 30000},
	} {
		w := window(x.change)
		require.Len(t, w.Intervals, 1, name)
		require.Contains(t, w.Intervals[0].Above, x.above, name)
		require.InDelta(t, x.most, inPounds(t, w.Intervals[0].Greatest), 160, name)
		require.LessOrEqual(t, inPounds(t, w.Intervals[0].Greatest), x.most+1, name)
	}
	w := window(func(p *sequence.Plan) {
		p.Devices[1].Actions[0].Triggers[0].Tension = unit.Within(60000*unit.PoundForce, 0.05)
		p.Steps[1].Pull[0], p.Steps[1].Expect = 154000*unit.PoundForce, []string{"release: parts"}
		p.String.Rig = 155000 * unit.PoundForce
	})
	require.Empty(t, w.Intervals)
	clash := strings.Join(w.Clash, "\n")
	require.Contains(t, clash, "release: parts")
	require.Contains(t, clash, "the rig's rating")
	require.Contains(t, clash, "161", "from where on the one is sure")
	require.Contains(t, clash, "155", "and from where on the other is passed")
}

// The indicator carries the block, too: what it may show is told with both parts.
func TestAHangersRatingIsToldWithTheBlock(t *testing.T) {
	p := landed()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(500000 * unit.PoundForce)
	p.String.HangerRating = 140000 * unit.PoundForce
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{161000 * unit.PoundForce}})
	r := verdict(t, p)
	require.Equal(t, []string{"pull off plan | pull | hanger"}, roots(r))
	require.Equal(t, "1000 lbf more than 160000 lbf, its 140000 lbf and the block's 20000 lbf", r.Findings[0].Numbers)
}
