package packer_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/packer"
	"completion.example/valve"
	"github.com/stretchr/testify/require"
)

// screws are six of 4,500 lbf ± 5 % on a setting piston of 8 in².
func screws() valve.Pins {
	return valve.Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}
}

// columns are those at 9,000 ft of a fluid in the tubing and one in the annulus.
func columns(tubing, annulus float64) valve.Columns {
	at := func(ppg float64) unit.Band[unit.Pressure] {
		return unit.Exactly(hydrostatics.Pressure(unit.Density(ppg)*unit.PoundPerGallon, 9000*unit.Foot))
	}
	return valve.Columns{Applied: at(tubing), Opposing: at(annulus)}
}

// setting is an invented packer with a second stage, a ball below it, and
// 9.5 lb/gal in the tubing against 8.8 lb/gal in the annulus.
func setting(t testing.TB) packer.Setting {
	first, err := packer.PinnedStage("slips", screws(), 8*unit.SquareInch)
	require.NoError(t, err)
	c := columns(9.5, 8.8)
	return packer.Setting{
		Stages:  []packer.Stage{first, {Name: "element packed off", Acts: unit.Within(4000*unit.PSI, 0.05)}},
		Columns: c,
		Piston:  8 * unit.SquareInch,
		Kept:    0.8,
		Plug:    packer.Plug{Columns: c, Rating: 7500 * unit.PSI},
	}
}

func ExampleSetting_Pressures() {
	pins := valve.Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}
	stage, err := packer.PinnedStage("set", pins, 8*unit.SquareInch)
	if err != nil {
		fmt.Println(err)
		return
	}
	at := func(rho unit.Density) unit.Band[unit.Pressure] {
		return unit.Exactly(hydrostatics.Pressure(rho, 9000*unit.Foot))
	}
	both := valve.Columns{Applied: at(9.5 * unit.PoundPerGallon), Opposing: at(8.8 * unit.PoundPerGallon)}
	s := packer.Setting{
		Stages: []packer.Stage{stage}, Columns: both, Piston: 8 * unit.SquareInch, Kept: 0.8,
		Plug: packer.Plug{Columns: both, Rating: 5000 * unit.PSI},
	}
	p, err := s.Pressures()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("at the piston:", p.Stages[0].Differential.Rounded(4))
	fmt.Println("at surface:   ", p.Complete.Rounded(4))
	fmt.Printf("plug: %s, %.0f %% of its rating\n", p.Plug.Rounded(4), 100*p.PlugUsed)
	// Output:
	// at the piston: 3206 psi .. 3375 psi .. 3544 psi
	// at surface:    2879 psi .. 3048 psi .. 3216 psi
	// plug: 3544 psi, 71 % of its rating
}

// By hand: a later stage that needs less waits for the one before, and one whose
// band begins above it is seen by itself.
func TestStagesWaitForEachOther(t *testing.T) {
	s := setting(t)
	s.Columns = columns(9, 9)
	p, err := s.Pressures()
	require.NoError(t, err)
	require.InDelta(t, 3206.25, p.Start.Least.In(unit.PSI), 1e-6)
	require.InDelta(t, 3800, p.Complete.Least.In(unit.PSI), 1e-6)
	require.InDelta(t, 4200, p.Complete.Greatest.In(unit.PSI), 1e-6)
	require.True(t, p.Stages[1].Distinct)

	s.Stages[1].Acts = unit.Within(3400*unit.PSI, 0.1) // 3,060 .. 3,740
	p, err = s.Pressures()
	require.NoError(t, err)
	require.False(t, p.Stages[1].Distinct)
	require.InDelta(t, 3206.25, p.Complete.Least.In(unit.PSI), 1e-6, "not before the slips")
	require.InDelta(t, 3740, p.Complete.Greatest.In(unit.PSI), 1e-6)
	require.InDelta(t, 3060, p.Stages[1].Alone.Least.In(unit.PSI), 1e-6)
	workingtest.Check(t, p.Steps())
}

// A tubing so heavy that the columns alone pass the least value is named.
func TestColumnsMaySetThePacker(t *testing.T) {
	s := setting(t)
	s.Columns = columns(17, 10) // 7 × 9,000 × 4/77 = 3,273 psi, of 3,206 to 3,544
	p, err := s.Pressures()
	require.NoError(t, err)
	require.True(t, p.Stages[0].Unaided)
	require.False(t, p.Stages[1].Unaided)
	a, err := s.Apply(0)
	require.NoError(t, err)
	require.Equal(t, packer.Unknown, a.Stages[0].State)
	require.Equal(t, packer.NotActed, a.State)
}

// Two ways: a column of constant density gives the closed form, and a
// compressible one needs less at surface by the weight that pressure adds.
func TestPressuresInAColumn(t *testing.T) {
	s := setting(t)
	depth := 9000 * unit.Foot
	want, err := s.Pressures()
	require.NoError(t, err)
	rigid, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(9.5 * unit.PoundPerGallon), BottomTVD: depth}}, nil, hydrostatics.Reference{})
	require.NoError(t, err)
	got, err := s.PressuresIn(rigid, depth)
	require.NoError(t, err)
	require.InEpsilon(t, float64(want.Start.Least), float64(got.Start.Least), 1e-12)
	require.InEpsilon(t, float64(want.Complete.Greatest), float64(got.Complete.Greatest), 1e-12)
	require.InEpsilon(t, float64(want.PlugUsed), float64(got.PlugUsed), 1e-12)

	c := 3e-6 / unit.PSI.In(unit.Pascal) // 1/Pa
	soft, err := hydrostatics.NewColumn([]hydrostatics.Layer{{
		Fluid:     softWater{rho: float64(9.5 * unit.PoundPerGallon), c: c},
		BottomTVD: depth,
	}}, isothermal(t), hydrostatics.Reference{})
	require.NoError(t, err)
	got, err = s.PressuresIn(soft, depth)
	require.NoError(t, err)
	// ρ = ρ0 exp(c p) integrates to exp(-c p) = exp(-c p0) - c ρ0 g H.
	target := float64(s.Columns.Opposing.Nominal + s.Stages[1].Acts.Nominal)
	surface := -math.Log(math.Exp(-c*target)+c*float64(9.5*unit.PoundPerGallon)*9.80665*float64(depth)) / c
	require.InEpsilon(t, surface, float64(got.Complete.Nominal), 1e-7)
	require.Less(t, got.Complete.Nominal, want.Complete.Nominal)
	_, err = s.PressuresIn(nil, depth)
	require.Error(t, err)
	_, err = s.PressuresIn(rigid, 2*depth)
	require.ErrorIs(t, err, hydrostatics.ErrOutsideColumn)
}

type softWater struct{ rho, c float64 }

func (w softWater) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	return unit.Density(w.rho * math.Exp(w.c*float64(p))), nil
}

func isothermal(t *testing.T) *hydrostatics.TemperatureProfile {
	p, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{
		{TVD: 0, Temperature: unit.Fahrenheit(150)}, {TVD: 20000 * unit.Foot, Temperature: unit.Fahrenheit(150)},
	})
	require.NoError(t, err)
	return p
}

// By hand: 5,000 psi more than the columns' 327.3 on 8 in², 80 % of it kept.
func TestApply(t *testing.T) {
	s := setting(t)
	standing := s.Columns.Differential().Nominal.In(unit.PSI)
	require.InDelta(t, 0.7*9000*4/77, standing, 1e-9)
	a, err := s.Apply(5000 * unit.PSI)
	require.NoError(t, err)
	require.Equal(t, packer.Acted, a.State)
	require.InDelta(t, (5000+standing)*8, a.Force.Nominal.In(unit.PoundForce), 1e-6)
	require.InDelta(t, (5000+standing)*6.4, a.Kept.Nominal.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 5000-(4200-standing), a.Stages[1].Margin.In(unit.PSI), 1e-6)
	require.InDelta(t, (5000+standing)/7500, a.PlugUsed, 1e-12)

	a, err = s.Apply(3700 * unit.PSI) // 4,027 at the piston, inside 3,800 .. 4,200
	require.NoError(t, err)
	require.Equal(t, packer.Acted, a.Stages[0].State)
	require.Equal(t, packer.Unknown, a.State)
	require.Zero(t, a.Kept)
	require.Negative(t, float64(a.Stages[1].Margin))

	a, err = s.Apply(1000 * unit.PSI)
	require.NoError(t, err)
	require.Equal(t, packer.NotActed, a.State)
	require.InDelta(t, 3206.25-standing-1000, a.Stages[0].Margin.In(unit.PSI), 1e-6)
	_, err = s.Apply(-1)
	require.ErrorContains(t, err, "surface pressure: is ")
}

// The element's force divided by the ring: 32 klbf on 8.535 in over 6 in bore.
func TestElementPressure(t *testing.T) {
	p := packer.ElementPressure(32000*unit.PoundForce, 8.535*unit.Inch, 6*unit.Inch)
	require.InDelta(t, 32000/(math.Pi/4*(8.535*8.535-36)), p.In(unit.PSI), 1e-9)
}

// Pressures ask for nothing that they don't need: no rating of the plug, no area of
// the piston, which only the force is made of.
func TestPressuresNeedNeitherPlugNorPiston(t *testing.T) {
	s := setting(t)
	want, err := s.Pressures()
	require.NoError(t, err)
	s.Plug.Rating, s.Piston = 0, 0
	got, err := s.Pressures()
	require.NoError(t, err)
	require.Equal(t, want.Complete, got.Complete)
	require.Equal(t, want.Plug, got.Plug)
	require.Zero(t, got.PlugUsed)
	demands, err := s.Demands(packer.Set)
	require.NoError(t, err)
	require.Len(t, demands, len(s.Stages))
	_, err = s.Apply(3000 * unit.PSI)
	require.ErrorContains(t, err, "Piston: is 0")
}

func TestSettingFaultsAreReportedTogether(t *testing.T) {
	none := packer.Setting{Kept: 2, Plug: packer.Plug{Rating: -1}}
	_, err := none.Pressures()
	for _, want := range []string{"Stages: is empty", "Kept: is 2", "Plug.Rating: is -"} {
		require.ErrorContains(t, err, want)
	}
	_, err = none.Apply(0)
	for _, want := range []string{"Stages: is empty", "Piston: is 0", "Kept: is 2", "Plug.Rating: is -"} {
		require.ErrorContains(t, err, want)
		require.ErrorContains(t, none.Validate(), want)
	}
	s := setting(t)
	s.Stages[0].Acts.Least = unit.Pressure(math.NaN())
	_, err = s.Pressures()
	require.Error(t, err)
	_, err = packer.PinnedStage("x", valve.Pins{}, 0)
	require.ErrorContains(t, err, `stage "x"`)
}

func ExampleSetting_Window() {
	at := func(rho unit.Density) unit.Band[unit.Pressure] {
		return unit.Exactly(hydrostatics.Pressure(rho, 9000*unit.Foot))
	}
	both := valve.Columns{Applied: at(9.5 * unit.PoundPerGallon), Opposing: at(8.8 * unit.PoundPerGallon)}
	s := packer.Setting{
		Stages:  []packer.Stage{{Name: "set", Acts: unit.Within(3375*unit.PSI, 0.05)}},
		Columns: both, Piston: 8 * unit.SquareInch, Kept: 0.8,
		Plug: packer.Plug{Columns: both, Rating: 5000 * unit.PSI},
	}
	other := valve.Demand{Name: "isolation valve", Columns: both}
	for _, opens := range []unit.Pressure{4500 * unit.PSI, 3600 * unit.PSI} {
		other.Trigger.Threshold = unit.Within(opens, 0.05)
		w, err := s.Window(packer.Set, valve.SurfaceRange{Greatest: 10000 * unit.PSI}, []valve.Demand{other}, 100*unit.PSI)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%s (%s) to %s (%s)\n", w.Least.Rounded(4), w.Floor.Name, w.Greatest.Rounded(4), w.Ceiling.Name)
	}
	// Output:
	// 3316 psi (packer: set) to 3848 psi (isolation valve)
	// valve: no surface pressure satisfies all: packer: set needs at least 3316 psi, isolation valve needs less than 2993 psi; short by 323.8 psi
}

// Two ways: inside the window Apply says the packer has set, and just outside it
// doesn't; and with the packer to be spared the other way round.
func TestWindowAgreesWithApply(t *testing.T) {
	s := setting(t)
	limit := valve.SurfaceRange{Greatest: 10000 * unit.PSI}
	w, err := s.Window(packer.Set, limit, nil, 0)
	require.NoError(t, err)
	require.Equal(t, "plug", w.Ceiling.Name)
	for dp, want := range map[unit.Pressure]packer.Outcome{1 * unit.PSI: packer.Acted, -1 * unit.PSI: packer.Unknown} {
		a, err := s.Apply(w.Least + dp)
		require.NoError(t, err)
		require.Equal(t, want, a.State)
	}
	a, err := s.Apply(w.Greatest)
	require.NoError(t, err)
	require.InDelta(t, 1, a.PlugUsed, 1e-12)

	w, err = s.Window(packer.Spare, limit, nil, 0)
	require.NoError(t, err)
	require.Equal(t, "packer: slips", w.Ceiling.Name)
	a, err = s.Apply(w.Greatest - 1*unit.PSI)
	require.NoError(t, err)
	require.Equal(t, packer.NotActed, a.Stages[0].State)
	a, err = s.Apply(w.Greatest + 1*unit.PSI)
	require.NoError(t, err)
	require.Equal(t, packer.Unknown, a.Stages[0].State)

	_, err = s.Window(packer.Set, limit, nil, -1)
	require.ErrorContains(t, err, "margin")
}
