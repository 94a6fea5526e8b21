package valve

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

func band[Q unit.Scalar](least, nominal, greatest Q) unit.Band[Q] {
	return unit.Band[Q]{Least: least, Nominal: nominal, Greatest: greatest}
}

var leak = GasLeak{Start: 1e6, End: 1.5e6, StartFactor: 0.95, EndFactor: 0.9, Duration: 600 * time.Second, Volume: 3, Temperature: unit.Kelvin(310), Standard: StandardSI()}

// The gas law by its statement, and the figures of practice and regulation as
// printed. Source: ISO 10417:1993; 30 CFR 250.821 and 250.828.
func TestLeakWorked(t *testing.T) {
	r, err := leak.Rate()
	require.NoError(t, err)
	const rise = "rise = 1601325/0.9 - 1101325/0.95\n"
	precise.Equal(t, float64(r.Rise), rise+"rise", nil)
	precise.Equal(t, float64(r.Rate), rise+"288.15/101325*3/(310*600)*rise", nil)
	back, err := leak.RiseAt(r.Rate)
	require.NoError(t, err)
	require.InEpsilon(t, float64(r.Rise), float64(back), 1e-14)
	us := StandardUS()
	precise.Equal(t, us.Constant(), "520/1.8/(14.7*0.45359237*9.80665/pow(0.0254, 2))", nil)
	precise.Equal(t, float64(LeakLimitGas), "15*pow(0.3048, 3)/60", nil)
	precise.Equal(t, float64(LeakLimitLiquid), "400e-6/60", nil)
	precise.Equal(t, float64(ReopenMargin), "500*0.45359237*9.80665/pow(0.0254, 2)", nil)
	require.Equal(t, []time.Duration{120e9, 45e9}, []time.Duration{ClosingTime, SurfaceClosingTime})
	precise.Equal(t, float64(DepthBelowMudline), "30.48", nil)
}

// Each limit of the inputs: on it the answer, just beyond it a fault that names it.
func TestLeakLimits(t *testing.T) {
	ok := leak
	ok.Start, ok.End, ok.Volume = -unit.Atmosphere, 5e8, 1e6
	_, err := ok.Rate()
	require.NoError(t, err)
	kelvin := unit.Kelvin
	for text, change := range map[string]func(*GasLeak){
		"Start: is": func(g *GasLeak) { g.Start *= 1.0000001 }, "End: is": func(g *GasLeak) { g.End *= 1.0000001 },
		"StartFactor: is": func(g *GasLeak) { g.StartFactor = 0.05 }, "EndFactor: is": func(g *GasLeak) { g.EndFactor = 5 },
		"Volume: is": func(g *GasLeak) { g.Volume *= 1.0000001 }, "Duration: is": func(g *GasLeak) { g.Duration = 0 },
		"Temperature: is -279.67": func(g *GasLeak) { g.Temperature = kelvin(100) }, "Temperature: is": func(g *GasLeak) { g.Temperature = kelvin(1000) },
		"Standard.Temperature: is": func(g *GasLeak) { g.Standard.Temperature = kelvin(200) }, "Standard.Temperature: is 260.33": func(g *GasLeak) { g.Standard.Temperature = kelvin(400) },
		"Standard.Pressure: is 50": func(g *GasLeak) { g.Standard.Pressure = 5e4 }, "Standard.Pressure: is": func(g *GasLeak) { g.Standard.Pressure = 2e5 },
	} {
		g := ok
		change(&g)
		_, err := g.Rate()
		require.ErrorContains(t, err, text)
	}
	for name, change := range map[string]func(*GasLeak){
		"thin factor": func(g *GasLeak) { g.StartFactor = 0.05000001 }, "dense factor": func(g *GasLeak) { g.EndFactor = 4.999999 },
		"cold": func(g *GasLeak) { g.Temperature = kelvin(100.00005) }, "hot": func(g *GasLeak) { g.Temperature = kelvin(999.9999) },
		"cold standard": func(g *GasLeak) { g.Standard.Temperature = kelvin(200.0001) }, "hot standard": func(g *GasLeak) { g.Standard.Temperature = kelvin(399.9999) },
		"low standard": func(g *GasLeak) { g.Standard.Pressure = 50000.01 }, "high standard": func(g *GasLeak) { g.Standard.Pressure = 199999.9 },
		"short": func(g *GasLeak) { g.Duration = 1 },
	} {
		g := ok
		change(&g)
		_, err := g.Rate()
		require.NoError(t, err, name)
	}
	for _, rate := range []float64{-1e-9, math.Inf(1), math.NaN()} {
		_, err := leak.RiseAt(unit.FlowRate(rate))
		require.ErrorContains(t, err, "must be at least 0 bbl/d")
	}
	zero, err := leak.RiseAt(0)
	require.NoError(t, err)
	require.Zero(t, zero)
}

var safety = SafetyValve{Backing: Unbacked, Opens: band[unit.Pressure](9e6, 9.5e6, 10e6), Closes: band[unit.Pressure](4e6, 4.5e6, 9e6)}

func TestSafetyValveLimits(t *testing.T) {
	require.NoError(t, safety.Validate(), "closing may reach the opening differential")
	wrong := safety
	wrong.Closes.Greatest *= 1 + 1e-12
	require.ErrorContains(t, wrong.Validate(), "Closes: goes up to 1305.3396395731882 psi; must be at most Opens, which begins at 9 MPa")
	bad := Backing(4)
	require.Equal(t, "backing 4", bad.String())
	_, err := bad.MarshalText()
	require.ErrorContains(t, err, "backing is 4; must be one of")
	wrong = safety
	wrong.Backing = bad
	require.ErrorContains(t, wrong.Validate(), "Backing: is 4; must be from 0 to 3")
	require.Equal(t, "none", Unbacked.String())

	state := ControlState{TVD: 20000, Density: 3000}
	p, err := safety.Pressures(state)
	require.NoError(t, err)
	precise.Equal(t, float64(p.Head), "3000*9.80665*20000", nil)
	for text, s := range map[string]ControlState{"ControlState.TVD: is": {TVD: 20000.01}, "ControlState.TVD: is -1": {TVD: -1}, "ControlState.Density: is": {Density: 3000.001}, "ControlState.Density: is -1": {Density: -1}} {
		_, err := safety.Pressures(s)
		require.ErrorContains(t, err, text)
	}
	require.True(t, ControlPressures{}.FailSafe(), "closes with nothing at the panel")
	require.False(t, ControlPressures{Closed: band[unit.Pressure](-1, 0, 1)}.FailSafe())

	for _, panel := range []float64{-1, math.Inf(1), math.NaN()} {
		_, err := safety.KeepOpen(unit.Pressure(panel), state)
		require.ErrorContains(t, err, "must be at least 0 psi")
	}
	k, err := safety.KeepOpen(0, ControlState{TVD: 1000, Density: 1000, Backing: band[unit.Pressure](1e6, 2e6, 3e6)})
	require.NoError(t, err)
	head := 9.80665e6 // by hand: 1,000 m of water
	require.InDelta(t, head-3e6, float64(k.Differential), 1e-6)
	require.InDelta(t, head-3e6-10e6, float64(k.FullyOpen), 1e-6)
	require.InDelta(t, head-3e6-9e6, float64(k.NotClosed), 1e-6)
	require.InDelta(t, head-10e6, float64(k.Backing), 1e-6)
}

func TestFailSafeLimits(t *testing.T) {
	for _, margin := range []float64{-1, math.Inf(1), math.NaN()} {
		_, err := safety.FailSafe(unit.Pressure(margin), []FailSafeCase{{Control: 1000}})
		require.ErrorContains(t, err, "must be at least 0 psi")
	}
	for text, c := range map[string]FailSafeCase{
		"cases[0].Control: is 3.000001":    {Control: 3000.001},
		"cases[0].Control: is":             {Control: -1},
		"cases[0].BackingDensity: is":      {BackingDensity: 3000.001},
		"cases[0].BackingDensity: is -1":   {BackingDensity: -1},
		"cases[0].BackingSurface: is +Inf": {BackingSurface: unit.Pressure(math.Inf(1))},
		"cases[0].BackingSurface: is":      {BackingSurface: -1},
		"not fail safe at any ":            {Control: 1000, BackingSurface: 0},
	} {
		margin := unit.Pressure(0)
		if text == "not fail safe at any " {
			margin = 4e6
		}
		_, err := safety.FailSafe(margin, []FailSafeCase{c})
		require.ErrorContains(t, err, text)
	}
	// by hand: what is left of the closing differential over the gradient, the shallowest case governs
	f, err := safety.FailSafe(1e6, []FailSafeCase{
		{Name: "balanced", Control: 1000, BackingDensity: 1000}, {Name: "deep", Control: 1500, BackingDensity: 500, BackingSurface: 1e6},
		{Name: "shallow", Control: 3000, BackingDensity: 0}, {Name: "as shallow", Control: 3000}, {Name: "beyond any well", Control: 1000.015, BackingDensity: 1000}})
	require.NoError(t, err)
	require.True(t, f.Cases[0].Anywhere && f.Cases[4].Anywhere)
	require.InDelta(t, 4e6/9806.65, float64(f.Cases[1].TVD), 1e-9)
	require.InDelta(t, 3e6/(3*9806.65), float64(f.Governing.TVD), 1e-9)
	require.Equal(t, "shallow", f.Governing.Case.Name, "the first of equals")
	f, err = safety.FailSafe(1e6, []FailSafeCase{{Name: "first", Control: 3000}, {Name: "second", Control: 2000}})
	require.NoError(t, err)
	require.Equal(t, "first", f.Governing.Case.Name)
	f, err = safety.FailSafe(1e6, []FailSafeCase{{Name: "first", Control: 2000}, {Name: "second", Control: 3000}})
	require.NoError(t, err)
	require.Equal(t, "second", f.Governing.Case.Name)
}

func TestIsolationLimits(t *testing.T) {
	v := IsolationValve{Kind: OpensAfterCycles, Unlock: band[unit.Pressure](5e6, 5e6, 5e6), Bleed: band[unit.Pressure](1e6, 1e6, 1e6)}
	for n, ok := range map[int]bool{0: false, 1: true, 1000: true, 1001: false} {
		v.Cycles = n
		require.Equal(t, ok, v.Validate() == nil, "%d cycles", n)
	}
	v.Cycles = 3
	most, least := v.CyclesLeft(IsolationHistory{CyclesLeast: 1, CyclesMost: 2})
	require.Equal(t, []int{2, 1}, []int{most, least})
	v.Kind = OpensAtBleedOff
	most, least = v.CyclesLeft(IsolationHistory{})
	require.Equal(t, []int{1, 1}, []int{most, least})
	bad := IsolationKind(len(isolationKinds))
	v.Kind = bad
	require.ErrorContains(t, v.Validate(), "Kind: is")
	require.Contains(t, bad.String(), "3")
	_, err := bad.MarshalText()
	require.Error(t, err)
	for i, name := range isolationKinds {
		require.Equal(t, name, IsolationKind(i).String())
	}
}

func TestPinsLimits(t *testing.T) {
	ok := Pins{Count: 10_000, Strength: 1e12, Tolerance: math.Nextafter(1, 0), TemperatureFactor: 2}
	require.NoError(t, ok.Validate())
	for text, change := range map[string]func(*Pins){
		"Count: is": func(p *Pins) { p.Count++ }, "Count: is 0;": func(p *Pins) { p.Count = 0 }, "Strength: is": func(p *Pins) { p.Strength *= 1 + 1e-7 },
		"Tolerance: is": func(p *Pins) { p.Tolerance = 1 }, "TemperatureFactor: is": func(p *Pins) { p.TemperatureFactor = 2 + 1e-7 },
		"TemperatureFactor: is -1e-09;": func(p *Pins) { p.TemperatureFactor = -1e-9 }, "Tolerance: is -1e-09;": func(p *Pins) { p.Tolerance = -1e-9 },
	} {
		p := ok
		change(&p)
		require.ErrorContains(t, p.Validate(), text)
	}
	for _, area := range []float64{0, -1, math.Inf(1), math.NaN()} {
		_, err := Pins{Count: 1, Strength: 1e4}.PressureOn(unit.Area(area))
		require.ErrorContains(t, err, "must be above 0 in2")
	}
	for n, ok := range map[int]bool{0: true, 1000: true, 1001: false, -1: false} {
		require.Equal(t, ok, Trigger{Count: n, Threshold: band[unit.Pressure](2, 2, 2), Rearm: band[unit.Pressure](1, 1, 1)}.Validate() == nil, "%d", n)
	}
	require.NoError(t, Trigger{Count: 1, Threshold: band[unit.Pressure](2, 2, 2), Rearm: band[unit.Pressure](3, 1, 2)}.Validate(), "a trigger met once needs no rearming")
	require.Error(t, Trigger{Count: 2, Direction: Falling, Threshold: band[unit.Pressure](1, 1, 2), Rearm: band[unit.Pressure](2, 2, 2)}.Validate())
	err := Row{{}, {Count: -1}}.Validate()
	require.ErrorContains(t, err, "[1].Count: is")
}

// No count fits: which set is nearest, by how much it misses and what tolerance
// would do, all by hand.
func TestNoPinCountByHand(t *testing.T) {
	window := band[unit.Force](28e3, 30e3, 31e3)
	_, err := PinCounts([]Pins{{Count: 8, Strength: 10e3, Tolerance: 0.2}, {Count: 1, Strength: 5e3}}, window)
	var none *NoPinCountError
	require.ErrorAs(t, err, &none)
	require.Equal(t, 3, none.Nearest[0].Pins.Count)
	// 3 pins: 24 to 36 kN; 4 kN early, 5 kN late; tolerance of 1/30 would do
	require.InDelta(t, 1.0/30, none.Tolerance, 1e-15)
	require.InDelta(t, -4e3, float64(none.Nearest[0].Holds), 1e-9)
	require.InDelta(t, -5e3, float64(none.Nearest[0].Parts), 1e-9)
	require.ErrorContains(t, err, " too early, ")
	require.ErrorContains(t, err, "; 3 pins would do with a tolerance of 3.33 %")
	require.NotContains(t, err.Error(), "-", "what it misses by is told without a sign")
	require.NotContains(t, NoPinCountError{Nearest: none.Nearest, Tolerance: -0.1}.text(), "would do")
	require.Contains(t, NoPinCountError{Nearest: none.Nearest}.text(), "tolerance of 0.00 %")
	require.NotContains(t, NoPinCountError{Tolerance: 1}.text(), "would do")
	exact := none.Nearest[0]
	exact.Holds, exact.Parts = 0, 0
	require.NotContains(t, NoPinCountError{Nearest: []PinFit{exact}}.text(), "too")
	require.True(t, exact.Fits())
	// below the window: one pin of 5 kN is the nearest of its kind
	require.Equal(t, 1, none.Nearest[1].Pins.Count)
	_, err = PinCounts([]Pins{{Count: 1, Strength: 5e3}, {Count: 1, Strength: 60e3}}, window)
	require.ErrorAs(t, err, &none)
	require.InDelta(t, (5e3-28e3)/5e3, none.Tolerance, 1e-12)
}

func (e NoPinCountError) text() string { return (&e).Error() }

func TestWindowTies(t *testing.T) {
	up := func(name string, level unit.Pressure, fire bool) Demand {
		return Demand{Name: name, Trigger: Trigger{Threshold: band(level, level, level)}, Fire: fire}
	}
	surface := SurfaceRange{0, 10e6}
	w, err := Window(surface, []Demand{up("open", 3e6, true), up("shut", 8e6, false)})
	require.NoError(t, err)
	require.Equal(t, unit.Pressure(5e6), w.Width())
	require.Equal(t, []string{"open", "shut"}, []string{w.Floor.Name, w.Ceiling.Name})
	// at the same pressure the bound that is open itself counts, whichever comes first
	for _, demands := range [][]Demand{{up("must", 3e6, true), up("must again", 3e6, true)}, {up("must not", 8e6, false), up("must not again", 8e6, false)}} {
		w, err = Window(surface, demands)
		require.NoError(t, err)
	}
	require.Equal(t, "must not again", w.Ceiling.Name)
	w, err = Window(surface, []Demand{up("limit", 10e6, false)})
	require.NoError(t, err)
	require.Equal(t, "limit", w.Ceiling.Name, "an open bound at the pump's limit is the stricter")
	down := Demand{Name: "must not fall", Trigger: Trigger{Threshold: band[unit.Pressure](0, 0, 0), Direction: Falling}}
	w, err = Window(surface, []Demand{down})
	require.NoError(t, err)
	require.Equal(t, "must not fall", w.Floor.Name)
	w, err = Window(surface, []Demand{up("must", 0, true), up("must not", 12e6, false)})
	require.NoError(t, err)
	require.Equal(t, []string{"lowest surface pressure", "highest surface pressure"}, []string{w.Floor.Name, w.Ceiling.Name}, "no stricter than the pump")
	_, err = Window(surface, []Demand{up("must", 3e6, true), up("must not", 3e6, false)})
	require.ErrorIs(t, err, ErrNoSurfacePressure, "one point, which doesn't do")
	w, err = Window(SurfaceRange{3e6, 3e6}, []Demand{up("must", 3e6, true)})
	require.NoError(t, err, "one point that does")
	require.Zero(t, w.Width())
	for _, r := range []SurfaceRange{{0, unit.Pressure(math.Inf(1))}, {unit.Pressure(math.Inf(-1)), 0}, {1, 0}} {
		_, err = Window(r, nil)
		require.ErrorContains(t, err, "finite and in order")
	}
}
