package valve

import (
	"fmt"
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"

	"github.com/stretchr/testify/require"
)

func ExampleSafetyValve_Pressures() {
	v := SafetyValve{Opens: unit.Exactly(1800 * unit.PSI), Closes: unit.Exactly(900 * unit.PSI)}
	p, err := v.Pressures(ControlState{
		TVD:     1500 * unit.Foot,
		Density: hydrostatics.Density(0.42 * unit.PSIPerFoot),
		Backing: unit.Exactly(3000 * unit.PSI),
	})
	if err != nil {
		panic(err)
	}
	fmt.Println("opens at", p.Open.Rounded(4), "- closes at", p.Closed.Rounded(4))
	// Output: opens at 4170 psi - closes at 3270 psi
}

func ExampleSafetyValve_FailSafe() {
	v := SafetyValve{Opens: psiBand(2900, 3100), Closes: unit.Band[unit.Pressure]{Least: 2000 * unit.PSI, Nominal: 2100 * unit.PSI, Greatest: 2200 * unit.PSI}}
	f, err := v.FailSafe(200*unit.PSI, v.FailSafeCases(FailSafeColumns{
		Control: hydrostatics.Density(0.42 * unit.PSIPerFoot),
		Annulus: hydrostatics.Density(0.55 * unit.PSIPerFoot),
	}))
	if err != nil {
		panic(err)
	}
	fmt.Println(f.Governing.TVD.Rounded(5), "-", f.Governing.Case.Name)
	// Output: 3272.7 ft - annulus fluid in the line, no backing
}

func ExampleGasLeak_Rate() {
	r, err := buildUp.Rate()
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.1f scf/min\n", r.Rate.In(unit.CubicFootPerMinute))
	// Output: 100.9 scf/min
}

// buildUp is a build-up from 100 to 400 psi absolute in 60 minutes, in 300 ft³ at
// 560 °R.
var buildUp = GasLeak{
	Start: 100*unit.PSI - unit.Atmosphere, End: 400*unit.PSI - unit.Atmosphere,
	StartFactor: 0.985, EndFactor: 0.95, Duration: time.Hour,
	Volume: 300 * unit.CubicFoot, Temperature: unit.Rankine(560), Standard: StandardUS(),
}

// The two unit forms of API RP 14B, 5th edition with the errata of 2010: 35.37
// °R/psi and 2.84e3 K/MPa.
func TestLeakConstants(t *testing.T) {
	us, si := StandardUS(), StandardSI()
	rankinePerPSI := us.Temperature.Rankine() / us.Pressure.In(unit.PSI)
	require.InDelta(t, 35.37, rankinePerPSI, 0.005)
	require.InDelta(t, 2.84e3, si.Constant()*float64(unit.Megapascal), 0.005e3)
	// °R is 1/1.8 K: the same constant in the other form, but for the two
	// standard states themselves.
	require.InDelta(t, us.Constant(), rankinePerPSI/1.8/float64(unit.PSI), 1e-15)
	require.InEpsilon(t, us.Constant(), si.Constant(), 0.004)

	// One cubic metre of one state is worth so much of the other: held against
	// each other the two forms are one.
	a, err := buildUp.Rate()
	require.NoError(t, err)
	other := buildUp
	other.Standard = si
	b, err := other.Rate()
	require.NoError(t, err)
	require.InDelta(t, 100.9, a.Rate.In(unit.CubicFootPerMinute), 0.05)
	// The constant as printed, 2.84e3, gives 100.6; unrounded it is 100.7.
	require.InDelta(t, 100.6, b.Rate.In(unit.CubicFootPerMinute)*2.84e3/(si.Constant()*float64(unit.Megapascal)), 0.05)
	mass := func(r LeakRate, s StandardState) float64 {
		return float64(r.Rate) * float64(s.Pressure) / s.Temperature.Kelvin()
	}
	require.InEpsilon(t, mass(a, us), mass(b, si), 1e-12)
}

func TestLeakInverse(t *testing.T) {
	r, err := buildUp.Rate()
	require.NoError(t, err)
	rise, err := buildUp.RiseAt(r.Rate)
	require.NoError(t, err)
	require.InEpsilon(t, float64(r.Rise), float64(rise), 1e-12)

	half := buildUp
	half.Duration = 30 * time.Minute
	rise, err = half.RiseAt(LeakLimitGas)
	require.NoError(t, err)
	require.InDelta(t, 23.75, rise.In(unit.PSI), 0.005)

	falling := buildUp
	falling.Start, falling.End = falling.End, falling.Start
	falling.StartFactor, falling.EndFactor = falling.EndFactor, falling.StartFactor
	r, err = falling.Rate()
	require.NoError(t, err)
	require.Negative(t, r.Rate, "gas lost above the valve")
}

// By hand: 10 bbl of liquid with 3e-6 1/psi that rises by 1,000 psi in an hour
// took in 0.03 bbl: 79.5 cm³/min.
func TestLiquidLeak(t *testing.T) {
	q := LiquidLeak(10*unit.Barrel, 3e-6*unit.PerPSI, 1000*unit.PSI, time.Hour)
	require.InEpsilon(t, 0.03*158987.294928/60, q.In(unit.CubicCentimetrePerMinute), 1e-9)
	require.Less(t, q, LeakLimitLiquid)
	require.True(t, math.IsNaN(float64(LiquidLeak(1, 1, 1, 0))))
	require.InDelta(t, 6.34, float64(LeakLimitLiquid)*3600/float64(unit.Gallon), 0.005)
}

// At its fail-safe depth the panel pressure that closes the valve is the margin
// itself; a foot deeper it is less: two functions, one balance.
func TestFailSafeDepthAgreesWithPressures(t *testing.T) {
	v := SafetyValve{Backing: LineBacked, Opens: psiBand(1500, 1700), Closes: psiBand(700, 900)}
	cases := v.FailSafeCases(FailSafeColumns{Control: 880, Annulus: 1300, Second: 800})
	require.Len(t, cases, 4)
	f, err := v.FailSafe(100*unit.PSI, cases)
	require.NoError(t, err)
	require.Equal(t, "annulus fluid in the line, second line lost", f.Governing.Case.Name)
	for _, d := range f.Cases {
		require.False(t, d.Anywhere)
		require.GreaterOrEqual(t, d.TVD, f.Governing.TVD)
		for _, deeper := range []unit.Length{0, 1 * unit.Foot} {
			depth := d.TVD + deeper
			p, err := v.Pressures(ControlState{TVD: depth, Density: d.Case.Control,
				Backing: unit.Exactly(hydrostatics.Pressure(d.Case.BackingDensity, depth))})
			if depth > maxDepth {
				continue
			}
			require.NoError(t, err)
			want := 100*unit.PSI - hydrostatics.Pressure(d.Case.Control-d.Case.BackingDensity, deeper)
			require.InDelta(t, want.In(unit.PSI), p.Closed.Least.In(unit.PSI), 1e-6)
		}
	}
	workingtest.Check(t, f.Steps())

	// A second line with the same fluid: no limit, while it is full.
	f, err = v.FailSafe(100*unit.PSI, []FailSafeCase{{Name: "balanced", Control: 880, BackingDensity: 880}, {Name: "lost", Control: 880}})
	require.NoError(t, err)
	require.True(t, f.Cases[0].Anywhere)
	require.Equal(t, "lost", f.Governing.Case.Name)

	_, err = v.FailSafe(700*unit.PSI, cases)
	require.ErrorIs(t, err, ErrNotFailSafe)
}

func TestFailSafeCases(t *testing.T) {
	c := FailSafeColumns{Control: 880, Annulus: 1300, Second: 860, Backing: 1000}
	require.Len(t, SafetyValve{Backing: TubingBacked}.FailSafeCases(c), 2)
	require.Len(t, SafetyValve{Backing: AnnulusBacked}.FailSafeCases(c), 4)
	require.Len(t, SafetyValve{Backing: Unbacked}.FailSafeCases(FailSafeColumns{Control: 880}), 1)
	annulus := SafetyValve{Backing: AnnulusBacked, Opens: psiBand(1500, 1700), Closes: psiBand(700, 900)}
	f, err := annulus.FailSafe(0, annulus.FailSafeCases(c))
	require.NoError(t, err)
	require.True(t, f.Cases[0].Anywhere, "a full annulus backs it at any depth")
	require.Equal(t, "annulus fluid in the line, annulus lost", f.Governing.Case.Name)
}

func TestKeepOpen(t *testing.T) {
	v := SafetyValve{Opens: psiBand(1700, 1800), Closes: psiBand(800, 900)}
	s := ControlState{TVD: 1500 * unit.Foot, Density: hydrostatics.Density(0.42 * unit.PSIPerFoot), Backing: psiBand(1000, 3000)}
	k, err := v.KeepOpen(4500*unit.PSI, s)
	require.NoError(t, err)
	require.InDelta(t, 330, k.FullyOpen.In(unit.PSI), 1e-6, "4,500 + 630 − 3,000 − 1,800")
	require.InDelta(t, 3330, k.Backing.In(unit.PSI), 1e-6)
	workingtest.Check(t, k.Steps())

	// The panel pressure that opens it for certain keeps it open with nothing to
	// spare.
	p, err := v.Pressures(s)
	require.NoError(t, err)
	workingtest.Check(t, p.Steps())
	k, err = v.KeepOpen(p.Open.Greatest, s)
	require.NoError(t, err)
	require.InDelta(t, 0, k.FullyOpen.In(unit.PSI), 1e-6)
	require.True(t, p.FailSafe())
	_, err = v.KeepOpen(-1, s)
	require.Error(t, err)
}

func TestSafetyRefuses(t *testing.T) {
	nan := math.NaN()
	good := SafetyValve{Opens: psiBand(1700, 1800), Closes: psiBand(800, 900)}
	for name, v := range map[string]SafetyValve{
		"backing":  {Backing: 9},
		"NaN":      {Opens: unit.Exactly(unit.Pressure(nan))},
		"crossing": {Opens: psiBand(700, 1000), Closes: psiBand(600, 800)},
		"turned":   {Closes: unit.Band[unit.Pressure]{Least: 2}},
	} {
		_, err := v.Pressures(ControlState{})
		require.Error(t, err, name)
		_, err = v.KeepOpen(0, ControlState{})
		require.Error(t, err, name)
		_, err = v.FailSafe(0, []FailSafeCase{{Control: 1000}})
		require.Error(t, err, name)
		require.NotErrorIs(t, err, ErrNotFailSafe, name)
	}
	for _, s := range []ControlState{{TVD: -1}, {Density: unit.Density(nan)}, {Backing: unit.Exactly(unit.Pressure(nan))}, {TVD: unit.Length(math.Inf(1))}} {
		_, err := good.Pressures(s)
		require.Error(t, err, "%+v", s)
	}
	for _, c := range [][]FailSafeCase{nil, {{Control: -1}}, {{BackingDensity: unit.Density(nan)}}, {{BackingSurface: -1}}} {
		_, err := good.FailSafe(0, c)
		require.Error(t, err, "%+v", c)
	}
	_, err := good.FailSafe(unit.Pressure(nan), []FailSafeCase{{Control: 1000}})
	require.Error(t, err)
	for name, change := range map[string]func(*GasLeak){
		"duration":    func(g *GasLeak) { g.Duration = 0 },
		"volume":      func(g *GasLeak) { g.Volume = 0 },
		"temperature": func(g *GasLeak) { g.Temperature = unit.Temperature{} },
		"standard":    func(g *GasLeak) { g.Standard = StandardState{} },
		"factor":      func(g *GasLeak) { g.EndFactor = 0 },
		"vacuum":      func(g *GasLeak) { g.Start = -2 * unit.Atmosphere },
		"NaN":         func(g *GasLeak) { g.End = unit.Pressure(nan) },
	} {
		g := buildUp
		change(&g)
		_, err := g.Rate()
		require.Error(t, err, name)
	}
	_, err = buildUp.RiseAt(-1)
	require.Error(t, err)
}

func TestLeakSteps(t *testing.T) {
	r, err := buildUp.Rate()
	require.NoError(t, err)
	workingtest.Check(t, r.Steps())
}

func TestBackingText(t *testing.T) {
	for b := TubingBacked; b <= Unbacked; b++ {
		text, err := b.MarshalText()
		require.NoError(t, err)
		var back Backing
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, b, back)
	}
	var b Backing
	require.Error(t, b.UnmarshalText([]byte("air")))
	_, err := Backing(9).MarshalText()
	require.Error(t, err)
}
