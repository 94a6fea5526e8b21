package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

func finite(t *testing.T, xs ...float64) {
	t.Helper()
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%v among %v without an error", x, xs)
		}
	}
}

func FuzzVertical(f *testing.F) {
	f.Add(2.875, 2.441, 6.5, 10000.0, 6.094, 3.25, 15.0, 5000.0, 1000.0, -20.0, 20000.0, 0.1, byte(2))
	f.Add(3.5, 0.1, 0.0, 1e-3, 3.5, 9.0, 0.0, -1e9, 1e300, 1e5, -3.0, -9.0, byte(1))
	f.Fuzz(func(t *testing.T, od, id, w, depth, hole, bore, ppg, pi, po, dt, slack, friction float64, r byte) {
		v := packerExample()
		s := &v.Sections[0]
		s.Pipe.OD, s.Pipe.ID, s.Pipe.Weight = unit.Length(od)*unit.Inch, unit.Length(id)*unit.Inch, unit.WeightPerLength(w)*unit.PoundPerFoot
		s.BottomMD, s.Hole = unit.Length(depth)*unit.Foot, unit.Length(hole)*unit.Inch
		v.Seals = movement.SealBore{Bore: unit.Length(bore) * unit.Inch, Restraint: movement.Restraint(r % 4)}
		v.Final.InsideDensity, v.Final.InsideSurface, v.Final.OutsideSurface = unit.Density(ppg)*unit.PoundPerGallon, unit.Pressure(pi)*unit.PSI, unit.Pressure(po)*unit.PSI
		v.Final.Friction, v.Warming, v.SlackOff = unit.Gradient(friction)*unit.PSIPerFoot, unit.TemperatureDifference(dt), unit.Force(slack)*unit.PoundForce
		a, err := v.Analyse()
		if err != nil {
			return
		}
		finite(t, float64(a.Movement.Total()), float64(a.SlackOff.Total()), float64(a.PackerForce), float64(a.TrueForce), float64(a.EffectiveForce), float64(a.SealMovement), float64(a.Neutral))
	})
}

func FuzzLanded(f *testing.F) {
	f.Add(4.0, 9.2, 4500.0, 0.0, 150.0, 5000.0, 0.05, 6.2, 2.8, byte(0))
	f.Add(4.0, 0.0, 0.0, 15000.0, 40.0, 0.0, 0.0, 3.5, 1.0, byte(5))
	f.Fuzz(func(t *testing.T, bore, ppg, pi, po, surface, slack, friction, hole, onset float64, kind byte) {
		if math.IsNaN(surface) || surface < -400 || surface > 1e6 {
			return
		}
		s := []movement.String{vertical(t), deviated(t, 0), slant(t), level(t)}[kind%4]
		s.Seals = movement.SealBore{Bore: unit.Length(bore) * unit.Inch, Restraint: movement.Restraint(kind / 4 % 3)}
		s.HelicalOnset, s.Spacing = onset, 300*unit.Foot
		s.Sections[0].Hole = unit.Length(hole) * unit.Inch
		s.Sections[0].Pipe.Material.Yield = 80000 * unit.PSI
		l, err := s.Land(brine(0, 0), unit.Force(slack)*unit.PoundForce)
		if err != nil {
			return
		}
		after := fluids(unit.Density(ppg)*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, unit.Pressure(pi)*unit.PSI, unit.Pressure(po)*unit.PSI, unit.Fahrenheit(surface), 1.2)
		for range s.Sections {
			after.Friction = append(after.Friction, unit.Gradient(friction)*unit.PSIPerFoot)
		}
		c, err := l.Load(after)
		if err != nil {
			return
		}
		finite(t, float64(c.Movement.Total()), float64(c.PackerForce), float64(c.TrueForce), float64(c.HangerLoad), float64(c.SealMovement), float64(c.Neutral), float64(c.BuckledLength), c.Governing.Usage)
		for _, n := range c.Nodes {
			finite(t, float64(n.True), float64(n.Effective), float64(n.Contact), float64(n.Bending), float64(n.Onset))
		}
	})
}

func FuzzAssembly(f *testing.F) {
	f.Add(4.0, 4.75, 7000.0, 8000.0, 1000.0, 2000.0, 300.0, 90000.0, 3000.0, 2.0, byte(7))
	f.Add(9.0, 3.0, 8000.0, 8000.0, -500.0, 0.0, 60.0, -1e5, -9.0, 0.0, byte(63))
	f.Fuzz(func(t *testing.T, bore, seal, joint, held, inside, below, warm, reading, drag, down float64, kind byte) {
		if math.IsNaN(warm) || warm < -400 || warm > 1e6 {
			return
		}
		ft := func(x float64) unit.Length { return unit.Length(x) * unit.Foot }
		a := movement.Assembly{
			Sections: deviated(t, 0).Sections, Path: deviated(t, 0).Path, Spacing: 300 * unit.Foot,
			Seals:  []movement.Seal{{MD: ft(held + 300), Bore: unit.Length(seal) * unit.Inch, Up: ft(3), Down: ft(down), Locator: kind&1 > 0}},
			Holds:  []movement.Hold{{MD: ft(held), Bore: unit.Length(bore) * unit.Inch}},
			Joints: []movement.Joint{{MD: ft(joint), Seal: unit.Length(seal) * unit.Inch}},
		}
		m, err := a.MakeUp()
		if err != nil {
			return
		}
		c := movement.Conditions{
			Inside:      func(_ int, d unit.Length) unit.Pressure { return brine(0, 0).Inside(d) },
			Outside:     func(_ int, d unit.Length) unit.Pressure { return brine(0, 0).Outside(d) },
			Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(100) },
		}
		s, err := m.Land(c)
		if err != nil {
			return
		}
		next := c
		next.Inside = func(_ int, d unit.Length) unit.Pressure { return c.Inside(0, d) + unit.Pressure(inside)*unit.PSI }
		next.Outside = func(part int, d unit.Length) unit.Pressure {
			return c.Outside(0, d) + unit.Pressure(part)*unit.Pressure(below)*unit.PSI
		}
		next.Temperature = func(unit.Length) unit.Temperature { return unit.Fahrenheit(warm) }
		if kind&2 > 0 {
			if s, err = m.TakeHold(s, 0, next); err != nil {
				return
			}
		}
		if kind&4 > 0 {
			if s, err = m.Part(s, 0); err != nil {
				return
			}
		}
		if kind&8 > 0 {
			c, next = next, c
		}
		if kind&16 > 0 {
			next.Top, next.Reading, next.Drag = movement.OnHookClosed, unit.Force(reading)*unit.PoundForce, unit.Force(drag)*unit.PoundForce
		}
		l, err := m.Load(s, next)
		if err != nil {
			return
		}
		finite(t, float64(l.HangerLoad), float64(l.Reading), float64(l.Lift), float64(l.TopMoved), float64(l.EndMoved), float64(l.Movement.Total()), float64(l.Held),
			float64(l.Holds[0].Load), float64(l.Holds[0].Moved), float64(l.Joints[0].Balance), float64(l.Seals[0].Ring), float64(l.Seals[0].Travel), float64(l.Seals[0].Load),
			float64(l.Neutral), float64(l.BuckledLength), l.Limits.Governing().Usage)
		if most, err := m.MostReading(&l, movement.PullLimits{Rig: 1e6}); err == nil {
			finite(t, float64(most.Reading))
		}
		for _, x := range m.Steps(&l) {
			require.NotEmpty(t, x.Name)
			require.NotContains(t, x.Value.String(), "NaN", x.Name)
		}
	})
}
