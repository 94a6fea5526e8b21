package controlline

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// The package's formulas typed from their statement and worked with 256 bits.

var (
	worked   = Line{OD: 0.0064, Wall: 0.0012, Length: 2900, TVD: 2750, Yield: 2.07e8, Young: 1.93e11, Poisson: 0.3, WallTolerance: 0.1}
	workedIn = LineFluid{Density: 1060, Viscosity: 0.012, Compressibility: 4.4e-10, Expansivity: 6.1e-4}
	workedOf = precise.Values{"D": 0.0064, "t": 0.0012, "L": 2900, "h": 2750, "Y": 2.07e8, "E": 1.93e11, "nu": 0.3, "rho": 1060, "mu": 0.012, "c": 4.4e-10, "af": 6.1e-4}
)

// A thick wall held at its ends (Lamé, plane strain): the bore's share of
// growth per pressure. Source: Timoshenko and Goodier, Theory of Elasticity, 1970, art. 28.
const wall = `
	d = D - 2*t
	cw = 2*(1 + nu)/E*((1 - 2*nu)*d*d + D*D)/(D*D - d*d)
`

func TestLineWorked(t *testing.T) {
	precise.Equal(t, float64(worked.Volume()), "pi/4*pow(D - 2*t, 2)*L", workedOf)
	precise.Equal(t, float64(worked.LaminarLoss(0.012, 1e-6)), "128*mu*L*1e-6/(pi*pow(D - 2*t, 4))", workedOf)
	head, err := worked.Head(workedIn)
	require.NoError(t, err)
	precise.Equal(t, float64(head), "-log(1 - c*rho*9.80665*h)/c", workedOf)
	s, err := worked.Storage(workedIn, 2e7)
	require.NoError(t, err)
	precise.Equal(t, float64(s.Fluid), "pi/4*pow(D - 2*t, 2)*L*c*2e7", workedOf)
	precise.Equal(t, float64(s.Wall), wall+"pi/4*d*d*L*cw*2e7", workedOf)
	w, err := worked.Warming(workedIn, 1.6e-5, 30)
	require.NoError(t, err)
	precise.Equal(t, float64(w.Rise), wall+"(af - 3*1.6e-5)*30/(c + cw)", workedOf)
	precise.Equal(t, float64(w.Free), wall+"(af - 3*1.6e-5)*30*pi/4*d*d*L", workedOf)
}

func TestRatingsWorked(t *testing.T) {
	r, err := worked.Ratings()
	require.NoError(t, err)
	const thin = "tw = 0.9*t\nd = D - 2*tw\nx = D/tw\n"
	precise.Equal(t, float64(r.ThinWall), thin+"tw", workedOf)
	precise.Equal(t, r.Slenderness, thin+"x", workedOf)
	precise.Equal(t, float64(r.Working), thin+"0.875*2*Y*tw/D", workedOf)
	precise.Equal(t, float64(r.YieldOpen), thin+"Y*(D*D - d*d)/sqrt(3*pow(D, 4) + pow(d, 4))", workedOf)
	precise.Equal(t, float64(r.YieldClosed), thin+"Y*(D*D - d*d)/(sqrt(3)*D*D)", workedOf)
	precise.Equal(t, float64(r.Collapse), thin+"2*Y*(x - 1)/(x*x)", workedOf)
}

// The printed limits of slenderness, grade by grade, on and above each yield
// strength. Source: API Bul 5C3 (1985), table of yield collapse pressure formula range.
func TestYieldCollapseLimitIsThePrintedTable(t *testing.T) {
	printed := []struct{ ksi, limit float64 }{{40, 16.40}, {55, 14.81}, {80, 13.38}, {95, 12.85}, {110, 12.44}, {125, 12.11}, {0, 0}}
	for i, g := range printed[:6] {
		y := unit.Pressure(g.ksi) * unit.KSI
		require.Equal(t, g.limit, yieldCollapseLimit(y))
		require.Equal(t, printed[i+1].limit, yieldCollapseLimit(y*(1+1e-12)), "above %v ksi", g.ksi)
	}
	l := worked
	l.WallTolerance, l.Yield, l.Wall = 0, 40*unit.KSI, l.OD/16.5
	r, err := l.Ratings()
	require.NoError(t, err)
	require.NotEmpty(t, r.Beyond)
	l.Wall = l.OD / 16.3
	r, err = l.Ratings()
	require.NoError(t, err)
	require.Empty(t, r.Beyond)
}

func TestResponseWorked(t *testing.T) {
	r, err := worked.Response(workedIn)
	require.NoError(t, err)
	precise.Equal(t, r.Diffusivity, wall+"d*d/(32*mu*(c + cw))", workedOf)
	precise.Within(t, 1e-9, r.Scale.Seconds(), wall+"L*L*32*mu*(c + cw)/(d*d)", workedOf) // whole nanoseconds
	precise.Within(t, 1e-8, r.Wave.Seconds(), wall+"L*sqrt(rho*(c + cw))", workedOf)
	// The series for long times, at which eight terms leave nothing out.
	long := "1 - 4/pi*(exp(-pi*pi/4*x) - exp(-9*pi*pi/4*x)/3 + exp(-25*pi*pi/4*x)/5 - exp(-49*pi*pi/4*x)/7 + exp(-81*pi*pi/4*x)/9 - exp(-121*pi*pi/4*x)/11 + exp(-169*pi*pi/4*x)/13)"
	for _, x := range []float64{0.15, 0.2999, 0.3, 0.3001, 1, 5} {
		precise.Equal(t, arrived(x), long, precise.Values{"x": x})
	}
	require.Zero(t, arrived(0))
	require.True(t, math.IsNaN(arrived(math.NaN())))
	precise.Equal(t, Response{Scale: time.Hour}.Arrived(30*time.Minute), long, precise.Values{"x": 0.5})
}

// Each limit of the inputs: on it the answer, just beyond it a fault that names it.
func TestLineLimits(t *testing.T) {
	ok := Line{OD: 0.1, Wall: 0.01, Length: 20000, TVD: 20000, Young: 1e12, Poisson: 0.5, WallTolerance: math.Nextafter(0.5, 0), Roughness: 0.04 * (1 - 1e-8), Yield: 1e12}
	require.NoError(t, ok.Validate(), "every quantity at its greatest")
	require.NoError(t, Line{OD: 0.1, Wall: 0.01, Length: 1}.Validate(), "every quantity at its least")
	const more = 1 + 1e-7
	for text, change := range map[string]func(*Line){
		"OD: is":              func(l *Line) { l.OD *= more },
		"and at most":         func(l *Line) { l.Wall = l.OD / 2 * more },
		"Length: is":          func(l *Line) { l.Length *= more },
		"TVD: is 20000.002":   func(l *Line) { l.TVD = l.Length * more },
		"Young: is":           func(l *Line) { l.Young *= more },
		"Poisson: is":         func(l *Line) { l.Poisson *= more },
		"WallTolerance: is":   func(l *Line) { l.WallTolerance = 0.5 },
		"Roughness: is":       func(l *Line) { l.Roughness = l.ID() / 2 },
		"must leave":          func(l *Line) { l.Wall = l.OD / 2 },
		"OD: is 0 ft":         func(l *Line) { l.OD = 0 },
		"Length: is 0 ft":     func(l *Line) { l.Length = 0 },
		"TVD: is":             func(l *Line) { l.TVD = -1 },
		"Poisson: is -1e-09;": func(l *Line) { l.Poisson = -1e-9 },
	} {
		l := ok
		change(&l)
		require.ErrorContains(t, l.Validate(), text)
	}
	solid := ok
	solid.Wall, solid.Roughness = solid.OD/2, 0
	require.NotContains(t, solid.Validate().Error(), "and at most", "half the OD is a fault of the bore alone")
	require.NotContains(t, solid.Validate().Error(), "roughness")
	_, err := ok.Ratings()
	require.NoError(t, err)
	ok.Yield *= more
	_, err = ok.Ratings()
	require.ErrorContains(t, err, "Yield: is")

	q := LineFluid{Density: 3000, Viscosity: 100, Compressibility: 1e-8, Expansivity: 0.01}
	require.NoError(t, q.Validate(), "every quantity at its greatest")
	for text, change := range map[string]func(*LineFluid){
		"Density: is": func(q *LineFluid) { q.Density *= more }, "Viscosity: is": func(q *LineFluid) { q.Viscosity *= more },
		"Compressibility: is": func(q *LineFluid) { q.Compressibility *= more }, "Expansivity: is": func(q *LineFluid) { q.Expansivity *= more },
	} {
		l := q
		change(&l)
		require.ErrorContains(t, l.Validate(), text)
	}
	deep := Line{OD: 0.1, Wall: 0.01, Length: 20000, TVD: 2000}
	half := LineFluid{Density: 0.5 / (9.80665 * 2000 * 1e-8), Viscosity: 1, Compressibility: 1e-8}
	half.Density *= 1 - 1e-9
	_, err = deep.Head(half)
	require.NoError(t, err)
	half.Density *= 1 + 2e-9
	_, err = deep.Head(half)
	require.ErrorContains(t, err, "Liquid.Compressibility: is")

	within := LineFluid{Density: 800, Viscosity: 1, Compressibility: 1e-10}
	for _, rise := range []unit.TemperatureDifference{-1000, 1000} {
		_, err = deep.Warming(within, 0.01, rise)
		require.NoError(t, err)
		_, err = deep.Warming(within, 0.01, rise*(1+1e-9))
		require.ErrorContains(t, err, "must be from -1800 degF to 1800 degF")
	}
	for _, expansivity := range []unit.Expansivity{-1e-12, 0.01 * more} {
		_, err = deep.Warming(within, expansivity, 1)
		require.ErrorContains(t, err, "must be from 0 1/degF to 0.00555556 1/degF")
	}
	_, err = deep.Storage(within, unit.Pressure(math.Inf(1)))
	require.ErrorContains(t, err, "rise: is")
	_, err = deep.RateAt(within, 1e12*more)
	require.ErrorContains(t, err, "drive: is")

	stiff := deep
	stiff.Young = 2e11
	_, err = stiff.Warming(LineFluid{Density: 800, Viscosity: 1}, 0, 1)
	require.NoError(t, err, "the wall alone gives")
	_, err = deep.Warming(LineFluid{Density: 800, Viscosity: 1}, 0, 1)
	require.ErrorContains(t, err, "neither liquid nor wall gives")
}

func TestSecondsLimits(t *testing.T) {
	for _, s := range []float64{0, 8.9999999e9} {
		_, err := seconds(s)
		require.NoError(t, err)
	}
	for _, s := range []float64{-1e-9, 9e9, math.NaN()} {
		_, err := seconds(s)
		require.ErrorContains(t, err, "must be from 0 s to 9e9 s")
	}
}

// A reading exactly on the border between two findings.
func TestDiagnoseBorders(t *testing.T) {
	s := Shift{Swept: 8, Displaced: 4} // in eighths, so that sums are exact
	for unitName, scale := range map[string]unit.Volume{"1/8192 m³": 1.0 / 8192} {
		s := Shift{Swept: s.Swept * scale, Displaced: s.Displaced * scale}
		plan := ShiftPlan{Held: 2 * scale}
		d, err := s.Diagnose(plan, Reading{Pumped: 10 * scale, Returned: 3 * scale, Uncertainty: 0})
		require.NoError(t, err)
		require.Equal(t, 0.75, d.Stroke, unitName)
		require.Equal(t, Losing, d.Finding)
		for _, c := range []struct {
			pumped, returned, uncertainty unit.Volume
			want                          Finding
		}{
			{10, 4, 2, CannotTell}, {10, 4, 2 - 1e-7, Shifted}, // twice the uncertainty against the stroke
			{13, 4, 1, Shifted}, {13 + 1e-7, 4, 1, Losing}, // unbalance of 3 = u·(1 + swept/displaced)
			{7, 4, 1, Shifted}, {7 - 1e-7, 4, 1, Gaining},
			{12, 5, 1, Shifted}, {12.5, 5.25, 1, PassingBy},
			{3, 1, 1, NotMoved}, {3, 1.125, 1, PartStroke}, {3.25, 1, 1, PartStroke},
			{8, 3, 1, Shifted}, {8, 2.875, 1, PartStroke},
		} {
			d, err := s.Diagnose(plan, Reading{Pumped: c.pumped * scale, Returned: c.returned * scale, Uncertainty: c.uncertainty * scale})
			require.NoError(t, err)
			require.Equal(t, c.want, d.Finding, "%+v", c)
		}
	}
	require.Equal(t, "finding 7", Finding(7).String())
	_, err := Finding(7).MarshalText()
	require.EqualError(t, err, "controlline: finding is 7; must be a known one")
}

func TestShiftLimits(t *testing.T) {
	l := Line{OD: 0.0064, Wall: 0.0012, Length: 100, TVD: 100}
	ok := Shift{Feed: l, Vent: l, Liquid: LineFluid{Density: 900, Viscosity: 0.01, Compressibility: 5e-10}, Pump: 1e7, Move: 5e6, Swept: 1, Displaced: 1}
	require.NoError(t, ok.Validate(), "1000 L")
	for text, change := range map[string]func(*Shift){
		"Swept: is":            func(s *Shift) { s.Swept *= 1 + 1e-7 },
		"Displaced: is":        func(s *Shift) { s.Displaced *= 1 + 1e-7 },
		"Displaced: is -0.001": func(s *Shift) { s.Displaced = -1e-9 },
		"Pump: is":             func(s *Shift) { s.Pump = 1e12 * (1 + 1e-7) },
	} {
		s := ok
		change(&s)
		require.ErrorContains(t, s.Validate(), text)
	}
	one := ok
	one.Swept, one.Displaced = 0.001, 0 // nothing returns: the feed line alone loses pressure
	p, err := one.Plan()
	require.NoError(t, err)
	require.Zero(t, p.VentLoss)
	precise.Within(t, 1e-9, float64(p.Rate), "5e6*pi*pow(0.004, 4)/(128*0.01*100)", nil)
	still := ok
	still.Move = 1e7
	_, err = still.Plan()
	require.ErrorIs(t, err, ErrNoShift, "no drive is no shift")
	rigid := one
	rigid.Liquid.Compressibility = 0
	p, err = rigid.Plan()
	require.NoError(t, err)
	require.Zero(t, p.Delay)
	half := one // share of 1/2 arrives in the feed line's response time
	half.Feed.Length = 3000
	p, err = half.Plan()
	require.NoError(t, err)
	r, err := half.Feed.Response(half.Liquid)
	require.NoError(t, err)
	require.InDelta(t, 0.5, r.Arrived(p.Delay), 1e-6)

	_, err = Shift{Feed: l, Vent: l, Liquid: ok.Liquid, Pump: 1234567, Back: 3456789, Move: 2345678, Swept: 1, Displaced: 1}.Plan()
	require.EqualError(t, err, "controlline: the pressure doesn't move it: -322.3 psi at the device of 340.2 psi needed; the panel must hold more than 841.6 psi")
}
