package confined

import (
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
		"Reference: is": {LinearLiquid{Reference: 10_000 * more}, 0, 0}, "Reference: is 0.00834540361747897": {LinearLiquid{Reference: 1 / more}, 0, 0},
		"Compressibility: is": {LinearLiquid{Reference: 1000, Compressibility: 1e-6 * more}, 0, 0},
		"Expansivity: is":     {LinearLiquid{Reference: 1000, Expansivity: 0.01 * more}, 0, 0}, "Expansivity: is -0.010000001": {LinearLiquid{Reference: 1000, Expansivity: -0.01 * more}, 0, 0},
		"exponent of the density: is 2.0000001999999997;": {LinearLiquid{Reference: 1000, Compressibility: 1e-6}, 2e6 * more, 0},
		"exponent of the density: is":                     {LinearLiquid{Reference: 1000, Expansivity: 0.01}, 0, 200 * more},
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
		"Space.Outer.OD: is 10000.001":                  func(t *Trapped) { t.Space.Outer.OD *= more },
		"Space.Outer.OD: is":                            func(t *Trapped) { t.Space.Outer = narrow; t.Space.Outer.OD /= more },
		"Space.Outer.ID: is":                            func(t *Trapped) { t.Space.Outer.ID = 10 * (1 - 0.9e-6) },
		"Space.Outer.Young: is 10000001":                func(t *Trapped) { t.Space.Outer.Young *= more },
		"Space.Outer.Young: is":                         func(t *Trapped) { t.Space.Outer.Young = 1e6 / more },
		"Space.Outer.Poisson: is":                       func(t *Trapped) { t.Space.Outer.Poisson *= more },
		"Space.Outer.Expansion: is":                     func(t *Trapped) { t.Space.Outer.Expansion *= more },
		"Space.Inner.OD: is":                            func(t *Trapped) { i := near; i.OD = 9.99998 * (1 - 0.9e-6); t.Space.Inner = &i },
		"Space.Ends: is":                                func(t *Trapped) { t.Space.Ends = 3 },
		"Space.Ends: is -1;":                            func(t *Trapped) { t.Space.Ends = -1 },
		"Fills: has 101 fills; must have from 1 to 100": func(t *Trapped) { t.Fills = append(append([]Fill(nil), full.Fills...), fill) },
		"Fills: has 0 fills; must have from 1 to 100":   func(t *Trapped) { t.Fills = nil },
		"must be above 0 bbl and at most 6289811 bbl":   func(t *Trapped) { f := fill; f.Volume *= more; t.Fills = []Fill{f} },
		"Fills[0].From: is":                             func(t *Trapped) { f := fill; f.From = unit.Kelvin(100 / more); t.Fills = []Fill{f} },
		"Fills[0].To: is":                               func(t *Trapped) { f := fill; f.To = unit.Kelvin(1500 * more); t.Fills = []Fill{f} },
		"Pressure: is":                                  func(t *Trapped) { t.Pressure *= more },
		"HeatOuter: is":                                 func(t *Trapped) { t.HeatOuter *= more },
		"HeatOuter: is -1000.0001":                      func(t *Trapped) { t.HeatOuter = -1000 * more },
		"HeatInner: is":                                 func(t *Trapped) { t.HeatInner = 1000 * more },
		"HeatInner: is -1800.00018":                     func(t *Trapped) { t.HeatInner *= more },
		"Squeeze: is 6.289811399413182e+06":             func(t *Trapped) { t.Squeeze *= more },
		"Squeeze: is":                                   func(t *Trapped) { t.Squeeze = -1e6 * more },
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
		"Temperature: is":               func(u *PressureUp) { u.Temperature = unit.Kelvin(100 / more) },
		"Temperature: is 2240.33027":    func(u *PressureUp) { u.Temperature = unit.Kelvin(1500 * more) },
		"Supply: is -279.6700179999982": func(u *PressureUp) { u.Supply = unit.Kelvin(100 / more) },
		"Supply: is":                    func(u *PressureUp) { u.Supply = unit.Kelvin(1500 * more) },
		"must differ":                   func(u *PressureUp) { u.To = 0 },
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
		"at least two":              {sample(0, 0, 0)},
		"[0].At: is":                {sample(-1e9*more, 0, 300), sample(0, 0, 300)},
		"[1].At: is":                {sample(0, 0, 300), sample(1e9*more, 0, 300)},
		"[1].At: is 1s;":            {sample(1, 0, 300), sample(1, 0, 300)},
		"[1].Pressure: is":          {sample(0, 0, 300), sample(1, 2e9*more, 300)},
		"[0].Pressure: is":          {sample(0, -1, 300), sample(1, 0, 300)},
		"[0].Temperature: is":       {sample(0, 0, 100/more), sample(1, 0, 300)},
		"[1].Temperature: is":       {sample(0, 0, 100), sample(1, 0, 1500*more)},
		"[1].Temperature: is given": {sample(0, 0, 300), {At: time.Second}},
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
		"Criterion.Hold: is": func(p *PressureTest) { p.Criterion.Hold += time.Second }, "Criterion.Hold: is 999.999999ms;": func(p *PressureTest) { p.Criterion.Hold = time.Second - 1 },
		"MostDecline": func(p *PressureTest) { p.Criterion.MostDecline = more }, "PerDegree: is": func(p *PressureTest) { p.PerDegree *= more },
		"PerDegree: is -1000000100": func(p *PressureTest) { p.PerDegree *= -more }, "Target: is": func(p *PressureTest) { p.Target *= more }, "Resolution: is": func(p *PressureTest) { p.Resolution *= more },
		"Start: is": func(p *PressureTest) { p.Start = 100 * time.Second }, "Start: is -1ns;": func(p *PressureTest) { p.Start = -1 },
		"Criterion: is": func(p *PressureTest) { p.PerDegree, p.Criterion.AfterTemperature = 0, true },
		"Criterion: is \"\",": func(p *PressureTest) {
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
