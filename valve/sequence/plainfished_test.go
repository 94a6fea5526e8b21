package sequence_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Some of such wells do all of it with the nominal values: parts, latches, unseats.
func TestRandomStringsAreFished(t *testing.T) {
	t.Parallel()
	cover := map[string]int{}
	for n := range uint64(long.Size(8, 30)) {
		has := map[string]bool{}
		for _, e := range plainWalkOf(plainPlanWith(4711, n, features["fished"]), 4, nil).events {
			if _, action, _ := strings.Cut(e.action, ": "); e.fired {
				has[action] = true
			}
		}
		has["all"] = has["parts"] && has["latches"] && has["unseats"]
		for what, is := range has {
			if is {
				cover[what]++
			}
		}
	}
	t.Log(cover)
	require.GreaterOrEqual(t, cover["all"], long.Size(1, 4))
}

// fishSteps are those of a string that parts, is latched to what it has left and pulls
// that free.
func (m *plainMaker) fishSteps() {
	m.stringSteps()
	m.plan.Steps = append(m.plan.Steps, sequence.Step{Name: "latch on"}, sequence.Step{Name: "straight pull"})
}

// fishNestSteps are those of two strings.
func (m *plainMaker) fishNestSteps() {
	m.nestSteps()
	m.plan.Steps = append(m.plan.Steps, sequence.Step{Name: "latch on"}, sequence.Step{Name: "straight pull"})
}

// hangRubbing and nestRubbing are strings whose seals don't slide freely.
func (m *plainMaker) hangRubbing() {
	m.hang()
	m.rubbing(m.plan.String)
}

func (m *plainMaker) nestRubbing() {
	m.nest()
	m.rubbing(m.plan.String)
	m.rubbing(m.plan.OuterString)
}

func (m *plainMaker) rubbing(s *sequence.String) {
	for i := range s.Seals {
		if m.chance(0.6) {
			s.Seals[i].Friction = kipsExactly(m.between(0.3, 6))
		}
	}
}

// fishLevels are those of the string, and then what latches and what unseats.
func (m *plainMaker) fishLevels() {
	m.stringLevels()
	p := m.plan
	joint := slices.IndexFunc(p.Devices, func(d sequence.Device) bool { return d.Actions[0].Axial })
	parts := &p.Devices[joint].Actions[0]
	parts.Releases = true
	never := func(kips float64) []sequence.Trigger { return []sequence.Trigger{{Tension: kipsExactly(kips)}} }
	p.Devices[joint].Actions = append(p.Devices[joint].Actions, sequence.Action{Name: "latches", Axial: true, LatchesTo: "parts", Triggers: never(-5000)})
	p.Devices[joint].Actions[1].Triggers[0].Direction = valve.Falling
	if m.chance(0.2) {
		p.Devices[joint].Actions[1].Arms = []string{"parts"}
	}
	for d := range p.Devices {
		if x := &p.Devices[d]; x.Actions[0].Holds {
			x.Actions = append(x.Actions, sequence.Action{Name: "unseats", Axial: true, Unseats: true, Triggers: never(5000)})
			if m.chance(0.3) {
				x.Actions[1].Opens = m.somePort()
			}
		}
	}
	n := len(p.Steps)
	latch, last := &p.Steps[n-2], &p.Steps[n-1]
	if pull := &p.Steps[n-3]; len(pull.Pull) == 0 {
		pull.Pull = slices.Clone(last.Pull) // what is meant to part it
		for i := range pull.Pull {
			pull.Pull[i] += unit.Force(math.Round(m.between(0, 60000))) * unit.PoundForce
		}
	}
	set := math.Round(m.between(3000, 25000))
	latch.Pull = nil
	r := plainWalkOf(p, 2, nil)
	if len(r.stands) < n-1 || len(r.stands[n-2]) == 0 {
		return
	}
	at := r.stands[n-2]
	reading := at[len(at)-1].str.reading
	latch.Pull = []unit.Force{unit.Force(max(1000, math.Round(reading-set))) * unit.PoundForce}
	p.Devices[joint].Actions[1].Triggers[0].Tension = kipsExactly(-set / kips * m.between(0.1, 0.9))
	if len(last.Pull) > 0 {
		last.Pull[len(last.Pull)-1] += unit.Force(math.Round(m.between(0, 40000))) * unit.PoundForce
	}
	r = plainWalkOf(p, 4, nil)
	well := newPlainWell(p)
	for d := range p.Devices {
		if len(p.Devices[d].Actions) < 2 || !p.Devices[d].Actions[1].Unseats {
			continue
		}
		i, most := well.action(p.Devices[d].Name+": unseats"), 1.0
		for _, step := range r.stands {
			for _, at := range step {
				most = max(most, at.felt[i])
			}
		}
		p.Devices[d].Actions[1].Triggers[0].Tension = kipsExactly(most * m.between(0.4, 1.1))
	}
}

func kipsExactly(kips float64) unit.Band[unit.Force] {
	return unit.Exactly(unit.Force(math.Round(1000*kips)/1000) * 1000 * unit.PoundForce)
}
