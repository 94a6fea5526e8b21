package movement_test

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// snug is a string with no room to buckle, so that a pencil suffices: 4-1/2 in 12.6
// lb/ft to 9,000 ft, packers at 5,000 and 8,000 ft, seals at the lower end.
func snug(t testing.TB) movement.Assembly {
	a := handAssembly(t)
	a.Sections[0].Hole = handPipe.OD
	a.Holds = []movement.Hold{{MD: 5000 * unit.Foot}, {MD: 8000 * unit.Foot}}
	a.Seals = []movement.Seal{{MD: endAt, Bore: handPipe.OD, Up: 2 * unit.Foot, Down: 4 * unit.Foot, Length: 5 * unit.Foot, Friction: 800 * unit.PoundForce}}
	a.Joints = nil
	return a
}

// warm is water everywhere at a temperature, of four parts outside.
func warm(f float64) movement.Conditions {
	column := func(d unit.Length) unit.Pressure { return hydrostatics.Pressure(8.5*unit.PoundPerGallon, d) }
	return movement.Conditions{
		Inside:      func(_ int, d unit.Length) unit.Pressure { return column(d) },
		Outside:     func(_ int, d unit.Length) unit.Pressure { return column(d) },
		Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(f) },
	}
}

// TestTwoPackersAndSeals: both packers take hold at 100 degF, then all cools to 60.
// Above the lower packer nothing can shorten: 40 × 207 psi of tension, 3.600 in²:
// 29,811 lbf all along, which the hanger feels, the upper packer does not (as much
// above as below), the lower one wholly. Below it the 1,000 ft shorten by 40 ×
// 6.9e-6 × 12,000 in = 3.312 in, and the seals come up so far.
func TestTwoPackersAndSeals(t *testing.T) {
	m := made(t, snug(t))
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	for place := range 2 {
		s, err = m.TakeHold(s, place, warm(100))
		require.NoError(t, err)
		require.True(t, s.Holds(place))
	}
	l, err := m.Load(s, warm(60))
	require.NoError(t, err)
	steel := inch2(handPipe.OD) - inch2(handPipe.ID)
	force := 40 * 207 * steel
	require.InDelta(t, 29811, force, 5)
	require.InDelta(t, force, lbf(l.Holds[1].Load), 1e-3)
	require.InDelta(t, 0, lbf(l.Holds[0].Load), 1e-3)
	require.InDelta(t, 9000*buoyed()+force, lbf(l.HangerLoad), 1e-2)
	require.InDelta(t, -3.312, l.Seals[0].Travel.In(unit.Inch), 1e-6)
	require.InDelta(t, 24-3.312, l.Seals[0].Engaged.In(unit.Inch), 1e-6)
	require.InDelta(t, 48+3.312, l.Seals[0].ToShoulder.In(unit.Inch), 1e-6)
	require.InDelta(t, l.EndMoved.In(unit.Inch), l.Seals[0].Travel.In(unit.Inch), 1e-9)
	// The upper one lets go: the whole length above the lower one is as tight as
	// before. Both let go: all shortens, 29.808 in.
	s, err = m.LetGo(s, 0)
	require.NoError(t, err)
	l, err = m.Load(s, warm(60))
	require.NoError(t, err)
	require.InDelta(t, force, lbf(l.Holds[1].Load), 1e-3)
	s, err = m.LetGo(s, 1)
	require.NoError(t, err)
	l, err = m.Load(s, warm(60))
	require.NoError(t, err)
	require.InDelta(t, -40*6.9e-6*9000*12, l.EndMoved.In(unit.Inch), 1e-6)
	require.InDelta(t, l.EndMoved.In(unit.Inch), l.Movement.Thermal.In(unit.Inch), 1e-9)

	// Set in different weather: the lower at 100, the upper at 80 degF. Then the
	// piece between is stretched by 20 degF already, and stays so.
	s, err = m.Land(warm(100))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 1, warm(100))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, warm(80))
	require.NoError(t, err)
	l, err = m.Load(s, warm(60))
	require.NoError(t, err)
	require.InDelta(t, force, lbf(l.Holds[1].Load), 1e-3)
	require.InDelta(t, 0, lbf(l.Holds[0].Load), 1e-3, "at 80 it carried nothing, and cooling strains both sides alike")
}

// TestUpwardLoadAtTheHanger: 3,000 psi on the annulus of a string that is anchored
// and pushed up: on the hanger's ring of 10 in, 78.540 - 15.904 = 62.636 in²,
// 187,907 lbf up, less what hangs.
func TestUpwardLoadAtTheHanger(t *testing.T) {
	a := snug(t)
	a.HangerSeal = 10 * unit.Inch
	m := made(t, a)
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	c := warm(100)
	still := c.Outside
	c.Outside = func(part int, d unit.Length) unit.Pressure { return still(part, d) + 3000*unit.PSI }
	c.Inside = c.Outside
	l, err := m.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, 3000*(inch2(10*unit.Inch)-inch2(handPipe.OD))-lbf(l.HangerLoad), lbf(l.Lift), 1e-3)
	require.InDelta(t, 187907, 3000*(inch2(10*unit.Inch)-inch2(handPipe.OD)), 5)
	require.Positive(t, float64(l.Lift), "nothing but a lock-down holds it")
	// 3,000 psi everywhere squeezes the wall: -3,000 × 3.600 in² of wall force.
	require.InDelta(t, 9000*buoyed()-3000*(inch2(handPipe.OD)-inch2(handPipe.ID)), lbf(l.HangerLoad), 1e-2)
}

// TestFrictionOfSeals: 800 lbf more pulled, as much less slacked off.
func TestFrictionOfSeals(t *testing.T) {
	m := made(t, snug(t))
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	c := warm(100)
	for sliding, want := range map[movement.Sliding]float64{movement.NotSliding: 0, movement.SlidingUp: 800, movement.SlidingDown: -800} {
		c.Top, c.Sliding = movement.OnHookOpen, sliding
		l, err := m.Load(s, c)
		require.NoError(t, err)
		require.True(t, l.Free)
		require.InDelta(t, 9000*buoyed()+15000+want, lbf(l.Reading), 1e-2)
	}
}

// TestHangOff: held at the packers on the hook with 20,000 lbf of overpull, then
// hung off: the hanger keeps it, since the top stays where the hook left it. By
// hand the top has come up by F·L/(E·As) = 20,000 × 60,000 in/(30e6 × 3.600) =
// 11.11 in to the upper packer.
func TestHangOff(t *testing.T) {
	m := made(t, snug(t))
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, warm(100))
	require.NoError(t, err)
	c := warm(100)
	c.Top, c.Reading = movement.OnHookOpen, unit.Force(9000*buoyed()+15000+20000)*unit.PoundForce
	pulled, err := m.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, 20000, lbf(pulled.Holds[0].Load), 1e-2)
	steel := inch2(handPipe.OD) - inch2(handPipe.ID)
	require.InDelta(t, -20000*60000/(30e6*steel), pulled.TopMoved.In(unit.Inch), 1e-6)
	require.InDelta(t, -11.11, pulled.TopMoved.In(unit.Inch), 0.01)
	s, err = m.HangOff(s, c)
	require.NoError(t, err)
	landed, err := m.Load(s, warm(100))
	require.NoError(t, err)
	require.InDelta(t, float64(pulled.HangerLoad), float64(landed.HangerLoad), 1e-4)
	require.InDelta(t, 20000, lbf(landed.Holds[0].Load), 1e-2)
}

// TestAnchoredTemperatureForces are the worked solutions ANC1 and ANC2: a string
// latched in a packer cools on average from 145 to 100 degF with 2.59 in² of steel:
// 24.1 klbf of tension; 3-1/2 in 9.2 lb/ft from 100 to 75 degF: 13,403 lbf. Both
// take 207 psi per degF. Published: a petroleum PE exam's worked solutions.
func TestAnchoredTemperatureForces(t *testing.T) {
	od := 3.5 * unit.Inch
	pipe := tubular.Pipe{OD: od, ID: unit.Length(math.Sqrt(3.5*3.5-4/math.Pi*2.59)) * unit.Inch, Weight: 9.2 * unit.PoundPerFoot, Material: tubular.Steel()}
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	require.NoError(t, err)
	m := made(t, movement.Assembly{Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9000 * unit.Foot, Hole: od}}, Path: path,
		Holds: []movement.Hold{{MD: 9000 * unit.Foot}}})
	load := func(topBefore, bottomBefore, topAfter, bottomAfter float64) float64 {
		at := func(top, bottom float64) movement.Conditions {
			c := warm(0)
			c.Temperature = func(d unit.Length) unit.Temperature {
				return unit.Fahrenheit(top + (bottom-top)*d.In(9000*unit.Foot))
			}
			return c
		}
		s, err := m.Land(at(topBefore, bottomBefore))
		require.NoError(t, err)
		s, err = m.TakeHold(s, 0, at(topBefore, bottomBefore))
		require.NoError(t, err)
		l, err := m.Load(s, at(topAfter, bottomAfter))
		require.NoError(t, err)
		return lbf(l.Holds[0].Load)
	}
	require.InDelta(t, 24.1, load(90, 200, 45, 155)/1000, 0.05, "printed to 0.1 klbf")
	require.InDelta(t, 13403, load(50, 150, 75, 75), 0.5)
}

// TestHotYieldAndWear: the body's yield strength goes by 0.03 % per degF, and wear
// takes from the ratings what it takes from the wall, not from the weight.
func TestHotYieldAndWear(t *testing.T) {
	a := snug(t)
	usual := tubular.UsualDerating()
	cold := made(t, a)
	a.Derating = &usual
	hot := made(t, a)
	a.Derating, a.Sections[0].Wear = nil, tubular.Allowance{Inside: 0.05 * unit.Inch}
	worn := made(t, a)
	at := func(m *movement.MadeUp) movement.Loading {
		s, err := m.Land(warm(270))
		require.NoError(t, err)
		l, err := m.Load(s, warm(270))
		require.NoError(t, err)
		return l
	}
	c, h, w := at(cold), at(hot), at(worn)
	require.InEpsilon(t, c.Limits.Axial.Usage/0.94, h.Limits.Axial.Usage, 1e-12, "200 degF above 70 leave 94 %")
	require.InEpsilon(t, c.Limits.Triaxial.Usage/0.94, h.Limits.Triaxial.Usage, 1e-12)
	require.Equal(t, c.HangerLoad, w.HangerLoad)
	left := inch2(handPipe.OD) - inch2(handPipe.ID+0.1*unit.Inch)
	require.InEpsilon(t, c.Limits.Axial.Usage*(inch2(handPipe.OD)-inch2(handPipe.ID))/left, w.Limits.Axial.Usage, 1e-12)
	a.Sections[0].Wear.Inside = unit.Inch
	_, err := a.MakeUp()
	require.ErrorContains(t, err, "Sections[0].Wear")
}

func TestFaultsOfAnAssembly(t *testing.T) {
	a := handAssembly(t)
	a.Seals[0] = movement.Seal{MD: 10000 * unit.Foot, Bore: -1, Up: -1, Down: -1, Length: -1, Friction: -1}
	a.Holds = []movement.Hold{{MD: 8000 * unit.Foot, Bore: 6 * unit.Inch, Casing: 5 * unit.Inch}, {MD: 8000 * unit.Foot, Bore: -1}}
	a.Joints = []movement.Joint{{MD: 0}, {MD: 7000 * unit.Foot, Seal: 5 * unit.Inch}, {MD: 7000 * unit.Foot, Seal: 5 * unit.Inch}}
	a.Plugs, a.Hung = []unit.Length{-1}, []unit.Length{20000 * unit.Foot}
	a.HangerSeal, a.Block = 2*unit.Inch, unit.Force(math.NaN())
	a.Derating = &tubular.Derating{Rate: -1}
	a.HelicalOnset = 7
	a.Sections[0].Connection.Tension = -1
	_, err := a.MakeUp()
	for _, field := range []string{"Seals[0].MD", "Seals[0].Bore", "Seals[0].Up", "Seals[0].Down", "Seals[0].Length", "Seals[0].Friction",
		"Holds[0].Casing", "must be another depth than that of Holds[0]", "Holds[1].Bore", "Joints[0].MD", "Joints[0].Seal", "must be another depth than that of Joints[1]", "Plugs[0]", "Hung[0]",
		"HangerSeal", "Block", "Derating", "must be a rate of at least 0 and a temperature above absolute zero", "HelicalOnset", "Connection.Tension"} {
		require.ErrorContains(t, err, field)
	}
	_, err = movement.Assembly{}.MakeUp()
	require.ErrorContains(t, err, "Sections: is empty")
	require.ErrorContains(t, err, "Path: is missing")

	m := made(t, handAssembly(t))
	_, err = m.Load(movement.Standing{}, water(0, 0, 0, 0))
	require.ErrorContains(t, err, "hasn't landed")
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	_, err = m.Load(s, movement.Conditions{Top: 9, Sliding: 3, Reading: unit.Force(math.Inf(1)), Friction: make([]unit.Gradient, 4), Hung: make([]unit.Force, 2)})
	for _, field := range []string{"Inside: is missing", "Outside: is missing", "Friction", "Top: is 9; must be AtHanger, OnHookOpen or OnHookClosed", "Sliding: is 3; must be -1, 0 or 1", "Reading", "Hung"} {
		require.ErrorContains(t, err, field)
	}
	c := water(0, 0, 0, 0)
	c.Reading = 1
	_, err = m.Load(s, c)
	require.ErrorContains(t, err, "must be 0 at the hanger")
	_, err = m.Load(s, warm(100))
	require.ErrorContains(t, err, "Temperature: is given in one of the conditions only; must be in that of landing and these, or in none")
	c.Top = movement.OnHookOpen
	_, err = m.Land(c)
	require.ErrorContains(t, err, "Top: must be AtHanger when landing; a string on the hook lands by HangOff")
	_, err = m.SetDown(s, 0, c, 1)
	require.ErrorContains(t, err, "AtHanger")
	_, err = m.HangOff(s, water(0, 0, 0, 0))
	require.ErrorContains(t, err, "Top: must be OnHookOpen or OnHookClosed when hanging off")
	for _, fault := range []func() error{
		func() error { _, err := m.TakeHold(s, 7, water(0, 0, 0, 0)); return err },
		func() error { _, err := m.LetGo(s, 0); return err },
		func() error { _, err := m.Part(s, 3); return err },
		func() error { _, err := m.SetDown(s, 0, water(0, 0, 0, 0), unit.Force(math.NaN())); return err },
		func() error { _, err := m.ReadingForJoint(&movement.Loading{}, 0, 0); return err },
		func() error { _, err := m.ReadingForHold(&movement.Loading{}, 5, 0); return err },
	} {
		require.ErrorContains(t, fault(), "movement:")
	}
	_, err = m.LetGo(s, 0)
	require.ErrorContains(t, err, "place: is 0, which doesn't hold; must be one that does")
	bad := water(0, 0, 0, 0)
	bad.Inside = func(int, unit.Length) unit.Pressure { return unit.Pressure(math.NaN()) }
	_, err = m.Load(s, bad)
	require.ErrorContains(t, err, "pressure inside is NaN")
	require.False(t, strings.Contains(err.Error(), "panic"))
	l, err := m.Load(s, water(0, 0, 0, 0))
	require.NoError(t, err)
	_, err = m.MostReading(&l, movement.PullLimits{})
	require.ErrorIs(t, err, movement.ErrNotReached)
	require.ErrorContains(t, err, ": the string is landed")
	_, err = m.ReadingForHold(&l, 0, 0)
	require.ErrorIs(t, err, movement.ErrNotReached)
}
