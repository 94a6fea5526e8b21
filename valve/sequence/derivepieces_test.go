package sequence_test

import (
	"slices"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// withTally is the tally between packers, read anew.
func withTally(t *testing.T, edit func(p *sequence.Plan)) *sequence.Plan {
	t.Helper()
	p, err := sequence.Read([]byte(tallyBetweenPackers))
	require.NoError(t, err)
	edit(p)
	return p
}

func derived(t *testing.T, p *sequence.Plan) *sequence.Plan {
	t.Helper()
	q, err := p.Derive()
	require.NoError(t, err)
	return q
}

func compartmentOf(t *testing.T, p *sequence.Plan, name string) sequence.Compartment {
	t.Helper()
	i := slices.IndexFunc(p.Compartments, func(c sequence.Compartment) bool { return c.Name == name })
	require.GreaterOrEqual(t, i, 0, name)
	return p.Compartments[i]
}

// sandBelow has a formation open to the rat hole under the lower packer, a safety valve at 300 ft on a line of its own, and a
// sleeve between the packers, which both count as barriers by themselves.
func sandBelow(p *sequence.Plan) {
	a := p.Assembly
	p.Formations = []sequence.Formation{{Name: "sand", MD: 8980 * foot, Pressure: exactly(4000)}}
	a.Perforations = []sequence.Perforation{{Formation: "sand", Top: 8970 * foot, Bottom: 8990 * foot}}
	a.Lines = []sequence.ControlLine{{Names: []string{"valve line"}, Size: unit.Inch / 4, Wall: 0.049 * unit.Inch, Fluid: "brine"}}
	string := &a.Strings[0]
	valve := sequence.Piece{Kind: sequence.SafetyValve, Name: "safety valve", Length: 5 * foot, Line: "valve line", Barrier: true,
		Opens: []sequence.Trigger{rising(1500*psi, 1600*psi)}, Closes: []sequence.Trigger{falling(300*psi, 400*psi)}}
	sleeve := sequence.Piece{Kind: sequence.SleevePiece, Name: "sleeve", Length: 5 * foot, Barrier: true}
	first := string.Pieces[0]
	first.Bottom = 300 * foot
	rest := sequence.Piece{Kind: sequence.PipeLength, Bottom: 5000 * foot}
	between := sequence.Piece{Kind: sequence.PipeLength, Bottom: 7000 * foot}
	string.Pieces = append([]sequence.Piece{first, valve, rest, string.Pieces[1], between, sleeve}, string.Pieces[2:]...)
}

// A safety valve that counts stands from when it closes until it opens; another piece by its port; and a line with walls has the bore and
// wall that it is made with: 0.25 in less twice 0.049.
func TestPiecesThatCountAsBarriers(t *testing.T) {
	q := derived(t, withTally(t, sandBelow))
	by := map[string]sequence.Barrier{}
	for _, b := range q.Barriers {
		by[b.Name] = b
	}
	require.Equal(t, "safety valve: closes", by["safety valve"].Action)
	require.Equal(t, "safety valve: opens", by["safety valve"].Until)
	require.Equal(t, "sleeve", by["sleeve"].Port)
	require.Equal(t, "sand", by["sleeve"].Formation)
	line := compartmentOf(t, q, "valve line")
	require.Len(t, line.Bores, 1)
	require.InDelta(t, 0.152, line.Bores[0].Outer.In(unit.Inch), 1e-12)
	require.InDelta(t, 0.049, line.Bores[0].OuterWall.In(unit.Inch), 1e-12)
	require.Contains(t, line.Note, "its bore and wall")

	_, err := withTally(t, func(p *sequence.Plan) {
		sandBelow(p)
		p.Assembly.Strings[0].Pieces[1].Opens = nil
	}).Derive()
	require.ErrorContains(t, err, "wants the valve's opens and closes: it stands from when it closes until it opens")

	// What is named is left out.
	q = derived(t, withTally(t, func(p *sequence.Plan) {
		sandBelow(p)
		p.Assembly.Without = []string{"devices.safety valve", "barriers.safety valve", "barriers.sleeve"}
	}))
	require.Empty(t, q.Devices)
	require.False(t, slices.ContainsFunc(q.Barriers, func(b sequence.Barrier) bool { return b.Name == "safety valve" || b.Name == "sleeve" }))
}

// Where perforations and screens are.
func TestWhereFormationsAreOpen(t *testing.T) {
	_, err := withTally(t, func(p *sequence.Plan) {
		sandBelow(p)
		p.Well.MD, p.Formations[0].MD = 10000*foot, 9500*foot // under the casing
		p.Assembly.Perforations[0].Top, p.Assembly.Perforations[0].Bottom = 9400*foot, 9600*foot
	}).Derive()
	require.ErrorContains(t, err, `assembly.perforations: formation "sand" at 9500 ft is open to nothing that the strings stand in`)

	screen := sequence.Piece{Kind: sequence.ScreenPiece, Name: "screen", Bottom: 8950 * foot}
	screened := func(at unit.Length) unit.Length {
		q := derived(t, withTally(t, func(p *sequence.Plan) {
			s := &p.Assembly.Strings[0]
			s.Pieces[len(s.Pieces)-1] = screen
			s.Pieces[len(s.Pieces)-1].At = at
			s.Closed = true
		}))
		i := slices.IndexFunc(q.Ports, func(x sequence.Port) bool { return x.Name == "screen" })
		require.GreaterOrEqual(t, i, 0)
		return q.Ports[i].MD
	}
	require.InDelta(t, 8925, screened(0).In(foot), 1e-9)
	require.InDelta(t, 8940, screened(8940*foot).In(foot), 1e-9)
}

// What is closed in has the column of its own fluid from surface: of a clear brine as hydrostatics has it, with the tolerance of its
// density, and of natural gas nothing, as that depends on how it came there.
func TestWhatIsClosedInByItsFluid(t *testing.T) {
	brine := sequence.Fluid{Name: "clear", Kind: sequence.ClearBrine, Density: unit.Within(10*ppg, 0.01), Expansion: 2.5e-4 * unit.PerFahrenheit, Compression: 3e-6 * unit.PerPSI}
	p := withTally(t, func(p *sequence.Plan) {
		p.Fluids = append(p.Fluids, brine)
		p.Assembly.Fluid = "clear"
	})
	got := compartmentOf(t, derived(t, p), "closed annulus")
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Fahrenheit(60)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(168)}})
	require.NoError(t, err)
	col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.SlightlyCompressible{Reference: 10 * ppg, Temperature: unit.Fahrenheit(70), Compressibility: brine.Compression, Expansivity: brine.Expansion}, BottomTVD: 5000 * foot}}, profile, hydrostatics.Reference{})
	require.NoError(t, err)
	want, err := col.At(5000 * foot)
	require.NoError(t, err)
	require.InEpsilon(t, float64(want), float64(got.Trapped.Nominal), 1e-4, "one is linear, the other exponential")
	require.InEpsilon(t, 1.01, float64(got.Trapped.Greatest/got.Trapped.Nominal), 1e-12)
	require.InEpsilon(t, 0.99, float64(got.Trapped.Least/got.Trapped.Nominal), 1e-12)

	gas := withTally(t, func(p *sequence.Plan) {
		p.Fluids = append(p.Fluids, sequence.Fluid{Name: "gas", Kind: sequence.NaturalGas, Gravity: 0.65})
		p.Compartments = []sequence.Compartment{{Name: "closed annulus", Layers: []sequence.Layer{{Fluid: "gas", ToMD: 6000 * foot}, {Fluid: "brine", ToMD: 8900 * foot}}}}
	})
	require.Zero(t, compartmentOf(t, derived(t, gas), "closed annulus").Trapped)
}

// A string of two weights is rated as two bodies, the second by the depth at which it begins; gravel leaves a space no bores.
func TestStringsOfTwoWeightsAndGravel(t *testing.T) {
	demo := readPlan(t, shipped+"demo-as-tally.json")
	demo.Assembly.Strings[0].Pieces[3].Pipe = &sequence.Pipe{Size: 7 * unit.Inch, Weight: 26 * unit.PoundPerFoot, Grade: "L80"} // 150 ft from 8,900 ft on
	q := derived(t, demo)
	var names []string
	for _, r := range q.Ratings {
		names = append(names, r.Name)
	}
	require.Contains(t, names, "lower completion")
	require.Contains(t, names, "lower completion from 8900")

	q = derived(t, withTally(t, func(p *sequence.Plan) {
		s := &p.Assembly.Strings[0]
		s.Pieces[len(s.Pieces)-1] = sequence.Piece{Kind: sequence.ScreenPiece, Name: "screen", Bottom: 8950 * foot, Porosity: 0.35}
		s.Closed = true
	}))
	rat := compartmentOf(t, q, "rat hole")
	require.Contains(t, rat.Note, "it has no bores: gravel is in it")
	require.Empty(t, rat.Bores)
}

// Pipe of 4-1/2 in doesn't stand in open hole of 4-1/2 in.
func TestPipeAsWideAsItsHole(t *testing.T) {
	_, err := withTally(t, func(p *sequence.Plan) {
		a := p.Assembly
		a.Casing[0].Bottom = 8920 * foot
		a.Casing = append(a.Casing, sequence.Casing{Name: "open hole", Hole: 4.5 * unit.Inch, Top: 8920 * foot, Bottom: 9000 * foot})
		last := a.Strings[0].Pieces[len(a.Strings[0].Pieces)-1]
		last.Bottom = 8930 * foot
		a.Strings[0].Pieces[len(a.Strings[0].Pieces)-1] = last
		a.Strings[0].Pieces = append(a.Strings[0].Pieces, sequence.Piece{Kind: sequence.PipeLength, Name: "tail", Bottom: 8950 * foot})
	}).Derive()
	require.ErrorContains(t, err, "tail of 4.500 in (114.3 mm) outside leaves no room in the 4.500 in (114.3 mm) around it at 8930 ft")
}

// Each space says from where to where it goes.
func TestSpacesSayWhereTheyEnd(t *testing.T) {
	q := derived(t, withTally(t, func(*sequence.Plan) {}))
	for name, says := range map[string]string{"tubing": "inside tubing, from its top to its lower end", "annulus": "around tubing, from its top to upper packer",
		"closed annulus": "around tubing, from upper packer to lower packer", "rat hole": "around tubing and on below its lower end, from lower packer to the end of casing or hole"} {
		require.Contains(t, compartmentOf(t, q, name).Note, says)
	}
}
