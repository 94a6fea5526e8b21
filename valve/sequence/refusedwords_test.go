package sequence_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Names that nothing has, places that don't fit, and texts that are none: each by its words.
func TestWhatStandsNowhereIsRefused(t *testing.T) {
	act := func(p *mended) *sequence.Act {
		p.Steps[0].Do = []sequence.Act{{Drop: "bypass"}}
		return &p.Steps[0].Do[0]
	}
	refuses(t, landed, []breaking{
		{func(p *mended) { act(p).In = "cellar" }, `steps[0].do[0].in: no compartment "cellar"`},
		{func(p *mended) { act(p).Through = []string{"flap"} }, `steps[0].do[0].through[0]: no port "flap"`},
		{func(p *mended) { p.Steps[0].Do = []sequence.Act{{}} }, "steps[0].do[0]: does 0 things; must be just one of drop"},
		{func(p *mended) { p.Steps[0].Temperature = "boiling" }, `steps[0].temperature: no temperature "boiling" in well.temperatures`},
		{func(p *mended) { p.String.Around = []string{"cellar"} }, `string.around[0]: no compartment "cellar"`},
		{func(p *mended) { p.Devices[0].Name = "" }, "devices[0].name: is missing"},
		{func(p *mended) { p.Compartments[1].Bores = []sequence.Bore{{To: 9500 * foot, Outer: 6 * unit.Inch}} }, "compartments[1].bores[0].to: is 9500 ft; must be below 0 ft and no deeper than the compartment's bottom at 9000 ft"},
		{func(p *mended) { p.Begin = &sequence.Begin{Layers: map[string][]sequence.Layer{"cellar": nil}} }, `begin.layers.cellar: no compartment "cellar"`},
		{func(p *mended) {
			p.Begin = &sequence.Begin{Progress: map[string][]sequence.RowAt{"packer: leaps": nil}}
		}, `begin.progress.packer: leaps: no action "packer: leaps"`},
		{func(p *mended) { p.Begin = &sequence.Begin{Trapped: map[string]*sequence.Stated{"below": nil}} }, "is null; write its pressure"},
	})
	refuses(t, twoStrings, []breaking{
		{func(p *mended) { p.String.HangerMD = 9000 * foot }, "outer_string.sections: end at 9000 ft; the string in it hangs at 9000 ft: the one must stand in the other"},
		{func(p *mended) { p.String.Around = []string{"annulus", "between the strings"} }, `string.around[0]: is "annulus" from 0 ft to 9000 ft, where the outer string has "between the strings" inside`},
		{func(p *mended) { p.String.Around = []string{"cellar", "between the strings"} }, `string.around[0]: no compartment "cellar"`},
		{func(p *mended) { p.String.Sections = nil }, "string.sections"},
	})
	require.Equal(t, "nothing", sequence.Act{}.String())
	require.Equal(t, "nothing", sequence.Act{Drop: "a", Pull: "b"}.String())
}

// More than a plan may hold is told by its place: of a list, of an object's names, and of a text among them.
func TestTooMuchOfAnything(t *testing.T) {
	for says, change := range map[string]func(p *sequence.Plan){
		"steps[0].volume_change: has 5001 entries": func(p *sequence.Plan) {
			p.Steps[0].VolumeChange = map[string]unit.Volume{}
			for n := range 5001 {
				p.Steps[0].VolumeChange[fmt.Sprint("room ", n)] = 0
			}
		},
		"steps[0].expect: has 5001 entries": func(p *sequence.Plan) { p.Steps[0].Expect = make([]string, 5001) },
		"has 100001 bytes": func(p *sequence.Plan) {
			p.Steps[0].VolumeChange = map[string]unit.Volume{strings.Repeat("x", 100001): 0}
		},
	} {
		p := mini()
		change(p)
		require.ErrorContains(t, p.Validate(), says)
	}
}

// Faults of what stands in an object come in the order of its names.
func TestFaultsOfNamesComeInTheirOrder(t *testing.T) {
	p := mini()
	p.Steps[0].VolumeChange = map[string]unit.Volume{"d": 0, "b": 0, "a": 0, "c": 0}
	for range 8 {
		at := -1
		text := p.Validate().Error()
		for _, name := range []string{"a", "b", "c", "d"} {
			next := strings.Index(text, "steps[0].volume_change."+name+": ")
			require.Greater(t, next, at, text)
			at = next
		}
	}
}

// A choice names quantities that the plan has, each once, with a value of its kind.
func TestChoicesThatAreNone(t *testing.T) {
	p := mini()
	p.Devices[0].Actions[0].Triggers = []sequence.Trigger{rising(3300*psi, 3400*psi)}
	for text, says := range map[string]string{
		"packer: sets":                                     `is no choice; write it as name = value, name = value`,
		"packer: sets = 3350 psi = 3360 psi":               `a comma must stand between a value and the next name`,
		"packer: sets = 3350 psi, wellhead = 1":            `sequence: the plan has no quantity "wellhead"; there are density of tubing fluid, density of annulus fluid`,
		"packer: sats = 3350 psi":                          `sequence: the plan has no quantity "packer: sats"; did you mean "packer: sets"?`,
		"packer: sets = 3350 psi, packer: sets = 3360 psi": "is chosen twice",
		"packer: sets = 3350 psi .. 3360 psi":              "is a band; one value is wanted",
		"packer: sets = 3350 lbf":                          "packer: sets",
		"packer: sets = 3500 psi":                          "its band is from 3300 psi to 3400 psi",
		"share.tubing|annulus = 120 %":                     "share.tubing|annulus is \"120 %\"; must be from 0 % to 100 %",
	} {
		_, err := p.Choose(text)
		require.ErrorContains(t, err, says, text)
	}
	all, err := p.Choose("packer: sets = 3310 psi, share.tubing|annulus = 20 %")
	require.NoError(t, err)
	require.Equal(t, "share.tubing|annulus", all[1].Path)
	_, err = p.At([]sequence.Choice{{Path: "devices.packer.depth"}})
	require.ErrorContains(t, err, `sequence: the plan has no quantity "devices.packer.depth" with a tolerance`)
}

// What is set by its path must be a value of its kind.
func TestValuesOfAnotherKind(t *testing.T) {
	p := rich()
	for path, says := range map[string]string{
		"steps.displace.expect":                            "must be a list in JSON",
		"devices.packer.actions.sets.closes":               "must be a list in JSON",
		"devices.counter.actions.counts.triggers[0].count": "must be a whole number",
		"ratings.casing.factor":                            "must be a number",
		"string.sections[0].pipe":                          "must be an object in JSON",
		"devices.packer.actions.sets.holds":                "must be true or false",
	} {
		_, err := p.Set(path, "{[")
		require.ErrorContains(t, err, says, path)
	}
	_, err := p.Set("string.lockdown", "1 lbf")
	require.Error(t, err)
	_, err = p.Set("rules.zzzzzz", "1")
	require.ErrorContains(t, err, "; there are ")
	require.ErrorContains(t, err, `in rules there is no "zzzzzz"`)

	q := branched().Expanded()
	_, err = q.Set("steps.test.before", "open")
	require.ErrorContains(t, err, "the steps of a plan whose branches are written out stay where they are")
}

// What follows a plan has no form in JSON, and says where to look instead.
func TestFollowersAreNotWritten(t *testing.T) {
	f, err := sequence.Follow(mini())
	require.NoError(t, err)
	_, at, err := f.Step(t.Context(), nil, 0, nil)
	require.NoError(t, err)
	_, first := json.Marshal(f)
	_, second := json.Marshal(at)
	require.ErrorContains(t, first, "Follower")
	require.ErrorContains(t, second, "Situation")
	require.ErrorContains(t, json.Unmarshal([]byte("{}"), f), "Follower")
	require.ErrorContains(t, json.Unmarshal([]byte("{}"), at), "Situation")
	_, _, err = f.Step(t.Context(), nil, 0, []string{"packer: leaps"})
	require.ErrorContains(t, err, `sequence: the plan has no action "packer: leaps"`)

	text, err := sequence.Factor(0.25).MarshalText()
	require.NoError(t, err)
	require.Equal(t, "0.25", string(text))
	_, err = sequence.Factor(math.NaN()).MarshalText()
	require.ErrorContains(t, err, "sequence: factor is NaN; must be finite")
}

// What a compartment takes is counted where the plan gives a capacity and how its fluid gives way, of all that is joined to it: by hand V·c.
func TestWhatIsTakenIsCounted(t *testing.T) {
	taken := func(change func(p *sequence.Plan)) sequence.Take {
		p := mini()
		change(p)
		f, err := sequence.Follow(p)
		require.NoError(t, err)
		seen, _, err := f.Step(t.Context(), nil, 0, nil)
		require.NoError(t, err)
		for _, x := range seen.Legs[1].Stretches[0].Takes {
			if x.Compartment == "tubing" {
				return x
			}
		}
		require.Fail(t, "the tubing takes nothing")
		return sequence.Take{}
	}
	capacity := func(p *sequence.Plan) { p.Compartments[0].Capacity = 0.01 * unit.BarrelPerFoot }
	gives := func(p *sequence.Plan) { p.Fluids[0].Compression = 3e-6 * unit.PerPSI }
	require.False(t, taken(func(*sequence.Plan) {}).Counted)
	require.False(t, taken(capacity).Counted)
	require.False(t, taken(gives).Counted)
	both := taken(func(p *sequence.Plan) { capacity(p); gives(p) })
	require.True(t, both.Counted)
	require.InEpsilon(t, 90*3e-6, both.PerPSI.In(unit.Barrel), 1e-9)
}
