package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A valve that opens under pressure puts the tubing onto its formation: the
// window ends where the formation would break, long before the pipe does. Zone
// C stands 656.2 psi above the column, so that it breaks at 6,750 − 3,680 +
// 656.2 = 3,726.2 psi on the tubing; by hand.
func TestWindowEndsAtTheFracturePressure(t *testing.T) {
	w := windowOf(t, *stepNamed(t, check(t, demoPlan(t)), "open isolation valve C"), "tubing", 1).Intervals[0]
	require.Equal(t, 3726.0, inPsi(t, w.Greatest))
	require.Contains(t, w.Above, "fracture pressure of “zone C”")
}

// A band of balance bounds the window too: at 9,000 ft 9.5 lb/gal stand at
// 4,441.6 psi, so that 5,000 psi of formation and 100 to 300 psi of
// overbalance want 658.4 to 858.4 psi at surface; by hand.
func TestWindowKeepsTheBalance(t *testing.T) {
	p := mini()
	p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(5000 * psi)}}
	p.Steps = []sequence.Step{{Name: "hold", Ramps: []map[string]unit.Pressure{{"tubing": 700 * psi}},
		Balance: []sequence.Balance{{Compartment: "tubing", Formation: "sand", Overbalance: unit.Band[unit.Pressure]{Least: 100 * psi, Nominal: 200 * psi, Greatest: 300 * psi}}}}}
	w := windowOf(t, check(t, p).Steps[0], "tubing", 1).Intervals[0]
	require.Equal(t, 658.5, inPsi(t, w.Least))
	require.Equal(t, 858.0, inPsi(t, w.Greatest))
	require.Contains(t, w.Below, "less than planned")
}

// Where the pressure of a step comes down, what a higher one would do bounds
// the window from above.
func TestWindowOfAVent(t *testing.T) {
	w := windowOf(t, *stepNamed(t, check(t, demoPlan(t)), "vent"), "tubing", 1).Intervals[0]
	require.Zero(t, inPsi(t, w.Least))
	require.Contains(t, w.Above, "isolation valve C: opens")
}

// A row is no surer than its least sure trigger. Valve A unlocks at up to
// 2,600 psi and feels 3,400 − 633.4 = 2,766.6 psi: 166.6 psi to spare, though
// its opening at bleed-off has 323.4. Valve B is counted at up to 1,575 psi
// and feels 2,400 − 639.8 = 1,760.2 psi each time.
func TestMarginOfARowIsThatOfItsLeastSureTrigger(t *testing.T) {
	r := verdict(t, demoPlan(t))
	a := triggerOf(t, *stepNamed(t, r, "open isolation valve A"), "isolation valve A: opens")
	require.InDelta(t, 166.6, inPsi(t, a.Margin), 0.05)
	require.InDelta(t, 2600, inPsi(t, a.Threshold.Greatest), 1e-6)
	b := triggerOf(t, *stepNamed(t, r, "cycle isolation valve B open"), "isolation valve B: opens")
	require.InDelta(t, 185.2, inPsi(t, b.Margin), 0.05)

	// With one of its three cycles to 2,300 psi only, that one counts.
	p := demoPlan(t)
	for i := range p.Steps {
		if p.Steps[i].Name == "cycle isolation valve B open" {
			p.Steps[i].Ramps[2]["tubing"] = 2300 * psi
		}
	}
	b = triggerOf(t, *stepNamed(t, verdict(t, p), "cycle isolation valve B open"), "isolation valve B: opens")
	require.InDelta(t, 85.2, inPsi(t, b.Margin), 0.05)
}

// In a plan that fails later, the steps before it are proved as planned, and their windows
// hold the planned value: none is told to be empty where one exists.
func TestWindowsBeforeAFailingStepHoldThePlan(t *testing.T) {
	for _, name := range []string{"test-passes-casing-rating", "bullhead-breaks-the-toe-zone"} {
		if !long.Wanted() && name != "test-passes-casing-rating" {
			continue
		}
		r, err := sequence.Check(t.Context(), readPlan(t, shipped+name+".json"), sequence.Options{Only: sequence.NoAdvice})
		require.NoError(t, err)
		require.Equal(t, sequence.Refuted, r.Verdict)
		proved := 0
		for _, s := range r.Steps {
			if !s.OK {
				break
			}
			for _, w := range s.Windows {
				require.True(t, w.Inside, "%s, %s: %s", name, s.Name, w.Words())
				proved++
			}
		}
		require.Greater(t, proved, 5, name)
	}
}
