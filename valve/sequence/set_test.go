package sequence

import (
	"context"
	"os"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func shippedPlan(t *testing.T, name string) *Plan {
	t.Helper()
	data, err := os.ReadFile("../../examples/installation/plans/" + name + ".json")
	require.NoError(t, err)
	p, err := Read(data)
	require.NoError(t, err)
	return p
}

func TestSetFindsValuesByTheirPath(t *testing.T) {
	for _, x := range []struct{ path, text, full, before, now string }{
		{"devices.isolation valve C.opens.pins", "6", "devices.isolation valve C.actions.opens.triggers[0].pins.count", "7", "6"},
		{"devices.isolation valve C.actions.opens.triggers[0].pins.tolerance", "0.04", "devices.isolation valve C.actions.opens.triggers[0].pins.tolerance", "0.05", "0.04"},
		{"fluids.base oil.density", "7.4 lb/gal +/- 1 %", "fluids.base oil.density", "7.2 lb/gal", ""},
		{"fluids[1].density", "860 kg/m3", "fluids.base oil.density", "7.2 lb/gal", "860 kg/m3"},
		{"steps.set the packer.ramps[0].tubing", "180 bar", "steps.set the packer.ramps[0].tubing", "2600 psi", "180 bar"},
		{"string.seals.seals.up", "30 in", "string.seals.seals.up", "36 in", "30 in"},
		{"string.held_at", "8610 ft", "string.held_at", "8600 ft", "8610 ft"},
		{"string.sections[1].grade", "P110", "string.sections[1].pipe.grade", "L80", "P110"},
		{"rules.barriers", "1", "rules.barriers", "2", "1"},
		{"ports.sleeve A.open", "false", "ports.sleeve A.open", "true", "false"},
		{"steps.release by overpull.pull[0]", "900 kN", "steps.release by overpull.pull[0]", "195000 lbf", "900 kN"},
		{"steps.produce zone B alone.chokes.sleeve B", "20 Cv", "steps.produce zone B alone.produce.chokes.sleeve B", "25 Cv", "20 Cv"},
		{"well.path[2].inclination", "40 deg", "well.path[2].inclination", "45 deg", "40 deg"},
		{"name", "another", "name", "", "another"},
		{"steps.vent.expect", `["packer: sets"]`, "steps.vent.expect", "", `["packer: sets"]`},
	} {
		p := shippedPlan(t, "demo")
		e, err := p.Set(x.path, x.text)
		require.NoError(t, err, x.path)
		require.Equal(t, x.full, e.Path)
		if x.before != "" {
			require.Equal(t, x.before, e.Before, x.path)
		}
		if x.now != "" {
			require.Equal(t, x.now, e.Now, x.path)
		}
		again, err := p.Set(e.Path, x.text)
		require.NoError(t, err, "the full path finds it too")
		if x.now != "" && x.text != "180 bar" { // which is written back as MPa
			require.Equal(t, e.Now, again.Before, "it stayed")
		}
	}
}

// What is set is what a file with that text would have.
func TestSetIsWhatTheFileWouldSay(t *testing.T) {
	data, err := os.ReadFile("../../examples/installation/plans/demo.json")
	require.NoError(t, err)
	const pins = `"count": 7, "strength": "770 lbf"`
	require.Equal(t, 1, strings.Count(string(data), pins))
	want, err := Read([]byte(strings.Replace(string(data), pins, `"count": 6, "strength": "770 lbf"`, 1)))
	require.NoError(t, err)
	got := shippedPlan(t, "demo")
	_, err = got.Set("devices.isolation valve C.opens.pins", "6")
	require.NoError(t, err)
	require.Equal(t, want, got)
}

func TestSetNamesWhatItDoesNotFind(t *testing.T) {
	for path, want := range map[string]string{
		"devices.isolaton valve C.opens.pins":  `did you mean "isolation valve C"?`,
		"devices.isolation valve C.opens.pinz": `did you mean "pins"?`,
		"device.packer":                        `did you mean "devices"?`,
		"fluids.base oil.densty":               `in fluids.base oil there is no "densty"; did you mean "density"?`,
		"steps.set the packer.tubing":          "may mean 2 values: steps.set the packer.ramps[0].tubing; steps.set the packer.ramps[1].tubing",
		"steps[99].name":                       "in steps there is no",
		"":                                     "there are version, name, note, well",
	} {
		p := shippedPlan(t, "demo")
		_, err := p.Set(path, "1")
		require.ErrorContains(t, err, want, path)
		require.Equal(t, shippedPlan(t, "demo"), p, "as it was")
	}
	for path, x := range map[string][2]string{
		"devices.isolation valve C.opens.pins": {"six", "the count of pins"},
		"fluids.base oil.density":              {"7.4", "no unit given"},
		"rules.barriers":                       {"1.5", "must be a whole number"},
		"ports.sleeve A.open":                  {"yes", "true or false"},
		"string.drag":                          {"5 psi", "force"},
	} {
		p := shippedPlan(t, "demo")
		_, err := p.Set(path, x[0])
		require.ErrorContains(t, err, x[1], path)
		require.ErrorContains(t, err, path[:4], "the path is named")
		require.Equal(t, shippedPlan(t, "demo"), p, "as it was")
	}
	_, err := (*Plan)(nil).Set("name", "x")
	require.Error(t, err)
}

// A missing part is made where a value is put into it.
func TestSetMakesWhatIsMissing(t *testing.T) {
	p := shippedPlan(t, "demo")
	_, err := p.Set("devices.packer.sets.triggers[0].pins.strength", "800 lbf")
	require.NoError(t, err)
	require.Equal(t, 800*unit.PoundForce, p.Devices[0].Actions[1].Triggers[0].Pins.Strength)
}

// A finding's witness, typed in as it is printed, is that witness again: the plan
// fails in it just so.
func TestChooseReplaysAWitness(t *testing.T) {
	p := shippedPlan(t, "setting-shears-isolation-valve")
	out, err := Check(context.Background(), p, Options{Only: VerdictOnly})
	require.NoError(t, err)
	choice, err := p.Choose(strings.ReplaceAll(out.Findings[0].Assumed, "opens 2327.5 psi", "opens = 2327.5 psi"))
	require.NoError(t, err)
	q, err := p.At(choice)
	require.NoError(t, err)
	again, err := Check(context.Background(), q, Options{Only: VerdictOnly})
	require.NoError(t, err)
	require.Equal(t, Refuted, again.Verdict)
	require.Equal(t, out.Findings[0].Device, again.Findings[0].Device)
	require.Equal(t, out.Findings[0].Step, again.Findings[0].Step)

	nominal, err := p.Choose("isolation valve C: opens = 2572 psi")
	require.NoError(t, err)
	q, err = p.At(nominal)
	require.NoError(t, err)
	again, err = Check(context.Background(), q, Options{Only: VerdictOnly})
	require.NoError(t, err)
	require.Equal(t, Proved, again.Verdict, "strong pins hold")
}

func TestChooseReadsNamesWithCommas(t *testing.T) {
	p := shippedPlan(t, "demo")
	all, err := p.Choose("isolation valve B: opens, trigger 1 = 1,550 psi, isolation valve B: opens, trigger 1, re-arming = 310 psi, drag = 7000 lbf")
	require.NoError(t, err)
	require.Len(t, all, len(p.Quantities()))
	require.Equal(t, "1550 psi", all[0].Value)
	require.Equal(t, "310 psi", all[1].Value)
	require.Equal(t, "7000 lbf", all[2].Value)
	for text, want := range map[string]string{
		"sleave A: closes = 1290 psi":                              `did you mean "sleeve A: closes"?`,
		"sleeve A: closes = 2000 psi":                              "its band is from 1104 psi to 1296 psi",
		"sleeve A: closes":                                         "name = value",
		"sleeve A: closes = 1200 lbf":                              "pressure",
		"sleeve A: closes = 1200 psi +/- 2 %":                      "is a band",
		"sleeve A: closes = 1200 psi, sleeve A: closes = 1201 psi": "twice",
		"share.annulus|tubing = 120 %":                             "from 0 % to 100 %",
	} {
		_, err := p.Choose(text)
		require.ErrorContains(t, err, want, text)
	}
}
