package sequence_test

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// edited is the demo plan with texts of the file replaced.
func edited(t testing.TB, pairs ...string) []byte {
	t.Helper()
	data := string(demo(t))
	for i := 0; i < len(pairs); i += 2 {
		require.True(t, strings.Contains(data, pairs[i]), "the demo has no %s", pairs[i])
		data = strings.Replace(data, pairs[i], pairs[i+1], 1)
	}
	return []byte(data)
}

func TestEveryFaultIsReportedWithItsPath(t *testing.T) {
	for name, c := range map[string]struct {
		edit []string
		want []string
	}{
		"unknown field":       {[]string{`"fluids": [`, `"fluidz": [], "fluids": [`}, []string{"fluidz: unknown field; there are"}},
		"missing unit":        {[]string{`"9.4 lb/gal"`, `"9.4"`}, []string{`fluids[0].density`, "no unit given"}},
		"bare number":         {[]string{`"9.4 lb/gal"`, `9.4`}, []string{`fluids[0].density`, "no unit given"}},
		"wrong quantity":      {[]string{`"9.4 lb/gal"`, `"9.4 psi"`}, []string{`fluids[0].density`, `"psi" is a unit of pressure`}},
		"NaN":                 {[]string{`"9.4 lb/gal"`, `"NaN lb/gal"`}, []string{`fluids[0].density`, "not a decimal number"}},
		"duplicate name":      {[]string{`"name": "zone B"`, `"name": "zone A"`}, []string{"formations[1].name", `"zone A" stands twice`}},
		"duplicate key":       {[]string{`"note": "Every`, `"name": "x", "note": "Every`}, []string{"name: stands twice"}},
		"unknown compartment": {[]string{`"inside": "tubing"`, `"inside": "tubbing"`}, []string{"devices[0].actions[0].inside", `no compartment "tubbing"; there are`}},
		"unknown action":      {[]string{`"packer: sets"`, `"packer: setz"`}, []string{`no action "packer: setz"; there are`}},
		"unknown port":        {[]string{`"sleeve A"`, `"sleeve Z"`}, []string{`"sleeve Z"`}},
		"negative depth":      {[]string{`"depth": "8600 ft"`, `"depth": "-8600 ft"`}, []string{"is -8600 ft; must be from 0 ft to the well's depth of 9800 ft"}},
		"crossing depths":     {[]string{`"bottom": "9050 ft"`, `"bottom": "8500 ft"`}, []string{"compartments[2].bottom", "must be below the top at 8600 ft"}},
		"band out of order":   {[]string{`"1450 psi +/- 5 %"`, `"1450 psi .. 1300 psi"`}, []string{"out of order"}},
		"no pins":             {[]string{`"count": 7,`, `"count": 0,`}, []string{"pins"}},
		"path too short": {[]string{`"depth": "9800 ft"`, `"depth": "9900 ft"`}, []string{
			"well.path", "must reach the well's depth of 9900 ft"}},
		"two things at once": {[]string{`"9.4 lb/gal"`, `"9.4"`, `"name": "zone B"`, `"nome": "zone B"`}, []string{"fluids[0].density", "formations[1].nome"}},
	} {
		_, err := sequence.Read(edited(t, c.edit...))
		require.Error(t, err, name)
		for _, want := range c.want {
			require.ErrorContains(t, err, want, name)
		}
	}
}

func TestFaultsOfAPlanInGo(t *testing.T) {
	p := mini()
	p.Devices[0].MD = unit.Length(math.NaN())
	p.Compartments[0].Layers = []sequence.Layer{{Fluid: "mud", ToMD: 100 * foot}}
	p.Steps[0].Ramps = append(p.Steps[0].Ramps, map[string]unit.Pressure{"annulus": unit.Pressure(math.Inf(1)), "tubing": -1})
	p.Steps[0].Displace = []sequence.Displacement{{Compartment: "tubing", Fluid: "x", FromMD: 5, ToMD: 5}}
	p.Steps[0].Pull = []unit.Force{1}
	p.Steps[0].Allow = []sequence.Flow{"everything"}
	p.Steps[0].Balance = []sequence.Balance{{Compartment: "tubing", Formation: "none", Moment: "noon"}}
	p.Steps[0].Tests = []sequence.Test{{Barrier: "none", Side: "left", Inside: "tubing", Outside: "annulus", Hold: "soon", Decline: 2}}
	p.Rules.Barriers, p.Rules.Axial = 3, 0.5
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	for _, want := range []string{
		"devices[0].depth", "compartments[0]: wants either a fluid or layers", "steps[0].ramps[2].annulus", "a surface pressure can't be below 0 psi",
		"steps[0].displace[0].fluid", "steps[0].displace[0].to", "steps[0].pull: needs the plan's string", `steps[0].allow[0]: is "everything"`,
		"steps[0].balance[0].formation", "steps[0].balance[0].at", "steps[0].tests[0].side", `steps[0].tests[0].hold: is "soon"`, "steps[0].tests[0].decline", "rules.barriers", "rules.axial",
	} {
		require.ErrorContains(t, err, want)
	}
}

// Slips of the pen that would otherwise be walked.
func TestSlipsOfThePen(t *testing.T) {
	for want, slip := range map[string]func(p *sequence.Plan){
		"devices[0].actions[0].arms[0]: \"sets\" arms itself":       func(p *sequence.Plan) { p.Devices[0].Actions[0].Arms = []string{"sets"} },
		"devices[0].actions[0].holds: the device stands at 8900 ft": func(p *sequence.Plan) { p.Devices[0].MD = 8900 * foot },
		"fluids[0].density: is 95 lb/gal":                           func(p *sequence.Plan) { p.Fluids[0].Density = unit.Exactly(95 * ppg) },
		"compartments[2].trapped: is -5 psi":                        func(p *sequence.Plan) { p.Compartments[2].Trapped = unit.Exactly(-5 * psi) },
		`string.seal_bore: is 35 in`:                                func(p *sequence.Plan) { p.String.Bore = 35 * unit.Inch },
		"string.block: is 2e+07 lbf":                                func(p *sequence.Plan) { p.String.Block = 2e7 * unit.PoundForce },
		"steps[0].ramps[0].tubing: is 360000 psi":                   func(p *sequence.Plan) { p.Steps[0].Ramps[0]["tubing"] = 360000 * psi },
		"steps[0].pull[0]: is 2e+07 lbf":                            func(p *sequence.Plan) { p.Steps[0].Pull = []unit.Force{2e7 * unit.PoundForce} },
		`steps[0].tests[0].hold: is "-15m"`:                         func(p *sequence.Plan) { p.Steps[0].Tests = []sequence.Test{{Hold: "-15m"}} },
	} {
		p := landed()
		slip(p)
		_, err := sequence.Check(context.Background(), p, sequence.Options{})
		require.ErrorContains(t, err, want)
	}
}

func TestRingOfPortsWithoutAReference(t *testing.T) {
	p := mini()
	for _, name := range []string{"x", "y"} {
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: name, TopMD: 8000 * foot, BottomMD: 9000 * foot, Fluid: "tubing fluid"})
	}
	p.Ports = []sequence.Port{
		{Name: "upper", Joins: []string{"x", "y"}, MD: 8100 * foot, Open: true},
		{Name: "lower", Joins: []string{"x", "y"}, MD: 8900 * foot, Open: true},
	}
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.ErrorContains(t, err, "x, y are joined in a ring by open ports and nothing fixes their pressure")
	p.Compartments[3].Surface = true
	p.Compartments[3].TopMD = 0
	_, err = sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
}

// FuzzRead looks for texts that panic, hang or get through with a plan that
// can't be walked without one of the two.
func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"name":"m","well":{"depth":"900 ft"},"fluids":[{"name":"a","density":"9 lb/gal"}],
		"compartments":[{"name":"t","bottom":"900 ft","fluid":"a","surface":true},{"name":"u","bottom":"900 ft","fluid":"a","surface":true}],
		"ports":[{"name":"p","joins":["t","u"],"depth":"800 ft"}],
		"devices":[{"name":"d","depth":"800 ft","actions":[{"name":"o","inside":"t","outside":"u","triggers":[{"threshold":"100 psi .. 200 psi","count":2,"rearm":"10 psi"}],"opens":["p"]}]}],
		"steps":[{"name":"s","ramps":[{"t":"300 psi"},{"t":"0 psi"},{"t":"300 psi"}],"expect":["d: o"],"allow":["circulation"]}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 64<<10 || bytes.Count(data, []byte(`"triggers"`)) > 20 {
			return // more worlds than a fuzzer has time for
		}
		p, err := sequence.Read(data)
		if err != nil || len(p.Steps) > 3 {
			return
		}
		r, err := sequence.Check(context.Background(), p, sequence.Options{})
		if err != nil {
			return
		}
		for _, s := range r.Steps {
			for _, x := range s.Points {
				for _, q := range x.Pressures {
					if v := float64(q.Pressure); math.IsNaN(v) || math.IsInf(v, 0) {
						t.Fatalf("pressure of %s at %s in %q is %v", q.Compartment, q.Device, s.Name, v)
					}
				}
			}
		}
	})
}
