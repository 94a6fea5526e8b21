package sleeve

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve"
	"completion.example/valve/controlline"

	"github.com/stretchr/testify/require"
)

func line(depth unit.Length) controlline.Line {
	return controlline.Line{OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch, Length: depth + 50*unit.Metre, TVD: depth,
		Young: 28e6 * unit.PSI, Poisson: 0.3}
}

// well is an invented well with n sleeves: 2 in² pistons, 15 in of stroke, 1,000
// lbf of friction ±20 %, so that 400 to 600 psi move a sleeve.
func well(n int) System {
	s := System{Liquid: controlline.LineFluid{Density: 870, Viscosity: 10 * unit.Centipoise, Compressibility: unit.PerMegapascal / 1800}}
	for i := 0; i < n; i++ {
		depth := unit.Length(2500+100*i) * unit.Metre
		s.Sleeves = append(s.Sleeves, Sleeve{
			Name: fmt.Sprintf("sleeve %d", i+1), TVD: depth,
			OpenArea: 2 * unit.SquareInch, CloseArea: 2 * unit.SquareInch, Stroke: 15 * unit.Inch,
			Friction: unit.Within(1000*unit.PoundForce, 0.2),
			Inside:   "tubing", Outside: fmt.Sprintf("zone %d", i+1),
		})
		s.OpenLines = append(s.OpenLines, line(depth))
		s.CloseLine = line(depth)
	}
	return s
}

var surface = valve.SurfaceRange{Greatest: 5000 * unit.PSI}

func on(psi float64) Setting { return Setting{Pressured, unit.Pressure(psi) * unit.PSI} }

func ExampleSystem_Shifting() {
	s := well(2)
	s.Sleeves[0].PerDifferential = 0.2 * unit.SquareInch
	s.Sleeves[0].Across = unit.Exactly(1500 * unit.PSI)
	x, err := s.Shifting(0)
	if err != nil {
		panic(err)
	}
	fmt.Println("opens at", x.Open.Rounded(4))
	// Output: opens at 550 psi .. 650 psi .. 750 psi
}

func ExampleSystem_Run() {
	s := well(2)
	// Both sleeves are open; the lower is to be closed. Without pressure on the
	// upper one's open line, the common close line takes both.
	before, want := []Position{Open, Open}, []Position{Open, Closed}
	_, _, err := s.Run(before, []Operation{{CloseLine, on(3000)}, {CloseLine, Setting{}}}, want)
	fmt.Println(err)
	// Venting the upper one's open line too early does the same.
	_, _, err = s.Run(before, []Operation{{0, on(3000)}, {CloseLine, on(3000)}, {0, Setting{}}, {CloseLine, Setting{}}}, want)
	fmt.Println(err)
	_, after, err := s.Run(before, Action{Close: true, Move: []int{1}, Hold: []int{0}}.Operations(3000*unit.PSI), want)
	fmt.Println(after, err)
	// Output:
	// sleeve: wrong move in step 1, close line pressured to 3000 psi: sleeve 1, open, closes (force -6000 lbf, resistance 800 lbf .. 1000 lbf .. 1200 lbf)
	// sleeve: wrong move in step 3, open line of sleeve 1 vented: sleeve 1, open, closes (force -6000 lbf, resistance 800 lbf .. 1000 lbf .. 1200 lbf)
	// [open closed] <nil>
}

func ExampleSystem_Plan() {
	s := well(3)
	legs, err := s.Plan(Route{From: []Position{Open, Open, Closed}, To: []Position{Closed, Open, Open}, Surface: surface})
	if err != nil {
		panic(err)
	}
	for _, l := range legs {
		fmt.Println("window", l.Window.Least.Rounded(3), "to", l.Window.Greatest.Rounded(3))
		for _, op := range l.Operations {
			fmt.Println(" ", s.Describe(op))
		}
	}
	// Output:
	// window 600 psi to 5000 psi
	//   open line of sleeve 2 pressured to 2800 psi
	//   close line pressured to 2800 psi
	//   close line vented
	//   open line of sleeve 2 vented
	// window 600 psi to 5000 psi
	//   open line of sleeve 3 pressured to 2800 psi
	//   open line of sleeve 3 vented
}

func ExampleSystem_Joined() {
	s := well(3)
	certain, possible, err := s.Joined([]Position{Open, Unknown, Closed})
	fmt.Println(certain, possible, err)
	// Output: [[tubing zone 1] [zone 2] [zone 3]] [[tubing zone 1 zone 2] [zone 3]] <nil>
}

func ExampleSystem_Signatures() {
	s := well(2)
	g, err := s.Signatures([]Position{Closed, Closed}, Action{Move: []int{1}}, 3000*unit.PSI)
	if err != nil {
		panic(err)
	}
	for _, x := range g {
		fmt.Printf("line %d: %.2f L\n", x.Line, x.Pumped().In(unit.Litre))
	}
	// Output:
	// line -1: -0.49 L
	// line 1: 0.86 L
}

// By hand: 1,000 lbf ± 20 % on 2 in² is 500 psi ± 100; with an open area of 2.2
// in² the column of 870 kg/m³ over 2,500 m helps to open and hinders to close.
func TestShiftingByHand(t *testing.T) {
	s := well(1)
	s.Liquid.Compressibility = 0
	s.Sleeves[0].OpenArea = 2.2 * unit.SquareInch
	head := 870 * 9.80665 * 2500 / 6894.757293168361
	x, err := s.Shifting(0)
	require.NoError(t, err)
	require.InDelta(t, head, x.Head.In(unit.PSI), 1e-6)
	require.InDelta(t, (1000-0.2*head)/2.2, x.Open.Nominal.In(unit.PSI), 1e-6)
	require.InDelta(t, (1200+0.2*head)/2, x.Close.Greatest.In(unit.PSI), 1e-6)
	workingtest.Check(t, x.Steps())

	// That is what Apply does: a psi below the least nothing moves, from the
	// greatest on it moves for certain.
	for _, c := range []struct {
		at   unit.Pressure
		want Motion
	}{{x.Open.Least - unit.PSI, Stays}, {x.Open.Least + unit.PSI, MayOpen}, {x.Open.Greatest - unit.PSI, MayOpen}, {x.Open.Greatest + unit.PSI, Opens}} {
		e, err := s.Apply([]Position{Closed}, Panel{Open: []Setting{{Pressured, c.at}}})
		require.NoError(t, err)
		require.Equal(t, c.want, e[0].Motion, "at %v", c.at)
	}
	e, err := s.Apply([]Position{Open}, Panel{Close: Setting{Pressured, x.Close.Greatest + unit.PSI}})
	require.NoError(t, err)
	require.Equal(t, Closes, e[0].Motion)
	require.InDelta(t, 2, e[0].Margin.In(unit.PoundForce), 1e-6, "1 psi on 2 in²")
}

// The columns alone move a sleeve whose areas differ too much: 2.9 in² against 2
// in² under 3,090 psi is 2,800 lbf.
func TestColumnsAloneMove(t *testing.T) {
	s := well(1)
	s.Sleeves[0].OpenArea = 2.9 * unit.SquareInch
	x, err := s.Shifting(0)
	require.NoError(t, err)
	require.Negative(t, x.Open.Greatest)
	e, err := s.Apply([]Position{Closed}, Panel{})
	require.NoError(t, err)
	require.Equal(t, Opens, e[0].Motion)
	_, err = s.Plan(Route{From: []Position{Open}, To: []Position{Closed}, Surface: surface})
	require.ErrorIs(t, err, ErrNoRoute, "it opens again as the close line is vented")
}

func TestApplyTableOfTwo(t *testing.T) {
	s := well(2)
	both := []Position{Open, Open}
	none := []Position{Closed, Closed}
	v, p := Setting{}, on(3000)
	for _, c := range []struct {
		before       []Position
		close, a, b  Setting
		first, other Motion
	}{
		{none, v, v, v, Stays, Stays},
		{none, v, p, v, Opens, Stays},
		{none, v, p, p, Opens, Opens},
		{none, p, p, v, Stays, Stays},
		{none, p, v, v, Stays, Stays},
		{both, v, p, v, Stays, Stays},
		{both, p, v, v, Closes, Closes},
		{both, p, p, v, Stays, Closes},
		{both, p, p, p, Stays, Stays},
		{both, p, on(2500), v, MayClose, Closes},
		{both, p, on(2300), v, Closes, Closes},
		{both, on(300), v, v, Stays, Stays},
	} {
		e, err := s.Apply(c.before, Panel{c.close, []Setting{c.a, c.b}})
		require.NoError(t, err)
		require.Equal(t, []Motion{c.first, c.other}, []Motion{e[0].Motion, e[1].Motion}, "%+v", c)
		for _, x := range e {
			require.GreaterOrEqual(t, x.Margin, unit.Force(0))
		}
	}
}

func TestSystemRefuses(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*System){
		"none":         func(s *System) { s.Sleeves, s.OpenLines = nil, nil },
		"lines":        func(s *System) { s.OpenLines = s.OpenLines[:1] },
		"liquid":       func(s *System) { s.Liquid.Density = 0 },
		"twins":        func(s *System) { s.Sleeves[1].Name = s.Sleeves[0].Name },
		"depth":        func(s *System) { s.Sleeves[0].TVD = unit.Length(nan) },
		"line ends":    func(s *System) { s.OpenLines[0].TVD -= 1 },
		"common short": func(s *System) { s.CloseLine.TVD = 100 },
		"open area":    func(s *System) { s.Sleeves[0].OpenArea = 0 },
		"close area":   func(s *System) { s.Sleeves[0].CloseArea = unit.Area(nan) },
		"stroke":       func(s *System) { s.Sleeves[0].Stroke = -1 },
		"no friction":  func(s *System) { s.Sleeves[0].Friction = unit.Exactly(unit.Force(0)) },
		"turned":       func(s *System) { s.Sleeves[0].Friction = unit.Band[unit.Force]{Least: 3, Nominal: 2, Greatest: 1} },
		"across":       func(s *System) { s.Sleeves[0].Across = unit.Exactly(unit.Pressure(nan)) },
		"across huge":  func(s *System) { s.Sleeves[0].Across = unit.Exactly(unit.Pressure(1e12)) },
		"seal":         func(s *System) { s.Sleeves[0].PerDifferential = -1 },
		"many": func(s *System) {
			*s = well(MaxSleeves + 1)
		},
	} {
		s := well(2)
		change(&s)
		require.Error(t, s.Validate(), name)
		n := make([]Position, len(s.Sleeves))
		_, err := s.Apply(n, Panel{})
		require.Error(t, err, name)
		_, err = s.Shifting(0)
		require.Error(t, err, name)
		_, err = s.Plan(Route{From: n, To: n})
		require.Error(t, err, name)
		_, _, err = s.Run(n, nil, nil)
		require.Error(t, err, name)
		_, err = s.Signatures(n, Action{Move: []int{0}}, 1)
		require.Error(t, err, name)
	}
	s := well(2)
	two := []Position{Closed, Open}
	_, err := s.Apply([]Position{Open}, Panel{})
	require.Error(t, err)
	_, err = s.Apply([]Position{Open, 7}, Panel{})
	require.Error(t, err)
	_, err = s.Apply(two, Panel{Close: Setting{Mode: 8}})
	require.Error(t, err)
	_, err = s.Apply(two, Panel{Open: make([]Setting, 3)})
	require.Error(t, err)
	_, err = s.Apply(two, Panel{Open: []Setting{{Pressured, unit.Pressure(nan)}}})
	require.Error(t, err)
	_, err = s.Shifting(2)
	require.Error(t, err)
	for _, a := range []Action{{}, {Move: []int{2}}, {Move: []int{0, 0}}, {Move: []int{1}}, {Close: true, Move: []int{0}},
		{Move: []int{0}, Hold: []int{1}}, {Close: true, Move: []int{1}, Hold: []int{0}}} {
		_, err = s.PanelWindow(two, a, surface)
		require.Error(t, err, "%+v", a)
		require.NotErrorIs(t, err, valve.ErrNoSurfacePressure, "%+v", a)
	}
	_, _, err = s.Run(two, []Operation{{5, Setting{}}}, nil)
	require.Error(t, err)
	_, _, err = s.Run(two, []Operation{{0, Setting{Pressured, -1}}}, nil)
	require.Error(t, err)
	_, err = s.Plan(Route{From: two, To: []Position{Unknown, Open}, Surface: surface})
	require.Error(t, err)
	_, err = s.Plan(Route{From: two, To: two, Surface: valve.SurfaceRange{Least: 2, Greatest: 1}})
	require.Error(t, err)
	_, _, err = s.Run(two, nil, []Position{Open, Open})
	require.ErrorIs(t, err, ErrNotReached)
	require.False(t, errors.Is(err, ErrWrongMove))
}

func TestPositionText(t *testing.T) {
	text, err := json.Marshal([]Position{Closed, Open, Unknown})
	require.NoError(t, err)
	var back []Position
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, []Position{Closed, Open, Unknown}, back)
	require.Error(t, json.Unmarshal([]byte(`["ajar"]`), &back))
	_, err = Position(9).MarshalText()
	require.Error(t, err)
}
