package sequence_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
)

// A brute-force test is worth what its plans hold: events one after the other
// and at once, rows and counts, latches that move again, trapped rooms that
// meet, squeezes and swaps that move something, every limit, right and wrong.
func TestRandomPlansHoldEverything(t *testing.T) {
	t.Parallel()
	plans := long.Size(40, 400)
	cover := map[string]int{}
	for n := range uint64(plans) {
		p := plainPlan(5, n)
		r := plainWalkOf(p, 4, nil)
		has := map[string]bool{"right": r.ok(), "several due at once": len(r.choices) > 0, "trapped rooms meet": r.met,
			"barriers": p.Rules.Barriers > 0, "close": r.close}
		coverEvents(p, r, has)
		for _, s := range p.Steps {
			has["shut"] = has["shut"] || len(s.Shut) > 0
			has["tests"] = has["tests"] || len(s.Tests) > 0
			has["balance"] = has["balance"] || len(s.Balance) > 0
			has["flow"] = has["flow"] || len(s.Allow) > 0
		}
		random, box := newRandom(5, n), true
		for k := 0; k < 30 && box; k++ {
			x := plainWalkOf(drawValues(p, random, k), 4, nil)
			box = x.ok()
			for _, f := range x.failures {
				has["fails by "+string(f.Kind)] = true
			}
		}
		has["right in the box"], has["right, but not in the box"] = box, r.ok() && !box
		for what, is := range has {
			if is {
				cover[what]++
			}
		}
	}
	t.Log(cover)
	for what, least := range map[string]int{
		"right": 60, "right in the box": 40, "right, but not in the box": 10, "count": 20, "row": 20, "moves again": 4, "cascade": 8,
		"trapped rooms meet": 4, "moves in a squeeze": 1, "moves in a swap": 1, "shut": 10, "tests": 10, "balance": 10, "flow": 10, "barriers": 10,
		"several due at once": 2, "fails by rating passed": 2, "fails by flow off plan": 1, "fails by barriers lacking": 1, "fails by column falls": 1,
		"fails by unintended event": 5, "fails by intended event missing": 5, "fails by test off plan": 1,
	} {
		require.GreaterOrEqual(t, cover[what], plans*least/100/2, what)
	}
	require.Less(t, cover["close"], plans/100+1)
}

func coverEvents(p *sequence.Plan, r *plainResult, has map[string]bool) {
	times := map[string]int{}
	last := plainEvent{leg: -1}
	for _, e := range r.events {
		if !e.fired {
			has["count"] = has["count"] || e.counted > 0
			has["row"] = has["row"] || e.links > 0
			continue
		}
		times[e.action]++
		has["moves again"] = has["moves again"] || times[e.action] > 1
		if last.leg == e.leg && last.step == e.step && e.surface[0] == last.surface[0] && e.surface[1] == last.surface[1] {
			has["cascade"] = true
		}
		has["moves in a squeeze"] = has["moves in a squeeze"] || e.leg > len(p.Steps[e.step].Ramps)
		has["moves in a swap"] = has["moves in a swap"] || (e.leg == 0 && e.step > 0 && len(p.Steps[e.step].Displace) > 0)
		last = e
	}
}
