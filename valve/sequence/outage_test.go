package sequence_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/internal/outage"
	"github.com/stretchr/testify/require"
)

// What a fluid can't answer at some pressure and depth is handed on, whoever asked for it: the plan
// isn't proved on a density that nobody knows. What isn't needed for the verdict may be left out.
func TestAnAnswerThatAFluidDoesNotHaveIsHandedOn(t *testing.T) {
	anyFlow := []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}
	errOut := errors.New("out of its table")
	plans := map[string]func() *sequence.Plan{"mini": mini, "drag": func() *sequence.Plan {
		return rubbing([]sequence.Station{{}, {MD: 3000 * foot}, {MD: 6000 * foot, Inclination: 60 * unit.Degree}, {MD: 9000 * foot, Inclination: 60 * unit.Degree}}, "0.25")
	}}
	if long.Wanted() {
		plans["two strings"], plans["everything"], plans["producer"] = twoStrings, rich, producer
		plans["gas"] = func() *sequence.Plan {
			p := cushionWell()
			p.Ports[0].Open = true
			p.Steps = []sequence.Step{{Name: "cushion", Ramps: tubingTo(1000), Allow: anyFlow}, {Name: "shut", Shut: []string{"tubing"}},
				{Name: "press", Ramps: []map[string]pressure{{"annulus": 900 * psi}}, Allow: anyFlow}}
			return p
		}
		plans["feeling"] = func() *sequence.Plan { return feeling(0) }
		for name, f := range features {
			if name != "levels" && name != "begun low" && !strings.HasPrefix(name, "fished") { // a column falls of constant density alone; what is fished for is slow
				plans["random "+name] = func() *sequence.Plan { return plainPlanWith(4711, 1, f) }
			}
		}
		plans["random gas"] = func() *sequence.Plan { return plainGasPlan(1) }
	}
	for name, build := range plans {
		t.Run(name, func(t *testing.T) {
			p := build()
			if q, err := p.At(p.Quantities()); strings.HasPrefix(name, "random") {
				require.NoError(t, err)
				p = q
			}
			var sound sequence.Verdict
			handed := 0
			outage.EachWay(long.Size(25, 1), func(o *outage.Counter, fails bool) {
				r, err := sequence.CheckWithout(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly, Workers: 1}, func() error {
					if o.Fails() {
						return errOut
					}
					return nil
				})
				switch {
				case !fails:
					require.NoError(t, err)
					sound = r.Verdict
				case err == nil:
					require.Equal(t, sound, r.Verdict)
				default:
					if !errors.Is(err, errOut) { // a curve that a gas has no more of is one beyond its end
						require.ErrorContains(t, err, "is more than its equation of state is good for")
					}
					handed++
				}
			})
			require.NotZero(t, handed)
		})
	}
}

// halting is a context that is done from one look at it on.
type halting struct {
	context.Context
	o *outage.Counter
}

func (h halting) Err() error {
	if h.o.Fails() {
		return context.Canceled
	}
	return nil
}

// Whenever a caller gives up, that is the answer; what was found before may come beside it, and is what
// would have been found.
func TestGivingUpIsTheAnswerWhereverItIsSeen(t *testing.T) {
	short := func() *sequence.Plan { // too little to set it: something has to be advised
		p := mini()
		p.Steps[0].Ramps[0]["tubing"] = 3000 * psi
		return p
	}
	pumped := func() *sequence.Plan {
		p := pumpedWell()
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: unit.BarrelPerMinute}}}}
		return p
	}
	for name, build := range map[string]func() *sequence.Plan{"proved": mini, "refuted": short, "everything": rich, "pumped": pumped} {
		t.Run(name, func(t *testing.T) {
			p := build()
			for _, only := range []sequence.Part{sequence.Everything, sequence.FindingsOnly} {
				var sound *sequence.Programme
				outage.EachWay(long.Size(20, 1), func(o *outage.Counter, fails bool) {
					r, err := sequence.Check(halting{context.Background(), o}, p, sequence.Options{Only: only, Workers: 1})
					if !fails {
						require.NoError(t, err)
						sound = r
						return
					}
					require.ErrorIs(t, err, context.Canceled)
					if r != nil {
						require.Equal(t, sound.Verdict, r.Verdict)
						require.Len(t, r.Findings, len(sound.Findings))
					}
				})
			}
			outage.EachWay(1, func(o *outage.Counter, fails bool) {
				r, err := sequence.Sample(halting{context.Background(), o}, p, sequence.Uncertainty{Samples: 20, Workers: 1})
				if !fails {
					require.NoError(t, err)
					return
				}
				require.ErrorIs(t, err, context.Canceled)
				require.Nil(t, r)
			})
		})
	}
}
