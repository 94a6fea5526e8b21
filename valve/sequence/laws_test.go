package sequence_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve/sequence"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

func TestDemoPlanDoesWhatItIntends(t *testing.T) {
	r := verdict(t, demoPlan(t))
	require.True(t, r.OK(), "%+v", r.Findings)
	for _, s := range r.Steps {
		require.Empty(t, s.Unknown, s.Name)
		for _, x := range s.Triggers {
			require.False(t, x.Margin.Negative(), "%s in %s", x.Action, s.Name)
		}
		for _, w := range s.Windows {
			require.True(t, w.Inside, "%s: %s", s.Name, w.Words())
		}
		if len(s.Triggers) > 0 {
			workingtest.Check(t, s.Steps())
		}
	}
}

// near compares programmes to what a computer's rounding can do to them.
var near = cmp.Options{
	approximately[float64](), approximately[unit.Pressure](), approximately[unit.Force](), approximately[unit.Length](),
	approximately[unit.Volume](), approximately[unit.FlowRate](),
	cmp.Comparer(func(a, b sequence.Level) bool {
		p, _ := a.Pressure()
		q, _ := b.Pressure()
		return a.Axial() == b.Axial() && rounding(float64(p), float64(q))
	}),
	cmpopts.IgnoreUnexported(sequence.Window{}, sequence.Choice{}, sequence.StringAt{}, sequence.Point{}, sequence.TimePart{}, sequence.Times{}),
	cmpopts.IgnoreFields(sequence.Choice{}, "Exact"), // to the last bit
	cmpopts.IgnoreFields(sequence.Margin{}, "Place"), // of equal ones
}

func approximately[T ~float64]() cmp.Option {
	return cmp.Comparer(func(a, b T) bool { return rounding(float64(a), float64(b)) })
}

func rounding(x, y float64) bool {
	return math.Abs(x-y) <= 1e-3+1e-7*max(math.Abs(x), math.Abs(y))
}

// Turning the well about the vertical changes nothing.
func TestAzimuthChangesNothing(t *testing.T) {
	t.Parallel()
	a, b := demoPlan(t), demoPlan(t)
	for i := range b.Well.Path {
		b.Well.Path[i].Azimuth += 100 * unit.Degree
	}
	require.Empty(t, cmp.Diff(verdict(t, a), verdict(t, b), near))
}

// Writing one layer as two of the same fluid changes nothing.
func TestSplittingALayerChangesNothing(t *testing.T) {
	t.Parallel()
	a, b := demoPlan(t), demoPlan(t)
	c := &b.Compartments[1]
	c.Layers = []sequence.Layer{{Fluid: c.Fluid, ToMD: 4321 * foot}, {Fluid: c.Fluid, ToMD: c.BottomMD}}
	c.Fluid = ""
	require.Empty(t, cmp.Diff(verdict(t, a), verdict(t, b), near))
}

// The order in which devices stand in the file changes no event and no margin.
func TestOrderOfDevicesChangesNothing(t *testing.T) {
	a, b := demoPlan(t), demoPlan(t)
	slices.Reverse(b.Devices)
	x, y := verdict(t, a), verdict(t, b)
	require.Equal(t, x.OK(), y.OK())
	for i := range x.Steps {
		byName := cmpopts.SortSlices(func(a, b sequence.TriggerResult) bool { return a.Action < b.Action })
		require.Empty(t, cmp.Diff(x.Steps[i].Triggers, y.Steps[i].Triggers, near, byName), x.Steps[i].Name)
		require.Empty(t, cmp.Diff(x.Steps[i].Windows, y.Steps[i].Windows, near), x.Steps[i].Name)
	}
}

// The same pressure on both sides of a device moves nothing.
func TestEqualPressureOnBothSidesMovesNothing(t *testing.T) {
	p := mini()
	p.Fluids[1].Density = p.Fluids[0].Density
	p.Steps = []sequence.Step{{Name: "both", Ramps: []map[string]unit.Pressure{{"tubing": 9000 * psi, "annulus": 9000 * psi}}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, 0, inPsi(t, triggerOf(t, r.Steps[0], "packer: sets").Greatest), 1e-6)
}

// What Read reads, encoding/json writes and Read reads again.
func TestPlanRoundTrips(t *testing.T) {
	a := demoPlan(t)
	text, err := json.Marshal(a)
	require.NoError(t, err)
	var tree map[string]any
	require.NoError(t, json.Unmarshal(text, &tree))
	b, err := sequence.Read(prune(t, tree))
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(a, b, cmpopts.EquateEmpty(), cmp.AllowUnexported(unit.Temperature{}), cmpopts.IgnoreUnexported(sequence.Plan{}, sequence.Step{})))
}

// prune drops what a person would leave out: nothing, null and zero.
func prune(t *testing.T, v any) []byte {
	t.Helper()
	var walk func(v any) any
	walk = func(v any) any {
		switch v := v.(type) {
		case map[string]any:
			for k, x := range v {
				if x = walk(x); x == nil {
					delete(v, k)
				} else {
					v[k] = x
				}
			}
		case []any:
			if len(v) == 0 {
				return nil
			}
			for i := range v {
				v[i] = walk(v[i])
			}
		case string:
			if v == "" {
				return nil
			}
		}
		return v
	}
	text, err := json.Marshal(walk(v))
	require.NoError(t, err)
	return text
}

func TestChangesShowOnlyWhatChanged(t *testing.T) {
	const window = "window on tubing at 2600 psi"
	before := check(t, demoPlan(t))
	require.Empty(t, sequence.Changes(before, before))
	p := demoPlan(t)
	for i := range p.Devices {
		if p.Devices[i].Name == "isolation valve C" {
			p.Devices[i].Actions[0].Triggers[0].Pins.Count = 6
		}
	}
	p.Steps = p.Steps[:12]
	after := check(t, p)
	changes := sequence.Changes(before, after)
	for _, c := range changes {
		if c.What == "step" {
			require.Equal(t, "was there", c.Before)
			continue
		}
		if c.Step == "set the packer" && c.What == window {
			require.Equal(t, "2358 psi to 2983.5 psi", c.Before)
			require.Equal(t, "2358 psi to 2651 psi", c.Now)
		}
		require.NotContains(t, c.What, "sleeve A", "%+v", c)
	}
	require.True(t, slices.ContainsFunc(changes, func(c sequence.Change) bool { return c.Step == "set the packer" && c.What == window }))
}
