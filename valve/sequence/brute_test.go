package sequence_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// The engine finds crossings; a second way is to creep along every ramp in
// steps of 1 psi and look. Random wells of six devices, each with a row of one
// to three triggers, some counted, must give the same events at the same
// surface pressures to within a creep.
func TestWalkAgainstCreeping(t *testing.T) {
	const creep = 1 * psi
	random := rand.New(rand.NewPCG(42, 1))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	events := 0
	for well := range long.Size(15, 60) {
		p := mini()
		p.Devices, p.Steps = nil, nil
		var rows []valve.Row
		for d := range 6 {
			var triggers []sequence.Trigger
			var row valve.Row
			for range 1 + random.IntN(3) {
				at := unit.Pressure(between(-3000, 3500)) * psi
				tr := sequence.Trigger{Threshold: unit.Exactly(at)}
				if random.IntN(2) == 0 {
					tr.Direction = valve.Falling
				}
				if random.IntN(3) == 0 {
					tr.Count = 1 + random.IntN(3)
					away := unit.Pressure(between(100, 1500)) * psi
					if tr.Direction == valve.Rising {
						away = -away
					}
					tr.Rearm = unit.Exactly(at + away)
				}
				triggers = append(triggers, tr)
				row = append(row, valve.Trigger{Threshold: tr.Threshold, Direction: tr.Direction, Count: tr.Count, Rearm: tr.Rearm})
			}
			device(p, fmt.Sprintf("device %d", d), unit.Length(between(1000, 9000))*foot, triggers...)
			rows = append(rows, row)
		}
		ramps := make([]map[string]unit.Pressure, 8)
		for k := range ramps {
			ramps[k] = map[string]unit.Pressure{"tubing": unit.Pressure(between(0, 4000)) * psi, "annulus": unit.Pressure(between(0, 4000)) * psi}
		}
		p.Steps = []sequence.Step{{Name: "ramps", Ramps: ramps}}
		r := verdict(t, p)

		// the same by creeping
		type happening struct {
			device, ramp int
			tubing       unit.Pressure
		}
		var crept []happening
		states := make([]valve.TriggerState, len(rows))
		done := make([]bool, len(rows))
		last := make([]unit.Pressure, len(rows))
		differential := func(d int, tubing, annulus unit.Pressure) unit.Pressure {
			return tubing - annulus + unit.Pressure(0.7*4/77*p.Devices[d].MD.In(foot))*psi
		}
		look := func(ramp int, tubing, annulus unit.Pressure, first bool) {
			for d := range rows {
				now := differential(d, tubing, annulus)
				if first {
					last[d] = now
				}
				if !done[d] {
					states[d] = rows[d].Ramp(states[d], last[d], now).State
					if rows[d].Condition(states[d]) == valve.Fired {
						done[d] = true
						crept = append(crept, happening{d, ramp, tubing})
					}
				}
				last[d] = now
			}
		}
		look(0, 0, 0, true)
		var tubing, annulus unit.Pressure
		for k, ramp := range ramps {
			fromT, fromA := tubing, annulus
			n := int(4000 * psi / creep)
			for i := 1; i <= n; i++ {
				x := unit.Pressure(i) / unit.Pressure(n)
				tubing, annulus = fromT+(ramp["tubing"]-fromT)*x, fromA+(ramp["annulus"]-fromA)*x
				look(k+1, tubing, annulus, false)
			}
		}

		walked := map[string]sequence.Event{}
		for _, e := range r.Steps[0].Events {
			if e.Partial == "" {
				walked[e.Action] = e
			}
		}
		require.Len(t, walked, len(crept), "well %d", well)
		for _, h := range crept {
			e, ok := walked[fmt.Sprintf("device %d: moves", h.device)]
			require.True(t, ok, "well %d: device %d", well, h.device)
			require.Equal(t, h.ramp, e.Ramp, "well %d: device %d", well, h.device)
			require.InDelta(t, h.tubing.In(psi), e.Surface[0].Pressure.In(psi), 1.01, "well %d: device %d", well, h.device)
			events++
		}
	}
	require.Greater(t, events, long.Size(25, 100))
}
