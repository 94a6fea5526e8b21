package sequence_test

import (
	"context"
	"math"
	"os"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/controlline"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

const shipped = "../../examples/installation/plans/"

func readPlan(t *testing.T, file string) *sequence.Plan {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err)
	return p
}

// sameWindows wants two programmes with the same windows to 1e-6 psi; but is told of
// edges that are left out.
func sameWindows(t *testing.T, a, b *sequence.Programme, but func(edge string) bool) {
	t.Helper()
	require.Equal(t, a.Verdict, b.Verdict)
	require.Equal(t, len(a.Steps), len(b.Steps))
	edges := 0
	same := func(step string, x, y sequence.Level, over, under string) {
		if but(over) && but(under) {
			return
		}
		edges++
		p, isP := x.Pressure()
		q, _ := y.Pressure()
		if !isP {
			f, _ := x.Force()
			g, _ := y.Force()
			require.InDelta(t, f.In(unit.PoundForce), g.In(unit.PoundForce), 1e-3, step)
			return
		}
		require.InDelta(t, p.In(unit.PSI), q.In(unit.PSI), 1e-6, "%s: %s, %s", step, over, under)
	}
	for i, s := range a.Steps {
		x := b.Steps[i]
		require.Equal(t, s.Name, x.Name)
		require.Equal(t, s.OK, x.OK, s.Name)
		require.Equal(t, len(s.Events), len(x.Events), s.Name)
		require.Equal(t, len(s.Windows), len(x.Windows), s.Name)
		for n, w := range s.Windows {
			v := x.Windows[n]
			require.Equal(t, len(w.Intervals), len(v.Intervals), s.Name)
			for k, in := range w.Intervals {
				same(s.Name, in.Least, v.Intervals[k].Least, in.Below, v.Intervals[k].Below)
				same(s.Name, in.Greatest, v.Intervals[k].Greatest, in.Above, v.Intervals[k].Above)
			}
		}
	}
	require.Greater(t, edges, 40)
}

// line tells whether an edge is the rating of a control line.
func line(edge string) bool {
	return strings.Contains(edge, "the rating") && strings.Contains(edge, " line")
}

// The demo as a tally is the demo written by hand: verdict, events, windows. Only
// the ratings of the control lines differ: by hand they are held against the tubing,
// the tally holds them against the annulus that they run in.
func TestTheDemoAsATallyIsTheDemo(t *testing.T) {
	t.Parallel()
	hand := checked(t, readPlan(t, shipped+"demo.json"))
	sameWindows(t, hand, checked(t, readPlan(t, shipped+"demo-as-tally.json")), line)

	// With these ratings written by hand beside the tally nothing differs.
	mixed := readPlan(t, shipped+"demo-as-tally.json")
	for _, r := range readPlan(t, shipped+"demo.json").Ratings {
		if strings.HasSuffix(r.Inside, "line") || strings.HasPrefix(r.Inside, "open line") {
			mixed.Ratings = append(mixed.Ratings, r)
		}
	}
	for _, x := range []string{"close line, annulus A", "close line, annulus B", "close line, annulus C", "open line A, annulus A",
		"open line B, annulus A", "open line B, annulus B", "open line C, annulus A", "open line C, annulus B", "open line C, annulus C"} {
		mixed.Assembly.Without = append(mixed.Assembly.Without, "ratings."+x)
	}
	sameWindows(t, hand, checked(t, mixed), func(string) bool { return false })
}

// What the tally of the demo makes, held against what was written by hand.
func TestWhatFollowsFromTheDemosTally(t *testing.T) {
	hand := readPlan(t, shipped+"demo.json")
	made, err := readPlan(t, shipped+"demo-as-tally.json").Derive()
	require.NoError(t, err)
	require.Nil(t, made.Assembly)
	by := map[string]sequence.Compartment{}
	for _, c := range made.Compartments {
		require.NotEmpty(t, c.Note, c.Name)
		by[c.Name] = c
	}
	for _, c := range hand.Compartments {
		x := by[c.Name]
		require.Equal(t, c.Surface, x.Surface, c.Name)
		require.Equal(t, c.Formation, x.Formation, c.Name)
		if !strings.HasPrefix(c.Name, "sand face") { // by hand only the perforated part
			require.Equal(t, c.TopMD, x.TopMD, c.Name)
			require.Equal(t, c.BottomMD, x.BottomMD, c.Name)
		}
		if c.Capacity != 0 && !strings.HasPrefix(c.Name, "annulus ") { // by hand less, by what hangs in them
			require.InEpsilon(t, float64(c.Capacity), float64(x.Capacity), 0.003, c.Name)
		}
	}
	require.Equal(t, hand.String.Sections, made.String.Sections)
	require.Equal(t, hand.String.Around, made.String.Around)
	require.Equal(t, hand.String.Below, made.String.Below)
	require.Equal(t, hand.String.HeldMD, made.String.HeldMD)
	require.Equal(t, hand.String.Seals, made.String.Seals)
	require.Equal(t, hand.Holding.Envelope, made.Holding.Envelope)
	for _, d := range hand.Devices {
		for _, x := range made.Devices {
			if x.Name == d.Name && d.Name != "release" { // whose port has another name
				require.Equal(t, d.MD, x.MD, d.Name)
				require.Equal(t, d.Actions, x.Actions, d.Name)
			}
		}
	}
	require.Len(t, made.Devices, len(hand.Devices))

	// Several packers may hold: the string is held down to the deepest.
	two := readPlan(t, shipped+"demo-as-tally.json")
	for i := range two.Assembly.Strings[1].Pieces {
		if x := &two.Assembly.Strings[1].Pieces[i]; x.Name == "B-C seals" {
			*x = sequence.Piece{Kind: sequence.PackerPiece, Name: "packer B-C", Below: x.Below, Sets: []sequence.Trigger{{Threshold: unit.Within(3000*unit.PSI, 0.05)}}}
		}
	}
	made, err = two.Derive()
	require.NoError(t, err)
	require.NoError(t, made.Validate())
	require.Equal(t, 9350*unit.Foot, made.String.HeldMD)

	// Left to itself the tally closes annulus B in with the brine's own pressure: by
	// hand it was rounded to a psi.
	free := readPlan(t, shipped+"demo-as-tally.json")
	free.Compartments = nil
	made, err = free.Derive()
	require.NoError(t, err)
	for _, c := range made.Compartments {
		if c.Name == "annulus B" {
			require.InDelta(t, 3723.5, c.Trapped.Nominal.In(unit.PSI), 0.5)
		} else {
			require.Zero(t, c.Trapped.Nominal, c.Name)
		}
	}
}

// A volume by hand: of 4-1/2 in 12.6 lb/ft in 9-5/8 in 47 lb/ft, with bores of 3.958
// and 8.681 in (API 5CT), in barrels of 9702 in³.
func TestCapacitiesByHand(t *testing.T) {
	made, err := readPlan(t, shipped+"demo-as-tally.json").Derive()
	require.NoError(t, err)
	area := func(out, in float64) float64 { return math.Pi / 4 * (out*out - in*in) * 12 / 9702 }
	want := map[string]float64{"tubing": area(3.958, 0), "annulus": area(8.681, 4.5), "annulus A": area(6.184, 4.5), "sand face B": area(8.681, 7), "close line": area(0.152, 0)}
	for _, c := range made.Compartments {
		if w, ok := want[c.Name]; ok {
			require.InEpsilon(t, w, c.Capacity.In(unit.BarrelPerFoot), 1e-9, c.Name)
		}
	}
}

// A tally that can't be is told with the lines that clash; by hand and tally, both.
func TestWhatATallyCantBe(t *testing.T) {
	data, err := os.ReadFile(shipped + "demo-as-tally.json")
	require.NoError(t, err)
	for _, c := range []struct{ old, new, want string }{
		{`{"kind": "pipe", "length": "250 ft"},
          {
            "kind": "sleeve",
            "name": "sleeve A",`, `{"kind": "pipe", "length": "250 ft"},
          {
            "kind": "sleeve", "top": "8840 ft",
            "name": "sleeve A",`, "assembly.strings[1].tally[5]: sleeve A begins at 8840 ft, but assembly.strings[1].tally[4] (pipe) ends at 8850 ft: they overlap by 10 ft"},
		{`"name": "sleeve C",`, `"name": "sleeve C", "top": "9460 ft",`, "assembly.strings[1].tally[13]: sleeve C begins at 9460 ft, but assembly.strings[1].tally[12] (pipe) ends at 9450 ft: a gap of 10 ft"},
		{`"bottom": "8590 ft"`, `"bottom": "8590 ft", "length": "8580 ft", "top": "20 ft"`, "assembly.strings[1].tally[0].length: is 8580 ft"},
		{`{"kind": "seals", "bore": "4.75 in"`, `{"kind": "seals", "bore": "5 in"`, "assembly.strings[1].tally[15]: seals of 5.000 in (127.0 mm) outside doesn't go through assembly.strings[0].tally[5] (seal bore) of 4.750 in"},
		{`{"kind": "seals", "bore": "4.75 in"`, `{"kind": "seals", "bore": "4.6 in"`, "assembly.strings[1].tally[15].bore: is 4.600 in (116.8 mm), but the bore of assembly.strings[0].tally[14] (seal bore), in which it stands at 9700 ft, is 4.750 in"},
		{`{"kind": "seal bore", "bore": "4.75 in", "length": "5 ft"}`, `{"kind": "pipe", "length": "5 ft"}`, "but assembly.strings[0].tally[3] (pipe) has no polished bore there"},
		{`"name": "isolation valve B",
            "in": "wall",`, `"name": "isolation valve B",`, "assembly.strings[0].tally[7]: isolation valve B closes the bore at 9200 ft, but tubing runs through it down to 9700 ft (assembly.strings[1].tally[10])"},
		{`{"kind": "pipe", "length": "195 ft"}`, `{"kind": "pipe", "length": "150 ft"}`, "seals ends at 9700 ft, but lower completion, in which it stands, ends at 9655 ft (assembly.strings[0].tally[14])"},
		{`"name": "casing 9-5/8 in", "pipe"`, `"top": "8610 ft", "name": "casing 9-5/8 in", "pipe"`, `stands twice`},
		{`"pipe": {"size": "4-1/2 in", "weight": "12.6 lb/ft", "grade": "L80"}, "bottom": "8590 ft"`, `"pipe": {"size": "7 in", "weight": "29 lb/ft", "grade": "L80"}, "bottom": "8590 ft"`, "of 7.000 in (177.8 mm) outside doesn't go through assembly.strings[0].tally[0] (top packer) of 6.184 in"},
		{`"kind": "release", "seal"`, `"kind": "release", "bore": "4 in", "seal"`, `assembly.strings[1].tally[1].bore: doesn't belong to "release"`},
		{`"kind": "release", "seal": "4.5 in"`, `"kind": "release"`, `assembly.strings[1].tally[1].seal: is missing`},
		{`"kind": "release", "seal"`, `"kind": "relese", "seal"`, `there are ["pipe" "packer"`},
		{`"open_line": "open line B"`, `"open_line": "open line D"`, `no line "open line D" in assembly.lines`},
		{`{"formation": "zone B", "top": "9180 ft"`, `{"formation": "zone B", "top": "9210 ft"`, "formations[1] (zone B) has its pressure at 9200 ft"},
		{`"name": "sleeve B"`, `"name": "sleeve A"`, `"sleeve A" is that of assembly.strings[1].tally[5] already`},
		{`"below": "annulus B"`, `"below": "annulus A"`, `would be called "annulus A"`},
		{`"columns": true,`, `"columns": true, "without": ["barriers.packr"],`, `nothing that follows from the tally is called "barriers.packr"`},
		{`{"name": "annulus B", "trapped": "3723 psi"}`, `{"name": "annulus B", "bottom": "9340 ft"}`, "compartments[0].bottom: is 9340 ft by hand, but the tally makes 9350 ft of it (around tubing, from A-B seals to B-C seals"},
		{`"fluid": "packer brine",
    "factor"`, `"factor"`, `assembly.fluid: is missing: nothing says what "tubing" is filled with`},
		{`"name": "isolation valve A",
            "in": "wall",`, `"name": "isolation valve A", "at": "8900 ft", "in": "side",`, `there are "bore" and "wall"`},
		{`{"kind": "pipe", "length": "200 ft"},
          {"kind": "seals", "name": "A-B seals"`, `{"kind": "plug"}, {"kind": "pipe", "length": "200 ft"},
          {"kind": "seals", "name": "A-B seals"`, "assembly.strings[1].tally[10]: sleeve B stands below assembly.strings[1].tally[6] (plug), which closes the bore"},
		{`{"kind": "seals", "bore": "4.75 in"`, `{"kind": "plug"}, {"kind": "seals", "bore": "4.75 in"`, "it would open to nothing"},
		{`"size": "1/4 in",`, `"size": "1/12 in",`, "two walls must be less than the size"},
	} {
		require.Contains(t, string(data), c.old)
		_, err := sequence.Read([]byte(strings.Replace(string(data), c.old, c.new, 1)))
		require.ErrorContains(t, err, c.want, c.new)
	}
}

// Names that follow from the tally have no units, as an output may be in others; a rating
// by hand of the name that such a thing had before goes on rating it.
func TestNamesOfATallyHaveNoUnits(t *testing.T) {
	data, err := os.ReadFile("../../examples/installation/begin/si.json")
	require.NoError(t, err)
	names := func(text string) (all []string) {
		p, err := sequence.Read([]byte(text))
		require.NoError(t, err)
		p, err = p.Derive()
		require.NoError(t, err)
		for _, r := range p.Ratings {
			all = append(all, r.Name)
		}
		return all
	}
	plain := names(string(data))
	require.Contains(t, plain, "casing 9-5/8")
	require.Contains(t, plain, "casing 9-5/8, below packer")
	require.NotRegexp(t, `[0-9] (in|m|ft|mm)\b`, strings.Join(plain, "\n"))
	metric := names(strings.Replace(string(data), `"size": "9-5/8 in"`, `"size": "244.5 mm"`, 1))
	require.Contains(t, metric, "casing 244.5")
	before := names(strings.Replace(string(data), `"steps":`, `"ratings": [{"name": "casing 9.625 in", "inside": "annulus", "burst": "300 bar", "background": "pore water"}], "steps":`, 1))
	require.Contains(t, before, "casing 9.625 in")
	require.Contains(t, before, "casing 9.625 in, below packer")
	require.Len(t, before, len(plain), "in place of the derived one, not beside it")
}

func BenchmarkDerive(b *testing.B) {
	data, err := os.ReadFile(shipped + "demo-as-tally.json")
	require.NoError(b, err)
	p, err := sequence.Read(data)
	require.NoError(b, err)
	for b.Loop() {
		_, _ = p.Derive()
	}
}

// 2410 m of 3.958 in bore hold 19.13 m3; at 3.6e-5 per bar and 20 bar in a minute they
// take 13.8 L/min, and 160 bar take 8 minutes: by hand.
func TestRateOfRise(t *testing.T) {
	p := readPlan(t, shipped+"../begin/si.json")
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	rises := r.Steps[2].Rises
	require.Len(t, rises, 2)
	x := rises[0]
	require.Equal(t, "tubing", x.Compartment)
	require.Equal(t, 1, x.Ramp)
	require.InDelta(t, 8, x.Minutes, 1e-9)
	require.InEpsilon(t, math.Pi/4*math.Pow(3.958*0.0254, 2)*2410*3.6e-5*20*1000, x.Pump.In(unit.LitrePerMinute), 1e-6)
	require.InDelta(t, -x.Pump.In(unit.LitrePerMinute), rises[1].Pump.In(unit.LitrePerMinute), 1e-9)
	require.Equal(t, 160*unit.Bar, rises[1].From)
	// What moves with it moves in the same time, and a step's own rate prevails.
	p.Steps[2].Ramps[0]["annulus"] = 40 * unit.Bar
	p.Steps[2].Rise = 16 * unit.Bar
	r, err = sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	for _, x := range r.Steps[2].Rises[:2] {
		require.InDelta(t, 10, x.Minutes, 1e-9)
		require.InEpsilon(t, float64(x.To-x.From)/10, float64(x.PerMinute), 1e-9)
	}
	p.Rules.Rise, p.Steps[2].Rise = 0, 0
	r, err = sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	require.Empty(t, r.Steps[2].Rises)
	p.Rules.Rise = -unit.Bar
	require.ErrorContains(t, p.Validate(), "rules.rise: is -1 bar in a minute")
}

// A line whose yield strength is given is rated as package controlline rates it, and as
// one would by hand: 0.875·2·Y·t/D and 2·Y·(D/t − 1)/(D/t)² of 1/4 in with 0.049 in of
// 30,000 psi are 10,290 psi and 9,455.0 psi. What controlline refuses, the tally does.
func TestALineIsRatedAsControllineRatesIt(t *testing.T) {
	p := readPlan(t, shipped+"demo-as-tally.json")
	l := &p.Assembly.Lines[0]
	l.Burst, l.Collapse, l.Yield = unit.Band[unit.Pressure]{}, unit.Band[unit.Pressure]{}, 30000*unit.PSI
	made, err := p.Derive()
	require.NoError(t, err)
	want, err := controlline.Line{OD: l.Size, Wall: l.Wall, Yield: l.Yield}.Ratings()
	require.NoError(t, err)
	found := 0
	for _, r := range made.Ratings {
		if r.Inside == "close line" {
			found++
			require.Equal(t, unit.Exactly(want.Working), r.Burst)
			require.Equal(t, unit.Exactly(want.Collapse), r.Collapse)
			require.InDelta(t, 10290, r.Burst.Nominal.In(unit.PSI), 1e-6)
			require.InDelta(t, 9455.04, r.Collapse.Nominal.In(unit.PSI), 0.01)
		}
	}
	require.Positive(t, found)
	l.Yield = 1e-3
	_, err = p.Derive()
	require.ErrorContains(t, err, "assembly.lines[0].yield: gives no ratings")
}
