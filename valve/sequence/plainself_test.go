package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// By hand: 3,375 psi less 0.7 lb/gal·(12/231 psi/ft per lb/gal)·9,000 ft.
func TestPlainWalkerSetsTheMiniPacker(t *testing.T) {
	r := plainWalkOf(mini(), 8, nil)
	require.NoError(t, r.fault)
	require.Empty(t, r.failures)
	require.Len(t, r.events, 1)
	require.InDelta(t, 3375-0.7*12/231*9000, r.events[0].surface[0], 1e-8)
	require.InDelta(t, 3375, r.events[0].felt, 1e-8)
}

// chambers are two trapped rooms of 1 and 3 volumes under a tubing: 1,000 psi
// and 2,000 psi at their tops, joined 500 ft below the first's top and level
// with the second's, in a fluid of 10 lb/gal.
func chambers() *sequence.Plan {
	p := mini()
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "ten"})
	setDensity(&p.Fluids[2], 10)
	first := sequence.Compartment{Name: "first", TopMD: 5000 * foot, BottomMD: 6000 * foot, Fluid: "ten", Capacity: 0.01 * unit.BarrelPerFoot}
	second := sequence.Compartment{Name: "second", TopMD: 5500 * foot, BottomMD: 8500 * foot, Fluid: "ten", Capacity: 0.01 * unit.BarrelPerFoot}
	setTrapped(&first, 1000)
	setTrapped(&second, 2000)
	p.Compartments = append(p.Compartments, first, second)
	p.Ports = []sequence.Port{{Name: "port", Joins: []string{"first", "second"}, MD: 5500 * foot}}
	p.Devices = nil
	device(p, "valve", 9000*foot, sequence.Trigger{Threshold: unit.Exactly(2000 * psi)}).Opens = []string{"port"}
	p.Steps = []sequence.Step{{Name: "one", Ramps: []map[string]pressure{{"tubing": 2500 * psi}}, Expect: []string{"valve: moves"}}}
	return p
}

// By hand: the joined body has q1 at the first top and q1 + 500·10·12/231 at the
// second, and 1·(q1−1000) + 3·(q2−2000) = 0. What was joined moves together: a
// squeeze of either raises both.
func TestPlainWalkerSharesByVolume(t *testing.T) {
	p := chambers()
	p.Steps[0].PressureChange = map[string]pressure{"second": 100 * psi}
	r := plainWalkOf(p, 8, nil)
	require.Empty(t, r.failures)
	head := 500 * 10 * 12.0 / 231
	q1 := (1000 + 3*(2000-head)) / 4
	require.Len(t, r.stands[0], 3)
	require.InDelta(t, q1, r.stands[0][1].top[2], 1e-9)
	require.InDelta(t, q1+head, r.stands[0][1].top[3], 1e-9)
	require.InDelta(t, q1+100, r.stands[0][2].top[2], 1e-9)
	require.InDelta(t, q1+head+100, r.stands[0][2].top[3], 1e-9)
}

// By hand: 400 psi is pressed into the second room alone (3 volumes); it feels
// 200 psi more when the door opens after half of it, and the other half goes
// into 4 volumes: 150 psi.
func TestPlainWalkerFollowsASqueezeThroughADoor(t *testing.T) {
	p := chambers()
	chamber := 2100 * psi
	p.Devices[0].MD = 5500 * foot
	p.Devices[0].Actions[0] = sequence.Action{Name: "moves", Inside: "second", Chamber: &chamber, Opens: []string{"port"},
		Triggers: []sequence.Trigger{{Threshold: unit.Exactly(100 * psi)}}}
	p.Steps[0].PressureChange = map[string]pressure{"second": 400 * psi}
	r := plainWalkOf(p, 8, nil)
	require.Empty(t, r.failures)
	head := 500 * 10 * 12.0 / 231
	require.InDelta(t, (1000+3*(2200-head))/4+150, r.stands[0][2].top[2], 1e-9)
}

// A limit that is reached is kept, one that is passed by 0.001 psi isn't, and
// neither is one that is passed only until something opens.
func TestPlainWalkerJudgesEveryMoment(t *testing.T) {
	p := chambers()
	p.Ports[0].Joins = []string{"tubing", "first"}
	p.Ratings = []sequence.Rating{{Name: "wall", Inside: "tubing", Outside: "first", FromMD: 5000 * foot, ToMD: 6000 * foot}}
	// At 9,000 ft the valve feels 2,000 psi with 2,000 − 327.27 psi at surface.
	before := 2000 - 0.7*12/231*9000 + 9.5*12/231*5000 - 1000
	for _, x := range []struct {
		limit float64
		fails bool
	}{{before, false}, {before - 0.001, true}} {
		p.Ratings[0].Burst = exactly(x.limit)
		r := plainWalkOf(p, 8, nil)
		require.Equal(t, x.fails, !r.ok(), "%v", r.failures)
		if x.fails {
			require.InDelta(t, 0.001, r.failures[0].By, 1e-8)
		}
	}
}

// Two devices due at the same pressure, one of which shuts the other out: the
// plan is right in one order only.
func TestPlainOrdersSeeBoth(t *testing.T) {
	p := mini()
	p.Devices = nil
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "room", TopMD: 8000 * foot, BottomMD: 9000 * foot, Fluid: "tubing fluid"})
	p.Ports = []sequence.Port{{Name: "port", Joins: []string{"tubing", "room"}, MD: 9000 * foot, Open: true}}
	device(p, "shuts", 9000*foot, sequence.Trigger{Threshold: unit.Exactly(2000 * psi)}).Closes = []string{"port"}
	device(p, "equalises", 9000*foot, sequence.Trigger{Threshold: unit.Exactly(2000 * psi)}).Opens = []string{"port"}
	p.Steps[0].Expect = []string{"shuts: moves", "equalises: moves"}
	p.Ratings = []sequence.Rating{{Name: "wall", Inside: "tubing", Outside: "room", FromMD: 8000 * foot, ToMD: 9000 * foot, Burst: exactly(1000)}}
	shut, open := plainWalkOf(p, 8, []int{1}), plainWalkOf(p, 8, []int{0})
	require.False(t, shut.ok())
	require.True(t, open.ok())
	require.False(t, plainOrders(p, 8, 8).ok())
}

// How often the walker looks must not matter, nor that a plan was a file in
// between.
func TestPlainWalkerIsSureOfItself(t *testing.T) {
	t.Parallel()
	for n := range uint64(long.Size(8, 30)) {
		p := plainPlan(11, n)
		require.NoError(t, p.Validate())
		coarse, fine := plainWalkOf(p, 3, nil), plainWalkOf(p, 101, nil)
		near := cmpopts.EquateApprox(1e-9, 1e-7)
		require.Empty(t, cmp.Diff(coarse.failures, fine.failures, near), "plan %d", n)
		require.Empty(t, cmp.Diff(coarse.events, fine.events, near, cmp.AllowUnexported(plainEvent{})), "plan %d", n)
		read, err := sequence.Read(planFile(t, p))
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(fine.failures, plainWalkOf(read, 101, nil).failures, near), "plan %d", n)
		require.Equal(t, planFile(t, p), planFile(t, plainPlan(11, n)), "a seed always makes the same")
	}
}
