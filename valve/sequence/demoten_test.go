package sequence_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Areas of the demo's string, 4-1/2 in 12.6 lb/ft with a bore of 3.958 in, in in².
var (
	demoBore    = math.Pi / 4 * 3.958 * 3.958
	demoOutside = math.Pi / 4 * 4.5 * 4.5
)

// at is the pressure of a compartment at a device at the start of a step, in psi.
func pressureOf(t *testing.T, p sequence.Point, device, compartment string) (pressure float64, tvd float64) {
	t.Helper()
	for _, x := range p.Pressures {
		if x.Device == device && x.Compartment == compartment {
			return x.Pressure.In(psi), x.TVD.In(foot)
		}
	}
	require.Fail(t, "no pressure", "%s in %s", device, compartment)
	return 0, 0
}

// The release of the demo, by hand. Its pins, 7 of 7,500 lbf to 5 %, feel effective force
// and the differential on their seal of 4.5 in; the drag, 6,000 to 14,000 lbf, is taken above:
//
//	R = 25,000 + w·TVD + pi·Ai − po·Ao + pins − (pi − po)·As + drag, with the top open
//
// One pin holds 7,125 lbf at least, the tail of 1,110 ft weighs more: 8,510 lbf in its fluid.
// Three part in step 11 where no seal is counted: 3,500 psi on 15.904 in² and ballooning; the
// isolation seals take 2,600 lbf of that off, and leave 73 psi.
func TestTheDemosReleaseByHand(t *testing.T) {
	r := verdict(t, demoPlan(t))
	s := stepNamed(t, r, "release by overpull")
	pi, tvd := pressureOf(t, s.Points[0], "release", "tubing")
	po, _ := pressureOf(t, s.Points[0], "release", "annulus")
	seal := math.Pi / 4 * 4.5 * 4.5
	// In air from the hanger down; the fluids inside and around it are those of one column.
	hangs := 12.6*tvd + pi*demoBore - po*demoOutside
	pins := 7 * 7500.0
	x := s.Partings[0]
	require.InDelta(t, 25000+hangs+pins-(pi-po)*seal+10000, x.Nominal.In(unit.PoundForce), 1)
	require.InDelta(t, 25000+hangs+0.95*pins-(pi-po)*seal+6000, x.Least.In(unit.PoundForce), 20)
	require.InDelta(t, 25000+hangs+1.05*pins-(pi-po)*seal+14000, x.Greatest.In(unit.PoundForce), 20)
	require.InDelta(t, 159753, x.Least.In(unit.PoundForce), 20, "not 172,861: that is true tension")
	require.InDelta(t, 173003, x.Greatest.In(unit.PoundForce), 20)
	// What then hangs, with the end open: the wall force at the end is that of the pressures on
	// its steel and on the ring of the joint; what stays is the rest, and both are told.
	require.InDelta(t, 89000, x.Above.In(unit.PoundForce), 300)
	require.Positive(t, float64(x.Below))
	last := s.Points[len(s.Points)-1].String
	require.InDelta(t, float64(x.Above)+float64(25000*unit.PoundForce), float64(last.Reading), 1, "the weight indicator")
	require.True(t, last.Held, "what is below stays with the packer")

	count := func(n int, change func(p *sequence.Plan)) []string {
		p := demoPlan(t)
		for i := range p.Devices {
			if p.Devices[i].Name == "release" {
				p.Devices[i].Actions[0].Triggers[0].Pins.Count = n
			}
		}
		if change != nil {
			change(p)
		}
		return roots(verdict(t, p))
	}
	require.Equal(t, "unintended event | run in hole | release: parts", count(1, nil)[0])
	require.Equal(t, "unintended event | open isolation valve C | release: parts", count(3, func(p *sequence.Plan) { p.String.Seals = p.String.Seals[2:] })[0])
	// 26 pins would part beyond body yield; joints of 150,000 lbf go before seven do.
	require.Contains(t, count(26, func(p *sequence.Plan) { p.Steps[len(p.Steps)-1].Pull[0] = 360000 * unit.PoundForce }), "string overloaded | release by overpull | string")
	require.Contains(t, count(7, func(p *sequence.Plan) { p.String.Sections[0].Joint = 150000 * unit.PoundForce }), "string overloaded | release by overpull | string")
}

// What the demo says of its string where it stands still: three forces under their names,
// worst and final, the locked-in one in the step that sets; the weight indicator with the top
// closed p·Ai less than with it open, 3,500 psi · 12.30 in² = 43,064 lbf in step 11; the
// catalogue's connection, 208,730 of 288,036 lbf; a force in a force's unit.
func TestTheDemosStringLines(t *testing.T) {
	p := demoPlan(t)
	open := verdict(t, p)
	set := stepNamed(t, open, "set the packer")
	f := set.Forces[0]
	require.Equal(t, "packer", f.Place)
	end := set.Points[len(set.Points)-1]
	po, _ := pressureOf(t, end, "packer", "annulus")
	pi, _ := pressureOf(t, end, "packer", "tubing")
	require.InDelta(t, f.Wall.Final.In(unit.PoundForce)-pi*demoBore+po*demoOutside, f.Effective.Final.In(unit.PoundForce), 1)
	require.Equal(t, end.String.Packer, f.Load.Final)
	require.Negative(t, float64(f.Load.Final), "open below, to a chamber under its seals: compression is locked in")
	require.Less(t, f.Load.Least, f.Load.Final, "with the band of the slips")

	p.String.Top = sequence.TopClosed
	closed := verdict(t, p)
	reading := func(r *sequence.Programme) float64 {
		s := stepNamed(t, r, "open isolation valve C")
		return s.Points[1].String.Reading.In(unit.PoundForce)
	}
	require.InDelta(t, 3500*demoBore, reading(open)-reading(closed), 1)
	require.InDelta(t, 43064, 3500*demoBore, 2)

	run := open.Steps[0].Points[0].String
	require.Equal(t, "connection", run.Limit)
	require.InEpsilon(t, run.Hanger.In(unit.PoundForce)/208730*max(1, p.Rules.Axial), run.Usage, 1e-5)
	text, err := json.Marshal(triggerOf(t, *stepNamed(t, open, "release by overpull"), "release: parts"))
	require.NoError(t, err)
	require.Regexp(t, `"threshold":{"least":"49875[.0-9]* lbf"`, string(text))
	require.NotContains(t, string(text), "psi")
	require.Contains(t, strings.Join(open.Unchecked, "\n"), "the connection in compression, internal pressure, external pressure and triaxial share")
}
