package main

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// others runs the calculators beside this one as they stand.
type others struct {
	t   *testing.T
	dir string
}

// answer is what a calculator says under the name of a result, in SI: of a band its
// nominal value.
func (c others) answer(name string, args ...string) func(result string) float64 {
	c.t.Helper()
	bin := filepath.Join(c.dir, name)
	if _, err := os.Stat(bin); err != nil {
		out, err := exec.Command("go", "build", "-o", bin, "completion.example/examples/"+name).CombinedOutput() //nolint:gosec // of this module
		require.NoError(c.t, err, string(out))
	}
	out, err := exec.Command(bin, append([]string{"-json"}, args...)...).Output() //nolint:gosec // just built
	var code *exec.ExitError
	if !errors.As(err, &code) || code.ExitCode() != 1 { // 1: a limit is passed, and the answer stands
		require.NoError(c.t, err, name)
	}
	var page struct {
		Results []struct {
			Name  string
			Value any
		}
	}
	require.NoError(c.t, json.Unmarshal(out, &page))
	return func(result string) float64 {
		c.t.Helper()
		for _, r := range page.Results {
			if r.Name != result {
				continue
			}
			if x, ok := r.Value.(float64); ok {
				return x
			}
			return si(c.t, r.Value.(string))
		}
		require.Fail(c.t, "no result", "%s: %s", name, result)
		return 0
	}
}

// table is what a calculator says in the last row of a table.
func (c others) table(name, title, column string, args ...string) float64 {
	c.t.Helper()
	c.answer(name)                                                                                       // builds it
	out, err := exec.Command(filepath.Join(c.dir, name), append([]string{"-json"}, args...)...).Output() //nolint:gosec // just built
	require.NoError(c.t, err, name)
	var page struct {
		Tables []struct {
			Name   string
			Header []string
			Rows   [][]any
		}
	}
	require.NoError(c.t, json.Unmarshal(out, &page))
	for _, x := range page.Tables {
		if i := slices.Index(x.Header, column); x.Name == title && i >= 0 && len(x.Rows) > 0 {
			v, ok := x.Rows[len(x.Rows)-1][i].(float64)
			require.True(c.t, ok, title)
			return v
		}
	}
	require.Fail(c.t, "no table", "%s: %s", name, title)
	return 0
}

// si reads a quantity, or the nominal value of a band.
func si(t *testing.T, text string) float64 {
	t.Helper()
	if parts := strings.Split(text, " .. "); len(parts) == 3 {
		text = parts[1]
	}
	var f unit.Force
	var l unit.Length
	var p unit.Pressure
	switch {
	case f.UnmarshalText([]byte(text)) == nil:
		return float64(f)
	case l.UnmarshalText([]byte(text)) == nil:
		return float64(l)
	}
	require.NoError(t, p.UnmarshalText([]byte(text)))
	return float64(p)
}

// strung is a plan of one pipe in one hole, with whatever is to be done to it.
func strung(t *testing.T, change map[string]string, steps string) *sequence.Programme {
	t.Helper()
	text := `{
  "name": "one pipe", "well": {"depth": "DEPTH", PATH "temperatures": {
    "undisturbed": [{"tvd": "0 ft", "temperature": "150 degF"}, {"tvd": "DEPTH", "temperature": "150 degF"}],
    "cold": [{"tvd": "0 ft", "temperature": "130 degF"}, {"tvd": "DEPTH", "temperature": "130 degF"}]}},
  "fluids": [{"name": "tubing fluid", "density": "INSIDE"}, {"name": "annulus fluid", "density": "OUTSIDE"}, {"name": "heavy", "density": "15 lb/gal"}],
  "compartments": [
    {"name": "tubing", "bottom": "DEPTH", "fluid": "tubing fluid", "surface": true, "capacity": "0.0058 bbl/ft"},
    {"name": "annulus", "bottom": "DEPTH", "fluid": "annulus fluid", "surface": true, "capacity": "0.03 bbl/ft"}],
  "devices": [
    {"name": "packer", "depth": "DEPTH", "actions": [{"name": "sets", "inside": "tubing", "outside": "annulus", "holds": true, "triggers": [{"threshold": "BITES"}]}]},
    {"name": "release", "depth": "DEPTH", "actions": [{"name": "parts", "axial": true, "seal": "4 in", "triggers": [{"tension": "PINS"}]}]}],
  "string": {"inside": "tubing", "around": ["annulus"], "below": "BELOW", "sections": [{"pipe": PIPE, "bottom": "DEPTH", "hole": "HOLE"}],
    "held_at": "DEPTH", "seal_bore": "BORE", "up": "30 ft", "down": "30 ft", "top": "closed" MORE},
  "rules": {"triaxial": 1.25},
  "steps": [STEPS]}`
	values := map[string]string{
		"DEPTH": "9000 ft", "PATH": "", "INSIDE": "9.5 lb/gal", "OUTSIDE": "9.5 lb/gal", "BITES": "4000 psi", "PINS": "500000 lbf", "BELOW": "annulus",
		"PIPE": `{"size": "3-1/2 in", "weight": "9.3 lb/ft", "grade": "L80"}`, "HOLE": "8.535 in", "BORE": "3.5 in", "MORE": "",
	}
	for k, v := range change {
		values[k] = v
	}
	longest := func(a, b string) int { return cmp.Compare(len(b), len(a)) } // first: it may hold another
	for _, k := range slices.SortedFunc(maps.Keys(values), longest) {
		text = strings.ReplaceAll(text, k, values[k])
	}
	plan, err := sequence.Read([]byte(strings.ReplaceAll(text, "STEPS", steps)))
	require.NoError(t, err)
	p, err := sequence.Check(context.Background(), plan, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	return p
}

func stringIn(p *sequence.Programme, step, point int) *sequence.StringAt {
	points := p.Steps[step].Points
	if point < 0 {
		point += len(points)
	}
	return points[point].String
}

// At equal inputs the calculators and the programme answer the same: release, setting,
// movement free and held, seals, hookload, most set down, buckling, longest tool, stress,
// stretch, ratings, pins and the packer's envelope, to 1e-9.
func TestCalculatorsAndProgrammeAgree(t *testing.T) {
	long.Skip(t, "builds seven calculators")
	c := others{t, t.TempDir()}
	same := func(want, got float64, what string) { t.Helper(); require.InEpsilon(t, want, got, 1e-9, what) }

	// movement and seals: the worked example of Lubinski, Althouse & Logan 1962.
	lubinski := map[string]string{
		"DEPTH": "10000 ft", "INSIDE": "7.31 lb/gal", "OUTSIDE": "7.31 lb/gal", "BELOW": "tubing", "BITES": "15000 psi", "BORE": "3.25 in", "HOLE": "6.094 in",
		"PIPE": `{"size": "2.875 in", "bore": "2.441 in", "weight": "6.5 lb/ft", "yield": "110000 psi"}`,
	}
	p := strung(t, lubinski, `{"name": "landed"}, {"name": "cold", "temperature": "cold",
		"swap": [{"compartment": "tubing", "fluid": "heavy", "from": "0 ft", "to": "10000 ft"}], "ramps": [{"tubing": "5000 psi", "annulus": "1000 psi"}]}`)
	at := stringIn(p, 1, -1)
	landed := []string{"-od", "2.875 in", "-id", "2.441 in", "-weight", "6.5 lb/ft", "-casing-id", "6.094 in", "-depth", "10000 ft", "-bore", "3.25 in"}
	movement := c.answer("movement", append(landed, "-triaxial-factor", "1.25", "-yield", "110000 psi", "-tubing-fluid-before", "7.31 lb/gal", "-annulus-fluid-before", "7.31 lb/gal",
		"-tubing-fluid", "15 lb/gal", "-annulus-fluid", "7.31 lb/gal", "-tubing-pressure", "5000 psi", "-annulus-pressure", "1000 psi", "-warming", "-20 degF")...)
	same(movement("movement of the seals"), float64(at.Seals[0].Travel), "travel")
	same(movement("true axial force at the hanger"), float64(at.Hanger), "hanger")
	same(movement("length buckled"), float64(at.Buckled), "buckled")
	require.Equal(t, "triaxial", at.Limit)
	same(1.25/movement("factor there is"), at.Usage, "use")
	same(-c.answer("seals", append(landed, "-landed", "7.31 lb/gal", "-cold-tubing-fluid", "15 lb/gal", "-cold-tubing-pressure", "5000 psi", "-cold-annulus-pressure", "1000 psi",
		"-cold", "-20 degF", "-shoulder", "10000 ft", "-bore-top", "10001 ft", "-bore-bottom", "10031 ft", "-tagged", "10003.4 ft")...)("travel up"), float64(at.Seals[0].Travel), "travel")

	// release
	p = strung(t, map[string]string{"PINS": "60000 lbf", "MORE": `, "drag": "5000 lbf"`, "BITES": "1000 psi"},
		`{"name": "set", "ramps": [{"tubing": "1000 psi"}, {"tubing": "0 psi"}], "expect": ["packer: sets"]}, {"name": "pull", "pull": ["200000 lbf"], "expect": ["release: parts"]}`)
	require.NotEmpty(t, p.Steps[1].Partings, "%+v", p.Findings)
	same(c.answer("release", "-parting-load", "60000 lbf")("reading when the pins part"), float64(p.Steps[1].Partings[0].Nominal), "reading at parting")

	// setting: the slips bite at a differential of 4,000 psi, however much is pumped.
	p = strung(t, map[string]string{"OUTSIDE": "8.8 lb/gal"}, `{"name": "before"}, {"name": "set", "ramps": [{"tubing": "4200 psi"}, {"tubing": "0 psi"}], "expect": ["packer: sets"]}`)
	setting := c.answer("setting", "-complete", "4000 psi")
	same(setting("tension locked in when bled off, hanger landed"), float64(stringIn(p, 1, -1).Wall-stringIn(p, 0, -1).Wall), "locked in")
	require.Equal(t, "tubing", p.Steps[1].Events[0].Surface[0].Compartment)
	same(setting("surface pressure at which the slips bite"), float64(p.Steps[1].Events[0].Surface[0].Pressure), "where the slips bite")

	// hookload: a straight incline of 40 degrees, in which any spacing of nodes is right.
	file := filepath.Join(c.dir, "survey.csv")
	require.NoError(t, os.WriteFile(file, []byte("MD,inclination,azimuth\n0 ft,40 deg,0 deg\n9000 ft,40 deg,0 deg\n"), 0o600))
	slant := map[string]string{"PATH": `"path": [{"inclination": "40 deg"}, {"md": "9000 ft", "inclination": "40 deg"}],`}
	rubbing := map[string]string{"PATH": slant["PATH"], "MORE": `, "friction": [{"to": "9000 ft", "factor": "0.2"}]`, "HOLE": "8.5 in"}
	p = strung(t, rubbing, `{"name": "lift and lower", "pull": ["150000 lbf", "0 lbf"]}`)
	hookload := c.answer("hookload", "-survey", file, "-measured-depth", "9000 ft", "-friction-cased", "0.2", "-friction-open", "0.2", "-casing-id", "8.5 in", "-hole", "8.5 in")
	same(hookload("pulling"), float64(stringIn(p, 0, 1).Reading), "pulling")
	same(hookload("running in"), float64(stringIn(p, 0, 2).Reading), "running in")

	// buckling: where a string that stands in that incline begins to snake. Its effective
	// force falls by w·cosθ a length, so that the length that snakes tells the load.
	standing := map[string]string{"PATH": `"path": [{"inclination": "60 deg"}, {"md": "9000 ft", "inclination": "60 deg"}],`, "HOLE": "6.094 in", "BITES": "1000 psi",
		"INSIDE": "8.34 lb/gal", "OUTSIDE": "8.34 lb/gal", "PIPE": `{"size": "2.875 in", "bore": "2.441 in", "weight": "6.5 lb/ft", "yield": "110000 psi"}`}
	p = strung(t, standing, `{"name": "set", "ramps": [{"tubing": "1100 psi"}, {"tubing": "0 psi"}], "expect": ["packer: sets"]}, {"name": "set down", "pull": ["16000 lbf"]}`)
	at = stringIn(p, 1, -1)
	buckling := c.answer("buckling", "-inclination", "60 deg", "-od", "2.875 in", "-id", "2.441 in", "-weight", "6.5 lb/ft", "-casing-id", "6.094 in", "-tubing-fluid", "8.34 lb/gal", "-annulus-fluid", "8.34 lb/gal")
	const cos60 = 0.5
	w := (float64(at.Hanger) - float64(at.Effective)) / (float64(9000*unit.Foot) * cos60) // with no pressure at the top
	same(buckling("snakes from (sinusoidal)"), -float64(at.Effective)-float64(at.Buckled)*w*cos60, "where it snakes")

	// stress: at the top of a string under pressure.
	p = strung(t, map[string]string{"BITES": "9000 psi"}, `{"name": "pressure", "ramps": [{"tubing": "7000 psi", "annulus": "1000 psi"}]}`)
	at = stringIn(p, 0, -1)
	require.Equal(t, []any{"triaxial", unit.Length(0)}, []any{at.Limit, at.LimitMD})
	stress := c.answer("stress", "-axial", at.Hanger.String(), "-inside-pressure", "7000 psi", "-outside-pressure", "1000 psi")
	same(1.25*stress("von Mises stress")/float64(80000*unit.PSI), at.Usage, "use")

	// movement, with the seals held as they landed: what the packer bears.
	anchored := map[string]string{"BITES": "0 psi"}
	for k, v := range lubinski {
		if anchored[k] == "" {
			anchored[k] = v
		}
	}
	p = strung(t, anchored, `{"name": "landed", "expect": ["packer: sets"]}, {"name": "cold", "temperature": "cold",
		"swap": [{"compartment": "tubing", "fluid": "heavy", "from": "0 ft", "to": "10000 ft"}], "ramps": [{"tubing": "5000 psi", "annulus": "1000 psi"}]}`)
	at = stringIn(p, 1, -1)
	held := c.answer("movement", append(landed, "-seals", "anchored", "-yield", "110000 psi", "-tubing-fluid-before", "7.31 lb/gal", "-annulus-fluid-before", "7.31 lb/gal",
		"-tubing-fluid", "15 lb/gal", "-annulus-fluid", "7.31 lb/gal", "-tubing-pressure", "5000 psi", "-annulus-pressure", "1000 psi", "-warming", "-20 degF")...)
	same(held("true axial force above the packer"), float64(at.Wall), "above the packer")
	same(held("effective axial force above the packer"), float64(at.Effective), "effective")
	same(held("true axial force at the hanger"), float64(at.Hanger), "hanger")
	same(held("force on the packer, tension pulls it up"), float64(at.Packer), "packer")

	// stretch: a string that hangs free cools.
	p = strung(t, nil, `{"name": "landed"}, {"name": "cold", "temperature": "cold"}`)
	same(c.answer("stretch", "-string", "3.5 in, 9.3 lb/ft, 9000 ft", "-warming", "-20 degF")("by temperature"), float64(stringIn(p, 1, -1).Seals[0].Travel), "stretch")

	// ratings: the non-upset joint of a string that hangs, and the body of one whose joints hold.
	p = strung(t, map[string]string{"PIPE": `{"size": "4-1/2 in", "weight": "12.6 lb/ft", "grade": "L80"}`, "BORE": "4.5 in"}, `{"name": "hangs"}`)
	at = stringIn(p, 0, -1)
	require.Equal(t, "connection", at.Limit)
	ratings := c.answer("ratings")
	same(float64(at.Hanger)/ratings("joint, non-upset"), at.Usage, "joint")
	p = strung(t, map[string]string{"PIPE": `{"size": "4-1/2 in", "weight": "12.6 lb/ft", "grade": "L80"}, "joint": "400000 lbf"`, "BORE": "4.5 in"}, `{"name": "hangs"}`)
	at = stringIn(p, 0, -1)
	require.Equal(t, "triaxial", at.Limit)
	same(1.25*float64(at.Hanger)/ratings("body yield"), at.Usage, "body")

	// pins: six of 4,500 lbf on 8 in².
	p = strung(t, map[string]string{"{\"threshold\": \"BITES\"}": `{"pins": {"count": 6, "strength": "4500 lbf", "tolerance": 0.05, "area": "8 in2"}}`},
		`{"name": "set", "ramps": [{"tubing": "4200 psi"}], "expect": ["packer: sets"]}`)
	parts, _ := p.Steps[0].Triggers[0].Threshold.Nominal.Pressure()
	same(c.answer("pins")("pins part at"), float64(parts), "pins")

	// envelope: the packer's load in the corners of its envelope.
	corners := `[{"differential": "-4000 psi", "axial": "-90000 lbf"}, {"differential": "7500 psi", "axial": "-90000 lbf"}, {"differential": "7500 psi", "axial": "60000 lbf"}, {"differential": "-6000 psi", "axial": "110000 lbf"}]`
	polygon, loads := filepath.Join(c.dir, "corners.json"), filepath.Join(c.dir, "loads.json")
	p = strung(t, map[string]string{"BITES": "1000 psi", `"rules"`: `"holding": {"below": "tubing", "above": "annulus", "depth": "9000 ft", "envelope": {"vertices": ` + corners + `}}, "rules"`},
		`{"name": "set", "ramps": [{"tubing": "1100 psi"}, {"tubing": "0 psi"}], "expect": ["packer: sets"]}, {"name": "test", "ramps": [{"tubing": "3000 psi"}]}, {"name": "cold", "temperature": "cold", "ramps": [{"tubing": "500 psi"}]}`)
	require.NoError(t, os.WriteFile(polygon, []byte(`{"vertices": `+corners+`}`), 0o600))
	for step := range p.Steps {
		h := p.Steps[step].Holding[len(p.Steps[step].Holding)-1]
		text, err := json.Marshal([]map[string]any{{"name": "load", "differential": h.Differential, "axial": h.Axial}})
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(loads, text, 0o600))
		same(c.table("envelope", "Loads", "share used", "-polygon", polygon, "-loads", loads), h.Used, "envelope")
		same(float64(stringIn(p, step, -1).Packer), float64(h.Axial), "the load that is held against it")
	}

	// buckling: the longest stiff tool that passes the helix, and what friction locks up.
	p = strung(t, map[string]string{"HOLE": "6.094 in", "BITES": "1000 psi", "INSIDE": "8.34 lb/gal", "OUTSIDE": "8.34 lb/gal", "MORE": `, "tools": [{"name": "gauge", "diameter": "2.125 in"}]`,
		"PIPE": `{"size": "2.875 in", "bore": "2.441 in", "weight": "6.5 lb/ft", "yield": "110000 psi"}`},
		`{"name": "set", "ramps": [{"tubing": "1100 psi"}, {"tubing": "0 psi"}], "expect": ["packer: sets"]}, {"name": "set down", "pull": ["16000 lbf"]}`)
	at = stringIn(p, 1, -1)
	require.True(t, p.Steps[1].Passage[0].Limited)
	require.Equal(t, 9000*unit.Foot, p.Steps[1].Passage[0].At, "where it is pressed hardest")
	same(c.answer("buckling", "-inclination", "0 deg", "-od", "2.875 in", "-id", "2.441 in", "-weight", "6.5 lb/ft", "-casing-id", "6.094 in", "-tubing-fluid", "8.34 lb/gal", "-annulus-fluid", "8.34 lb/gal",
		"-compression", (-at.Effective).String())("as a helix: longest stiff tool of 2.125 in to pass"), float64(p.Steps[1].Passage[0].Longest), "longest tool")

	// hookload: the most that can be set down in the incline, with all slacked off.
	p = strung(t, rubbing, `{"name": "lands"}`)
	same(hookload("most that can be set down, with all slacked off"), float64(p.Steps[0].SetDown.Arrives), "most set down")
}
