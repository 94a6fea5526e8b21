package sequence_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"sync/atomic"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/tubular/catalogue"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// pipes that go into each other, from the outside in.
var nested = []sequence.Pipe{
	{Size: 9.625 * unit.Inch, Weight: 47 * unit.PoundPerFoot, Grade: "L80"},
	{Size: 7 * unit.Inch, Weight: 29 * unit.PoundPerFoot, Grade: "L80"},
	{Size: 4.5 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot, Grade: "L80"},
	{Size: 2.375 * unit.Inch, Weight: 4.7 * unit.PoundPerFoot, Grade: "L80"},
}

// tallied are the pieces of a random string and where it ends.
type tallied struct {
	r      *rand.Rand
	pieces []sequence.Piece
	at     unit.Length
	names  int
}

func (t *tallied) name(kind string) string {
	t.names++
	return fmt.Sprintf("%s %d", kind, t.names)
}

func (t *tallied) pipe(length unit.Length) {
	t.pieces = append(t.pieces, sequence.Piece{Kind: sequence.PipeLength, Length: length})
	t.at += length
}

func (t *tallied) add(p sequence.Piece) {
	if t.r.IntN(3) == 0 { // some have a length, and some say where they are
		p.Length = unit.Length(1+t.r.IntN(4)) * unit.Metre
		if t.r.IntN(2) == 0 {
			p.Top = t.at
		}
	}
	t.pieces = append(t.pieces, p)
	t.at += p.Length
}

// randomAssembly is a sound plan of up to three strings in each other.
func randomAssembly(r *rand.Rand) *sequence.Plan {
	floor := unit.Length(2000+r.IntN(2000)) * unit.Metre
	rise := []sequence.Trigger{{Threshold: unit.Within(150*unit.Bar, 0.05)}}
	p := &sequence.Plan{Name: "random", Well: sequence.Well{MD: floor, Temperatures: map[string][]sequence.MarkedTVD{
		"undisturbed": {{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: floor, Temperature: unit.Celsius(90)}}}},
		Fluids: []sequence.Fluid{{Name: "brine", Density: unit.Exactly(1100 * unit.KilogramPerCubicMetre)}},
		Steps:  []sequence.Step{{Name: "look"}}}
	a := &sequence.Assembly{Fluid: "brine", Factor: 1.1, Columns: r.IntN(2) == 0}
	p.Assembly = a
	a.Casing = []sequence.Casing{{Pipe: &nested[0], Bottom: floor, Behind: "brine"}}
	if r.IntN(3) == 0 {
		a.Casing = append(a.Casing, sequence.Casing{Hole: 8.5 * unit.Inch, Top: floor, Bottom: floor + 50*unit.Metre})
		p.Well.MD += 50 * unit.Metre
		p.Well.Temperatures["undisturbed"][1].TVD += 50 * unit.Metre
		floor += 50 * unit.Metre
	}
	n := 1 + r.IntN(3)
	bottom, top := floor, floor*0.6
	for i := range n {
		t := &tallied{r: r, at: top, names: 100 * i}
		inner := i == n-1
		if inner {
			t.at = 0
			if r.IntN(2) == 0 {
				t.at = 20 * unit.Metre
			}
		}
		s := sequence.Tally{Name: fmt.Sprintf("string %d", i), Top: t.at, Closed: r.IntN(2) == 0}
		end := bottom - unit.Length(r.IntN(3))*20*unit.Metre
		if !inner && r.IntN(2) == 0 {
			t.add(sequence.Piece{Kind: sequence.PackerPiece, Name: t.name("packer")})
		}
		t.pipe(30 * unit.Metre)
		if len(t.pieces) > 0 {
			t.pieces[0].Pipe = &nested[i+1]
		}
		held := false
		if inner { // down to where the others begin
			t.pipe(top + unit.Length(r.IntN(50))*unit.Metre + 10*unit.Metre - t.at)
		}
		for t.at < end-60*unit.Metre && len(t.pieces) < 25 {
			switch r.IntN(7) {
			case 0:
				free := held || !inner || r.IntN(2) == 0
				x := sequence.Piece{Kind: sequence.PackerPiece, Name: t.name("packer"), Free: free && inner, Rated: unit.Exactly(300 * unit.Bar)}
				if !free || r.IntN(2) == 0 {
					x.Sets, held = rise, held || !free
				}
				t.add(x)
			case 1:
				t.add(sequence.Piece{Kind: sequence.SleevePiece, Name: t.name("sleeve"), Shifts: rise, Open: r.IntN(2) == 0})
			case 2:
				t.add(sequence.Piece{Kind: sequence.IsolationValve, Name: t.name("valve"), In: sequence.InWall, Opens: rise, Rated: unit.Exactly(300 * unit.Bar)})
			case 3:
				t.add(sequence.Piece{Kind: sequence.ScreenPiece, Length: 12 * unit.Metre})
			case 4:
				t.add(sequence.Piece{Kind: sequence.OtherPiece, Length: 3 * unit.Metre})
			}
			t.pipe(unit.Length(5+r.IntN(40)) * unit.Metre)
		}
		s.Pieces = t.pieces
		a.Strings = append(a.Strings, s)
		bottom, top = t.at, s.Top+5*unit.Metre
		if inner && !s.Closed && r.IntN(3) == 0 && i > 0 {
			a.Strings[i].Pieces = append(a.Strings[i].Pieces, sequence.Piece{Kind: sequence.PlugPiece, Name: "plug", Shears: rise})
		}
	}
	for i := range r.IntN(3) {
		at := floor*0.7 + unit.Length(i)*floor*0.1
		f := fmt.Sprintf("zone %d", i)
		p.Formations = append(p.Formations, sequence.Formation{Name: f, MD: at, Pressure: unit.Exactly(200 * unit.Bar)})
		a.Perforations = append(a.Perforations, sequence.Perforation{Formation: f, Top: at - 5*unit.Metre, Bottom: at + 5*unit.Metre})
	}
	return p
}

// Random tallies make plans that can be walked, and their compartments tile the hole:
// around every string they follow each other without gap, and fluid and steel together
// fill casing and hole.
func TestRandomTallies(t *testing.T) {
	all, err := catalogue.Standard()
	require.NoError(t, err)
	id := map[string]float64{}
	for _, p := range nested {
		e, err := all.Find(p.Size, p.Weight)
		require.NoError(t, err)
		id[p.Size.String()] = float64(e.ID)
	}
	circle := func(d float64) float64 { return math.Pi / 4 * d * d }
	cuts, clashes := 0, 0
	for seed := range uint64(long.Size(50, 200)) {
		p := randomAssembly(rand.New(rand.NewPCG(seed, 1)))
		made, err := p.Derive()
		if err != nil && strings.Contains(err.Error(), "on which side of it?") {
			clashes++ // one string's valve just where another's packer stands
			continue
		}
		require.NoError(t, err, "seed %d", seed)
		if err := made.Validate(); err != nil && strings.Contains(err.Error(), "joined in a ring by open ports") {
			clashes++ // sleeves that are open at the start
			continue
		}
		require.NoError(t, made.Validate(), "seed %d", seed)

		// Without gap: the same ring's compartments meet.
		a, fluid := p.Assembly, 0.0
		around := map[string][2]unit.Length{}
		for _, c := range made.Compartments {
			if strings.HasPrefix(c.Name, "behind ") {
				continue
			}
			top := c.TopMD
			if hanger := a.Strings[len(a.Strings)-1].Top; c.Surface && top == 0 {
				top = hanger // the tally begins there
			}
			fluid += float64(c.Capacity) * float64(c.BottomMD-top)
			ring := strings.SplitN(c.Note, ", ", 2)[0]
			ring = strings.TrimSuffix(ring, " and on below its lower end")
			reach, there := around[ring]
			if there {
				cuts++
				require.Equal(t, reach[1], c.TopMD, "seed %d: %s", seed, c.Name)
				reach[1] = c.BottomMD
			} else {
				reach = [2]unit.Length{top, c.BottomMD}
			}
			around[ring] = reach
		}
		require.Len(t, around, len(a.Strings)+1, "seed %d", seed)

		// Fluid and steel fill the hole below the hanger, or below the highest string.
		steel, first := 0.0, math.Inf(1)
		for _, s := range a.Strings {
			first = min(first, float64(s.Top))
			var od, bore, length float64
			for _, x := range s.Pieces {
				if x.Pipe != nil {
					od, bore = float64(x.Pipe.Size), id[x.Pipe.Size.String()]
				}
				length += float64(x.Length)
			}
			steel += (circle(od) - circle(bore)) * length
		}
		hole := -circle(id[nested[0].Size.String()]) * first
		for _, c := range a.Casing {
			d := float64(c.Hole)
			if c.Pipe != nil {
				d = id[c.Pipe.Size.String()]
			}
			hole += circle(d) * float64(c.Bottom-c.Top)
		}
		require.InEpsilon(t, hole, fluid+steel, 1e-9, "seed %d", seed)
	}
	require.Greater(t, cuts, long.Size(50, 200))
	require.Less(t, clashes, 60)
}

// What random tallies make is walked by the engine as by the plain walker, which knows
// nothing of tallies: no plan called proved fails in a draw, and witnesses fail.
func TestRandomTalliesAgainstThePlainWalker(t *testing.T) { randomTallies(t, false) }

// With the walls of their pipes, from the tally, heat moves what they have trapped.
func TestRandomTalliesWithWallsAgainstThePlainWalker(t *testing.T) { randomTallies(t, true) }

func randomTallies(t *testing.T, walls bool) {
	var c tally
	from, to := plansWanted(t, long.Size(30, 200))
	var walked atomic.Int64
	eachPlan(from, to, func(n uint64) {
		r := rand.New(rand.NewPCG(n, 7))
		p := randomAssembly(r)
		p.Assembly.Without = []string{"string"}
		sparse(r, p.Assembly)
		p.Fluids[0].Density = unit.Within(p.Fluids[0].Density.Nominal, 0.002)
		inside := p.Assembly.Strings[len(p.Assembly.Strings)-1].Name
		p.Steps = nil
		for k := range 1 + r.IntN(4) {
			name, most := inside, 200
			if r.IntN(3) == 0 {
				name = "annulus"
			}
			if r.IntN(2) == 0 {
				most = 130 // below what moves anything
			}
			up := unit.Pressure(20+r.IntN(most)) * unit.Bar
			p.Steps = append(p.Steps, sequence.Step{Name: fmt.Sprintf("step %d", k), Ramps: []map[string]unit.Pressure{{name: up}, {name: 0}},
				Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}})
		}
		if walls {
			p.Assembly.Walls = true
			p.Fluids[0].Compression, p.Fluids[0].Expansion = 4.4e-10*unit.PerPascal, 4.5e-4*unit.PerKelvin
			p.Well.Temperatures["hot"] = []sequence.MarkedTVD{{Temperature: unit.Celsius(60)}, {TVD: p.Well.MD, Temperature: unit.Celsius(95)}}
			for k := range p.Steps {
				p.Steps[k].Temperature = []string{"", "hot", sequence.Undisturbed}[r.IntN(3)]
			}
		}
		made, err := p.Derive()
		if err != nil && strings.Contains(err.Error(), "on which side of it?") {
			return
		}
		if err != nil {
			t.Errorf("tally %d: %v", n, err)
			return
		}
		if !treelike(made) {
			return
		}
		walked.Add(1)
		v, err := verdictOf(made)
		if err != nil {
			c.unwalked(t, made, n, err)
			return
		}
		c.holdAgainst(t, made, n, v)
	})
	t.Logf("%d walked: %v", walked.Load(), &c)
	require.Zero(t, c.wrong.Load())
	require.Greater(t, walked.Load(), int64(to-from)/20)
}

// sparse thins an assembly out: of what opens a wall most is gone, most packers are set
// already and close the upper ends of outer strings.
func sparse(r *rand.Rand, a *sequence.Assembly) {
	for i := range a.Strings {
		s := &a.Strings[i]
		for k := range s.Pieces {
			x := &s.Pieces[k]
			switch x.Kind {
			case sequence.PackerPiece:
				if r.IntN(4) > 0 {
					x.Sets = nil
				}
			case sequence.SleevePiece, sequence.IsolationValve, sequence.ScreenPiece:
				if r.IntN(4) > 0 {
					*x = sequence.Piece{Kind: sequence.OtherPiece, Pipe: x.Pipe, Length: x.Length, Top: x.Top}
				}
			default:
			}
		}
		if i < len(a.Strings)-1 && s.Pieces[0].Kind == sequence.PipeLength {
			s.Pieces = append([]sequence.Piece{{Kind: sequence.PackerPiece, Name: fmt.Sprintf("top packer %d", i), Pipe: s.Pieces[0].Pipe}}, s.Pieces...)
		}
	}
}

// treelike tells whether the ports of a plan, all open, join no compartments in a ring,
// no two surfaces and no two formations: the plain walker takes nothing else.
func treelike(p *sequence.Plan) bool {
	of := map[string]string{}
	var root func(name string) string
	root = func(name string) string {
		if up, ok := of[name]; ok {
			return root(up)
		}
		return name
	}
	for _, x := range p.Ports {
		a, b := root(x.Joins[0]), root(x.Joins[1])
		if a == b {
			return false
		}
		of[a] = b
	}
	surfaces, formations := map[string]bool{}, map[string]bool{}
	for _, c := range p.Compartments {
		at := root(c.Name)
		if c.Surface && surfaces[at] || c.Formation != "" && formations[at] {
			return false
		}
		surfaces[at] = surfaces[at] || c.Surface
		formations[at] = formations[at] || c.Formation != ""
	}
	return true
}

// FuzzAssembly reads tallies: whatever is written, there is an error or a plan that
// can be walked.
func FuzzAssembly(f *testing.F) {
	for _, file := range []string{"plans/demo-as-tally.json", "begin/field.json", "begin/si.json"} {
		data, err := os.ReadFile("../../examples/installation/" + file)
		require.NoError(f, err)
		var tree map[string]json.RawMessage
		require.NoError(f, json.Unmarshal(data, &tree))
		f.Add([]byte(tree["assembly"]))
	}
	f.Add([]byte(`{}`))
	f.Add([]byte(`{"fluid": "brine", "casing": [{"hole": "8 in", "bottom": "9000 ft"}], "strings": [{"name": "tubing", "tally": [{"kind": "pipe", "pipe": {"size": "2-3/8 in", "weight": "4.7 lb/ft", "grade": "L80"}, "bottom": "8000 ft"}]}]}`))
	head := `{"name": "fuzz", "well": {"depth": "9800 ft", "temperatures": {"undisturbed": [{"tvd": "0 ft", "temperature": "60 degF"}, {"tvd": "9800 ft", "temperature": "180 degF"}]}},
		"fluids": [{"name": "brine", "density": "9.4 lb/gal"}, {"name": "packer brine", "density": "9.4 lb/gal"}, {"name": "control fluid", "density": "7.3 lb/gal"}, {"name": "pore water", "density": "8.6 lb/gal"}],
		"formations": [{"name": "sand", "depth": "8000 ft", "pressure": "3600 psi"}, {"name": "zone A", "depth": "8900 ft", "pressure": "3600 psi"},
			{"name": "zone B", "depth": "9200 ft", "pressure": "3600 psi"}, {"name": "zone C", "depth": "9500 ft", "pressure": "3600 psi"}],
		"steps": [{"name": "look"}], "assembly": `
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := sequence.Read([]byte(head + string(data) + "}"))
		if err != nil {
			return
		}
		made, err := p.Derive()
		require.NoError(t, err)
		require.NoError(t, made.Validate())
	})
}
