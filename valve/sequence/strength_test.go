package sequence_test

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// The string's use at its top in the programme is that of package tubular for the
// same load, with wear off the wall and heat off the yield strength: 150 °F leave
// 1 − 0.0003·80 of it, 0.05 in off the bore leave 2.590 − π/4·(3.092² − 2.992²) in².
func TestWearAndHeatCountInTheProgramme(t *testing.T) {
	p := landed()
	p.Steps = []sequence.Step{{Name: "hang"}}
	p.String.Sections[0].Connection = &sequence.Connection{Name: "strong", Tension: 900000 * unit.PoundForce}
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot,
		Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}
	usage := func(p tubular.Pipe, load tubular.Load) float64 {
		body, err := p.Prepare()
		require.NoError(t, err)
		_, most := body.UsageBent(load, tubular.WithoutReserve()).Governing()
		return most
	}
	at := lastString(verdict(t, p), 0)
	require.Equal(t, "axial", at.Limit)
	require.InEpsilon(t, usage(pipe, tubular.Load{Axial: at.Hanger}), at.Usage, 1e-9)

	p.String.Sections[0].Wear.Inside = 0.05 * unit.Inch
	worn, err := pipe.Less(tubular.Allowance{Inside: 0.05 * unit.Inch})
	require.NoError(t, err)
	hanging := at.Hanger
	at = lastString(verdict(t, p), 0)
	require.Equal(t, hanging, at.Hanger, "weight keeps what wear has taken")
	require.InEpsilon(t, usage(worn, tubular.Load{Axial: at.Hanger}), at.Usage, 1e-9)
	require.InEpsilon(t, 0.4272, at.Usage, 0.0005) // 72,196 lbf/(2.1124 in²·80,000 psi), by hand

	hot := worn
	hot.Material.Yield *= 1 - 0.0003*80
	for _, q := range []func(*sequence.Plan){
		func(p *sequence.Plan) { p.String.Derating = &sequence.Derating{} },
		func(p *sequence.Plan) {
			p.String.Sections[0].Derating = &sequence.Derating{From: unit.Fahrenheit(70), Rate: 0.0003 * unit.PerFahrenheit}
		},
	} {
		c := p.Clone()
		q(c)
		at = lastString(verdict(t, c), 0)
		require.InEpsilon(t, usage(hot, tubular.Load{Axial: at.Hanger}), at.Usage, 1e-9)
	}
	p.String.Derating = &sequence.Derating{Rate: 0.009 * unit.PerKelvin, From: unit.Celsius(-70)}
	require.ErrorContains(t, p.Validate(), "string.derating", "nothing would be left")
}

// Each rating of a connection has its own finding, and what is left out is told.
// Hanging, 72,200 lbf pull at the top; hot by 100 °F between hanger and packer the
// same string is pushed together by 53,600 lbf less at most what hangs.
func TestRatingsOfConnections(t *testing.T) {
	limits := func(p *sequence.Plan, c sequence.Connection) []string {
		p.String.Sections[0].Connection = &c
		var says []string
		for _, f := range verdict(t, p).Findings {
			if f.Kind == sequence.StringLoad {
				says = append(says, f.Says)
			}
		}
		return says
	}
	heated := func() *sequence.Plan {
		p := landed()
		p.Devices[0].Actions[0].Triggers[0] = rising(3375*psi, 3375*psi)
		p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(200000 * unit.PoundForce)
		hot := []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(280)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(280)}}
		p.Well.Temperatures["hot"] = hot
		p.Steps = append(p.Steps, sequence.Step{Name: "heat", Temperature: "hot"})
		return p
	}
	at := func(p *sequence.Plan) *sequence.StringAt {
		r := verdict(t, p)
		return lastString(r, len(r.Steps)-1)
	}(heated())
	push := at.Wall // compression just above the packer
	require.Negative(t, float64(push))
	for name, x := range map[string]struct {
		plan   func() *sequence.Plan
		enough sequence.Connection
		short  sequence.Connection
	}{
		"tension":     {landed, sequence.Connection{Tension: 130000 * unit.PoundForce}, sequence.Connection{Tension: 60000 * unit.PoundForce}},
		"compression": {heated, sequence.Connection{Compression: -push + 200*unit.PoundForce}, sequence.Connection{Compression: -push - 200*unit.PoundForce}},
		// 3,600 psi more inside than around it, from top to bottom.
		"internal pressure": {landed, sequence.Connection{Inside: 3601 * psi}, sequence.Connection{Inside: 3599 * psi}},
		"triaxial":          {landed, sequence.Connection{Triaxial: 0.9}, sequence.Connection{Triaxial: 0.3}},
	} {
		require.Empty(t, limits(x.plan(), x.enough), name)
		short := limits(x.plan(), x.short)
		require.NotEmpty(t, short, name)
		require.Contains(t, short[0], "connection limit", name)
	}
	outside := landed()
	outside.Steps = []sequence.Step{{Name: "annulus", Ramps: []map[string]unit.Pressure{{"annulus": 1000 * psi}}}}
	require.Empty(t, limits(outside.Clone(), sequence.Connection{Outside: 1001 * psi}))
	require.NotEmpty(t, limits(outside, sequence.Connection{Outside: 999 * psi}))

	p := landed()
	p.String.Sections[0].Connection = &sequence.Connection{Tension: 130000 * unit.PoundForce, Inside: 5000 * psi}
	require.Contains(t, strings.Join(verdict(t, p).Unchecked, "\n"), "the connection in compression, external pressure and triaxial share")
	p.String.Sections[0].Joint = 130000 * unit.PoundForce
	require.ErrorContains(t, p.Validate(), `sections[0].connection: stands beside "joint"`)
	p.String.Sections[0].Joint, p.String.Sections[0].Connection = 0, &sequence.Connection{}
	require.ErrorContains(t, p.Validate(), "says nothing that the connection bears")
	p.String.Sections[0].Connection.Tension = -1
	require.ErrorContains(t, p.Validate(), "sections[0].connection: tubular: Tension")
	p.String.Sections[0].Connection, p.String.Sections[0].Wear.Outside = nil, unit.Inch
	require.ErrorContains(t, p.Validate(), "sections[0].wear")
}

// A hanger that nothing locks down is lifted once the string pushes more than it
// weighs: 200 °F of heat push with 2·53,617 lbf of a string that pulls with 72,196 lbf
// and the 9,492 lbf locked in. Annulus pressure lifts it by the ring of its seal too:
// π/4·(9² − 3.5²) in² for each psi.
//
// Source: E·α·ΔT·As with E = 30e6 psi, α = 6.9e-6 1/°F, by hand; PetroWiki, for the
// forces on a hanger.
func TestTheHangerIsLifted(t *testing.T) {
	p := landed()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(200000 * unit.PoundForce)
	p.String.Sections[0].Hole = 3.51 * unit.Inch // so narrow that a helix takes nothing of it
	p.Well.Temperatures["hot"] = []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(350)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(350)}}
	p.Steps = append(p.Steps, sequence.Step{Name: "heat", Temperature: "hot"})
	r := verdict(t, p)
	require.Equal(t, []string{"hanger lifted | heat | hanger"}, roots(r))
	hangs := 9000*9.3 - column(9.5, 9000)*(outside-bore)
	lift := 2*53617 - hangs - 0.4*3375*bore
	require.InDelta(t, lift, lastString(r, 1).Lift.In(unit.PoundForce), 0.01*lift+100)
	p.String.LockDown = 40000 * unit.PoundForce
	require.True(t, verdict(t, p).OK())

	p = landed()
	p.Steps = []sequence.Step{{Name: "annulus", Ramps: []map[string]unit.Pressure{{"annulus": 1500 * psi}}}}
	require.True(t, verdict(t, p).OK(), "nothing is known of the hanger's seal")
	p.String.HangerSeal = 9 * unit.Inch
	r = verdict(t, p)
	require.Equal(t, []string{"hanger lifted | annulus | hanger"}, roots(r))
	ring := 1500 * (63.617 - outside)
	require.InDelta(t, ring-lastString(r, 0).Hanger.In(unit.PoundForce), lastString(r, 0).Lift.In(unit.PoundForce), 1)
	p.String.HangerSeal = 3 * unit.Inch
	require.ErrorContains(t, p.Validate(), `string.hanger_seal`)
}

// Two places hold the string: 5,000 ft of it between a packer and an anchor keep their
// length. Cooled by 100 °F each part is pulled by E·α·ΔT·As; the upper place carries
// the difference of the two, nothing, and the lower one what pulls on it from above.
// Releasing the upper one lets the force even out all the way.
//
// Source: Hooke; E·α·ΔT·As by hand.
func TestAStringHeldInTwoPlaces(t *testing.T) {
	p := landed()
	p.Devices = append(p.Devices, sequence.Device{Name: "upper anchor", MD: 4000 * foot, Actions: []sequence.Action{
		{Name: "bites", Inside: "tubing", Outside: "annulus", Holds: true, Triggers: []sequence.Trigger{rising(1000*psi, 1000*psi)}},
		{Name: "lets go", Inside: "annulus", Outside: "tubing", Releases: true, Triggers: []sequence.Trigger{rising(1500*psi, 1500*psi)}},
	}})
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(200000 * unit.PoundForce)
	p.Steps[0].Expect = append(p.Steps[0].Expect, "upper anchor: bites")
	p.Steps = append(p.Steps, sequence.Step{Name: "cool", Temperature: "cooled"},
		sequence.Step{Name: "let go", Ramps: []map[string]unit.Pressure{{"annulus": 1600 * psi}, {"annulus": 0}}, Expect: []string{"upper anchor: lets go"}})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	hold := func(step, n int) sequence.HoldAt { return lastString(r, step).Holds[n] }
	require.Equal(t, "upper anchor", hold(0, 1).Name)
	require.True(t, hold(1, 0).Held && hold(1, 1).Held)
	// It took hold at 1,000 psi, the packer at 3,375: bled off, (1 − 2ν)·p·Ai of each
	// stays in its own length of string.
	require.InDelta(t, 0.4*1000*bore, (hold(0, 1).Wall - weightless(r)).In(unit.PoundForce), 0.02*2812)
	require.InDelta(t, 53617, (hold(1, 1).Wall - hold(0, 1).Wall).In(unit.PoundForce), 0.002*53617)
	require.InDelta(t, 53617, (hold(1, 0).Wall - hold(0, 0).Wall).In(unit.PoundForce), 0.002*53617)
	require.InDelta(t, hold(0, 1).Load.In(unit.PoundForce), hold(1, 1).Load.In(unit.PoundForce), 60)
	require.False(t, hold(2, 1).Held)
	require.True(t, hold(2, 0).Held, "the other one still holds")

	p.Devices[2].MD = 9500 * foot
	require.Error(t, p.Validate())
	p.Devices[2].MD, p.String.HeldMD = 4000*foot, 8000*foot
	require.ErrorContains(t, p.Validate(), "at least one device that holds must stand there")
}

// weightless is the wall force at 4,000 ft with nothing held: 5,000 ft in air less
// what the fluid carries at the end.
func weightless(_ *sequence.Programme) unit.Force {
	return unit.Force(5000*9.3-column(9.5, 9000)*(outside-bore)) * unit.PoundForce
}
