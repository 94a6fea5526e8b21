package sequence_test

import (
	"context"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// half is a gauge well with a room behind a door that is shut, begun in some state.
func half(b *sequence.Begin) *sequence.Plan {
	p := gaugeWell("room")
	addPort(p, "door", "tubing", "room", false)
	door := addAction(p, "door", "tubing", "room", rising(1000*psi, 1100*psi))
	door.Opens = []string{"door"}
	addAction(p, "witness", "room", "annulus", rising(1500*psi, 1600*psi))
	p.Begin = b
	p.Steps = []sequence.Step{{Name: "up", Ramps: tubingTo(2000), Expect: []string{"door: moves", "witness: moves"}}}
	return p
}

func sharply(p pressure) *sequence.Stated { return &sequence.Stated{Pressure: exactly(p.In(psi))} }

func room(p pressure) map[string]*sequence.Stated {
	return map[string]*sequence.Stated{"room": sharply(p)}
}

// Cases by hand: the room's pressure, what has happened, what may have, how far a row
// has come, and what is applied, all count from the first moment on.
func TestBeginningsByHand(t *testing.T) {
	for name, x := range map[string]struct {
		begin *sequence.Begin
		kind  sequence.Kind // empty: proved
		named string
	}{
		"the room empty":             {&sequence.Begin{Trapped: room(0)}, "", ""},
		"the room full":              {&sequence.Begin{Trapped: room(1200 * psi)}, sequence.Missing, "door: moves"}, // 2,000 less 1,200 psi
		"the door open before":       {&sequence.Begin{Happened: []string{"door: moves"}}, sequence.Missing, "door: moves"},
		"it may have been":           {&sequence.Begin{May: []string{"door: moves"}, Trapped: room(0)}, sequence.Missing, "door: moves"},
		"the witness moves at once":  {&sequence.Begin{Trapped: room(1700 * psi)}, sequence.Missing, "door: moves"},
		"applied, and the door open": {&sequence.Begin{Happened: []string{"door: moves"}, Applied: map[string]pressure{"tubing": 1700 * psi}}, sequence.Missing, "door: moves"},
		"the door open by hand":      {&sequence.Begin{Open: []string{"door"}}, sequence.Missing, "door: moves"}, // it feels nothing
	} {
		t.Run(name, func(t *testing.T) {
			r, err := sequence.Check(context.Background(), half(x.begin), sequence.Options{})
			require.NoError(t, err)
			if x.kind == "" {
				require.True(t, r.OK(), "%v", r.Findings)
				return
			}
			require.Equal(t, x.kind, r.Findings[0].Kind)
			require.Equal(t, x.named, r.Findings[0].Device)
		})
	}
	p := half(&sequence.Begin{May: []string{"door: moves"}, Trapped: room(0)})
	p.Devices = p.Devices[:1]
	p.Steps[0].Ramps, p.Steps[0].Expect = tubingTo(900), nil
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	require.True(t, r.OK(), "%v", r.Findings)
	require.Equal(t, []string{"door"}, r.Steps[0].Unknown)
}

// What may have happened before may have happened after a step, too, that leaves it alone; and what had is what
// has.
func TestWhatMayHaveHappenedIsHandedOn(t *testing.T) {
	for _, b := range []*sequence.Begin{
		{May: []string{"door: moves"}, Trapped: room(0)},
		{Happened: []string{"door: moves"}},
		{Happened: []string{"witness: moves"}, May: []string{"door: moves"}, Trapped: room(0)},
	} {
		p := half(b)
		p.Devices[1].Actions[0].Triggers[0] = rising(9000*psi, 9000*psi)
		p.Steps[0].Ramps, p.Steps[0].Expect = []map[string]pressure{{"annulus": 200 * psi}}, nil
		q, err := p.Rest(t.Context(), "up")
		require.NoError(t, err)
		require.Equal(t, b.May, q.Begin.May)
		require.Equal(t, b.Happened, q.Begin.Happened)
	}
}

// What is trapped has no pressure by default: the error offers the hydrostatic one, for
// a beginning and for a file. A stated nought will do.
func TestTrappedPressuresAreStated(t *testing.T) {
	require.ErrorContains(t, half(&sequence.Begin{}).Validate(),
		`begin.trapped: room: nothing fixes the pressure, and it isn't stated; as much as a column of brine from surface has is 0 psi at the top of "room"`)
	file := func(trapped string) []byte {
		return []byte(`{"well": {"depth": "1000 ft"}, "fluids": [{"name": "brine", "density": "10 lb/gal"}], "compartments": [
			{"name": "tubing", "bottom": "1000 ft", "fluid": "brine", "surface": true},
			{"name": "room", "top": "500 ft", "bottom": "1000 ft", "fluid": "brine"` + trapped + `}], "steps": [{"name": "look"}]}`)
	}
	_, err := sequence.Read(file(""))
	// 10 lb/gal over 500 ft: 10·500·12/231 psi.
	require.ErrorContains(t, err, `a column of brine from surface has is 259.74 psi at the top of "room"`)
	for _, trapped := range []string{`, "trapped": "0 psi"`, `, "trapped": "259.74 psi"`} {
		_, err = sequence.Read(file(trapped))
		require.NoError(t, err)
	}
}

// What can't be meant is refused.
func TestBeginningsThatAreRefused(t *testing.T) {
	for text, b := range map[string]*sequence.Begin{
		`no action "door: drops"`:       {Happened: []string{"door: drops"}, Trapped: room(0)},
		"stands twice":                  {Happened: []string{"door: moves", "door: moves"}, Trapped: room(0)},
		`no temperature "warm"`:         {Temperature: "warm", Trapped: room(0)},
		"is open, too":                  {Open: []string{"door"}, Shut: []string{"door"}, Trapped: room(0)},
		"met: is 1; must be from 0":     {Progress: map[string][]sequence.RowAt{"door: moves": {{Met: 1}}}, Trapped: room(0)},
		"counted: is 1":                 {Progress: map[string][]sequence.RowAt{"door: moves": {{Counted: 1}}}, Trapped: room(0)},
		"state its pressure as trapped": {ShutIn: []string{"tubing"}, Applied: map[string]pressure{"tubing": 5 * psi}, Trapped: room(0)},
		"needs the plan's string":       {String: []sequence.StringMoment{{Does: "lands"}}, Trapped: room(0)},
		"has no quantity":               {Trapped: map[string]*sequence.Stated{"room": {With: []sequence.Lean{{Quantity: "x"}}}}},
		"they must differ": {Trapped: map[string]*sequence.Stated{"room": {With: []sequence.Lean{
			{Quantity: "fluids.brine.density", From: "9 lb/gal", To: "9 lb/gal"}}}}},
	} {
		require.ErrorContains(t, half(b).Validate(), text)
	}
	level := func(b *sequence.Begin) *sequence.Begin {
		b.Trapped = room(0)
		b.Levels = map[string]*sequence.StatedDepth{"tubing": {Depth: unit.Exactly(500 * foot)}}
		return b
	}
	require.ErrorContains(t, half(level(&sequence.Begin{Applied: map[string]pressure{"tubing": 5 * psi}})).Validate(), "nothing is applied")
	require.ErrorContains(t, half(level(&sequence.Begin{ShutIn: []string{"tubing"}})).Validate(), "it isn't shut in")
	deep := half(level(&sequence.Begin{}))
	deep.Begin.Levels["tubing"].Depth = unit.Exactly(1e5 * foot)
	require.ErrorContains(t, deep.Validate(), "begin.levels.tubing.depth: is 100000 ft; must be from")
	_, err := half(&sequence.Begin{Trapped: room(0)}).Rest(context.Background(), "down")
	require.ErrorContains(t, err, `no step "down"`)
}

// What isn't known of a trapped space when it is heated in the first step goes by the
// well that the plan begins with: a room whose door has shut before is trapped, one that
// stands open to the tubing isn't.
func TestAHeatedRoomIsTrappedAsThePlanBegins(t *testing.T) {
	heated := func(b *sequence.Begin) string {
		p := mini()
		p.Well.Temperatures = map[string][]sequence.MarkedTVD{
			sequence.Undisturbed: {{TVD: 0, Temperature: unit.Fahrenheit(60)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(200)}},
			"hot":                {{TVD: 0, Temperature: unit.Fahrenheit(160)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(220)}}}
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: "room", TopMD: 8000 * foot, BottomMD: 8100 * foot, Fluid: "tubing fluid"})
		p.Ports = []sequence.Port{{Name: "door", Joins: []string{"tubing", "room"}, MD: 8050 * foot, Open: true}}
		device(p, "shutter", 8050*foot, rising(6000*psi, 6200*psi)).Closes = []string{"door"}
		p.Steps = []sequence.Step{{Name: "heat", Temperature: "hot"}}
		p.Begin = b
		r := verdict(t, p)
		require.True(t, r.OK(), "%+v", r.Findings)
		return strings.Join(r.Unchecked, "\n")
	}
	const says = `compartment "room": heat doesn't change its trapped pressure`
	require.NotContains(t, heated(nil), says)
	shut := heated(&sequence.Begin{Happened: []string{"shutter: moves"}, Trapped: map[string]*sequence.Stated{"room": {Pressure: unit.Exactly(3000 * psi)}}})
	require.Contains(t, shut, says)
}

// A beginning that says nothing of the string finds it landed as the well stands then.
func TestABeginningLandsTheString(t *testing.T) {
	p := landed()
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{110000 * unit.PoundForce}})
	want := verdict(t, p)
	p.Begin = &sequence.Begin{}
	got := verdict(t, p)
	require.Equal(t, want.Verdict, got.Verdict)
	require.InDelta(t, float64(lastString(want, 1).Packer), float64(lastString(got, 1).Packer), 1e-6)
	require.InDelta(t, float64(lastString(want, 1).Reading), float64(lastString(got, 1).Reading), 1e-6)
}

// Two rooms that may stand open to each other are stated each by itself: where they do, neither's pressure is carried into the other, and what they share is the
// mean of 1,000 and 2,000 psi, as they are of one size.
func TestTwoRoomsThatMayBeJoined(t *testing.T) {
	plan := func(level float64) *sequence.Plan {
		p := gaugeWell("A", "B")
		addPort(p, "door", "A", "B", false)
		addAction(p, "lock", "tubing", "", rising(9000*psi, 9000*psi)).Opens = []string{"door"}
		addAction(p, "gauge", "A", "", rising(pounds(level), pounds(level)))
		p.Steps = []sequence.Step{{Name: "look"}}
		p.Begin = &sequence.Begin{May: []string{"lock: moves"}, Trapped: map[string]*sequence.Stated{"A": {Pressure: exactly(1000)}, "B": {Pressure: exactly(2000)}}}
		return p
	}
	require.Equal(t, sequence.Proved, verdicted(t, plan(1501)).Verdict)
	require.Equal(t, sequence.Refuted, verdicted(t, plan(1499)).Verdict)
	p := plan(1501)
	p.Begin.Happened, p.Begin.May = p.Begin.May, nil
	_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, "begin.trapped: A, B are joined: state the pressure of one of them")
}
