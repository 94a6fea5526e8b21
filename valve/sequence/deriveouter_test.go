package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

const tallyOfTwo = `{
  "name": "tally of two strings",
  "well": {"depth": "9000 ft", "temperatures": {"undisturbed": [{"tvd": "0 ft", "temperature": "70 degF"}, {"tvd": "9000 ft", "temperature": "200 degF"}]}},
  "fluids": [{"name": "brine", "density": "9 lb/gal", "compression": "3e-6 1/psi"}],
  "assembly": {
    "fluid": "brine", "without": ["ports.top of outer string"],
    "casing": [{"pipe": {"size": "9-5/8 in", "weight": "47 lb/ft", "grade": "L80"}, "bottom": "9000 ft", "behind": "brine"}],
    "strings": [
      {"name": "outer string", "closed": true, "around": "annulus", "tally": [
        {"kind": "pipe", "pipe": {"size": "5-1/2 in", "weight": "17 lb/ft", "grade": "L80"}, "bottom": "8000 ft"},
        {"kind": "packer", "name": "packer", "sets": [{"threshold": "1500 psi"}], "rated": "5000 psi"},
        {"kind": "pipe", "length": "190 ft"},
        {"kind": "seal bore", "name": "receptacle", "bore": "3.25 in", "length": "10 ft"}]},
      {"name": "inner string", "closed": true, "inside": "inner bore", "around": "between the strings", "tally": [
        {"kind": "pipe", "pipe": {"size": "2-7/8 in", "weight": "6.5 lb/ft", "grade": "L80"}, "bottom": "8200 ft"},
        {"kind": "seals", "name": "stinger", "bore": "3.25 in", "up": "20 ft", "down": "10 ft"}]}
    ]
  },
  "outer_string": {"block": "20000 lbf", "rig": "300000 lbf"},
  "steps": [
    {"name": "set", "ramps": [{"between the strings": "2000 psi"}, {"between the strings": "0 psi"}], "expect": ["packer: sets"]},
    {"name": "pull", "pull": ["200000 lbf"], "on": "outer_string"}
  ]
}`

// Of a tally with two strings the outer one follows too, where the plan has a place for
// it, with its packer on it; without that place all is as it was.
func TestTheOuterStringFollowsFromATally(t *testing.T) {
	p, err := sequence.Read([]byte(tallyOfTwo))
	require.NoError(t, err)
	made, err := p.Derive()
	require.NoError(t, err)
	o := made.OuterString
	require.NotNil(t, o)
	require.Equal(t, "between the strings", o.Inside)
	require.Equal(t, 8000*foot, o.HeldMD)
	require.Equal(t, 8200.0, o.Sections[len(o.Sections)-1].BottomMD.In(foot))
	require.Equal(t, 20000*unit.PoundForce, o.Block, "what is written by hand stands")
	require.Equal(t, sequence.OnOuterString, made.Devices[0].On)
	require.True(t, made.Devices[0].Actions[0].Holds)
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.True(t, lastOuter(r, 0).Held)
	require.False(t, lastString(r, 0).Held)
	require.InDelta(t, 200000, lastOuter(r, 1).Reading.In(unit.PoundForce), 1e-6)

	p.OuterString, p.Steps = nil, p.Steps[:1]
	made, err = p.Derive()
	require.NoError(t, err)
	require.Nil(t, made.OuterString)
	require.False(t, made.Devices[0].Actions[0].Holds)
}
