package confined

import (
	"math"
	"strings"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

var (
	workedLiquid = LinearLiquid{Reference: 1100, Pressure: 2e6, Temperature: unit.Kelvin(300), Compressibility: 4.2e-10, Expansivity: 5.1e-4}
	workedOuter  = Tube{OD: 0.2445, ID: 0.2205, Young: 2.06e11, Poisson: 0.3, Expansion: 1.24e-5}
	workedInner  = Tube{OD: 0.1143, ID: 0.1005, Young: 2.1e11, Poisson: 0.28, Expansion: 1.2e-5}
	workedOf     = precise.Values{"D": 0.2445, "d": 0.2205, "E": 2.06e11, "nu": 0.3, "al": 1.24e-5, "D2": 0.1143, "d2": 0.1005, "E2": 2.1e11, "nu2": 0.28, "al2": 1.2e-5}
)

// Thick walls by Lamé (Timoshenko and Goodier, Theory of Elasticity, 1970, art. 28):
// pressure inside and outside, ends fixed, open and closed.
const lame = `
	a = d*d
	b = D*D
	open = (2*((b + a)/(b - a) + nu) - nu*2*a/(b - a))/E
	closed = (2*((b + a)/(b - a) + nu - nu*a/(b - a)) + a/(b - a) - nu*2*a/(b - a))/E
	fixed = 2*(1 + nu)*(b + (1 - 2*nu)*a)/(E*(b - a))
	a2 = d2*d2
	b2 = D2*D2
	out = 2*(1 + nu2)*(a2 + (1 - 2*nu2)*b2)/(E2*(b2 - a2))
`

func TestWallsWorked(t *testing.T) {
	precise.Equal(t, float64(workedOuter.BoreCompliance(EndsFixed)), lame+"fixed", workedOf)
	precise.Equal(t, float64(workedOuter.BoreCompliance(EndsOpen)), lame+"open", workedOf)
	precise.Equal(t, float64(workedOuter.BoreCompliance(EndsClosed)), lame+"closed", workedOf)
	precise.Equal(t, float64(workedInner.OutsideCompliance(EndsFixed)), lame+"out", workedOf)
	annulus := Space{Outer: workedOuter, Inner: &workedInner}
	precise.Equal(t, float64(annulus.Compliance()), lame+"(a*fixed + b2*out)/(a - b2)", workedOf)
	precise.Equal(t, annulus.Expansion(30, 45), lame+"(a*2*(1 + nu)*al*30 - b2*2*(1 + nu2)*al2*45)/(a - b2)", workedOf)
	precise.Equal(t, Space{Outer: workedOuter, Ends: EndsOpen}.Expansion(30, 45), "3*al*30", workedOf)
	precise.Equal(t, float64(annulus.Area()), "pi/4*(d*d - D2*D2)", workedOf)
	for i, name := range []string{"fixed", "open", "closed"} {
		require.Equal(t, name, Ends(i).String())
	}
	require.Equal(t, []string{"unknown", "unknown"}, []string{Ends(-1).String(), Ends(3).String()})
}

// What is pumped and bled, from density and walls by conservation of mass.
func TestPumpedWorked(t *testing.T) {
	u := PressureUp{Space: Space{Outer: workedOuter}, Fluid: workedLiquid, Volume: 40, From: 1e6, To: 3e7, Temperature: unit.Kelvin(340), Supply: unit.Kelvin(295)}
	p, err := u.Solve()
	require.NoError(t, err)
	const terms = lame + `
		r1 = exp(4.2e-10*(1e6 - 2e6) - 5.1e-4*40)
		r2 = exp(4.2e-10*(3e7 - 2e6) - 5.1e-4*40)
		rs = exp(4.2e-10*(0 - 2e6) + 5.1e-4*5)
	`
	precise.Within(t, 1e-11, float64(p.Volume), terms+"40*(r2*(1 + fixed*2.9e7) - r1)/rs", workedOf)
	precise.Within(t, 1e-11, float64(p.Compression), terms+"40*(1 - r1/r2)", workedOf)
	precise.Within(t, 1e-11, float64(p.Ballooning), terms+"40*fixed*2.9e7", workedOf)
	precise.Within(t, 1e-11, p.Stretch, terms+"fixed*2.9e7", workedOf)
	precise.Within(t, 1e-11, p.PerVolume, terms+"2.9e7*rs/(40*(r2*(1 + fixed*2.9e7) - r1))", workedOf)

	rho, err := workedLiquid.Density(3e7, unit.Kelvin(340))
	require.NoError(t, err)
	precise.Equal(t, float64(rho), "1100*exp(4.2e-10*(3e7 - 2e6) - 5.1e-4*40)", nil)

	trap := Trapped{Space: Space{Outer: workedOuter}, Fills: []Fill{{Name: "brine", Fluid: workedLiquid, Volume: 40, From: unit.Kelvin(300), To: unit.Kelvin(340)}}, Pressure: 5e6, HeatOuter: 35, Squeeze: 0.01}
	o, err := trap.Solve()
	require.NoError(t, err)
	// the mass balance holds at the answer
	of := precise.Values{"p": float64(o.After)}
	for k, v := range workedOf {
		of[k] = v
	}
	precise.Within(t, 1e-12, 40, lame+"m = 40*exp(4.2e-10*3e6)\nv = m/exp(4.2e-10*(p - 2e6) - 5.1e-4*40)\nv - 40*(fixed*(p - 5e6) + 2*(1 + nu)*al*35) + 0.01", of)
	precise.Within(t, 1e-9, float64(o.FluidExpansion), "40*(exp(5.1e-4*40) - 1)", nil)
	precise.Within(t, 1e-11, float64(o.WallExpansion), "40*2*(1 + nu)*al*35", workedOf)
	precise.Within(t, 1e-11, float64(o.Ballooning), lame+"40*fixed*(p - 5e6)", of)
	precise.Within(t, 1e-9, float64(o.Compression), lame+"40*(exp(5.1e-4*40) - 1) - 40*2*(1 + nu)*al*35 - 40*fixed*(p - 5e6) + 0.01", of)
	bled, err := trap.BleedVolume(1e6)
	require.NoError(t, err)
	precise.Within(t, 1e-9, float64(bled), lame+"40*exp(4.2e-10*4e6 + 5.1e-4*40) - 40*(1 - fixed*4e6) - 40*2*(1 + nu)*al*35 + 0.01", workedOf)
}

// Criteria as their sources print them: time of hold and greatest decline.
func TestPresetsAsPrinted(t *testing.T) {
	printed := map[string]struct {
		hold    time.Duration
		decline float64
	}{
		"us-offshore-casing": {30 * 60e9, 0.1}, "alaska-injection": {30 * 60e9, 0.1}, "alabama-cavity": {86400e9, 0.03},
		"packer-liquid": {15 * 60e9, 0.01}, "barrier-low": {300e9, 0}, "barrier-high": {600e9, 0},
	}
	require.Len(t, Presets(), len(printed))
	for _, c := range Presets() {
		require.Equal(t, printed[c.Name].hold, c.Hold, c.Name)
		require.Equal(t, printed[c.Name].decline, c.MostDecline, c.Name)
	}
}

// Rates by least squares, worked by hand: samples at 0, 1, 2, 3, 4 h fall by 10, 6,
// 2, 1 kPa.
func TestRatesByHand(t *testing.T) {
	var r Record
	for h, kPa := range []float64{1000, 990, 984, 982, 981} {
		r = append(r, Sample{At: time.Duration(h) * time.Hour, Pressure: unit.Pressure(kPa * 1000)})
	}
	test := PressureTest{Record: r, Criterion: Criterion{Name: "own", Hold: 4 * time.Hour, MostDecline: 0.019}}
	j, err := test.Judge()
	require.NoError(t, err)
	// Σ(x−2)·p = −2·1000 − 990 + 982 + 2·981 = −46; over Σ(x−2)² = 10: falls 4.6 an hour
	require.InDelta(t, 4600, float64(j.PerHour), 1e-6)
	// first half (0, 1, 2): (1000 − 984)/2; second (2, 3, 4): (984 − 981)/2
	require.InDelta(t, 8000, float64(j.Early), 1e-6)
	require.InDelta(t, 1500, float64(j.Late), 1e-6)
	// residuals off 987.4 − 4.6(x−2): 3.4, −2, −3.4, −0.8, 2.8: squares 11.56+4+11.56+0.64+7.84 = 35.6
	require.InDelta(t, math.Sqrt(35.6/3/10)*1000, float64(j.PerHourError), 1e-6)
	// errors of the halves: residuals 2/3, −4/3, 2/3 over 2: √(8/3/2); and 1/6, −1/3, 1/6: √(1/6/2)
	require.Greater(t, 6.5, 2*math.Hypot(math.Sqrt(8.0/3/2), math.Sqrt(1.0/6/2)), "slower by more than two standard errors")
	require.Equal(t, TrendSlowing, j.Trend)
	require.Equal(t, Passed, j.Verdict, "19 kPa of 1,000 at 1.9 %")
	test.Criterion.MostDecline = 0.018999
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, Failed, j.Verdict)
	require.InDelta(t, 0.019, j.Decline, 1e-12)
	require.Equal(t, "the criterion given", j.Source)

	test.Start = time.Hour
	test.Criterion.Hold = 2 * time.Hour
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, []float64{990e3, 982e3, 8e3}, []float64{float64(j.Start), float64(j.End), float64(j.Fall)})
	require.InDelta(t, 4000, float64(j.PerHour), 1e-6)
	require.InDelta(t, 6000, float64(j.Early), 1e-6, "two samples in each half are enough")
	require.InDelta(t, 2000, float64(j.Late), 1e-6)
	require.Equal(t, TrendSlowing, j.Trend)
	test.Resolution = 2001 // kPa can't be told within half the hold: 2·2001 Pa over an hour
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendSteady, j.Trend)
	test.Resolution = 1999
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendSlowing, j.Trend)
	test.Criterion.Hold = time.Hour
	test.Resolution = 0
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendUnknown, j.Trend)

	rising := PressureTest{Record: Record{{At: 0, Pressure: 1e6}, {At: time.Hour, Pressure: 1e6}, {At: 2 * time.Hour, Pressure: 1.001e6}}, Criterion: Criterion{Name: "own", Hold: 2 * time.Hour}}
	j, err = rising.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendRising, j.Trend)
	require.Contains(t, strings.Join(j.Reasons, "; "), "the pressure rises")
	rising.Resolution = 1001
	j, err = rising.Judge()
	require.NoError(t, err)
	require.NotEqual(t, TrendRising, j.Trend, "a gauge of 1 kPa can't tell")
	for _, bad := range []Trend{-1, 5} {
		require.Contains(t, bad.String(), "Trend(")
	}
	for _, bad := range []TestVerdict{-1, TestVerdict(len(verdictNames))} {
		require.Contains(t, bad.String(), "Verdict(")
	}
	require.Equal(t, verdictNames[0], TestVerdict(0).String())
	require.Equal(t, []string{"unknown", "rising"}, []string{TrendUnknown.String(), TrendRising.String()})
}

// Each limit of the inputs: on it the answer, just beyond it a fault that names it.
func TestConfinedLimits(t *testing.T) {
	const more = 1 + 1e-7
	ok := LinearLiquid{Reference: 10_000, Temperature: unit.Kelvin(300), Compressibility: 1e-6, Expansivity: 0.01}
	for _, at := range [][2]float64{{2e6, 300}, {0, 100}, {0, 500}} {
		_, err := ok.Density(unit.Pressure(at[0]), unit.Kelvin(at[1]))
		require.NoError(t, err, "at the greatest of everything, the exponent at 2")
	}
	least := LinearLiquid{Reference: 1, Temperature: unit.Kelvin(300), Expansivity: -0.01}
	_, err := least.Density(0, unit.Kelvin(300))
	require.NoError(t, err)
	for text, c := range map[string]struct {
		LinearLiquid
		p, k float64
	}{
		"Reference: is": {LinearLiquid{Reference: 10_000 * more}, 0, 0}, "Reference: is ": {LinearLiquid{Reference: 1 / more}, 0, 0},
		"Compressibility: is": {LinearLiquid{Reference: 1000, Compressibility: 1e-6 * more}, 0, 0},
		"Expansivity: is ":    {LinearLiquid{Reference: 1000, Expansivity: 0.01 * more}, 0, 0}, "Expansivity: is -": {LinearLiquid{Reference: 1000, Expansivity: -0.01 * more}, 0, 0},
		"exponent of the density: is 2.0000001999999997; must be from -2 to 2": {LinearLiquid{Reference: 1000, Compressibility: 1e-6}, 2e6 * more, 0},
		"exponent of the density: is -2.0000002; must be from -2 to 2":         {LinearLiquid{Reference: 1000, Expansivity: 0.01}, 0, 200 * more},
	} {
		_, err := c.LinearLiquid.Density(unit.Pressure(c.p), unit.Kelvin(c.k))
		require.ErrorContains(t, err, text)
	}

	wide := Tube{OD: 10, ID: 9.99998, Young: 1e13, Poisson: 0.5, Expansion: 1e-3}
	narrow := Tube{OD: 1e-4, ID: 1e-5, Young: 1e6}
	fill := Fill{Name: "brine", Fluid: LinearLiquid{Reference: 1000, Compressibility: 1e-10}, Volume: 1e6, From: unit.Kelvin(100), To: unit.Kelvin(1500)}
	trapped := Trapped{Space: Space{Outer: wide}, Fills: []Fill{fill}, Pressure: 2e9, HeatOuter: 1000, HeatInner: -1000, Squeeze: 1e6}
	require.NoError(t, trapped.Validate())
	other := trapped
	other.Space.Outer, other.HeatOuter, other.HeatInner, other.Squeeze = narrow, -1000, 1000, -1e6
	require.NoError(t, other.Validate())
	full := trapped
	for len(full.Fills) < 100 {
		full.Fills = append(full.Fills, fill)
	}
	require.NoError(t, full.Validate())
	near := wide
	near.OD, near.ID = 9.99998*(1-2e-6), 9
	nested := trapped
	nested.Space.Inner = &near
	require.NoError(t, nested.Validate())
	for text, change := range map[string]func(*Trapped){
		"Space.Outer.OD: is":          func(t *Trapped) { t.Space.Outer.OD *= more },
		"Space.Outer.OD: is ":         func(t *Trapped) { t.Space.Outer = narrow; t.Space.Outer.OD /= more },
		"Space.Outer.ID: is":          func(t *Trapped) { t.Space.Outer.ID = 10 * (1 - 0.9e-6) },
		"Space.Outer.Young: is ":      func(t *Trapped) { t.Space.Outer.Young *= more },
		"Space.Outer.Young: is":       func(t *Trapped) { t.Space.Outer.Young = 1e6 / more },
		"Space.Outer.Poisson: is 0.5": func(t *Trapped) { t.Space.Outer.Poisson *= more },
		"Space.Outer.Expansion: is":   func(t *Trapped) { t.Space.Outer.Expansion *= more },
		"Space.Inner.OD: is":          func(t *Trapped) { i := near; i.OD = 9.99998 * (1 - 0.9e-6); t.Space.Inner = &i },
		"Space.Ends: is 3":            func(t *Trapped) { t.Space.Ends = 3 },
		"Space.Ends: is -1":           func(t *Trapped) { t.Space.Ends = -1 },
		"has 101 fills":               func(t *Trapped) { t.Fills = append(append([]Fill(nil), full.Fills...), fill) },
		"has 0 fills":                 func(t *Trapped) { t.Fills = nil },
		"Volume: is":                  func(t *Trapped) { f := fill; f.Volume *= more; t.Fills = []Fill{f} },
		".From: is":                   func(t *Trapped) { f := fill; f.From = unit.Kelvin(100 / more); t.Fills = []Fill{f} },
		".To: is":                     func(t *Trapped) { f := fill; f.To = unit.Kelvin(1500 * more); t.Fills = []Fill{f} },
		"Pressure: is":                func(t *Trapped) { t.Pressure *= more },
		"HeatOuter: is":               func(t *Trapped) { t.HeatOuter *= more },
		"HeatOuter: is -":             func(t *Trapped) { t.HeatOuter = -1000 * more },
		"HeatInner: is":               func(t *Trapped) { t.HeatInner = 1000 * more },
		"HeatInner: is -":             func(t *Trapped) { t.HeatInner *= more },
		"Squeeze: is":                 func(t *Trapped) { t.Squeeze *= more },
		"Squeeze: is -":               func(t *Trapped) { t.Squeeze = -1e6 * more },
	} {
		c := trapped
		change(&c)
		require.ErrorContains(t, c.Validate(), text)
	}

	up := PressureUp{Space: Space{Outer: workedOuter}, Fluid: workedLiquid, Volume: 1e6, From: 0, To: 1e8, Temperature: unit.Kelvin(300), Supply: unit.Kelvin(300)}
	_, err = up.Solve()
	require.NoError(t, err)
	for text, change := range map[string]func(*PressureUp){
		"Volume: is": func(u *PressureUp) { u.Volume *= more }, "From: is": func(u *PressureUp) { u.From = 2e9 * more }, "To: is": func(u *PressureUp) { u.To = 2e9 * more },
		"Temperature: is":  func(u *PressureUp) { u.Temperature = unit.Kelvin(100 / more) },
		"Temperature: is ": func(u *PressureUp) { u.Temperature = unit.Kelvin(1500 * more) },
		"Supply: is":       func(u *PressureUp) { u.Supply = unit.Kelvin(100 / more) },
		"Supply: is ":      func(u *PressureUp) { u.Supply = unit.Kelvin(1500 * more) },
		"must differ":      func(u *PressureUp) { u.To = 0 },
	} {
		c := up
		change(&c)
		_, err := c.Solve()
		require.ErrorContains(t, err, text)
	}

	sample := func(s float64, p unit.Pressure, k float64) Sample {
		return Sample{At: time.Duration(s * 1e9), Pressure: p, Temperature: unit.Kelvin(k)}
	}
	require.NoError(t, Record{sample(-1e9, 0, 100), sample(1e9, 2e9, 1500)}.Validate())
	for text, r := range map[string]Record{
		"at least two": {sample(0, 0, 0)},
		".At: is -":    {sample(-1e9*more, 0, 300), sample(0, 0, 300)},
		"must be from -277777h46m40s to 277777h46m40s": {sample(0, 0, 300), sample(1e9*more, 0, 300)},
		"must be after the sample before it":           {sample(1, 0, 300), sample(1, 0, 300)},
		"[1].Pressure: is 2000000.2 kPa":               {sample(0, 0, 300), sample(1, 2e9*more, 300)},
		".Pressure: is -":                              {sample(0, -1, 300), sample(1, 0, 300)},
		".Temperature: is":                             {sample(0, 0, 100/more), sample(1, 0, 300)},
		"[1].Temperature: is":                          {sample(0, 0, 100), sample(1, 0, 1500*more)},
		"must be in all or in none":                    {sample(0, 0, 300), {At: time.Second}},
	} {
		require.ErrorContains(t, r.Validate(), text)
	}
	bad := make(Record, 30)
	for i := range bad {
		bad[i] = sample(float64(i), -1, 300)
	}
	require.Equal(t, 10, strings.Count(bad.Validate().Error(), "Pressure"), "ten faults are enough")
	for _, x := range []string{"1e9", "-1e9"} {
		_, err := readTime(x, "s")
		require.NoError(t, err)
	}
	for _, x := range []string{"1.0000001e9", "-1.0000001e9", "NaN"} {
		_, err := readTime(x, "s")
		require.ErrorContains(t, err, "more than a record can span")
	}
	_, err = ReadRecord(strings.NewReader("time/s,pressure/psi\n" + strings.Repeat("x,1\n", 30)))
	require.Equal(t, 10, strings.Count(err.Error(), "line "))

	test := PressureTest{Record: Record{sample(0, 1e6, 300), sample(100, 1e6, 300)}, Criterion: Criterion{Hold: 1e7 * time.Second, MostDecline: 1}, PerDegree: 1e9, Target: 2e9, Resolution: 2e9}
	require.NoError(t, test.Validate())
	for text, change := range map[string]func(*PressureTest){
		"Criterion.Hold: is": func(p *PressureTest) { p.Criterion.Hold += time.Second }, "Criterion.Hold: is ": func(p *PressureTest) { p.Criterion.Hold = time.Second - 1 },
		"MostDecline": func(p *PressureTest) { p.Criterion.MostDecline = more }, "PerDegree: is 1000000100 Pa/K": func(p *PressureTest) { p.PerDegree *= more },
		"PerDegree: is -1000000100 Pa/K": func(p *PressureTest) { p.PerDegree *= -more }, "Target: is": func(p *PressureTest) { p.Target *= more }, "Resolution: is": func(p *PressureTest) { p.Resolution *= more },
		"Start: is 1m40s": func(p *PressureTest) { p.Start = 100 * time.Second }, "Start: is -": func(p *PressureTest) { p.Start = -1 },
		"Criterion: is": func(p *PressureTest) { p.PerDegree, p.Criterion.AfterTemperature = 0, true },
		"must have recorded temperatures": func(p *PressureTest) {
			p.Criterion.AfterTemperature = true
			p.Record = Record{{Pressure: 1e6}, {At: 100 * time.Second, Pressure: 1e6}}
		},
	} {
		c := test
		change(&c)
		require.ErrorContains(t, c.Validate(), text)
	}
	test.Criterion.Hold = time.Second
	test.PerDegree *= -1
	require.NoError(t, test.Validate())
}
