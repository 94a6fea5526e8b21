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

// twoMovers is a random well in which a shut-in tubing has met a room of an
// uncertain pressure, so that a ramp of tubing and annulus together starts, for
// the tubing, from anywhere: up, down or both, while devices feel either and the
// difference of the two.
func twoMovers(random *rand.Rand) *sequence.Plan {
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	p := gaugeWell("room")
	if random.IntN(2) == 0 {
		p.Compartments[0], p.Compartments[1] = p.Compartments[1], p.Compartments[0]
	}
	room := between(500, 3000)
	p.Compartments[2].Trapped = band(room, between(0, min(900, room)))
	p.Rules.Gauge = band(0, between(0, 30))
	addPort(p, "door", "tubing", "room", false)
	addAction(p, "door", "annulus", "", rising(500*psi, 500*psi)).Opens = []string{"door"}
	for k := range 2 + random.IntN(3) {
		pair := [][2]string{{"tubing", ""}, {"annulus", ""}, {"tubing", "annulus"}, {"annulus", "tubing"}}[random.IntN(4)]
		t := sequence.Trigger{Threshold: band(between(-1500, 2500), between(0, 60))}
		if random.IntN(3) == 0 {
			t.Direction = valve.Falling
		}
		addAction(p, fmt.Sprintf("device %d", k), pair[0], pair[1], t)
	}
	p.Ratings = []sequence.Rating{{Name: "wall", Inside: "tubing", Outside: "annulus", ToMD: 1000 * foot, Burst: exactly(between(800, 3000))}}
	p.Steps = []sequence.Step{{Name: "start"}, {Name: "shut in", Shut: []string{"tubing"}, Ramps: []map[string]pressure{{"annulus": 600 * psi}}}}
	goal := func() pressure {
		return []pressure{0, 600 * psi, pounds(room / 2), pounds(between(0, 2500)), pounds(between(0, 2500))}[random.IntN(5)]
	}
	for k := range 1 + random.IntN(3) {
		p.Steps = append(p.Steps, sequence.Step{Name: fmt.Sprintf("together %d", k), Ramps: []map[string]pressure{{"tubing": goal(), "annulus": goal()}}})
	}
	for _, e := range plainWalkOf(sharp(p, nominalOf), 4, nil).events {
		if s := &p.Steps[e.step]; e.fired {
			s.Expect = append(s.Expect, e.action)
		}
	}
	return p
}

func band(middle, half float64) unit.Band[pressure] {
	return unit.Band[pressure]{Least: pounds(middle - half), Nominal: pounds(middle), Greatest: pounds(middle + half)}
}

// Ramps of two whose directions aren't known are the hardest to judge: none may
// be proved wrongly.
func TestVerdictsOfTwoMovers(t *testing.T) {
	var c tally
	from, to := plansWanted(t, long.Size(10, 80))
	eachPlan(from, to, func(n uint64) {
		p := twoMovers(newRandom(31, n))
		v, err := verdictOf(p)
		if err != nil {
			c.unwalked(t, p, n, err)
			return
		}
		c.holdAgainst(t, p, n, v)
	})
	t.Log(&c)
	require.Zero(t, c.wrong.Load())
}
